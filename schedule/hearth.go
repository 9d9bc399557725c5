package schedule

import (
	"math"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
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
