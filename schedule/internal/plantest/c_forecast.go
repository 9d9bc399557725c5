package plantest

import (
	"context"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

// Ask is a forecast from named texts, and fails the test on faults.
func Ask(t testing.TB, pairs ...string) schedule.Outlook {
	t.Helper()
	fields := map[string]string{}
	for i := 0; i < len(pairs); i += 2 {
		fields[pairs[i]] = pairs[i+1]
	}
	q, err := schedule.ReadInquiry(fields)
	if err != nil {
		t.Fatal(err)
	}
	o, err := planner.Forecast(context.Background(), q)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// Milestone is the one of a kind in a forecast, empty where there is none.
func Milestone(o schedule.Outlook, kind schedule.MilestoneKind) schedule.OutlookMilestone {
	for _, m := range o.Milestones {
		if m.Kind == kind {
			return m
		}
	}
	return schedule.OutlookMilestone{}
}
