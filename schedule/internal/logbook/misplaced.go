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
		if !form.OfDish || e.Kind == DishCancelled || !known || !e.At.Before(begun) || on.Sub(e.At) < farBefore || !e.At.Add(halfDay).After(on) {
			continue
		}
		later := e.At.Add(halfDay).In(r.day.Loc)
		r.faults.AddLine(fmt.Sprintf("line %d: time", e.Line), e.Line, "%s is before %s went on, at %s; if it was at %s, write %s",
			r.day.Units.Clock(e.At.In(r.day.Loc)), e.Dish, r.day.Units.Clock(on.In(r.day.Loc)), r.day.Units.Clock(later), later.Format("15:04"))
	}
}
