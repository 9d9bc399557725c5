package schedule

import (
	"context"
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/unit"
)

// readyDayBefore is the word of a dish that is cooked the day before, chilled, and
// warmed again for the table.
const readyDayBefore = "day-before"

// A request with such dishes is two days: the cook of the day before, with a
// serving instant of its own at which everything is cut and chilled, and the day of
// serving, on which it is warmed, in the kitchen oven if there is one, else as
// parcels on the grate. Each is a plan that stands for itself. The one returned is
// the day of serving, with the steps of both; where the oven does all there is to
// do that day it is the day before, with the warming after it.

// twoDays is a request as two.
type twoDays struct {
	asked  Request // as it came, with its defaults
	before Request
	on     *Request // nil where nothing is on the grate that day
	dishes []Dish   // that are cooked ahead
	warmed []warmed
}

// cookedAhead says whether a request has dishes that are ready the day before.
func cookedAhead(r Request) bool {
	return slices.ContainsFunc(r.Dishes, func(d Dish) bool { return d.Ready == readyDayBefore })
}

// splitAhead parts the request. A fault where nothing may happen the day before.
func splitAhead(ctx context.Context, r Request) (twoDays, []Fault, error) {
	s := twoDays{asked: r}
	loc, err := r.Location()
	if err != nil {
		return s, []Fault{{Path: "serve.tz", Sentence: err.Error()}}, nil
	}
	chill := chillAt(r, loc)
	s.before, s.on = r, &Request{}
	*s.on = r
	s.before.Serve.Date, s.before.Serve.Time = *clockOf(chill).Date, clockOf(chill).Time
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
func (s *twoDays) earliest(loc *time.Location, chill time.Time) []Fault {
	e := s.asked.Earliest
	if e == nil {
		return nil
	}
	at := clockIn(s.asked, e, loc)
	if !at.Before(chill) {
		return []Fault{{Path: "earliest", Sentence: fmt.Sprintf(
			"nothing may begin before %s, so nothing can be cooked the day before; give earliest the date of that day", dayClock(at))}}
	}
	c := clockOf(at)
	s.before.Earliest = &c
	return nil
}

// aheadDish is a dish as it is cooked the day before.
func aheadDish(r Request, i int, loc *time.Location, chill time.Time) (Dish, []Fault) {
	dish := r.Dishes[i]
	path := itemPath("dishes", i)
	if c, ok := cut.Find(dish.Cut); ok && (c.Style == cut.Small || c.Style == cut.Timed) {
		return dish, []Fault{{Path: path + ".ready", Sentence: inText(c) + " cooks in minutes and is no better the next day; leave ready out"}}
	}
	dish.Ready, dish.Serve, dish.Travel, dish.Hold = "", nil, nil, []string{HoldNone}
	if e := dish.Earliest; e != nil {
		at := clockIn(r, e, loc)
		if !at.Before(chill) {
			return dish, []Fault{{Path: path + ".earliest", Sentence: "is on the day of serving, and the dish is cooked the day before; give it a date"}}
		}
		c := clockOf(at)
		dish.Earliest = &c
	}
	return dish, nil
}

func clockIn(r Request, c *Clock, loc *time.Location) time.Time {
	d := day{req: r, loc: loc}
	return d.clock(c)
}

// Everything is cut and chilled by chillHour of the day before, or earlier where
// quiet hours would leave less than the published two hours to look after it.
const (
	chillHour  = 20
	chillLeast = 12
)

func chillAt(r Request, loc *time.Location) time.Time {
	y, m, n := r.Serve.Date.Date()
	d := day{req: r, loc: loc, end: time.Date(y, m, n, r.Serve.Time.Hours(), r.Serve.Time.Minutes(), 0, 0, loc)}
	latest := time.Date(y, m, n-1, chillHour, 0, 0, 0, loc)
	for at := latest; at.Hour() >= chillLeast; at = at.Add(-2 * quarter) {
		if len(d.untended(at, at.Add(chillWatch))) == 0 {
			return at
		}
	}
	return latest
}

// parcels are a dish as it goes on the grate again: one layer in foil, as thick as
// it was chilled.
func (w warmed) parcels(dish Dish) Dish {
	n := max(int(math.Ceil(w.cookedKg/parcelKg)), 1)
	return Dish{
		ID: dish.ID, Name: dish.Name, Cut: parcelCut, Weight: unit.Mass(w.cookedKg / float64(n)), Count: n,
		Thickness: unit.Length(w.portionM), Serve: dish.Serve, Travel: dish.Travel,
	}
}

const (
	parcelCut = "cooked-meat"
	parcelKg  = 1.0 // what a pair of tongs turns over
)

// makeAhead plans both days.
func makeAhead(ctx context.Context, r Request, e effort) (Plan, error) {
	s, faults, err := splitAhead(ctx, r)
	if err != nil {
		return Plan{}, err
	}
	if len(faults) > 0 {
		return Plan{}, &InputError{Faults: faults}
	}
	e.part = true
	first := e
	if e.budget == 0 { // each day is searched as it would be alone
		first.purse, e.purse = &purse{fullPurse}, &purse{fullPurse}
	}
	first.chill = true
	before, err := makePlan(ctx, s.before, first)
	if err != nil {
		return Plan{}, err
	}
	if !before.Feasible {
		before.Findings = append(before.Findings, finding("ahead-infeasible", "", nil,
			fmt.Sprintf("%s cannot be cooked by %s on the day before.", listed(namesOf(s.dishes), "and"), localClock(before.ServeAt))))
		return before, nil
	}
	if s.on == nil && e.probe {
		return before, nil
	}
	if s.on == nil {
		return s.joined(before, nil), nil
	}
	on, err := makePlan(ctx, *s.on, e)
	if err != nil || !on.Feasible || e.probe {
		return on, err
	}
	return s.joined(on, &before), nil
}

func namesOf(dishes []Dish) []string {
	var names []string
	for _, d := range dishes {
		names = append(names, d.Name)
	}
	return names
}
