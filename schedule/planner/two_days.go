package planner

import (
	"context"
	"slices"
	"time"

	"example.com/cookday/schedule"
)

// followsTwo says whether a plan is of two days, each with a fire of its own.
func followsTwo(p schedule.Plan) bool { return p.Ahead != nil && p.Ahead.Plan != nil }

// reviseTwo follows a plan of two days: what the log says of the day before goes to its
// plan, the rest to the day of serving.
func reviseTwo(ctx context.Context, p schedule.Plan, log []schedule.Entry, now time.Time, o options) (schedule.Plan, error) {
	ahead := *p.Ahead
	earlier, later := parted(p, log)
	if len(earlier) == 0 && ahead.Plan.Revision == 0 {
		return reviseOne(ctx, p, later, now, o)
	}
	unjudged := o
	unjudged.judged, unjudged.chill = false, true // the whole is judged
	before, err := reviseOne(ctx, *ahead.Plan, earlier, now, unjudged)
	if err != nil {
		return schedule.Plan{}, err
	}
	ahead.Plan, p.Ahead = &before, &ahead
	q, err := reviseOne(ctx, p, later, now, o)
	if err != nil {
		return q, err
	}
	q.Revision += len(before.Log)
	if now.Before(ahead.ChillAt) { // today's
		q.Remedies = append(slices.Clone(before.Remedies), q.Remedies...)
		q.Changes = append(slices.Clone(before.Changes), q.Changes...)
		named := map[string]bool{}
		for _, f := range q.Findings {
			named[f.Code] = true
		}
		q.Remedies = slices.DeleteFunc(q.Remedies, func(r schedule.Remedy) bool { return !named[r.For] })
	}
	return q, nil
}

// parted are the entries of the day before, and those of the day of serving. What is
// about a dish of one day only is of that day, the rest goes by the hour.
func parted(p schedule.Plan, log []schedule.Entry) (earlier, later []schedule.Entry) {
	border := p.ServeAt
	if p.LightAt != nil {
		border = *p.LightAt
	}
	border = border.Add(-border.Sub(p.Ahead.ChillAt) / 2)
	for _, e := range log {
		_, before := p.Ahead.Plan.Dish(e.Dish)
		_, on := p.Dish(e.Dish)
		first := e.At.Before(border)
		if e.Dish != "" && before != on {
			first = before
		}
		if first && e.Kind != schedule.LogServingMoved {
			earlier = append(earlier, e)
		} else {
			later = append(later, e)
		}
	}
	return earlier, later
}
