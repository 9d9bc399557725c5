package schedule

import (
	"time"

	"example.com/cookday/schedule/cut"
)

// pieces are smaller ones, or fewer.
func (d dishChange) pieces() []change {
	var out []change
	u := d.r.Units
	large := d.cut.Style == cut.Tough || d.cut.Style == cut.Roast
	if n := d.dish.Count; large && d.dish.Weight > 0 && n > 0 {
		half, count := d.dish.Weight/2, n*2
		out = append(out, d.make("smaller", "Cut "+d.dish.Name+" into pieces of "+u.Mass(half)+".", "smaller pieces, more bark", 25,
			func(dish *Dish) { dish.Weight, dish.Count = half, count }, "weight", half, "count", count))
	}
	if d.dish.Count < 2 || !d.t.over(ruleRoom, ruleHold, ruleHands) {
		return out
	}
	last := d.dish.Count
	for k, share := range []int{4, 3, 2, 1} { // fifths of the pieces that stay
		n := max(d.dish.Count*share/5, 1)
		if n == last {
			continue
		}
		last = n
		out = append(out, d.make(codeFewer, "Cook "+counted(n)+" "+d.dish.Name+" instead of "+counted(d.dish.Count)+".", "less to eat", 52+2*k,
			func(dish *Dish) { dish.Count = n }, "count", n))
	}
	return out
}

// sittings serve a dish in parts, one after another.
func (d dishChange) sittings() []change {
	var out []change
	for k, s := range d.sittingSizes() {
		if s.parts <= d.dish.Count {
			out = append(out, d.sitting(s.parts, s.apart, 20+4*k))
		}
	}
	return out
}

// sittingSizes are how many sittings, and how many minutes apart. Pieces that cook
// for an hour or more are as long apart.
func (d dishChange) sittingSizes() []struct{ parts, apart int } {
	type size = struct{ parts, apart int }
	if d.cut.Style == cut.Small {
		return []size{{2, 30}, {3, 30}, {2, 60}, {3, 60}, {4, 30}}
	}
	return []size{{2, 60}, {2, 120}, {3, 60}, {2, 180}}
}

func (d dishChange) sitting(parts, apart, pain int) change {
	sizes := split(d.dish.Count, (d.dish.Count+parts-1)/parts)
	by := time.Duration(apart) * time.Minute
	words := []string{"now"}
	var more []Dish
	for k := 1; k < len(sizes); k++ {
		at := moved(d.r, &d.dish, time.Duration(k)*by)
		part := d.dish
		part.ID, part.Name = d.dish.ID+"-"+counted(k+1), d.dish.Name+", sitting "+counted(k+1)
		part.Count, part.Serve = sizes[k], &at
		more = append(more, part)
		words = append(words, "at "+at.Time.HhMm())
	}
	c := d.make("sittings", "Serve "+d.dish.Name+" in "+numberWord(len(sizes))+" sittings, "+shares(sizes, words)+".",
		"some eat "+d.r.Units.About(time.Duration(len(sizes)-1)*by)+" later", pain, func(dish *Dish) { dish.Count = sizes[0] }, "count", sizes[0])
	for k, part := range more {
		c.edits = append(c.edits, edit(itemPath("dishes", len(d.r.Dishes)+k), part))
	}
	first := c.apply
	c.apply = func(r *Request) {
		first(r)
		r.Dishes = append(r.Dishes, more...)
	}
	return c
}
