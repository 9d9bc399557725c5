package planner

import (
	"context"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/steer"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/revise"
)

// Learn is what a finished cook teaches of its grill: a plan, the log of its day, and the record that the plan's request
// carries, if any, give the record for the next request. Each fire of the day teaches that was read at the grate six times
// and had its vents moved twice, and the pace each piece that cooked low and whose on and off were logged; what teaches
// nothing leaves the record as it was. The answer depends on nothing else.
func Learn(ctx context.Context, p schedule.Plan, log []schedule.Entry) (schedule.GrillLesson, error) {
	if err := ctx.Err(); err != nil {
		return schedule.GrillLesson{}, err
	}
	all := schedule.JoinLogs(p.Log, log)
	end := p.ServeAt
	if n := len(all); n > 0 && all[n-1].At.After(end) {
		end = all[n-1].At
	}
	v, err := revise.New(ctx, p, log, end.Add(time.Minute), false)
	if err != nil {
		return schedule.GrillLesson{}, err
	}
	return v.Lesson(), nil
}

// LearnFire is Learn for a log of a fire without any plan, as [Fire] takes it.
func LearnFire(ctx context.Context, q schedule.FireInquiry) (schedule.GrillLesson, error) {
	if err := ctx.Err(); err != nil {
		return schedule.GrillLesson{}, err
	}
	own := assemble.RecordOf(q.Own)
	if q.Grill == "ceramic" {
		return revise.LessonOf(fireGrill(q), own, revise.LeanOf(q.Own), false, q.Units), nil
	}
	begin, events, now := firstOf(q)
	r, taught := steer.Follow(begin, events, now).Learned()
	if taught {
		own = &r
	}
	return revise.LessonOf(fireGrill(q), own, revise.LeanOf(q.Own), taught, q.Units), nil
}
