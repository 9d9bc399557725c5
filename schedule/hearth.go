package schedule

import (
	"math"
	"slices"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/sequence"
)

// mostFires is how many fires the solver is offered: enough for a low fire in
// two layouts, a hot one with two zones, an even layer and a heap.
const mostFires = 6

// hearth is the fires of the day.
type hearth struct {
	fires []fire.Fire
	zones [][]fire.Zone
	least float64 // what the smallest batch takes, m2
}

// spot is one place a dish may cook: beside or over the coals at a level.
type spot struct {
	direct bool
	band   string
	levelC float64
}

// spots lists where a dish may cook, best first, as asked and as the cut allows.
func (it *item) spots() []spot {
	var out []spot
	for _, p := range it.places() {
		if it.dish.Zone != "" && (it.dish.Zone == zoneDirect) != p.Direct {
			continue
		}
		levels := hotterFirst(p.LevelsC)
		if p.Direct { // what counts over the coals is the band
			levels = p.LevelsC[:1]
		}
		if it.dish.Level != nil {
			levels = []float64{float64(*it.dish.Level)}
		}
		for _, l := range levels {
			s := spot{direct: p.Direct, band: p.Band, levelC: l}
			if it.dish.Level != nil {
				s.band = fire.Band(l)
			}
			if !contains(out, s) {
				out = append(out, s)
			}
		}
	}
	return out
}

// leastDirectC is the coolest level of a fire with a place over its coals, degC.
var leastDirectC = celsius(300)

// places are the cut's own; without those over the coals where the dish is asked
// to cook beside them, is smoked first and seared at the end, or asks for a level
// below that of any fire with a place over its coals. A cut that has no other
// gets the low and the hot band.
func (it *item) places() []cut.Place {
	gentle := it.dish.Level != nil && float64(*it.dish.Level) < leastDirectC
	if it.dish.Finish == "" && !gentle && it.dish.Zone != zoneIndirect {
		return it.cut.Places
	}
	own := slices.DeleteFunc(slices.Clone(it.cut.Places), func(p cut.Place) bool { return p.Direct })
	low := cut.Place{Band: bandLow, LevelsC: []float64{celsius(250), celsius(225)}}
	hot := cut.Place{Band: bandHot, LevelsC: []float64{celsius(350), celsius(375)}}
	switch {
	case len(own) == 0 && gentle:
		return []cut.Place{low}
	case len(own) == 0 && it.dish.Finish == "":
		return []cut.Place{hot, low}
	case len(own) == 0:
		return []cut.Place{low, hot}
	case it.dish.Finish == "" || gentle || slices.ContainsFunc(own, func(p cut.Place) bool { return p.Band == bandHot }):
		return own
	}
	return append(own, hot)
}

// hotterFirst keeps the usual level first and puts the others hottest first: a
// hotter grate is what saves a tight day.
func hotterFirst(levels []float64) []float64 {
	out := slices.Clone(levels)
	if len(out) > 1 {
		slices.Sort(out[1:])
		slices.Reverse(out[1:])
	}
	return out
}

func contains(all []spot, s spot) bool {
	for _, o := range all {
		if o.direct == s.direct && math.Abs(o.levelC-s.levelC) < 1 {
			return true
		}
	}
	return false
}

// Words of a request for where a dish cooks.
const (
	zoneDirect   = "direct"   // over the coals
	zoneIndirect = "indirect" // beside them
)

// layFires chooses the fires to offer: what sears need, then every dish's best
// place, then every dish's next best, until there are enough.
func (d *day) layFires() hearth {
	var h hearth
	for i := range d.items {
		if it := &d.items[i]; it.dish.Finish != "" {
			for _, f := range d.firesFor(searSpot(it)) {
				h.add(d.grill, f)
			}
		}
	}
	for rank := 0; len(h.fires) < mostFires; rank++ {
		more := false
		for i := range d.items {
			spots := d.items[i].spots()
			if rank >= len(spots) {
				continue
			}
			more = true
			for _, f := range d.firesFor(spots[rank]) {
				h.add(d.grill, f)
			}
		}
		if !more {
			break
		}
	}
	return h
}

func (h *hearth) add(g fire.Grill, f fire.Fire) {
	if len(h.fires) >= mostFires {
		return
	}
	for _, o := range h.fires {
		if o.Layout == f.Layout && math.Abs(o.LevelC-f.LevelC) < 1 {
			return
		}
	}
	h.fires = append(h.fires, f)
	h.zones = append(h.zones, g.Zones(f))
}

// firesFor are the fires on which a place can be had.
func (d *day) firesFor(s spot) []fire.Fire {
	if d.grill.Kind == fire.OtherKind {
		return []fire.Fire{{Layout: fire.Other, LevelC: s.levelC}}
	}
	switch {
	case s.direct && s.band == bandSear:
		return []fire.Fire{{Layout: fire.Heap, LevelC: math.Max(s.levelC, celsius(550))}}
	case s.direct:
		return []fire.Fire{{Layout: fire.Spread, LevelC: s.levelC}, {Layout: fire.TwoZone, LevelC: s.levelC}}
	case s.levelC <= celsius(287):
		fires := []fire.Fire{{Layout: fire.Banked, LevelC: s.levelC}}
		if d.longestQuiet() > 0 {
			fires = append(fires, fire.Fire{Layout: fire.Ring, LevelC: s.levelC})
		}
		return fires
	case s.levelC < celsius(300):
		return []fire.Fire{{Layout: fire.Banked, LevelC: s.levelC}}
	case s.levelC < celsius(337):
		return []fire.Fire{{Layout: fire.Banked, LevelC: s.levelC}, {Layout: fire.TwoZone, LevelC: s.levelC}}
	}
	return []fire.Fire{{Layout: fire.TwoZone, LevelC: s.levelC}}
}

