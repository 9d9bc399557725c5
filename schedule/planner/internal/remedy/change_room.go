package remedy

import (
	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/planner/internal/arrange"
)

// roomChanges make room on the grate that there is.
func roomChanges(r schedule.Request) []change {
	if r.Grill.Raised || r.Grill.Kind != schedule.GrillKettle && r.Grill.Kind != schedule.GrillBox {
		return nil
	}
	grill := r.Grill
	grill.Raised = true
	return []change{{
		code: "raised", text: "Use a raised grate over the side away from the coals.", price: "a second grate to stand there; it runs hotter", pain: 9,
		edits: []schedule.Edit{schedule.NewEdit("grill", grill)},
	}}
}

// lies are ways to lay racks of ribs closer, and their halves.
func (d dishChange) lies() []change {
	if !d.cut.Ribs() || !d.t.Over(arrange.RuleRoom) {
		return nil
	}
	var out []change
	if d.dish.Lies != schedule.LiesStanding {
		out = append(out, d.make("stand", "Stand {dish} in an upright rack.", "an upright rack to stand them in", 7, "lies", schedule.LiesStanding))
	}
	if d.dish.Lies == schedule.LiesFlat {
		out = append(out, d.make("halve", "Cut {dish} in half.", "no whole racks on the table", 6, "lies", schedule.LiesHalved))
	}
	if d.dish.Lies != schedule.LiesRolled && !d.cut.TooStiffToRoll() {
		out = append(out, d.make("roll", "Roll {dish} up on skewers.", "a skewer for each, and less bark inside", 12, "lies", schedule.LiesRolled))
	}
	return out
}

// partAhead cooks some of the pieces the day before: a load of the grate more than the
// day has. Only what is as good warmed, and is cooked until tender.
func (d dishChange) partAhead() []change {
	n := d.dish.Count
	if d.cut.Style != cut.Tough || n < 2 || d.dish.Ready != "" || !d.t.Over(arrange.RuleRoom) {
		return nil
	}
	before := n / 2
	part := d.dish
	part.ID, part.Name = d.sittingID(2), d.dish.Name+", cooked before"
	part.Count, part.Ready = before, schedule.ReadyDayBefore
	c := d.make(codePartAhead, "Cook "+counted(before)+" of the "+counted(n)+" {dish} the day before, chill, and warm for the table.",
		"a day earlier; "+d.aheadPrice(), d.aheadPain()-1, "count", n-before)
	c.edits = append(c.edits, schedule.NewEdit(strict.ItemPath("dishes", len(d.r.Dishes)), part))
	return []change{c}
}
