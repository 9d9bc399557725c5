package plans

import (
	"slices"

	"example.com/cookday/schedule"
)

// only is the request with some of its dishes.
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

// copyRequest shares nothing that a change writes to.
func CopyRequest(r schedule.Request) schedule.Request {
	r.Dishes = slices.Clone(r.Dishes)
	r.Quiet = slices.Clone(r.Quiet)
	return r
}
