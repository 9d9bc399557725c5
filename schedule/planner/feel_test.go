package planner_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// What was read where tenderness decides is felt now: ribs at 201 °F had "nothing to do" for half
// an hour. And a higher reading is never later, nor less likely at the hour that was asked for.
func TestWhatMayBeDoneIsFeltNow(t *testing.T) {
	const on = "time,dish,kind,value\n2027-09-18 10:30,,lit,\n2027-09-18 11:10,spare-ribs,on,\n2027-09-18 12:30,,grate,250 F\n2027-09-18 15:10,spare-ribs,core,181 F\n2027-09-18 16:00,,grate,250 F\n"
	p := plantest.Plan(t, "serve: {date: 2027-09-18, time: \"17:30\", tz: America/Denver}\ngrill: kettle 22 in\nguests: 8\nweather: {air: 64 F}\ndishes: [{cut: spare-ribs, weight: 3.2 lb, count: 2, level: 250 F}]\n")
	var off time.Time
	chance := 0.0
	for _, core := range []int{190, 193, 195, 198, 201, 203, 206, 208} {
		q := plantest.Revised(t, p, on+fmt.Sprintf("2027-09-18 16:45,spare-ribs,core,%d F\n", core), "2027-09-18 16:46")
		felt := false
		for _, s := range q.Steps {
			felt = felt || s.Kind == schedule.StepLook && !s.Done && s.At.Equal(*q.RevisedAt) && strings.Contains(s.Text, "bend it now")
		}
		if felt != (core >= 195) {
			t.Errorf("%d °F: bend it now: %v", core, felt)
		}
		at := plantest.TakeOff(t, q, "spare-ribs").Expected
		if !off.IsZero() && at.After(off) || q.Dishes[0].ServeAt.Equal(p.Dishes[0].ServeAt) && q.Dishes[0].Chance < chance {
			t.Errorf("%d °F: off at %v, %.2f; colder by a little: %v, %.2f", core, at, q.Dishes[0].Chance, off, chance)
		}
		off, chance = at, 0
		if q.Dishes[0].ServeAt.Equal(p.Dishes[0].ServeAt) {
			chance = q.Dishes[0].Chance
		}
	}
}
