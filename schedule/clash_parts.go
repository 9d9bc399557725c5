package schedule

import "slices"

// lift is the request without a rule that a cook can let go of; false if it does
// not have it.
func lift(r Request, rule string) (Request, bool) {
	r = copyRequest(r)
	switch rule {
	case ruleQuiet:
		had := len(r.Quiet) > 0
		r.Quiet = nil
		return r, had
	case ruleEarliest:
		had := hasEarliest(r)
		r.Earliest = nil
		for i := range r.Dishes {
			r.Dishes[i].Earliest = nil
		}
		return r, had
	}
	return r, false
}

// liftAll is the request without some rules.
func liftAll(r Request, rules []string) Request {
	for _, rule := range rules {
		r, _ = lift(r, rule)
	}
	return r
}

// only is the request with some of its dishes.
func only(r Request, has func(id string) bool) Request {
	var dishes []Dish
	for _, dish := range r.Dishes {
		if has(dish.ID) {
			dishes = append(dishes, dish)
		}
	}
	r.Dishes = dishes
	return r
}

func keep(r Request, ids []string) Request {
	return only(r, func(id string) bool { return slices.Contains(ids, id) })
}

func idsOf(r Request) []string {
	var ids []string
	for _, dish := range r.Dishes {
		ids = append(ids, dish.ID)
	}
	return ids
}

// copyRequest shares nothing that a change writes to.
func copyRequest(r Request) Request {
	r.Dishes = slices.Clone(r.Dishes)
	r.Quiet = slices.Clone(r.Quiet)
	return r
}
