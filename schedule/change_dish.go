package schedule

import (
	"slices"
	"time"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/unit"
)

// dishChange is a change of one dish of the menu. Dishes are found by their id, so
// that the change means the same in a part of the menu.
type dishChange struct {
	r    Request
	i    int
	dish Dish
	cut  cut.Cut
	t    trouble
}

// dishChanges are what may be done about one dish of a clash.
func dishChanges(r Request, i int, t trouble) []change {
	c, ok := cut.Find(r.Dishes[i].Cut)
	if !ok {
		return nil
	}
	d := dishChange{r, i, r.Dishes[i], c, t}
	out := slices.Concat(d.heat(), d.wrap(), d.waits(), d.pieces(), d.times(), d.away())
	return out
}

// make is a change of fields of the dish; those are given as name and value, nil
// leaves a field out.
func (d dishChange) make(code, text, price string, pain int, set func(dish *Dish), fields ...any) change {
	c := change{code: code, text: text, price: price, of: d.dish.ID, pain: pain}
	for k := 0; k < len(fields); k += 2 {
		c.edits = append(c.edits, edit(itemPath("dishes", d.i)+"."+fields[k].(string), fields[k+1]))
	}
	id := d.dish.ID
	c.apply = func(r *Request) {
		for i := range r.Dishes {
			if r.Dishes[i].ID == id {
				set(&r.Dishes[i])
			}
		}
	}
	return c
}

// heat is a hotter grate, any other one, the other side of the grate, or no sear.
func (d dishChange) heat() []change {
	var out []change
	u := d.r.Units
	if l := d.dish.Level; l != nil {
		if hot := unit.FromFahrenheit(275); d.cut.Style == cut.Tough && *l < hot-1 {
			out = append(out, d.make("hotter", "Cook "+d.dish.Name+" at "+u.Grate(hot)+".", "a hotter grate, a firmer bark", 15,
				func(dish *Dish) { dish.Level = &hot }, "level", hot))
		}
		out = append(out, d.make("other-heat", "Let "+d.dish.Name+" cook at another heat than "+u.Grate(*l)+".", "not the heat you asked for", 16,
			func(dish *Dish) { dish.Level = nil }, "level", nil))
	}
	if d.dish.Zone != "" {
		out = append(out, d.make("other-side", "Let "+d.dish.Name+" cook on either side of the grate.", "not the side you asked for", 13,
			func(dish *Dish) { dish.Zone = "" }, "zone", nil))
	}
	if d.dish.Finish != "" {
		out = append(out, d.make("no-sear", "Leave the sear of "+d.dish.Name+" out, or do it in a hot pan.", "no crust from the coals", 19,
			func(dish *Dish) { dish.Finish = "" }, "finish", nil))
	}
	if flat, ok := cut.Find(d.cut.Name + "-spatchcock"); ok && d.cut.Style == cut.Bird {
		out = append(out, d.make("flatten", "Take the backbone out of "+d.dish.Name+" and cook flat.", "no whole bird on the table", 21,
			func(dish *Dish) { dish.Cut = flat.Name }, "cut", flat.Name))
	}
	return out
}

// wrapEarlyF is from where a wrap saves the most time without drowning the bark
// (common practice, no source).
const wrapEarlyF = 150

// wrap is a wrap where none was wanted, or an earlier one.
func (d dishChange) wrap() []change {
	w, from := d.dish.Wrap, unit.FromFahrenheit(wrapEarlyF)
	if d.cut.Style != cut.Tough || !d.cut.WrapAllowed || w == nil || w.From != nil && *w.From <= from && w.With == WrapFoil {
		return nil
	}
	early := Wrap{With: WrapFoil, From: &from}
	return []change{d.make("wrap", "Wrap "+d.dish.Name+" in foil from "+d.r.Units.Core(from)+".", "a softer bark", 12,
		func(dish *Dish) { dish.Wrap = &early }, "wrap", early)}
}

