package plans

import (
	"slices"

	"example.com/cookday/schedule"
)

// CookedAhead says whether a request has dishes that are ready the day before.
func CookedAhead(r schedule.Request) bool {
	return slices.ContainsFunc(r.Dishes, func(d schedule.Dish) bool { return d.Ready == schedule.ReadyDayBefore })
}

// Only is the request with some of its dishes.
func Only(r schedule.Request, has func(id string) bool) schedule.Request {
	var dishes []schedule.Dish
	for _, dish := range r.Dishes {
		if has(dish.ID) {
			dishes = append(dishes, dish)
		}
	}
	r.Dishes = dishes
	return r
}

func Keep(r schedule.Request, ids []string) schedule.Request {
	return Only(r, func(id string) bool { return slices.Contains(ids, id) })
}

func IDsOf(r schedule.Request) []string {
	var ids []string
	for _, dish := range r.Dishes {
		ids = append(ids, dish.ID)
	}
	return ids
}

// CopyRequest shares nothing that a change writes to.
func CopyRequest(r schedule.Request) schedule.Request {
	r.Dishes = slices.Clone(r.Dishes)
	r.Quiet = slices.Clone(r.Quiet)
	return r
}

func OnMenu(r schedule.Request, id string) bool {
	for _, x := range r.Dishes {
		if x.ID == id && id != "" {
			return true
		}
	}
	return false
}
