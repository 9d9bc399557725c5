package ahead

import (
	"context"
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/unit"
)

// TwoDays is a request as two.
type TwoDays struct {
	asked  schedule.Request // as it came, with its defaults
	before schedule.Request
	on     *schedule.Request // nil where nothing is on the grate that day
	dishes []schedule.Dish   // that are cooked ahead
	warmed []warmed
}

// Split parts a sound request. It is an *[schedule.InputError] where nothing may
// happen the day before.
func Split(ctx context.Context, r schedule.Request, loc *time.Location) (TwoDays, error) {
	s := TwoDays{asked: r}
	chill := day.ChillAt(r, loc)
	s.before, s.on = r, &schedule.Request{}
	*s.on = r
	s.before.Serve.Date, s.before.Serve.Time = *day.ClockOf(chill).Date, day.ClockOf(chill).Time
	if r.Name != "" {
		s.before.Name = r.Name + ", the day before"
	}
	s.before.Dishes, s.on.Dishes = nil, nil
	faults := s.earliest(loc, chill)
	for i, dish := range r.Dishes {
		if dish.Ready == "" {
			s.on.Dishes = append(s.on.Dishes, dish)
			continue
		}
		if err := ctx.Err(); err != nil { // chilling and warming are simulated
			return s, err
		}
		ahead, fs := aheadDish(r, i, loc, chill)
		faults = append(faults, fs...)
		s.before.Dishes = append(s.before.Dishes, ahead)
		s.dishes = append(s.dishes, dish)
		w := warm(r, dish)
		s.warmed = append(s.warmed, w)
		if r.Oven == nil {
			s.on.Dishes = append(s.on.Dishes, w.parcels(dish))
		}
	}
	s.leaveOven(loc)
	switch {
	case len(s.on.Dishes) == 0: // the plan of the day before is the one that is handed out
		s.on = nil
	case r.ID != "":
		s.before.ID = plans.PartID(r.ID, "before")
	}
	if len(faults) > 0 {
		return s, &schedule.InputError{Faults: faults}
	}
	return s, nil
}

// leaveOven keeps the oven for what is warmed in it: what is served about then waits
// another way, for an oven has one temperature at a time.
func (s *TwoDays) leaveOven(loc *time.Location) {
	for i := range s.on.Dishes {
		if dish := &s.on.Dishes[i]; warmsBy(s.asked, *dish, loc) {
			dish.Hold = withoutOven(dish.Hold)
		}
	}
}

// Warms says whether the oven of a request is wanted for what is warmed in it while
// another dish might cook there.
func Warms(r schedule.Request, loc *time.Location) bool {
	return slices.ContainsFunc(r.Dishes, func(d schedule.Dish) bool { return d.Ready == "" && warmsBy(r, d, loc) })
}

// warmsBy says whether something is warmed in the oven about when a dish is served.
func warmsBy(r schedule.Request, dish schedule.Dish, loc *time.Location) bool {
	return r.Oven != nil && slices.ContainsFunc(r.Dishes, func(w schedule.Dish) bool {
		return w.Ready != "" && day.ClockIn(r, dish.Serve, loc).Sub(day.ClockIn(r, w.Serve, loc)).Abs() < warmedWithin
	})
}

// warmedWithin is how near two servings are for the oven to be wanted by both (assumption:
// a warming takes an hour, and a hold some hours).
const warmedWithin = 4 * time.Hour

// withoutOven are the ways of waiting that are asked for, or all, but for the oven.
func withoutOven(asked []string) []string {
	if len(asked) == 0 {
		return []string{schedule.HoldCounter, schedule.HoldTent, schedule.HoldBox, schedule.HoldGrill}
	}
	left := slices.DeleteFunc(slices.Clone(asked), func(way string) bool { return way == schedule.HoldOven })
	if len(left) == 0 {
		return asked // nothing else was asked for
	}
	return left
}

