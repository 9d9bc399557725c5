package schedule

import (
	"fmt"
	"slices"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/unit"
)

// judge refuses a target that is never planned. Those that are planned with a
// caution get it from the planner.
func (v *validator) judge(path string, dish Dish, c cut.Cut) {
	frail := v.r.Guests != nil && v.r.Guests.Frail
	verdict := safety.JudgeTarget(safety.Category(c.Food), safety.PrepOf(slices.Concat(dish.Prep, c.Prep)), coreTarget(dish.Target, c), frail)
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

// stuffedLeastC is the coolest level for stuffed meat: 325 F, as ovens for raw poultry and
// stuffed meat are told to be set.
var stuffedLeastC = unit.FToC(325)

// stuffing refuses stuffed birds, whose middle is the last to be done, and stuffed meat
// on a cool grate.
func (v *validator) stuffing(path string, dish Dish, c cut.Cut) {
	if !slices.Contains(dish.Prep, "stuffed") {
		return
	}
	switch {
	case c.Poultry:
		v.faults.Add(path+".prep", "a stuffed bird is not cooked on a grill: its stuffing is done last of all; bake the stuffing apart and leave stuffed out")
	case dish.Level != nil && float64(*dish.Level) < stuffedLeastC-0.5:
		v.faults.AddValue(path+".level", v.units.Grate(*dish.Level), "is too cool for stuffed meat; it must be %s or more", v.units.Grate(unit.Temperature(stuffedLeastC)))
	case slices.Contains(dish.Hold, HoldBox):
		v.faults.Add(path+".hold", "stuffed meat is not held in a box, where its middle cools unseen; write oven, or leave hold out")
	case dish.Travel != nil:
		v.faults.Add(path+".travel", "stuffed meat does not travel hot: its middle cools unseen in a box; leave travel out")
	}
}