// waits are any way of holding, and a shorter rest.
func (d dishChange) waits() []change {
	var out []change
	if len(d.dish.Hold) > 0 && d.t.over(ruleHold) {
		out = append(out, holdChange(d.r, d.dish))
	}
	if rest := d.dish.Rest; rest != nil && unitMinutes(*rest) > d.cut.Rest.MinMinutes {
		out = append(out, d.make("shorter-rest", "Rest "+d.dish.Name+" "+d.r.Units.About(minutes(d.cut.Rest.MinMinutes))+" at the least.", "a shorter rest than you asked for", 14,
			func(dish *Dish) { dish.Rest = nil }, "rest", nil))
	}
	return out
}

// holdChange allows any way of holding that suits a dish.
func holdChange(r Request, dish Dish) change {
	i := slices.IndexFunc(r.Dishes, func(o Dish) bool { return o.ID == dish.ID })
	d := dishChange{r: r, i: i, dish: dish}
	where := "in a box with towels"
	if r.Oven != nil {
		where += " or in the oven"
	}
	return d.make("hold", "Hold "+dish.Name+" "+where+".", "it waits longer, hot", 11, func(dish *Dish) { dish.Hold = nil }, "hold", nil)
}

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

// times are the day before, a serving of its own, and several sittings.
func (d dishChange) times() []change {
	var out []change
	quick := d.cut.Style == cut.Small || d.cut.Style == cut.Timed
	if !quick && d.dish.Ready == "" {
		out = append(out, d.make("day-before", "Cook "+d.dish.Name+" the day before, chill it, and warm it for the table.", "a day earlier; warmed food, a softer bark", d.aheadPain(),
			func(dish *Dish) { dish.Ready = readyDayBefore }, "ready", readyDayBefore))
	}
	if d.dish.Ready != "" {
		return out
	}
	if d.cut.Style != cut.Tough && d.dish.Count > 1 && d.t.over(ruleRoom, ruleHands) {
		out = append(out, d.sittings()...)
	}
	if len(d.r.Dishes) > 1 && (len(d.t.dishes) > 1 || d.t.over(ruleQuiet, ruleEarliest)) {
		out = append(out, d.courses()...)
	}
	return out
}

// aheadPain is less for what is as good warmed: cuts that are cooked until tender.
func (d dishChange) aheadPain() int {
	if d.cut.Style == cut.Tough {
		return 40
	}
	return 62
}

// courseMinutes are how long before or after the others a dish may be served.
var courseMinutes = []int{30, 60, 120}

// courses serve the dish before or after the others.
func (d dishChange) courses() []change {
	var out []change
	for k, m := range courseMinutes {
		by := time.Duration(m) * time.Minute
		for _, way := range []struct {
			by   time.Duration
			word string
		}{{by, " later"}, {-by, " earlier"}} {
			at := moved(d.r, &d.dish, way.by)
			out = append(out, d.make("course", "Serve "+d.dish.Name+" at "+at.Time.HhMm()+".", d.r.Units.About(by)+way.word+" than the rest", 22+6*k,
				func(dish *Dish) { dish.Serve = &at }, "serve", at))
		}
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

// Changes that nearly always help, and ask the most.
const (
	codeElsewhere = "elsewhere"
	codeFewer     = "fewer"
)

// away cooks a dish somewhere else. What goes by the clock is as good from the
// kitchen oven; of other dishes it is said last.
func (d dishChange) away() []change {
	if len(d.r.Dishes) < 2 {
		return nil
	}
	text, price, pain := "Cook "+d.dish.Name+" on another grill, in the kitchen, or not at all.", "one dish fewer on the grate", 70
	if d.cut.Style == cut.Timed && d.r.Oven != nil {
		text, price, pain = "Cook "+d.dish.Name+" in the kitchen oven.", "no smoke, and the oven is taken", 24
	}
	id := d.dish.ID
	return []change{{
		code: codeElsewhere, text: text, price: price, of: id, pain: pain, edits: []Edit{edit(itemPath("dishes", d.i), nil)},
		apply: func(r *Request) {
			*r = only(*r, func(o string) bool { return o != id })
		},
	}}
}
