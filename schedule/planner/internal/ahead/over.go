package ahead

import (
	"fmt"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/planner/internal/day"
)

// overTheCoals asks for the coals for each dish that lies over them only where that is asked
// for; false where there is none.
func overTheCoals(r schedule.Request) (schedule.Request, bool) {
	r.Dishes = slices.Clone(r.Dishes)
	any := false
	for i, dish := range r.Dishes {
		if dish.Zone == "" && dish.Level == nil && burnsOver(dish) {
			r.Dishes[i].Zone, any = schedule.ZoneDirect, true
		}
	}
	return r, any
}

// burnsOver says of a dish that it burns over the coals before it is done, left to itself.
func burnsOver(dish schedule.Dish) bool {
	c, ok := cut.Find(dish.Cut)
	return ok && slices.ContainsFunc(c.Places, func(p cut.Place) bool { return p.Direct && p.Asked })
}

// burningFindings say how what lies over the coals and would burn there is tended.
func burningFindings(r schedule.Request) []schedule.Finding {
	var out []schedule.Finding
	for i, dish := range r.Dishes {
		if dish.Zone != schedule.ZoneDirect || !burnsOver(dish) {
			continue
		}
		f := day.Finding("burns-over", fmt.Sprintf("dishes[%d].zone", i), nil, fmt.Sprintf(
			"%s: over the coals, to make room. The skin browns before the middle is done: turn every few minutes, and move dark pieces to the edge, lid on.", dish.Name))
		f.Dishes = []string{dish.ID}
		out = append(out, f)
	}
	return out
}
