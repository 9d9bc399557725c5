package logbook

import (
	"fmt"
	"time"
)

// farBefore is how long before a dish went on nothing is read or done of it but by a slip of
// the half of the day; halfDay is that slip (assumptions).
const (
	farBefore = 2 * time.Hour
	halfDay   = 12 * time.Hour
)

// rawestC is the warmest that raw meat is on a counter, degC (judgment): what was read above it, or half a day
// before the put-on, was on the fire.
const rawestC = 35

// rawOut says whether an entry before a dish goes on may tell that it lay raw without refrigeration: that is no slip to be
// set aside.
func (e Entry) rawOut(on time.Time) bool {
	read := (e.Kind == Core || e.Kind == Coldest) && e.C <= rawestC && on.Sub(e.At) < halfDay/2
	return e.Kind == Counter || e.Kind == Stopped || e.Kind == Chilled || read
}

// Misplaced lists as faults what a log tells of a dish hours before it went on, and before any
// fire, where half a day later would be after it: AM for PM, 04:50 for 16:50.
func (r *Reader) Misplaced(log []Entry) {
	firstOn := map[string]time.Time{}
	var begun time.Time
	for _, e := range log {
		if on, known := firstOn[e.Dish]; e.Kind == On && (!known || e.At.Before(on)) {
			firstOn[e.Dish] = e.At
		}
		if (e.Kind == On || e.Kind == Lit) && (begun.IsZero() || e.At.Before(begun)) {
			begun = e.At
		}
	}
	for _, e := range log {
		form, _ := e.Kind.Form()
		on, known := firstOn[e.Dish]
		if known && e.rawOut(on) {
			continue
		}
		if !form.OfDish || e.Kind == DishCancelled || !known || !e.At.Before(begun) || on.Sub(e.At) < farBefore || !e.At.Add(halfDay).After(on) {
			continue
		}
		later := e.At.Add(halfDay).In(r.day.Loc)
		r.faults.AddLine(fmt.Sprintf("line %d: time", e.Line), e.Line, "%s is before %s went on, at %s; if it was at %s, write %s",
			r.day.Units.Clock(e.At.In(r.day.Loc)), e.Dish, r.day.Units.Clock(on.In(r.day.Loc)), r.day.Units.Clock(later), later.Format("15:04"))
	}
}
