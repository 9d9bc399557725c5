package arrange

import (
	"context"
	"fmt"
	"math"
	"slices"

	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/unit"
)

// MostBatches is how many batches a day may have; more is no day at one grill.
const MostBatches = 24

// Batch is the pieces of a dish that share the grate at one time, and the ways
// they may cook.
type Batch struct {
	It     *day.Item
	Number int // from 1, within the dish
	MassKg float64
	Count  int
	Ways   []day.Way
	group  int // like batches of one dish share a number > 0
	First  []modeRef
	second []modeRef
}

// lot is the pieces of a batch.
func (b *Batch) lot() day.Lot { return day.Lot{MassKg: b.MassKg, Count: b.Count} }

// modeRef says what a mode of the solver stands for.
type modeRef struct {
	way    int
	places []Place
	oven   bool
	night  bool // its fire lasts through the quiet hours untended
	cost   int  // of the place
}

// LeastBatches is how many batches there are however large the grate is. It is known
// before anything is simulated, so that a menu beyond all bounds costs nothing.
func (d *Arranger) LeastBatches() int {
	n := 0
	for _, it := range d.Items {
		n += len(it.Lots)
	}
	return n
}

// Batches splits the dishes by the room on the grate and simulates their ways.
func (d *Arranger) Batches(ctx context.Context, h Hearth, c Cutting) ([]*Batch, error) {
	var all []*Batch
	group := 0
	for i := range d.Items {
		it := &d.Items[i]
		number := 0
		for _, l := range it.Lots {
			ways, err := d.waysOf(ctx, it, l, h)
			if err != nil {
				return nil, err
			}
			sizes := c.part(l.Count, d.roomFor(it, l, ways, h, c))
			group++
			for _, n := range sizes {
				number++
				b := &Batch{It: it, Number: number, MassKg: l.MassKg, Count: n, Ways: ways}
				if len(sizes) > 1 && n == sizes[len(sizes)-1] {
					b.group = group
				}
				d.reserve(b)
				levelCosts(b)
				all = append(all, b)
			}
		}
	}
	return all, nil
}

// Cutting says how a dish is parted into batches.
type Cutting int

// The ways: as few as the roomiest place allows, alike; alike such that each fits every
// place with the usual heat; or such that each fits every place that it may cook in, as
// large as it may be but for the last.
const (
	Roomiest Cutting = iota
	usual
	filled
)

// by says whether a way counts, of which the first is the usual one.
func (c Cutting) by(w, first day.Way) bool {
	return c != usual || w.Direct == first.Direct && w.Band == first.Band
}

// fit chooses between the pieces that two places take.
func (c Cutting) fit(a, b int) int {
	if c == Roomiest {
		return max(a, b)
	}
	return min(a, b)
}

func (c Cutting) part(n, most int) []int {
	if c != filled {
		return Split(n, most)
	}
	sizes := slices.Repeat([]int{most}, n/most)
	if n%most > 0 {
		sizes = append(sizes, n%most)
	}
	return sizes
}

func sameSizes(a, b []*Batch) bool {
	return slices.EqualFunc(a, b, func(a, b *Batch) bool { return a.Count == b.Count })
}

// roomFor is how many pieces of a lot fit at once in the place that the cutting
// chooses of all that it may cook in; at least 1, so that a piece too large for the grate
// is found by the solver and said, not dropped.
func (d *Arranger) roomFor(it *day.Item, l day.Lot, ways []day.Way, h Hearth, c Cutting) int {
	best := 0
	load := loadOf(it, l.MassKg, 1)
	for _, w := range ways {
		if !c.by(w, ways[0]) {
			continue
		}
		sears := h.mostSeared(it, w, load)
		for _, p := range d.placesFor(h, it, w) {
			if n := min(h.fits(p, load), sears); n > 0 {
				if best == 0 {
					best = n
				}
				best = c.fit(best, n)
			}
		}
	}
	return max(best, 1)
}

// mostSeared is how many pieces the coals of a sear take at once; any number without one.
func (h Hearth) mostSeared(it *day.Item, w day.Way, l Load) int {
	if !w.Sear {
		return math.MaxInt
	}
	hot := w
	hot.Direct, hot.Band = true, day.SearBand(it)
	most := 1
	for _, p := range h.PlacesOf(hot) {
		most = max(most, h.fits(p, l))
	}
	return most
}

// Split parts n pieces into as few even batches as hold most each, larger first.
func Split(n, most int) []int {
	count := (n + most - 1) / most
	sizes := make([]int, count)
	for i := range sizes {
		sizes[i] = n / count
		if i < n%count {
			sizes[i]++
		}
	}
	return sizes
}

// waysOf simulates all ways of a lot in the fires on offer.
func (d *Arranger) waysOf(ctx context.Context, it *day.Item, l day.Lot, h Hearth) ([]day.Way, error) {
	var ways []day.Way
	for rank, s := range it.Spots() {
		if err := ctx.Err(); err != nil { // a place takes milliseconds
			return nil, err
		}
		if len(d.placesFor(h, it, day.Way{Direct: s.Direct, Band: s.Band, LevelC: s.LevelC})) == 0 {
			continue // nobody cooks there: spare the simulation
		}
		here := d.Remembered(it, l, s)
		for i := range here {
			here[i].Rank = rank
		}
		ways = append(ways, here...)
	}
	return ways, nil
}

// Label names the batch for people, and says how many of the pieces it has; of unequal ones
// it says which they are.
func (b *Batch) Label(of int, u unit.System) string {
	name := b.It.Dish.Name
	if of > 1 {
		name = fmt.Sprintf("%s, batch %d", name, b.Number)
		switch {
		case len(b.It.Lots) > 1:
			name += " (" + pieces(u, b.Count, b.MassKg) + ")"
		case b.Count < b.It.Dish.Count:
			name += fmt.Sprintf(" (%d of %d)", b.Count, b.It.Dish.Count)
		}
	}
	return name
}

// pieces says how many like pieces there are, and how heavy each is.
func pieces(u unit.System, n int, kg float64) string {
	if n > 1 {
		return fmt.Sprintf("%d × %s", n, say.Mass(u, kg))
	}
	return say.Mass(u, kg)
}
