package revise

import (
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/planner/internal/ahead"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/day"
)

// take checks the log and makes the day that it changed.
func (v *Revision) take(log []schedule.Entry, now time.Time) error {
	log, err := schedule.CheckLog(log, v.base.Req.Dishes, now.In(v.base.Loc))
	if err != nil {
		return err
	}
	v.log = schedule.JoinLogs(nil, log)
	if v.loose {
		v.align()
	}
	v.planned = slices.Clone(v.first.Steps)
	if !v.loose {
		v.followMoves()
	}
	return v.amend() // who was at the table with what hangs on when it went on
}

// amend applies what the log says of the menu and of serving.
func (v *Revision) amend() error {
	r := v.base.Req
	if v.loose {
		r = v.asked.WithDefaults()
	}
	r.Dishes = append([]schedule.Dish(nil), r.Dishes...)
	var asked []schedule.Dish // as they were before something was served
	var served *schedule.Entry
	for i, e := range v.log {
		fault := func(sentence string) error {
			return &schedule.InputError{Faults: []schedule.Fault{{Path: strict.ItemPath("log", i) + ".value", Sentence: sentence}}}
		}
		switch e.Kind {
		case schedule.LogServingMoved:
			t, err := time.Parse(time.RFC3339, e.Value)
			if err != nil {
				return fault(say.Quoted(e.Value) + " is no instant such as 2027-07-03T20:00:00-05:00")
			}
			moveServing(&r, e.Dish, day.ClockOf(t.In(v.base.Loc)))
			v.moved = true
			if served != nil { // what was eaten is served at no other hour
				v.serveAt(&r, *served)
			}
		case schedule.LogServed:
			asked = slices.Clone(r.Dishes)
			served = &v.log[i]
			v.serveAt(&r, e)
		case schedule.LogRestarted:
			served = nil
			v.backOn(&r, asked, e.Dish)
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
		case schedule.LogToOven:
			if r.Oven == nil { // whoever carries a dish to one has one
				r.Oven = &schedule.Oven{}
			}
		case schedule.LogDishCancelled:
			r.Dishes = withoutDish(r.Dishes, e.Dish)
		}
	}
	err := v.resolve(r)
	v.asking = v.day
	return err
}

func (v *Revision) resolve(r schedule.Request) error {
	s, err := day.ExamineIn(r, v.base.Loc)
	if err != nil {
		return err
	}
	v.day, err = v.resolved(s, v.base.Effort)
	return err
}

// resolved is a day to be arranged and written, with the simulated cooks of the others.
func (v *Revision) resolved(s day.Sound, e arrange.Effort) (*assemble.Assembler, error) {
	d, err := day.Resolve(s, day.Options{Memo: v.memo, Chill: v.chills, Warms: ahead.Warms(v.asked, s.Loc)})
	if err != nil {
		return nil, err
	}
	return assemble.New(&arrange.Arranger{Day: ahead.Hours(d, v.night), Effort: e, Unheard: v.firstA.Unheard}), nil
}

// serveAt has what came to the table served at that hour; what still cooks keeps its own.
func (v *Revision) serveAt(r *schedule.Request, e schedule.Entry) {
	at := day.ClockOf(e.At.In(v.base.Loc))
	whole := e.Dish == ""
	for _, d := range r.Dishes {
		whole = whole && (d.Serve != nil || v.allAtTable(e, d.ID))
	}
	if whole {
		moveServing(r, "", at)
		return
	}
	for i := range r.Dishes {
		if d := &r.Dishes[i]; v.allAtTable(e, d.ID) && (e.Dish != "" || d.Serve == nil) {
			d.Serve = &at
		}
	}
}

// backOn gives a dish that was served, and is back on the fire, the hour that it had.
func (v *Revision) backOn(r *schedule.Request, asked []schedule.Dish, id string) {
	for i := range r.Dishes {
		for _, d := range asked {
			if r.Dishes[i].ID == id && d.ID == id {
				r.Dishes[i].Serve = d.Serve
			}
		}
	}
}

func moveServing(r *schedule.Request, id string, to schedule.Clock) {
	if id == "" {
		if r.Serve.Date != *to.Date {
			*r = r.Dated()
		}
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
