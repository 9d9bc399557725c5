package planner_test

import (
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// A fire that somebody says went out at 4:45 cannot have a grate at 88 °F 35 minutes later, nor
// an 8 lb butt at 117 °F: the clock counts from when it must have gone out. It was "7 min without
// heat", and dinner at one.
func TestAToldFireOutDoesNotTurnTheClockBack(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-07-03, time: \"13:00\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: 12\nweather: {air: 80 F, night: 68 F}\novernight: true\nquiet: [{from: \"23:30\", to: \"05:00\"}]\ndishes: [{cut: pork-butt, weight: 8 lb, level: 250 F}, {cut: sausage, count: 12, prep: [], serve: \"13:00\"}]\n")
	const night = "time,dish,kind,value\n2027-07-02 21:20,,lit,\n2027-07-02 22:05,pork-butt,on,\n2027-07-03 01:30,,grate,238 F\n2027-07-03 01:30,pork-butt,core,109 F\n"
	const cold = "2027-07-03 05:20,,grate,88 F\n2027-07-03 05:24,pork-butt,core,117 F\n"
	for name, log := range map[string]string{
		"not told":                night + cold,
		"told too late":           night + "2027-07-03 04:45,,fire-out,\n" + cold,
		"too late, and confirmed": night + "2027-07-03 04:45,,fire-out,\n" + cold + "2027-07-03 05:26,pork-butt,coldest,112 F\n",
		"told early":              night + "2027-07-03 02:30,,fire-out,\n" + cold,
		"too late, and lit again": night + "2027-07-03 04:45,,fire-out,\n" + cold + "2027-07-03 05:26,pork-butt,coldest,112 F\n2027-07-03 05:50,,lit,\n",
	} {
		now := "2027-07-03 05:27"
		if strings.Contains(log, "05:50") {
			now = "2027-07-03 06:31"
		}
		q := plantest.Revised(t, p, log, now)
		if f, over := plantest.Finding(q, "fire-out-over"); !over {
			t.Errorf("%s: no word of its time without heat: %v", name, q.Findings)
		} else if !strings.Contains(f.Text, "hr") {
			t.Errorf("%s: %s", name, f.Text)
		}
		if c := q.Dishes[0].Chance; c > 0.2 {
			t.Errorf("%s: chance %.2f", name, c)
		}
		for _, f := range q.Findings {
			if strings.Contains(f.Text, "112 °F") && strings.Contains(f.Text, "ignored") {
				t.Errorf("%s: %s", name, f.Text)
			}
		}
	}
	// What the grate allows stands as told.
	q := plantest.Revised(t, p, night+"2027-07-03 04:45,,fire-out,\n2027-07-03 05:00,,grate,190 F\n", "2027-07-03 05:05")
	if f, _ := plantest.Finding(q, "fire-died"); !strings.Contains(f.Text, "4:45 AM") {
		t.Errorf("told as it may be: %s", f.Text)
	}
}

// A fire that was found cold died before that, whenever somebody asks: since nothing showed heat
// after the put-on, perhaps right after it. Its death was later than the cold reading, and wandered
// with the clock.
func TestADeathDoesNotWander(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: 10\nweather: {air: 92 F}\noven: {hold: 170 F}\ndishes: [{cut: pork-butt, weight: 7 lb, prep: []}]\n")
	const log = "time,dish,kind,value\n2027-07-03 06:00,,lit,\n2027-07-03 06:31,pork-butt,on,\n2027-07-03 08:30,pork-butt,core,82 F\n2027-07-03 08:35,,grate,95 F\n"
	first := ""
	for _, now := range []string{"2027-07-03 08:36", "2027-07-03 09:00", "2027-07-03 09:50", "2027-07-03 14:30", "2027-07-03 17:50"} {
		q := plantest.Revised(t, p, log, now)
		if _, over := plantest.Finding(q, "fire-out-over"); !over {
			t.Errorf("%s: within its hour: %v", now, q.Findings)
		}
		f, died := plantest.Finding(q, "fire-died")
		if !died {
			continue // nothing that may be served is on it
		}
		if first == "" {
			first = f.Text
		}
		if f.Text != first {
			t.Errorf("%s: %q, and before that %q", now, f.Text, first)
		}
	}
	if at := time.Date(2027, 7, 3, 8, 35, 0, 0, p.ServeAt.Location()); first != "" && strings.Contains(first, p.Request.Units.Clock(at)) {
		t.Errorf("died as it was read: %s", first)
	}
}

// Nothing is done before a fire burns under it. It was off from 5:46 PM on, over a fire that was out
// at 5:40.
func TestADeadFireFinishesNothing(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: 8\ndishes: [{cut: turkey-breast, weight: 6 lb, prep: [injected]}]\n")
	const log = "time,dish,kind,value\n2027-07-03 13:40,,lit,\n2027-07-03 14:20,turkey-breast,on,\n2027-07-03 15:00,,grate,340 F\n2027-07-03 16:00,turkey-breast,core,101 F\n2027-07-03 16:05,,fire-out,\n"
	q := plantest.Revised(t, p, log, "2027-07-03 17:40")
	off, ok := q.Dishes[0].Batches[0].Milestone(schedule.MilestoneTakeOff)
	if lit := q.RevisedAt.Add(20 * time.Minute); !ok || off.Window.Early.Before(lit) {
		t.Errorf("off from %v on, and no fire burns before %v", off.Window.Early, lit)
	}
}
