package api

import (
	"context"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

// Planner is what the service asks of the library. [Library] is the library itself.
type Planner interface {
	// Make plans a day, of which nothing starts before an instant; zero for no such instant.
	Make(ctx context.Context, r schedule.Request, notBefore time.Time) (schedule.Plan, error)
	// Forecast answers for one piece.
	Forecast(ctx context.Context, q schedule.Inquiry) (schedule.Outlook, error)
	// Fire says what to do about a fire that burns.
	Fire(ctx context.Context, q schedule.FireInquiry) (schedule.Steer, error)
	// Learn says what a plan and its whole log teach of the grill.
	Learn(ctx context.Context, p schedule.Plan, log []schedule.Entry) (schedule.GrillLesson, error)
	// LearnFire is the same of a log of a fire alone.
	LearnFire(ctx context.Context, q schedule.FireInquiry) (schedule.GrillLesson, error)
	// ReadLog reads readings and events, CSV or JSON.
	ReadLog(data []byte, p schedule.Plan) ([]schedule.Entry, error)
	// Revise follows a plan through its whole log. The plan was made not before an instant.
	Revise(ctx context.Context, p schedule.Plan, log []schedule.Entry, now, notBefore time.Time) (schedule.Plan, error)
}

// Library is the planner of package schedule.
type Library struct{}

// Make is [planner.Make], judged.
func (Library) Make(ctx context.Context, r schedule.Request, notBefore time.Time) (schedule.Plan, error) {
	return planner.Make(ctx, r, planner.Judged(), planner.NotBefore(notBefore))
}

// Fire is [planner.Fire].
func (Library) Fire(ctx context.Context, q schedule.FireInquiry) (schedule.Steer, error) {
	return planner.Fire(ctx, q)
}

// Learn is [planner.Learn].
func (Library) Learn(ctx context.Context, p schedule.Plan, log []schedule.Entry) (schedule.GrillLesson, error) {
	return planner.Learn(ctx, p, log)
}

// LearnFire is [planner.LearnFire].
func (Library) LearnFire(ctx context.Context, q schedule.FireInquiry) (schedule.GrillLesson, error) {
	return planner.LearnFire(ctx, q)
}

// Forecast is [planner.Forecast].
func (Library) Forecast(ctx context.Context, q schedule.Inquiry) (schedule.Outlook, error) {
	return planner.Forecast(ctx, q)
}

// ReadLog is [schedule.ReadLog].
func (Library) ReadLog(data []byte, p schedule.Plan) ([]schedule.Entry, error) {
	return schedule.ReadLog(data, p)
}

// Revise is [planner.Revise], judged.
func (Library) Revise(ctx context.Context, p schedule.Plan, log []schedule.Entry, now, notBefore time.Time) (schedule.Plan, error) {
	return planner.Revise(ctx, p, log, now, planner.Judged(), planner.NotBefore(notBefore))
}
