package revise

import (
	"context"
	"fmt"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/day"
)

// Revision is one day at one instant.
type Revision struct {
	asked   schedule.Request // as first planned
	ahead   *schedule.Ahead  // what is cooked the day before, as first planned; nil for nothing
	night   *schedule.Night  // how the first plan spends the night
	chills  bool             // what is done is chilled for another day
	base    *assemble.Assembler
	first   schedule.Plan   // its phases and steps, moved along with serving
	planned []schedule.Step // its steps as first planned
	memo    *day.Memo
	firstA  arrange.Arrangement
	placed  []*arrange.Placed // as first planned
	loose   bool              // the asked day cannot be had: only the log says what was done

	log     []schedule.Entry
	now     time.Time
	tooSoon []meal              // of which not all of the dish was on in time to be eaten
	asking  *assemble.Assembler // with what the log changed
	day     *assemble.Assembler // the same, or served later if that cannot be met
	grate   grateHistory
	found   []outage // that readings told of
	steered *hand    // the fire in hand; nil where nothing can be said of it
	batches []*liveBatch
	leftOut []string     // names of dishes for which no hour is left
	called  []*liveBatch // called off: what was done with them stays

	hearth    arrange.Hearth
	stated    *arrange.Stated
	phases    int // phases begun by now
	moved     bool
	remainder remainder
	attempt   attempt                       // by which the rest of the day could be arranged
	surely    bool                          // only as asked, at the asked chance
	likely    bool                          // as soon as it is expected to be ready, before it waits to be sure
	earlier   map[pieceKey][]safety.Finding // what pieces had earned before their fire was lit again
	err       error                         // of the judge of safety
}

// New takes a plan, the log of its day and now. What is done on the day before another is
// chilled.
func New(ctx context.Context, p schedule.Plan, log []schedule.Entry, now time.Time, chilled bool) (*Revision, error) {
	v := &Revision{stated: new(arrange.Stated), asked: p.Request, ahead: p.Ahead, night: p.Night, chills: chilled || p.Ahead != nil && p.Ahead.Plan == nil}
	if p.Asked != nil {
		v.asked = *p.Asked
	}
	if err := v.planAgain(ctx, p); err != nil {
		return nil, err
	}
	v.now = now.In(v.base.Loc).Truncate(time.Minute)
	if err := v.take(schedule.JoinLogs(p.Log, log), now); err != nil {
		return nil, err
	}
	var err error
	if v.earlier, err = v.earnedBefore(ctx, p, chilled); err != nil {
		return nil, err
	}
	return v, v.look(ctx)
}

// Plan arranges what is left and writes the plan.
func (v *Revision) Plan(ctx context.Context) (schedule.Plan, error) {
	left, err := v.arrangeLeft(ctx)
	if err != nil {
		return schedule.Plan{}, err
	}
	if w, err := v.keepsHour(ctx, left); err != nil {
		return schedule.Plan{}, err
	} else if w != nil {
		*v, left = *w, w.remainder
	}
	if w, err := v.dayInstead(ctx, left); err != nil {
		return schedule.Plan{}, err
	} else if w != nil {
		*v, left = *w, w.remainder
	}
	v.remainder = left
	p, err := v.write(ctx, left)
	if err == nil {
		p, err = v.untilItBurnsOut(ctx, p)
		left = v.remainder
	}
	if err == nil {
		err = v.err
	}
	if err != nil {
		return schedule.Plan{}, err
	}
	if p.Remedies, err = v.advice(ctx, &p, left); err != nil {
		return schedule.Plan{}, err
	}
	p.Changes = v.changes(&p)
	if v.ahead == nil {
		return p, nil
	}
	return v.withAhead(ctx, p)
}

// clock is an instant as a text of the plan says it.
func (v *Revision) clock(t time.Time) string {
	t = t.In(v.base.Loc)
	if t.YearDay() != v.now.YearDay() {
		return v.base.Req.Units.ClockOn(t)
	}
	return v.base.Req.Units.Clock(t)
}

// foretold is an instant that is foretold, to the nearest minute as the steps have it; a deadline is never said later than it is.
func (v *Revision) foretold(t time.Time) string { return v.clock(t.Round(time.Minute)) }

func (v *Revision) span(minutes float64) string {
	if minutes < 0 {
		minutes = -minutes
	}
	return v.base.About(minutes)
}

func earlierLater(minutes float64) string {
	if minutes < 0 {
		return "earlier"
	}
	return "later"
}

// moves says "1 hr 50 min earlier".
func (v *Revision) moves(minutes float64) string {
	return fmt.Sprintf("%s %s", v.span(minutes), earlierLater(minutes))
}
