package plans

import (
	"slices"

	"example.com/cookday/schedule"
)

// cookedAhead says whether a request has dishes that are ready the day before.
func CookedAhead(r schedule.Request) bool {
	return slices.ContainsFunc(r.Dishes, func(d schedule.Dish) bool { return d.Ready == schedule.ReadyDayBefore })
}
