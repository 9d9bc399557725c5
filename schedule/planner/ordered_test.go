package planner_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// What is ordered is what the rest of the plan is made of: a day whose fire fails is told with
// the hour, the chance and the take-off that it has once the order is carried out. Before, the
// oven was ordered while the head of the plan counted on the grate, and dinner was moved over
// a night of wind and rain with an oven at hand.
func TestWhatIsOrderedIsWhatIsPlanned(t *testing.T) {
	for _, tt := range []struct{ night, at, says string }{
		{"b01", "14:03", "A new fire comes too late for it"},
		{"b04", "15:11", "On the grate it is not done before the night"},
		{"b04", "15:27", "into the kitchen oven"},
		{"b05", "09:01", "into the kitchen oven"},
		{"b11", "13:52", "into the kitchen oven"},
	} {
		p := plantest.Plan(t, plantest.ReadFile(t, "testdata/nights/"+tt.night+".yaml"))
		log, err := schedule.ReadLog([]byte(plantest.ReadFile(t, "testdata/nights/"+tt.night+".csv")), p)
		if err != nil {
			t.Fatal(err)
		}
		var known []schedule.Entry
		now := time.Time{}
		for _, e := range schedule.JoinLogs(nil, log) {
			if local := e.At.In(p.ServeAt.Location()); local.Format("15:04") < tt.at {
				known = append(known, e)
				now, _ = time.ParseInLocation("2006-01-02 15:04", local.Format("2006-01-02 ")+tt.at, p.ServeAt.Location())
			}
		}
		q, err := planner.Revise(t.Context(), p, known, now)
		if err != nil {
			t.Fatal(err)
		}
		var done []schedule.Entry
		for _, s := range plantest.Steps(q, schedule.StepIndoors) {
			if strings.Contains(s.Text, tt.says) {
				done = append(done, schedule.Entry{At: now, Dish: s.Dish, Kind: schedule.LogToOven, C: s.GrateC})
			}
		}
		if len(done) == 0 {
			t.Errorf("%s %s: nothing is ordered indoors", tt.night, tt.at)
			continue
		}
		after, err := planner.Revise(t.Context(), q, done, now)
		if err != nil {
			t.Fatal(err)
		}
		off, then := plantest.TakeOff(t, q, done[0].Dish).Expected, plantest.TakeOff(t, after, done[0].Dish).Expected
		if !q.ServeAt.Equal(after.ServeAt) || math.Abs(q.Chance.All-after.Chance.All) > 0.01 || off.Sub(then).Abs() > 2*time.Minute {
			t.Errorf("%s %s: planned for %v, %.2f sure, off at %v; done as ordered %v, %.2f, %v", tt.night, tt.at, q.ServeAt, q.Chance.All, off, after.ServeAt, after.Chance.All, then)
		}
		plantest.Judge(t, q)
	}
}
