package revise

import (
	"context"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/planner/internal/ahead"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/sequence"
)

// planAgain makes the first plan again, as far as a revision needs it. What an earlier
// edition of the model planned may ask for more than this one can promise, and what
// cannot be had as asked may be on the fire all the same: it is planned again with less.
func (v *Revision) planAgain(ctx context.Context, p schedule.Plan) error {
	v.memo = day.NewMemo()
	for _, with := range v.reliefs(p) {
		asked, loose := with.eased(v.asked)
		d, a, err := v.arrangedAgain(ctx, asked)
		if err != nil {
			return err
		}
		if len(a.Solution.Chains) > 0 {
			v.loose = loose || len(v.asked.Happened()) > 0
			return v.begin(ctx, d, a, p.ID)
		}
	}
	return &schedule.InputError{Faults: []schedule.Fault{{Sentence: "this day cannot be followed: no fire of this grill cooks what is on its menu; take one of the remedies of its plan, or leave a dish out"}}}
}

// relief is what is asked less of the first plan.
type relief struct {
	confidence float64       // 0 for the asked one
	anyHour    bool          // quiet hours and earliest instants do not count
	later      time.Duration // than the asked servings
	apart      time.Duration // between the servings of one dish and the next
}

// reliefs are those that are tried, the least first.
func (v *Revision) reliefs(p schedule.Plan) []relief {
	out := []relief{{}}
	if p.Provenance.Model != assemble.ModelVersion {
		for _, c := range []float64{0.8, 0.65, 0.5} {
			if c < v.asked.Confidence {
				out = append(out, relief{confidence: c})
			}
		}
	}
	for _, hours := range []time.Duration{0, 2, 4, 8, 12, 24} {
		out = append(out, relief{confidence: 0.5, anyHour: true, later: hours * time.Hour})
	}
	for _, hours := range []time.Duration{2, 4} {
		out = append(out, relief{confidence: 0.5, anyHour: true, apart: hours * time.Hour})
	}
	return out
}

// eased is a request with the relief, and whether the day is another one with it: then
// its hours say nothing of what was done.
func (f relief) eased(r schedule.Request) (schedule.Request, bool) {
	r = plans.CopyRequest(r)
	if f.confidence > 0 {
		r.Confidence = f.confidence
	}
	if !f.anyHour {
		return r, false
	}
	r = r.Dated()
	r.Quiet, r.Earliest = []schedule.Quiet{}, nil
	loc, err := r.Location()
	if err != nil {
		return r, true
	}
	main := day.ClockOf(day.ClockIn(r, nil, loc).Add(f.later))
	for i := range r.Dishes {
		dish := &r.Dishes[i]
		dish.Earliest = nil
		if dish.Serve != nil || f.apart > 0 {
			at := day.ClockOf(day.ClockIn(r, dish.Serve, loc).Add(f.later + time.Duration(i)*f.apart))
			dish.Serve = &at
		}
	}
	r.Serve.Date, r.Serve.Time = *main.Date, main.Time
	return r, true
}

// arrangedAgain arranges a request.
func (v *Revision) arrangedAgain(ctx context.Context, asked schedule.Request) (*assemble.Assembler, arrange.Arrangement, error) {
	s, err := day.Examine(asked)
	if err != nil {
		return nil, arrange.Arrangement{}, err
	}
	d, err := day.Resolve(s, day.Options{Memo: v.memo, Chill: v.chills, Warms: ahead.Warms(v.asked, s.Loc)})
	if err != nil {
		return nil, arrange.Arrangement{}, err
	}
	return ahead.Again(ctx, d, arrange.Effort{Allowance: arrange.NewAllowance(arrange.FullAllowance), Room: new(sequence.Room)}, v.night)
}

// begin writes the first plan of an arrangement.
func (v *Revision) begin(ctx context.Context, d *assemble.Assembler, a arrange.Arrangement, id string) error {
	var err error
	if v.placed, err = d.Place(ctx, a); err != nil {
		return err
	}
	arrange.NumberByTime(v.placed)
	d.Rekindle(&a, v.placed, 0, arrange.Ever)
	v.base, v.firstA, v.hearth = d, a, a.Hearth
	v.first = d.BlankPlan()
	v.first.ID, v.first.Feasible = id, true
	v.first.Phases = d.Phases(a, v.placed)
	v.first.Steps = d.Steps(&v.first, a, v.placed)
	v.first.Cautions = d.Cautions(&v.first, v.placed)
	return nil
}
