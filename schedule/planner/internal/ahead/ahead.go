package ahead

import (
	"context"
	"fmt"
	"math"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	saypkg "example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	assemblepkg "example.com/cookday/schedule/planner/internal/assemble"
	daypkg "example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/unit"
)

// twoDays is a request as two.
type twoDays struct {
	asked  schedule.Request // as it came, with its defaults
	before schedule.Request
	on     *schedule.Request // nil where nothing is on the grate that day
	dishes []schedule.Dish   // that are cooked ahead
	warmed []warmed
}

// splitAhead parts the request. A fault where nothing may happen the day before.
func SplitAhead(ctx context.Context, r schedule.Request) (twoDays, []strict.Fault, error) {
	s := twoDays{asked: r}
	loc, err := r.Location()
	if err != nil {
		return s, []strict.Fault{{Path: "serve.tz", Sentence: err.Error()}}, nil
	}
	chill := daypkg.ChillAt(r, loc)
	s.before, s.on = r, &schedule.Request{}
	*s.on = r
	s.before.Serve.Date, s.before.Serve.Time = *daypkg.ClockOf(chill).Date, daypkg.ClockOf(chill).Time
	if r.ID != "" {
		s.before.ID = r.ID + "-before"
	}
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
			return s, nil, err
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
	if len(s.on.Dishes) == 0 {
		s.on = nil
	}
	return s, faults, nil
}

// earliest gives the instant before which nothing begins its own date, so that it
// means the same on both days.
func (s *twoDays) earliest(loc *time.Location, chill time.Time) []strict.Fault {
	e := s.asked.Earliest
	if e == nil {
		return nil
	}
	at := daypkg.ClockIn(s.asked, e, loc)
	if !at.Before(chill) {
		return []strict.Fault{{Path: "earliest", Sentence: fmt.Sprintf(
			"nothing may begin before %s, so nothing can be cooked the day before; give earliest the date of that day", assemblepkg.DayClock(at))}}
	}
	c := daypkg.ClockOf(at)
	s.before.Earliest = &c
	return nil
}

// aheadDish is a dish as it is cooked the day before.
func aheadDish(r schedule.Request, i int, loc *time.Location, chill time.Time) (schedule.Dish, []strict.Fault) {
	dish := r.Dishes[i]
	path := strict.ItemPath("dishes", i)
	if c, ok := cut.Find(dish.Cut); ok && (c.Style == cut.Small || c.Style == cut.Timed) {
		return dish, []strict.Fault{{Path: path + ".ready", Sentence: schedule.InText(c) + " cooks in minutes and is no better the next day; leave ready out"}}
	}
	dish.Ready, dish.Serve, dish.Travel, dish.Hold = "", nil, nil, []string{schedule.HoldNone}
	if e := dish.Earliest; e != nil {
		at := daypkg.ClockIn(r, e, loc)
		if !at.Before(chill) {
			return dish, []strict.Fault{{Path: path + ".earliest", Sentence: "is on the day of serving, and the dish is cooked the day before; give it a date"}}
		}
		c := daypkg.ClockOf(at)
		dish.Earliest = &c
	}
	return dish, nil
}

// parcels are a dish as it goes on the grate again: one layer in foil, as thick as
// it was chilled.
func (w warmed) parcels(dish schedule.Dish) schedule.Dish {
	n := max(int(math.Ceil(w.cookedKg/daypkg.ParcelKg)), 1)
	return schedule.Dish{
		ID: dish.ID, Name: dish.Name, Cut: daypkg.ParcelCut, Weight: unit.Mass(w.cookedKg / float64(n)), Count: n,
		Thickness: unit.Length(w.portionM), Serve: dish.Serve, Travel: dish.Travel,
	}
}

// makeAhead plans both days.
func makeAhead(ctx context.Context, r schedule.Request, e daypkg.Effort) (schedule.Plan, error) {
	s, faults, err := SplitAhead(ctx, r)
	if err != nil {
		return schedule.Plan{}, err
	}
	if len(faults) > 0 {
		return schedule.Plan{}, &strict.InputError{Faults: faults}
	}
	e.Part = true
	first := e
	if e.Budget == 0 { // each day is searched as it would be alone
		first.Purse, e.Purse = &daypkg.Purse{daypkg.FullPurse}, &daypkg.Purse{daypkg.FullPurse}
	}
	first.Chill = true
	before, err := MakePlan(ctx, s.before, first)
	if err != nil {
		return schedule.Plan{}, err
	}
	if !before.Feasible {
		before.Findings = append(before.Findings, daypkg.Finding("ahead-infeasible", "", nil,
			fmt.Sprintf("%s cannot be cooked by %s on the day before.", saypkg.Listed(namesOf(s.dishes), "and"), saypkg.LocalClock(before.ServeAt))))
		return before, nil
	}
	if s.on == nil && e.Probe {
		return before, nil
	}
	if s.on == nil {
		return s.Joined(before, nil), nil
	}
	on, err := MakePlan(ctx, *s.on, e)
	if err != nil || !on.Feasible || e.Probe {
		return on, err
	}
	return s.Joined(on, &before), nil
}

func namesOf(dishes []schedule.Dish) []string {
	var names []string
	for _, d := range dishes {
		names = append(names, d.Name)
	}
	return names
}
