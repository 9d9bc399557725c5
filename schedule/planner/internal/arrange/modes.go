package arrange

import (
	"math"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/sequence"
	"example.com/cookday/schedule/unit"
)

func (d *Arranger) nightFires(h Hearth) day.NightFires {
	out := make(day.NightFires, len(h.Fires))
	q := float64(d.LongestQuiet())
	for i, f := range h.Fires {
		out[i] = q == 0 || d.LastsNight(f, q)
	}
	return out
}

// modeRefs lists what the modes of the two stages stand for. A place is taken
// together with all others of its level, so that a piece may stay on while one
// becomes the other; fires that do not last the night are kept apart, because
// their starts are limited. Food over coals never rides through a change.
func (d *Arranger) modeRefs(b *Batch, h Hearth, night day.NightFires) (first, second []modeRef) {
	for i, w := range b.Ways {
		for _, g := range placeGroups(h, d.placesFor(h, b.It, w), w, night, b.LoadIn(w, false)) {
			if g.Places = b.fed(h, w, g.Places); len(g.Places) == 0 {
				continue
			}
			if !w.Fixed || g.night { // a wrap that waits is for the night
				next := h.SecondPlaces(b.It, w, g, b.LoadIn(w, true))
				if len(next) == 0 {
					continue
				}
				first = append(first, modeRef{way: i, places: g.Places, night: g.night})
				second = append(second, modeRef{way: i, places: next, night: g.night})
				if hot := h.SearingSides(b.It, w, b.LoadIn(w, true)); len(hot) > 0 {
					second = append(second, modeRef{way: i, places: hot, night: g.night, cost: besideHeap})
				}
			}
		}
		if w.InOven.Planned > 0 {
			second = append(second, modeRef{way: i, oven: true})
		}
	}
	return first, second
}

type PlaceGroup struct {
	Places []Place
	night  bool
}

func placeGroups(h Hearth, places []Place, w day.Way, night day.NightFires, l Load) []PlaceGroup {
	var groups []PlaceGroup
	for _, p := range places {
		if !h.takesIn(p, l) {
			continue
		}
		i := slices.IndexFunc(groups, func(g PlaceGroup) bool {
			return !w.Direct && g.night == night[p.Fire] && h.sameTaken(g.Places[0], p, l.areaM2())
		})
		if i < 0 {
			groups = append(groups, PlaceGroup{Places: []Place{p}, night: night[p.Fire]})
			continue
		}
		groups[i].Places = append(groups[i].Places, p)
	}
	slices.SortStableFunc(groups, func(a, b PlaceGroup) int {
		if a.night == b.night || w.Direct {
			return 0
		}
		if a.night {
			return -1
		}
		return 1
	})
	return groups
}

// longestLit is how long a tough piece cooks at the most on a fire all of whose coals burn,
// minutes (assumption): it wants lit coals every hour, and nobody feeds one all day who has
// not asked for such a heat.
const longestLit = 240

// fed are the places in which a fire is fed for as long as the batch takes.
func (b *Batch) fed(h Hearth, w day.Way, places []Place) []Place {
	if w.Direct || !rides(b.It) || b.It.Dish.Level != nil || !(w.Total().Expected > longestLit) {
		return places
	}
	return slices.DeleteFunc(slices.Clone(places), func(p Place) bool { return fire.AllLit(h.Fires[p.Fire].Layout) })
}

// sameTaken says whether a batch may be counted alike in two zones: it may unless it
// is a piece too large for one of them, which takes all of that, and the other has
// room for something beside it then.
func (h Hearth) sameTaken(a, b Place, areaM2 float64) bool {
	ra, rb := h.room(a), h.room(b)
	return areaM2 <= math.Min(ra, rb)+1e-9 || math.Abs(ra-rb) < h.least
}

