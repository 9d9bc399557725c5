package arrange

import (
	"math"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/planner/internal/day"
)

// Load is like pieces as they lie together in a zone during a stage.
type Load struct {
	Laid   fire.Laid
	Count  int
	Shrunk Shrunk
}

// Shrunk is what of its room a piece still needs, to lie easily and at the least.
type Shrunk struct{ Easy, Least float64 }

// LoadIn is a batch in its first stage, or in the second of a way.
func (b *Batch) LoadIn(w day.Way, second bool) Load {
	l := loadOf(b.It, b.MassKg, b.Count)
	if second && !w.Sear && w.With != "" {
		l.Shrunk.Easy, l.Shrunk.Least = b.It.Cut.ShrunkTo(w.With)
	}
	return l
}

func loadOf(it *day.Item, massKg float64, n int) Load {
	return Load{Laid: it.Lay(massKg), Count: n, Shrunk: Shrunk{1, 1}}
}

// Needs is what so many of the pieces need beside others, or one that has a grate for itself.
func (l Load) Needs(n int, alone bool) fire.Needs {
	needs := l.Laid.Needs(n)
	if alone && n == 1 {
		needs = l.Laid.NeedsAlone()
	}
	return fire.Needs{EasyM2: needs.EasyM2 * l.Shrunk.Easy, LeastM2: needs.LeastM2 * l.Shrunk.Least}
}

// areaM2 is what the solver counts with: the least, so that what is tight is allowed.
func (l Load) areaM2() float64 { return l.Needs(l.Count, false).LeastM2 }

// levels is how many of a zone's grates the search may use, from below.
func (h Hearth) levels(z fire.Zone) int {
	if h.Levels > 0 {
		return min(h.Levels, z.Levels())
	}
	return z.Levels()
}

// room is what pieces may need of a zone, m2.
func (h Hearth) room(p Place) float64 { return h.roomOf(h.Zones[p.Fire][p.Zone]) }

func (h Hearth) roomOf(z fire.Zone) float64 {
	sum := 0.0
	for level := range h.levels(z) {
		sum += z.Grate(level).AreaM2
	}
	return sum
}

// fits is how many of the pieces go in a zone with nothing else there. A piece lies on one grate.
func (h Hearth) fits(p Place, l Load) int {
	if l.Laid.TooLong {
		return 0
	}
	each, n, alone := l.Needs(1, false).LeastM2, 0, false
	z := h.Zones[p.Fire][p.Zone]
	for level := range h.levels(z) {
		if g := z.Grate(level); g.Takes(l.Laid.HighM) {
			n += int(g.AreaM2/each + 1e-9)
			alone = alone || l.Needs(1, true).In(g.AreaM2) > fire.TooMuch
		}
	}
	if n == 0 && alone {
		return 1
	}
	return n
}

// takesIn says whether a batch may lie in a zone. What bends or touches is tight; the plan says so.
func (h Hearth) takesIn(p Place, l Load) bool { return h.fits(p, l) >= l.Count }

// Area is what the batch takes of a zone, in whole square centimetres. A single piece that needs a grate for itself
// takes all of it.
func (b *Batch) Area(h Hearth, places []Place, l Load) int {
	area := math.Ceil(l.areaM2()*1e4 - 1e-6)
	if b.Count == 1 {
		for _, p := range places {
			area = math.Min(area, math.Floor(h.Zones[p.Fire][p.Zone].AreaM2*1e4))
		}
	}
	return int(area)
}

// leastArea is what the smallest batch takes, m2.
func leastArea(batches []*Batch) float64 {
	least := math.Inf(1)
	for _, b := range batches {
		least = math.Min(least, loadOf(b.It, b.MassKg, b.Count).areaM2())
	}
	return least
}
