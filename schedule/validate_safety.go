package schedule

import (
	"fmt"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/unit"
)

// judge refuses a target that is never planned. Those that are planned with a
// caution get it from the planner.
func (v *validator) judge(path string, dish Dish, c cut.Cut) {
	frail := v.r.Guests != nil && v.r.Guests.Frail
	verdict := safety.JudgeTarget(safety.Category(c.Food), safety.PrepOf(dish.Prep), coreTarget(dish.Target, c), frail)
	if verdict.Kind != safety.Refused {
		return
	}
	remedy := ""
	if verdict.Minimum.Applies() {
		remedy = fmt.Sprintf(" Set a target of %s or more.", v.units.Core(unit.Temperature(verdict.Minimum.CoreC)))
	}
	usual := ""
	if d, ok := c.DefaultDoneness(); dish.Target == nil && ok {
		usual = fmt.Sprintf("No target is given, so %s holds. ", d.Name)
	}
	v.faults.Add(path, "%s%s%s", usual, verdict.Sentence, remedy)
}