// earliest gives the instant before which nothing begins its own date, so that it
// means the same on both days.
func (s *TwoDays) earliest(loc *time.Location, chill time.Time) []schedule.Fault {
	e := s.asked.Earliest
	if e == nil {
		return nil
	}
	at := day.ClockIn(s.asked, e, loc)
	if !at.Before(chill) {
		return []schedule.Fault{{Path: "earliest", Sentence: fmt.Sprintf(
			"nothing may begin before %s, so nothing can be cooked the day before; give earliest the date of that day", s.asked.Units.ClockOn(at))}}
	}
	c := day.ClockOf(at)
	s.before.Earliest = &c
	return nil
}

// aheadDish is a dish as it is cooked the day before.
func aheadDish(r schedule.Request, i int, loc *time.Location, chill time.Time) (schedule.Dish, []schedule.Fault) {
	dish := r.Dishes[i]
	path := strict.ItemPath("dishes", i)
	if c, ok := cut.Find(dish.Cut); ok && c.Quick() {
		return dish, []schedule.Fault{{Path: path + ".ready", Sentence: c.InText() + " cooks in minutes and is no better the next day; leave ready out"}}
	}
	dish.Ready, dish.Serve, dish.Travel, dish.Hold = "", nil, nil, []string{schedule.HoldNone}
	if e := dish.Earliest; e != nil {
		at := day.ClockIn(r, e, loc)
		if !at.Before(chill) {
			return dish, []schedule.Fault{{Path: path + ".earliest", Sentence: "is on the day of serving, and the dish is cooked the day before; give it a date"}}
		}
		c := day.ClockOf(at)
		dish.Earliest = &c
	}
	return dish, nil
}

// parcels are a dish as it goes on the grate again: one layer in foil, as thick as
// it was chilled.
func (w warmed) parcels(dish schedule.Dish) schedule.Dish {
	n := max(int(math.Ceil(w.cookedKg/day.ParcelKg)), 1)
	return schedule.Dish{
		ID: dish.ID, Name: dish.Name, Cut: day.ParcelCut, Weight: unit.Mass(w.cookedKg / float64(n)), Count: n,
		Thickness: unit.Length(w.portionM), Serve: dish.Serve, Travel: dish.Travel,
	}
}

// planTwo plans both days.
func planTwo(ctx context.Context, sound day.Sound, e Effort) (schedule.Plan, error) {
	s, err := Split(ctx, sound.Request, sound.Loc)
	if err != nil {
		return schedule.Plan{}, err
	}
	first := e
	if e.Nodes == 0 { // each day is searched as it would be alone
		first.Allowance, e.Allowance = arrange.NewAllowance(arrange.FullAllowance), arrange.NewAllowance(arrange.FullAllowance)
	}
	before, err := planPart(ctx, s.before, first, day.Options{Memo: first.Memo, Chill: true})
	if err != nil {
		return schedule.Plan{}, err
	}
	if !before.Feasible {
		before.Findings = append(before.Findings, schedule.NewFinding("ahead-infeasible", "",
			fmt.Sprintf("%s cannot be cooked by %s on the day before.", say.Listed(namesOf(s.dishes), "and"), say.LocalClock(before.Request.Units, before.ServeAt))))
		return before, nil
	}
	if s.on == nil && e.FirstPlan {
		return before, nil
	}
	if s.on == nil {
		return s.Joined(before, nil), nil
	}
	on, err := planPart(ctx, *s.on, e, day.Options{Memo: e.Memo, Warms: Warms(s.asked, sound.Loc)})
	if err != nil || !on.Feasible || e.FirstPlan {
		return on, err
	}
	return s.Joined(on, &before), nil
}

// planPart plans one of the two days. The guests are counted over both.
func planPart(ctx context.Context, r schedule.Request, e Effort, o day.Options) (schedule.Plan, error) {
	s, err := day.Examine(r)
	if err != nil {
		return schedule.Plan{}, err
	}
	if err := ctx.Err(); err != nil {
		return schedule.Plan{}, err
	}
	return planOne(ctx, s, e, o, nil)
}

func namesOf(dishes []schedule.Dish) []string {
	var names []string
	for _, d := range dishes {
		names = append(names, d.Name)
	}
	return names
}
