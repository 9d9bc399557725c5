package planner_test

import (
	"testing"
	"time"

	"example.com/cookday/schedule/internal/plantest"
)

// A butt that is expected a quarter of an hour late on a grate of 250 °F, with a hotter grate that
// reaches the asked hour, moves dinner by no more than it is expected to take: it slid by itself
// from 6:00 to 10:40 PM, and with it the fire into the hours of sleep.
func TestDinnerDoesNotSlideWhereAHotterGrateReachesIt(t *testing.T) {
	const on = "time,dish,kind,value\n2027-11-06 08:30,,lit,\n2027-11-06 09:00,pork-butt,on,\n2027-11-06 09:20,,grate,249 F\n2027-11-06 09:25,,grate,252 F\n"
	p := plantest.Plan(t, "serve: {date: 2027-11-06, time: \"18:00\", tz: America/New_York}\ngrill: kettle 22 in\nguests: 6\nweather: {air: 42 F, wind: 7 mph}\ndishes: [{cut: pork-butt, weight: 5 lb, prep: [], level: 250 F}]\n")
	q := plantest.Revised(t, p, on, "2027-11-06 09:26")
	if late := q.ServeAt.Sub(p.ServeAt); late <= 0 || late > time.Hour {
		t.Errorf("dinner moved by %v", late)
	}
	for _, r := range q.Remedies {
		if r.Code == "hotter" && r.ServeAt.Equal(p.ServeAt) {
			return
		}
	}
	t.Errorf("no hotter grate for the asked hour: %v", q.Remedies)
}
