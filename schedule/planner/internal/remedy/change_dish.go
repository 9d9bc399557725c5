package remedy

import (
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/planner/internal/assemble"
)

// dishChange is a change of one dish of the menu.
type dishChange struct {
	r    schedule.Request
	i    int
	dish schedule.Dish
	cut  cut.Cut
	t    assemble.Trouble
}

// dishChanges are what may be done about one dish of a clash.
func dishChanges(r schedule.Request, i int, t assemble.Trouble) []change {
	c, ok := cut.Find(r.Dishes[i].Cut)
	if !ok {
		return nil
	}
	d := dishChange{r, i, r.Dishes[i], c, t}
	out := slices.Concat(d.thawed(), d.heat(), d.wrap(), d.waits(), d.lies(), d.pieces(), d.times(), d.away())
	return out
}

// make is a change of fields of the dish; those are given as name and value, nil
// leaves a field out.
func (d dishChange) make(code, text, price string, pain int, fields ...any) change {
	c := change{code: code, text: text, price: price, of: d.dish.ID, name: d.dish.Name, pain: pain}
	for k := 0; k < len(fields); k += 2 {
		c.edits = append(c.edits, schedule.NewEdit(strict.ItemPath("dishes", d.i)+"."+fields[k].(string), fields[k+1]))
	}
	return c
}

// thawed buys it so, or thaws it before the day: the plan has no time for it.
func (d dishChange) thawed() []change {
	if d.dish.Start == nil || !d.dish.Start.Frozen {
		return nil
	}
	return []change{d.make("thawed", "Buy {dish} thawed, or thaw it in the refrigerator before then.", "no time to wait for it", 5, "start", nil)}
}

// Changes that nearly always help, and ask the most.
const (
	codeElsewhere = "elsewhere"
	codeFewer     = "fewer"
)

// Changes that serve a dish in parts: after its time, or up to it.
const (
	codeSittings  = "sittings"
	codePartAhead = "part-ahead" // some of it the day before
	codeStarters  = "starters"
)

// away cooks a dish somewhere else, which is said last. What goes by the clock is as
// good from the kitchen oven, where nothing can be held meanwhile.
func (d dishChange) away() []change {
	if len(d.r.Dishes) < 2 {
		return nil
	}
	gone := change{
		code: codeElsewhere, text: "Move {dish} to another grill or the kitchen, or off the menu.", price: "{dishes} fewer on the grate",
		of: d.dish.ID, name: d.dish.Name, pain: 70, edits: []schedule.Edit{schedule.NewEdit(strict.ItemPath("dishes", d.i), nil)},
	}
	if d.cut.Style != cut.Timed || d.r.Oven == nil {
		return []change{gone}
	}
	baked := gone
	baked.text, baked.price, baked.pain, baked.bakes = "Cook {dish} in the kitchen oven.", "no smoke, and nothing waits in the oven", 24, true
	baked.edits = append([]schedule.Edit{schedule.NewEdit("oven", nil)}, gone.edits...)
	return []change{baked, gone}
}
