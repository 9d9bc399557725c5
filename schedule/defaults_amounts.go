package schedule

import (
	"math"
	"slices"
	"strings"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// Words for what a dish leaves out and the catalogue knows.
const (
	AssumedWeight = "weight" // the usual weight of a piece
	AssumedCount  = "count"  // pieces enough for the guests
	AssumedLarger = "larger" // of a range, such as 3-4 lb, its larger end
)

// fillAmounts gives every dish its pieces. A weight alone is of one piece. A count alone
// is of pieces of the usual weight. With neither the guests are fed: as [Amounts] has it,
// all meats of the menu share them evenly, and every side is for all. It writes to dishes
// that are r's own. What the cook said decides what is usual: a spear of asparagus is
// lighter than a piece of vegetable.
func (r *Request) fillAmounts(said []string) {
	for i := range r.Dishes {
		dish := &r.Dishes[i]
		if len(dish.Weights) > 0 {
			continue
		}
		c, ok := cut.Find(dish.Cut)
		if ok && dish.Count == 0 && dish.Weight == 0 {
			r.feed(dish, said[i])
		}
		counted := dish.Count > 0
		fill(&dish.Count, defaultCount)
		if !ok || dish.Weight != 0 {
			continue
		}
		switch {
		case c.Style == cut.Timed || c.Style == cut.Small && dish.Thickness > 0: // its weight hardly matters
			dish.Weight = unit.Mass(c.UsualKg(said[i]))
		case counted:
			dish.Weight = unit.Mass(c.UsualKg(said[i]))
			dish.assume(AssumedWeight)
		}
	}
}

// feed gives a dish as many pieces as its share of the guests wants.
func (r *Request) feed(dish *Dish, said string) {
	if r.Guests == nil || r.Guests.Eaters() <= 0 {
		return
	}
	var cuts []string
	at := 0
	for i := range r.Dishes {
		if _, ok := cut.Find(r.Dishes[i].Cut); !ok {
			continue // a fault of its own
		}
		if &r.Dishes[i] == dish {
			at = len(cuts)
		}
		cuts = append(cuts, r.Dishes[i].Cut)
	}
	all, err := Amounts(*r.Guests, cuts)
	if err != nil || all[at].Count > maxPieces {
		return
	}
	count, kg := all[at].Count, all[at].PieceKg
	if c, _ := cut.Find(dish.Cut); c.UsualKg(said) != c.Typical {
		count, kg = int(math.Ceil(float64(count)*kg/c.UsualKg(said))), c.UsualKg(said)
	}
	dish.Count, dish.Weight = min(count, maxPieces), unit.Mass(kg)
	dish.assume(AssumedCount)
	dish.assume(AssumedWeight)
}

func (d *Dish) assume(what string) {
	if !slices.Contains(d.Assumed, what) {
		d.Assumed = append(slices.Clone(d.Assumed), what)
	}
}

// Assumes says whether a part of a dish was left out and is of the catalogue.
func (d Dish) Assumes(what string) bool { return slices.Contains(d.Assumed, what) }

// said takes back that what an edit sets was assumed.
func (r *Request) said(path string) {
	for i := range r.Dishes {
		field, ok := strings.CutPrefix(path, strict.ItemPath("dishes", i)+".")
		if !ok {
			continue
		}
		r.Dishes[i].Assumed = slices.DeleteFunc(slices.Clone(r.Dishes[i].Assumed), func(what string) bool {
			return what == field || field == "weights" || field == "cut"
		})
	}
}