// Bands of heat, in the trade's words.
const (
	bandLow  = "low"
	bandHot  = "hot"
	bandSear = "sear"
)

// place is one zone of one fire.
type place struct{ fire, zone int }

// sameLevelK is how far two levels may differ and still be one: a tenth of what
// the shared error of the grate is.
const sameLevelK = 0.6

// placesOf are the zones in which a way can cook, fire by fire.
func (h hearth) placesOf(w way) []place {
	var out []place
	for f, fr := range h.fires {
		for z, zone := range h.zones[f] {
			if zone.Direct == w.direct && (w.direct && directFits(fr, w.band) || !w.direct && math.Abs(fr.LevelC+zone.LiftK-w.levelC) < sameLevelK) {
				out = append(out, place{f, z})
				break
			}
		}
	}
	return out
}

// directFits says whether a fire's direct zone has the heat of a band.
func directFits(f fire.Fire, band string) bool {
	return f.Layout == fire.Other || (f.Layout == fire.Heap) == (band == bandSear)
}

// room is what pieces may cover of a zone, m2, in the measure of large pieces:
// small discs count for more than they cover, because they leave gaps.
func (h hearth) room(p place) float64 { return usable(h.zones[p.fire][p.zone]) }

// takesIn says whether a batch may lie in a zone: within its room, or, for a
// single piece, within the whole of it. Meat bends; the plan says it is tight.
func (h hearth) takesIn(p place, areaM2 float64, alone bool) bool {
	if alone {
		return h.zones[p.fire][p.zone].AreaM2 >= areaM2
	}
	return h.room(p) >= areaM2-1e-9
}

// takes is what a piece takes of that room, m2.
func takes(f fire.Footprint) float64 {
	area := fire.CoverM2(f)
	if f.Disc {
		unit := fire.Zone{AreaM2: 1}
		area *= fire.UsableM2(unit, false) / fire.UsableM2(unit, true)
	}
	return area
}

// tough dishes may ride through a change of fire on the indirect side.
func rides(it *item) bool { return it.cut.Style == cut.Tough }

// usable is the room of a zone in the measure of large pieces, m2.
func usable(z fire.Zone) float64 { return fire.UsableM2(z, false) }

// lightClosed are the instants from which a light would bring the pouring of its
// coals into quiet hours.
func (d *day) lightClosed(f fire.Fire) []sequence.Span {
	return d.quietMoved(d.grill.PourMinutes(f))
}

// changeClosed are the instants at which the fire may not be changed to this one,
// because the chimney for it would have to be lit in quiet hours.
func (d *day) changeClosed(f fire.Fire) []sequence.Span {
	return d.quietMoved(-d.grill.PourMinutes(f))
}

// quietMoved are the quiet hours, earlier by so many minutes.
func (d *day) quietMoved(by int) []sequence.Span {
	if by == 0 {
		return nil
	}
	closed := make([]sequence.Span, len(d.quiet))
	for i, q := range d.quiet {
		closed[i] = sequence.Span{From: q.From + by, To: q.To + by}
	}
	return closed
}

// idleLights are the instants at which a fire that does not last the quiet hours may
// not be lit, because it would be for what goes on after them: those before quiet
// hours, but for as early as something can be cooked before them and wait for them
// to end.
func (d *day) idleLights(p *sequence.Problem, f int) []sequence.Span {
	var out []sequence.Span
	for _, q := range d.quiet {
		if q.To > p.Earliest {
			continue
		}
		s := sequence.Span{From: q.To, To: q.To + ever}
		for i := range p.Chains {
			if m := minutesBefore(&p.Chains[i], f, q.To); m > 0 {
				s.To = min(s.To, q.To+p.Fires[f].Setup+m)
			}
		}
		out = append(out, s)
	}
	return out
}

// ever is longer than any plan, in minutes.
const ever = 30 * 24 * 60

// minutesBefore is how long a batch takes that begins on a fire and is done by
// minute u, where it can wait for its serving from then on; 0 where it cannot.
func minutesBefore(c *sequence.Chain, f, u int) int {
	least := 0
	last := c.Tasks[len(c.Tasks)-1]
	for i, m := range c.Tasks[0].Modes {
		if !slices.ContainsFunc(m.Places, func(p sequence.Place) bool { return p.Fire == f }) {
			continue
		}
		for _, end := range last.Modes {
			minutes := m.Minutes[0]
			if len(c.Tasks) > 1 {
				minutes += end.Minutes[i]
			}
			if (len(c.Tasks) == 1 || end.Minutes[i] > 0) && c.Serve+end.Gap.Max >= u && (least == 0 || minutes < least) {
				least = minutes
			}
		}
	}
	return least
}
