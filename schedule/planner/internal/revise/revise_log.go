package revise

import (
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	saypkg "example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	daypkg "example.com/cookday/schedule/planner/internal/day"
)

// take checks the log and makes the day that it changed.
func (v *revision) take(log []schedule.Entry, now time.Time) error {
	faults := &strict.FaultList{}
	known := map[string]string{}
	for _, x := range v.base.Req.Dishes {
		known[x.ID], known[strings.ToLower(x.Name)] = x.ID, x.ID
	}
	for i := range log {
		e := &log[i]
		path := strict.ItemPath("log", i)
		kind, ok := schedule.LogKinds[e.Kind]
		if !ok {
			faults.AddLine(path+".kind", e.Line, "%s is not known; there are %s", saypkg.Quoted(e.Kind), saypkg.Listed(schedule.KindNames(), "and"))
			continue
		}
		if e.Kind == schedule.LogDishAdded && e.Dish != "" {
			known[e.Dish] = e.Dish
		}
		if strings.EqualFold(e.Dish, "grill") {
			e.Dish = ""
		}
		if e.Dish != "" || kind.Dish {
			id, ok := known[e.Dish]
			if !ok {
				id, ok = known[strings.ToLower(e.Dish)]
			}
			if !ok {
				faults.AddLine(path+".dish", e.Line, "%s is no dish of this plan", saypkg.Quoted(e.Dish))
			}
			e.Dish = id
		}
		if e.At.After(now) {
			faults.AddLine(path+".time", e.Line, "%s is after now, %s", instantIn(e.At, v.base.Loc), instantIn(now, v.base.Loc))
		}
		if e.C < schedule.ColdestReadingC || e.C > schedule.HottestReadingC || e.C != e.C {
			faults.AddLine(path+".temp_c", e.Line, "%v is no temperature of a cook day", e.C)
		}
		e.At = e.At.In(v.base.Loc)
	}
	if err := faults.Err(); err != nil {
		return err
	}
	v.log = schedule.JoinLogs(nil, log)
	return v.amend()
}

func instantIn(t time.Time, loc *time.Location) string { return t.In(loc).Format("2006-01-02 15:04") }

// amend applies what the log says of the menu and of serving.
func (v *revision) amend() error {
	r := v.base.Req
	r.Dishes = append([]schedule.Dish(nil), r.Dishes...)
	for i, e := range v.log {
		fault := func(sentence string) error {
			return &strict.InputError{Faults: []strict.Fault{{Path: strict.ItemPath("log", i) + ".value", Sentence: sentence}}}
		}
		switch e.Kind {
		case schedule.LogServingMoved:
			t, err := time.Parse(time.RFC3339, e.Value)
			if err != nil {
				return fault(saypkg.Quoted(e.Value) + " is no instant such as 2027-07-03T20:00:00-05:00")
			}
			moveServing(&r, e.Dish, daypkg.ClockOf(t.In(v.base.Loc)))
			v.moved = true
		case schedule.LogDishAdded:
			dish, err := schedule.ParseDish(e.Value)
			if err != nil {
				return fault(err.Error())
			}
			if e.Dish != "" {
				dish.ID = e.Dish
			}
			if !plans.OnMenu(r, dish.ID) {
				r.Dishes = append(r.Dishes, dish)
			}
		case schedule.LogDishCancelled:
			r.Dishes = withoutDish(r.Dishes, e.Dish)
		}
	}
	err := v.resolve(r)
	v.asking = v.day
	return err
}

func (v *revision) resolve(r schedule.Request) error {
	r = r.WithDefaults()
	if faults := r.ValidateIn(v.base.Loc); len(faults) > 0 {
		return &strict.InputError{Faults: faults}
	}
	d, faults := daypkg.ResolveIn(r, v.base.Loc)
	if len(faults) > 0 {
		return &strict.InputError{Faults: faults}
	}
	d.Effort = v.base.Effort
	v.day = d
	return nil
}

func moveServing(r *schedule.Request, id string, to schedule.Clock) {
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

// withoutDish leaves the last dish in: a plan of nothing is none.
func withoutDish(all []schedule.Dish, id string) []schedule.Dish {
	var out []schedule.Dish
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
