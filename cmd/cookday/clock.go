package main

import (
	"context"
	"time"

	"github.com/spf13/cobra"

	"example.com/cookday/schedule"
)

// clockKey is where the context of a command has its clock.
type clockKey struct{}

func withClock(ctx context.Context, clock func() time.Time) context.Context {
	return context.WithValue(ctx, clockKey{}, clock)
}

// clockNow is the time now, by the clock of the command.
func clockNow(cmd *cobra.Command) time.Time {
	if clock, ok := cmd.Context().Value(clockKey{}).(func() time.Time); ok {
		return clock()
	}
	return time.Now()
}

// mistyped is by how much the last entry of a log may be in the future (assumption).
const mistyped = 2 * time.Hour

// nowOf is the time of a day that is followed: as typed, or else by the clock. A time of
// day alone is the first such after the last entry of the log; or a little before it, for
// that entry may be mistyped.
func nowOf(cmd *cobra.Command, typed string, p schedule.Plan, log []schedule.Entry) (time.Time, error) {
	loc, err := time.LoadLocation(p.TZ)
	if err != nil {
		return time.Time{}, usage("tz: %q is no time zone", p.TZ)
	}
	if typed == "" {
		return clockNow(cmd).In(loc), nil
	}
	at, err := instant("--now", typed, p)
	if err != nil || len(log) == 0 {
		return at, err
	}
	if _, err := schedule.ParseTimeOfDay(typed); err != nil {
		return at, nil // it has a date
	}
	joined := schedule.JoinLogs(nil, log)
	last := joined[len(joined)-1].At.In(loc)
	for day := -1; ; day++ {
		t := time.Date(last.Year(), last.Month(), last.Day()+day, at.Hour(), at.Minute(), 0, 0, loc)
		if t.After(last.Add(-mistyped)) {
			return t, nil
		}
	}
}
