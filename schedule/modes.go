package schedule

import (
	"math"
	"slices"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/sequence"
)

// nightFires says of each fire whether it lasts through the longest quiet
// stretch untended. It is all true on a day without quiet hours.
type nightFires []bool

func (d *day) nightFires(h hearth) nightFires {
	out := make(nightFires, len(h.fires))
	q := float64(d.longestQuiet())
	for i, f := range h.fires {
		out[i] = q == 0 || d.lastsNight(f, q)
	}
	return out
}

// lastsNight asks the fire for a burn with the quiet stretch in its middle.
func (d *day) lastsNight(f fire.Fire, quiet float64) bool {
	if d.grill.Kind == fire.OtherKind {
		return true
	}
	const before, after = 60, 120
	b := d.grill.Plan(f, fire.Need{
		First:    true,
		Slices:   []fire.Slice{{Minutes: before + quiet + after, Weather: d.night}},
		Untended: []fire.Span{{FromMinute: before, ToMinute: before + quiet}},
	})
	return len(b.Shortfalls) == 0
}

// modeRefs lists what the modes of the two stages stand for. A place is taken
// together with all others of its level, so that a piece may stay on while one
// becomes the other; fires that do not last the night are kept apart, because
// their starts are limited. Food over coals never rides through a change.
func (b *batch) modeRefs(h hearth, night nightFires) (first, second []modeRef) {
	each := b.covers()
	for i, w := range b.ways {
		for _, g := range placeGroups(h, w, night, each, b.count == 1) {
			if !w.fixed || g.night { // a wrap that waits is for the night
				next := h.secondPlaces(b.it, w, g, each, b.count == 1)
				if len(next) == 0 {
					continue
				}
				first = append(first, modeRef{way: i, places: g.places, night: g.night})
				second = append(second, modeRef{way: i, places: next, night: g.night})
			}
		}
		if w.inOven.planned > 0 {
			second = append(second, modeRef{way: i, oven: true})
		}
	}
	return first, second
}

type placeGroup struct {
	places []place
	night  bool
}

func placeGroups(h hearth, w way, night nightFires, areaM2 float64, alone bool) []placeGroup {
	var groups []placeGroup
	for _, p := range h.placesOf(w) {
		if !h.takesIn(p, areaM2, alone) {
			continue
		}
		i := slices.IndexFunc(groups, func(g placeGroup) bool {
			return !w.direct && g.night == night[p.fire] && h.sameTaken(g.places[0], p, areaM2)
		})
		if i < 0 {
			groups = append(groups, placeGroup{places: []place{p}, night: night[p.fire]})
			continue
		}
		groups[i].places = append(groups[i].places, p)
	}
	slices.SortStableFunc(groups, func(a, b placeGroup) int {
		if a.night == b.night || w.direct {
			return 0
		}
		if a.night {
			return -1
		}
		return 1
	})
	return groups
}

// sameTaken says whether a batch may be counted alike in two zones: it may unless it
// is a piece too large for one of them, which takes all of that, and the other has
// room for something beside it then.
func (h hearth) sameTaken(a, b place, areaM2 float64) bool {
	ra, rb := h.room(a), h.room(b)
	return areaM2 <= math.Min(ra, rb)+1e-9 || math.Abs(ra-rb) < h.least
}

// leastArea is what the smallest batch takes, m2.
func leastArea(batches []*batch) float64 {
	least := math.Inf(1)
	for _, b := range batches {
		least = math.Min(least, takes(b.it.footprint(b.massKg))*float64(b.count))
	}
	return least
}

// secondPlaces are the zones of the second stage: the same as the first, the
// indirect side of hotter fires for a wrapped tough piece (it may ride through
// the change), or the hot coals for a sear.
func (h hearth) secondPlaces(it *item, w way, g placeGroup, areaM2 float64, alone bool) []place {
	if w.sear {
		hot := w
		hot.direct, hot.band = true, searBand(it)
		all := slices.DeleteFunc(h.placesOf(hot), func(p place) bool { return !h.takesIn(p, areaM2, alone) })
		return slices.DeleteFunc(slices.Clone(all), func(p place) bool { return !h.sameTaken(all[0], p, areaM2) })
	}
	out := g.places
	if w.stages() < 2 || !rides(it) {
		return out
	}
	used := map[int]bool{}
	for _, p := range out {
		used[p.fire] = true
	}
	out = append([]place(nil), out...)
	for f, fr := range h.fires {
		for z, zone := range h.zones[f] {
			if !used[f] && !zone.Direct && fr.LevelC > w.levelC && h.takesIn(place{f, z}, areaM2, alone) && h.sameTaken(out[0], place{f, z}, areaM2) {
				out = append(out, place{f, z})
				break
			}
		}
	}
	return out
}

// gaps are those of the ways that the modes of a batch stand for.
func (d *day) gaps(b *batch) []sequence.Gap {
	out, known := make([]sequence.Gap, len(b.ways)), make([]bool, len(b.ways))
	for _, refs := range [2][]modeRef{b.first, b.second} {
		for _, r := range refs {
			if !known[r.way] {
				out[r.way], known[r.way] = d.gap(b, b.ways[r.way]), true
			}
		}
	}
	return out
}

// gap is how long the batch may rest and hold before it is served. The hold is
// cut by what the cook may finish earlier than planned, so that the early end
// of the window can still be held.
func (d *day) gap(b *batch, w way) sequence.Gap {
	rest := b.it.restMinutes()
	early := w.total().planned - w.total().early
	most := d.standsFor(b.it)
	if held := d.longestHold(b, w); held > 0 {
		most = math.Max(math.Min(held-early, b.it.cut.Rest.LongestMinutes), rest+leastSlack)
	}
	g := sequence.Gap{Min: int(math.Ceil(rest)), Ideal: int(math.Ceil(rest))}
	if b.it.dish.Rest == nil {
		g.Ideal = max(g.Min, int(b.it.cut.Rest.IdealMinutes))
	}
	g.Max = max(g.Min, int(most))
	return g
}

// leastSlack is what a dish may wait beyond its rest even where a fast day could
// then not be held: the plan says so (assumption).
const leastSlack = 30

// restMinutes is the least rest: the asked one, else the cut's, never under the
// published one.
func (it *item) restMinutes() float64 {
	rest := it.cut.Rest.MinMinutes
	if it.dish.Rest != nil {
		rest = unitMinutes(*it.dish.Rest)
	}
	return math.Max(rest, it.verdict.Minimum.RestMinutes)
}

// standsFor is how long a piece without a hold may stand: its least rest, and while it
// keeps its quality, but no longer than the published clock, unless it is chilled then.
func (d *day) standsFor(it *item) float64 {
	rest := it.restMinutes()
	most := rest + math.Max(it.cut.Rest.LongestMinutes-it.cut.Rest.MinMinutes, 0)
	if clock := safety.HoldFor(0, false, false, d.air.AirC, 0); !d.chill {
		most = math.Min(most, clock.LimitMinutes)
	}
	return math.Max(most, rest)
}
