package schedule

import (
	"strings"
	"time"
)

// take checks the log and makes the day that it changed.
func (v *revision) take(log []Entry, now time.Time) error {
	faults := &faultList{}
	known := map[string]string{}
	for _, x := range v.base.req.Dishes {
		known[x.ID], known[strings.ToLower(x.Name)] = x.ID, x.ID
	}
	for i := range log {
		e := &log[i]
		path := itemPath("log", i)
		kind, ok := logKinds[e.Kind]
		if !ok {
			faults.addLine(path+".kind", e.Line, "%s is not known; there are %s", quoted(e.Kind), listed(kindNames(), "and"))
			continue
		}
		if e.Kind == LogDishAdded && e.Dish != "" {
			known[e.Dish] = e.Dish
		}
		if strings.EqualFold(e.Dish, "grill") {
			e.Dish = ""
		}
		if e.Dish != "" || kind.dish {
			id, ok := known[e.Dish]
			if !ok {
				id, ok = known[strings.ToLower(e.Dish)]
			}
			if !ok {
				faults.addLine(path+".dish", e.Line, "%s is no dish of this plan", quoted(e.Dish))
			}
			e.Dish = id
		}
		if e.At.After(now) {
			faults.addLine(path+".time", e.Line, "%s is after now, %s", instantIn(e.At, v.base.loc), instantIn(now, v.base.loc))
		}
		if e.C < coldestReadingC || e.C > hottestReadingC || e.C != e.C {
			faults.addLine(path+".temp_c", e.Line, "%v is no temperature of a cook day", e.C)
		}
		e.At = e.At.In(v.base.loc)
	}
	if err := faults.err(); err != nil {
		return err
	}
	v.log = joinLogs(nil, log)
	return v.amend()
}

func instantIn(t time.Time, loc *time.Location) string { return t.In(loc).Format("2006-01-02 15:04") }

// amend applies what the log says of the menu and of serving.
func (v *revision) amend() error {
	r := v.base.req
	r.Dishes = append([]Dish(nil), r.Dishes...)
	for i, e := range v.log {
		fault := func(sentence string) error {
			return &InputError{Faults: []Fault{{Path: itemPath("log", i) + ".value", Sentence: sentence}}}
		}
		switch e.Kind {
		case LogServingMoved:
			t, err := time.Parse(time.RFC3339, e.Value)
			if err != nil {
				return fault(quoted(e.Value) + " is no instant such as 2027-07-03T20:00:00-05:00")
			}
			moveServing(&r, e.Dish, clockOf(t.In(v.base.loc)))
			v.moved = true
		case LogDishAdded:
			dish, err := parseDish(e.Value)
			if err != nil {
				return fault(err.Error())
			}
			if e.Dish != "" {
				dish.ID = e.Dish
			}
			if !onMenu(r, dish.ID) {
				r.Dishes = append(r.Dishes, dish)
			}
		case LogDishCancelled:
			r.Dishes = withoutDish(r.Dishes, e.Dish)
		}
	}
	err := v.resolve(r)
	v.asking = v.day
	return err
}

func (v *revision) resolve(r Request) error {
	r = r.withDefaults()
	if faults := r.validateIn(v.base.loc); len(faults) > 0 {
		return &InputError{Faults: faults}
	}
	d, faults := resolveIn(r, v.base.loc)
	if len(faults) > 0 {
		return &InputError{Faults: faults}
	}
	d.effort = v.base.effort
	v.day = d
	return nil
}

func moveServing(r *Request, id string, to Clock) {
	if id == "" {
		r.Serve.Date, r.Serve.Time = *to.Date, to.Time
		return
	}
	for i := range r.Dishes {
		if r.Dishes[i].ID == id {
			r.Dishes[i].Serve = &to
		}
	}
}

func onMenu(r Request, id string) bool {
	for _, x := range r.Dishes {
		if x.ID == id && id != "" {
			return true
		}
	}
	return false
}

// withoutDish leaves the last dish in: a plan of nothing is none.
func withoutDish(all []Dish, id string) []Dish {
	var out []Dish
	for _, x := range all {
		if x.ID != id {
			out = append(out, x)
		}
	}
	if len(out) == 0 {
		return all
	}
	return out
}