// SecondPlaces are the zones of the second stage: the same as the first, the
// indirect side of hotter fires for a wrapped tough piece (it may ride through
// the change), or the hot coals for a sear.
func (h Hearth) SecondPlaces(it *day.Item, w day.Way, g PlaceGroup, l Load) []Place {
	if w.Sear {
		hot := w
		hot.Direct, hot.Band = true, day.SearBand(it)
		all := slices.DeleteFunc(h.PlacesOf(hot), func(p Place) bool { return !h.takesIn(p, l) })
		return slices.DeleteFunc(slices.Clone(all), func(p Place) bool { return !h.sameTaken(all[0], p, l.areaM2()) })
	}
	out := g.Places
	if w.Stages() < 2 || !rides(it) {
		return out
	}
	used := map[int]bool{}
	for _, p := range out {
		used[p.Fire] = true
	}
	out = append([]Place(nil), out...)
	for f, fr := range h.Fires {
		for z, zone := range h.Zones[f] {
			if !used[f] && !zone.Direct && fr.LevelC > w.LevelC-sameLevelK && h.takesIn(Place{f, z}, l) && h.sameTaken(out[0], Place{f, z}, l.areaM2()) {
				out = append(out, Place{f, z})
				break
			}
		}
	}
	return out
}

// searC is the grate over the coals from which a sear by the clock browns: 450 F (common
// practice, no source); besideHeap is what it costs that it is no heap (assumption).
var searC = unit.FToC(450)

const besideHeap = 30

// SearingSides are the direct sides of two-zone fires hot enough for a sear that would
// else want a heap: it needs no fire of its own.
func (h Hearth) SearingSides(it *day.Item, w day.Way, l Load) []Place {
	if h.apart || !w.Sear || day.SearBand(it) != schedule.BandSear {
		return nil
	}
	var out []Place
	for f, fr := range h.Fires {
		for z, zone := range h.Zones[f] {
			p := Place{f, z}
			if fr.Layout == fire.TwoZone && zone.Direct && fr.LevelC+zone.LiftK >= searC-0.5 && h.takesIn(p, l) {
				out = append(out, p)
			}
		}
	}
	return out
}

// gaps are those of the ways that the modes of a batch stand for.
func (d *Arranger) gaps(b *Batch) []sequence.Gap {
	out, known := make([]sequence.Gap, len(b.Ways)), make([]bool, len(b.Ways))
	for _, refs := range [2][]modeRef{b.First, b.second} {
		for _, r := range refs {
			if !known[r.way] {
				out[r.way], known[r.way] = d.gap(b, b.Ways[r.way]), true
			}
		}
	}
	return out
}

// gap is how long the batch may rest and hold before it is served. The hold is
// cut by what the cook may finish earlier than planned, so that the early end
// of the window can still be held.
func (d *Arranger) gap(b *Batch, w day.Way) sequence.Gap {
	rest := b.It.RestMinutes()
	most := d.StandsFor(b.It)
	if keeps, ok := d.keepsFor(b, w); ok {
		switch b.It.Cut.Style {
		case cut.Tough: // good for as long as the table of holds has it
			most = math.Max(keeps, rest+leastSlack)
		case cut.Small:
			most = math.Max(keeps, most)
		default:
			most = math.Max(math.Min(keeps, b.It.Cut.Rest.LongestMinutes), rest+leastSlack)
		}
	}
	g := sequence.Gap{Min: int(math.Ceil(rest)), Ideal: int(math.Ceil(rest))}
	if b.It.Dish.Rest == nil {
		g.Ideal = max(g.Min, int(b.It.Cut.Rest.IdealMinutes))
	}
	g.Max = max(g.Min, int(most))
	if w.Slack > 0 { // of a sear, that much later on a slow day
		g.Min = min(g.Min+int(math.Ceil(w.Slack)), max(g.Min, g.Max))
		g.Ideal = max(g.Ideal, g.Min)
		g.Max = max(g.Max, g.Ideal)
		return g
	}
	if w.Z < d.Z { // what has to be off sooner, for others or for its fire, counts with the asked chance
		g.Max = min(g.Max, g.Min+leastSlack)
		g.Ideal = min(g.Ideal, g.Max)
	}
	return g
}

// leastSlack is what a dish may wait beyond its rest even where a fast day could
// then not be held: the plan says so (assumption).
const leastSlack = 30
