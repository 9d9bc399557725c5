package remedy

import (
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/unit"
)

// pieces are smaller ones, or fewer.
func (d dishChange) pieces() []change {
	var out []change
	u := d.r.Units
	large := d.cut.Style == cut.Tough || d.cut.Style == cut.Roast
	if n := d.dish.Count; large && d.dish.Weight > 0 && n > 0 {
		half, count := d.dish.Weight/2, n*2
		out = append(out, d.make("smaller", "Cut {dish} into pieces of "+u.Mass(half)+".", "smaller pieces, more bark", 25, "weight", half, "count", count))
	}
	out = append(out, d.smaller()...)
	out = append(out, d.lighter()...)
	if d.dish.Count < 2 || !d.t.Over(arrange.RuleRoom, arrange.RuleHold, arrange.RuleHands) {
		return out
	}
	last := d.dish.Count
	for k, share := range []int{16, 12, 8, 5, 2} { // twentieths of the pieces that stay
		n := max(d.dish.Count*share/20, 1)
		if n == last {
			continue
		}
		last = n
		out = append(out, d.make(codeFewer, "Cook "+counted(n)+" of the "+counted(d.dish.Count)+" {dish}.", "less to eat", 52+2*k, "count", n))
	}
	return out
}

// smaller are two birds for a large one, which are done in less time and lie more
// easily; and for one piece, one of less weight.
func (d dishChange) smaller() []change {
	w, n, u := d.dish.Weight, d.dish.Count, d.r.Units
	fits := func(w unit.Mass) bool { return float64(w) >= d.cut.MinPieceKg }
	if n != 1 || w == 0 || !d.t.Over(arrange.RuleRoom, arrange.RuleEarliest, arrange.RuleQuiet) {
		return nil
	}
	var out []change
	if half := w / 2; d.cut.Style == cut.Bird && fits(half) {
		out = append(out, d.make("smaller", "Cook {dish} as two birds of "+u.Mass(half)+".", "two to carve instead of one", 23, "weight", half, "count", 2))
	}
	for k, share := range []float64{0.8, 0.6, 0.4} {
		if less := w * unit.Mass(share); d.cut.Style != cut.Small && fits(less) {
			out = append(out, d.make(codeFewer, "Cook {dish} of "+u.Mass(less)+" instead of "+u.Mass(w)+".", "less to eat", 52+2*k, "weight", less))
		}
	}
	return out
}

// lighter are as many pieces of a little less weight each, where they miss the room on
// the grate by little. Weights are those that a shop has: tenths of a pound, 50 g.
func (d dishChange) lighter() []change {
	w, u := d.dish.Weight, d.r.Units
	if w == 0 || d.dish.Count < 2 || d.cut.Style == cut.Small || !d.t.Over(arrange.RuleRoom) {
		return nil
	}
	step := unit.Mass(0.05)
	if u == unit.US {
		step = unit.FromPounds(0.1)
	}
	var out []change
	last := w
	for k, share := range []float64{0.975, 0.95, 0.92, 0.88, 0.8, 0.7} {
		less := step * unit.Mass(math.Floor(float64(w)*share/float64(step)+1e-9))
		if less >= last || float64(less) < d.cut.MinPieceKg {
			continue
		}
		last = less
		out = append(out, d.make("lighter", "{dish}: use "+u.Mass(less)+" each instead of "+u.Mass(w)+".", "a little less food", 19+k, "weight", less))
	}
	return out
}

// sittings serve a dish in parts, one after another: from its time on, or as a
// starter up to it.
func (d dishChange) sittings() []change {
	var out []change
	for k, s := range d.sittingSizes() {
		if s.parts <= d.dish.Count {
			out = append(out, d.sitting(codeSittings, s.parts, 0, s.apart, 20+4*k))
			out = append(out, d.sitting(codeStarters, s.parts, s.parts-1, s.apart, 21+4*k))
		}
	}
	return out
}

// sittingSizes are how many sittings, and how many minutes apart. Pieces that cook
// for an hour or more are as long apart.
func (d dishChange) sittingSizes() []struct{ parts, apart int } {
	type size = struct{ parts, apart int }
	if d.cut.Style == cut.Timed { // minutes each, and eaten as they come off
		turns := d.dish.Count
		if turns > mostTurns {
			turns = fewTurns
		}
		return []size{{turns, 15}, {2, 30}}
	}
	if d.cut.Style == cut.Small {
		return []size{{2, 30}, {3, 30}, {2, 60}, {3, 60}, {4, 30}}
	}
	return []size{{2, 60}, {2, 120}, {3, 60}, {2, 180}}
}

// mostTurns are the most pieces that are eaten as they come off, one at a time; of what has more
// pieces nobody comes to the table oftener than fewTurns (assumptions).
const (
	mostTurns = 6
	fewTurns  = 3
)

// sitting is the dish in so many parts, minutes apart, some of them before its time.
func (d dishChange) sitting(code string, parts, before, apart, pain int) change {
	sizes := arrange.Split(d.dish.Count, (d.dish.Count+parts-1)/parts)
	before = min(before, len(sizes)-1)
	by := time.Duration(apart) * time.Minute
	var words []string
	var more []schedule.Dish
	var first *schedule.Clock
	for k, n := range sizes {
		at := moved(d.r, &d.dish, time.Duration(k-before)*by)
		words = append(words, "at "+say.TimeOfDay(d.r.Units, at.Time))
		if k == 0 {
			first = &at
			continue
		}
		part := d.dish
		part.ID, part.Name = d.sittingID(k+1), d.dish.Name+", sitting "+counted(k+1)
		part.Count, part.Serve = n, &at
		more = append(more, part)
	}
	fields, when := []any{"count", sizes[0]}, " later"
	if before > 0 {
		fields, when = append(fields, "serve", *first), " earlier"
	}
	c := d.make(code, "Serve {dish} in "+numberWord(len(sizes))+" sittings, "+shares(sizes, words)+".",
		"some eat "+d.r.Units.About(time.Duration(len(sizes)-1)*by)+when, pain, fields...)
	for k, part := range more {
		c.edits = append(c.edits, schedule.NewEdit(strict.ItemPath("dishes", len(d.r.Dishes)+k), part))
	}
	return c
}

// sittingID is an id for a sitting of the dish that nothing on the menu has: with the
// number alone it may be that of a like dish.
func (d dishChange) sittingID(n int) string {
	id := d.dish.ID + "-sitting-" + counted(n)
	for slices.Contains(plans.IDsOf(d.r), id) {
		id += "b"
	}
	return id
}
