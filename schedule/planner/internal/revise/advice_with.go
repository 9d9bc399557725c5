package revise

import (
	"context"
	"math"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner/internal/belief"
	"example.com/cookday/schedule/planner/internal/day"
)

// with is the same day with one more entry in its log, now, arranged again.
func (v *Revision) with(ctx context.Context, e schedule.Entry) (*Revision, bool) {
	w, ok := v.logged(ctx, e)
	if !ok {
		return nil, false
	}
	l, err := w.arrangeLeft(ctx)
	w.remainder = l
	return w, err == nil
}

// takeWith is the expected take-off of a piece on the grate with one more entry in the log, minutes
// from its put-on: that hangs on nothing that is arranged.
func (v *Revision) takeWith(ctx context.Context, e schedule.Entry, a *liveBatch) (float64, bool) {
	w, ok := v.logged(ctx, e)
	if !ok {
		return 0, false
	}
	for _, b := range w.batches {
		if b.is(a.batch.It.Dish.ID, a.batch.Number) && b.where == cooking {
			return takeOf(b.live), true
		}
	}
	l, err := w.arrangeLeft(ctx)
	return l.take(a), err == nil
}

// logged is the same day with one more entry in its log, now, and not arranged yet. What the readings
// say of the past stays as it is.
func (v *Revision) logged(ctx context.Context, e schedule.Entry) (*Revision, bool) {
	w := *v
	e.At = v.now
	w.log, w.day, w.attempt = v.logWith(e), v.asking, attempt{}
	w.likely = v.asExpected() && e.Kind != schedule.LogServingMoved // an option is told by the measure of the day that it is held beside
	if e.Kind == schedule.LogServingMoved {
		if err := w.amend(); err != nil {
			return nil, false
		}
	}
	if e.Dish == "" || e.Kind == schedule.LogServingMoved { // what is done to a piece is nothing to the grate
		w.grate = w.grateWith(w.found)
	}
	w.batches = make([]*liveBatch, len(v.batches))
	for i, a := range v.batches {
		b := *a
		w.batches[i] = &b
	}
	w.rebind()
	for _, a := range w.batches {
		if e.Dish == a.batch.It.Dish.ID && e.Kind != schedule.LogServingMoved {
			a.tell(e)
		}
		if a.believed != nil {
			w.followAgain(a, v)
			if err := w.coverAgain(ctx, a); err != nil {
				return nil, false
			}
			a.live = w.liveWay(a)
		}
	}
	w.giveUp()
	return &w, true
}

// logWith is the log with one more entry of now.
func (v *Revision) logWith(e schedule.Entry) []schedule.Entry {
	n := len(v.log)
	if n > 0 && !v.log[n-1].At.Before(e.At) { // a reading of the same minute
		return schedule.JoinLogs(v.log, []schedule.Entry{e})
	}
	return append(append(make([]schedule.Entry, 0, n+1), v.log...), e)
}

// followAgain is the belief of a piece in the day as it is with one more entry, which for many a
// piece is the day as it was.
func (v *Revision) followAgain(a *liveBatch, was *Revision) {
	c := v.journeyOf(a)
	if c.Same(a.journey) && (!c.Wrap.Planned || slices.Equal(v.day.QuietIntervals(), was.day.QuietIntervals())) {
		return
	}
	a.journey, a.believed = c, a.believed.Again(c)
}

// take is the expected take-off of a batch as arranged, minutes from its put-on.
func (l remainder) take(a *liveBatch) float64 {
	for _, p := range l.all {
		if p.It.Dish.ID == a.batch.It.Dish.ID && p.Number == a.batch.Number {
			return takeOf(p.Way)
		}
	}
	return math.NaN()
}

func takeOf(w day.Way) float64 {
	if b := w.Believed; b != nil && b.OutOfReach() {
		return b.Journey.Now + belief.LongestAhead // it stands for never
	}
	return w.Total().Expected
}
