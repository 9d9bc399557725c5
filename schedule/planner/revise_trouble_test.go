package planner_test

import (
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// What the readings may show, each found and said, and not averaged in: the
// take-off stays within half an hour of what it is without them. Cases are
// common practice, no source.
func TestRoughReadingsAreFoundOut(t *testing.T) {
	p := plantest.Day(t, plantest.ReadFile(t, "testdata/logs/brisket-alone.yaml"))
	good := "time,dish,kind,value\n08:00,brisket,on,\n09:30,brisket,core,80 °F\n10:30,brisket,core,118 °F\n"
	plain := plantest.TakeOff(t, plantest.Revised(t, p, good, "2027-07-03 11:30"), "brisket").Expected
	for _, c := range []struct{ name, log, code, words string }{
		{"probe in the air", "11:00,brisket,core,262 °F\n", "probe-in-air", "come out"},
		{"probe on the grate from the start", "10:35,brisket,core,240 °F\n", "probe-in-air", "metal"},
		{"probe fell out", "11:00,brisket,core,75 °F\n", "probe-fell-out", "fallen out"},
		{"probe against cold meat", "11:00,brisket,core,88 °F\n", "probe-cold", "cold piece"},
		{"probe near a bone", "11:00,brisket,core,182 °F\n", "probe-hot", "bone"},
	} {
		q := plantest.Revised(t, p, good+c.log, "2027-07-03 11:30")
		f, ok := plantest.Finding(q, c.code)
		if !ok || !strings.Contains(f.Text, c.words) {
			t.Errorf("%s: finding %q missing or without %q; there are %v", c.name, c.code, c.words, q.Findings)
		}
		if moved := plantest.TakeOff(t, q, "brisket").Expected.Sub(plain).Minutes(); moved > 30 || moved < -30 {
			t.Errorf("%s: the reading moved the take-off by %.0f min", c.name, moved)
		}
	}
}

func TestTheFireAndSilenceAreSaid(t *testing.T) {
	p := plantest.Day(t, plantest.ReadFile(t, "testdata/logs/brisket-alone.yaml"))
	const head = "time,dish,kind,value\n08:00,brisket,on,\n"
	for _, c := range []struct{ name, log, now, code, words string }{
		{"no reading", "", "2027-07-03 11:00", "no-readings", "slow end"},
		{"a gap", "09:00,brisket,core,60 °F\n09:30,brisket,core,80 °F\n", "2027-07-03 12:30", "readings-stopped", "9:30 AM"},
		{"fire dying", "10:00,,grate,270 °F\n10:30,,grate,240 °F\n11:00,,grate,205 °F\n", "2027-07-03 11:00", "fire-died", "falling since about 10:00"},
		{"fire told out", "10:00,,fire-out,\n", "2027-07-03 10:40", "fire-died", "out since about 10:00"},
		{"core falling", "10:00,brisket,core,110 °F\n10:30,brisket,core,107 °F\n11:00,brisket,core,104 °F\n", "2027-07-03 11:00", "core-falling", "fallen from 110 °F to 104 °F"},
		{"stall", "11:30,brisket,core,155 °F\n12:30,brisket,core,156 °F\n", "2027-07-03 12:30", "stall", "Nothing is wrong"},
		{"gauge", "10:00,,grate,260 °F\n10:05,,gauge,300 °F\n", "2027-07-03 10:10", "gauge-offset", "40 °F more"},
		{"cool grate", "10:00,,grate,240 °F\n10:30,,grate,242 °F\n", "2027-07-03 10:40", "grate-off-level", "below"},
		{"lid open", "10:00,,lid-opened,\n10:05,,grate,150 °F\n10:40,,grate,272 °F\n", "2027-07-03 10:45", "no-readings", "slow end"},
	} {
		q := plantest.Revised(t, p, head+c.log, c.now)
		f, ok := plantest.Finding(q, c.code)
		if !ok || !strings.Contains(f.Text, c.words) {
			t.Errorf("%s: finding %q missing or without %q; there are %v", c.name, c.code, c.words, q.Findings)
		}
		for _, f := range q.Findings {
			if c.name == "lid open" && (f.Code == "fire-died" || f.Code == "grate-off-level") {
				t.Errorf("%s: %s", c.name, f.Text)
			}
		}
	}
}

// Rules while cooking (usda_danger_zone, fda_3_501_14, fsis_smoking): each history
// gets its caution, which may be that it is outside the published limits.
func TestHistoriesGetTheirCaution(t *testing.T) {
	p := plantest.Day(t, plantest.ReadFile(t, "testdata/logs/brisket-alone.yaml"))
	const head = "time,dish,kind,value\n08:00,brisket,on,\n10:00,brisket,core,110 °F\n"
	const cooked = "time,dish,kind,value\n08:00,brisket,on,\n13:00,brisket,core,203 °F\n13:05,brisket,pulled,\n"
	for _, c := range []struct{ name, log, now, code string }{
		{"fire out for an hour", head + "10:00,,fire-out,\n11:00,,lit,\n", "2027-07-03 11:30", schedule.HeatLost},
		{"fire out for two hours and a half", head + "10:00,,fire-out,\n12:30,,lit,\n", "2027-07-03 12:40", "fire-out-over"},
		{"stopped half-way, for three hours", head + "10:00,brisket,stopped,\n13:00,brisket,restarted,\n", "2027-07-03 13:10", "stopped-over"},
		{"stopped, chilled and restarted", head + "10:00,brisket,stopped,\n10:30,brisket,chilled,\n16:00,brisket,restarted,\n", "2027-07-03 16:10", "partial-cooking"},
		{"on a counter for four hours", cooked + "13:10,brisket,counter,\n14:00,brisket,core,139 °F\n17:00,brisket,core,95 °F\n", "2027-07-03 17:30", "standing-over"},
		{"cooling too slowly in the refrigerator", cooked + "13:10,brisket,chilled,\n14:00,brisket,core,134 °F\n16:40,brisket,core,90 °F\n", "2027-07-03 16:50", "cooling-outside"},
		{"held too cool", cooked + "13:30,brisket,boxed,\n17:00,brisket,outer,132 °F\n", "2027-07-03 17:05", "hold-over"},
	} {
		q := plantest.Revised(t, p, c.log, c.now)
		if _, ok := plantest.Finding(q, c.code); !ok {
			t.Errorf("%s: no finding %q; there are %v", c.name, c.code, q.Findings)
		}
	}
}

// A dish of the log is planned, one that is cancelled falls away, and what was
// done for it stays in the plan.
func TestTheMenuChanges(t *testing.T) {
	p := plantest.Day(t, plantest.ReadFile(t, "testdata/logs/chicken-and-burgers.yaml"))
	q := plantest.Revised(t, p, "time,dish,kind,value\n16:00,,dish-added,\"{\"\"name\"\": \"\"Sausages\"\", \"\"cut\"\": \"\"sausage\"\", \"\"weight\"\": \"\"4 oz\"\", \"\"count\"\": 6}\"\n16:05,burgers,dish-cancelled,\n", "2027-07-03 16:05")
	if plantest.FirstAt(q, schedule.StepPutOn, "sausages").IsZero() || !plantest.FirstAt(q, schedule.StepPutOn, "burgers").IsZero() {
		t.Errorf("steps %v", q.Steps)
	}
	if q.Asked == nil || len(q.Asked.Dishes) != 2 || len(q.Request.Dishes) != 2 || q.ID != p.ID {
		t.Errorf("asked %v, request %v, id %s, was %s", q.Asked, q.Request.Dishes, q.ID, p.ID)
	}
	for _, f := range check.Plan(q) {
		t.Error(f)
	}
}

func TestReviseRefuses(t *testing.T) {
	p := plantest.Day(t, plantest.ReadFile(t, "testdata/logs/brisket-alone.yaml"))
	now := p.ServeAt
	for _, c := range []struct {
		entry schedule.Entry
		want  string
	}{
		{schedule.Entry{At: now.AddDate(0, 0, 1), Kind: schedule.LogLit}, "is after now"},
		{schedule.Entry{At: now, Kind: "sung"}, "is not known"},
		{schedule.Entry{At: now, Kind: schedule.LogCore, Dish: "goose"}, "no dish"},
		{schedule.Entry{At: now, Kind: schedule.LogServingMoved, Value: "tea"}, "no instant"},
	} {
		_, err := planner.Revise(t.Context(), p, []schedule.Entry{c.entry}, now)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v: got %v, want %q", c.entry, err, c.want)
		}
	}
}

// Ribs are done when they have been hot for long enough: their target is a core
// that this fire never gives them, and no reading makes them wait for it.
func TestRibsAreDoneByTheirTenderClock(t *testing.T) {
	p := plantest.Day(t, "format: 1\nserve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\n"+plantest.Kettle22+"dishes:\n  - {id: ribs, cut: spare-ribs, weight: 3 lb}\n")
	planned := plantest.TakeOff(t, p, "ribs")
	on := plantest.StepAt(t, p, schedule.StepPutOn, "ribs")
	log := "time,dish,kind,value\n" + on.Format("2006-01-02 15:04") + ",ribs,on,\n"
	for _, more := range []string{"", on.Add(75*time.Minute).Format("15:04") + ",ribs,core,155 °F\n" + on.Add(135*time.Minute).Format("15:04") + ",ribs,core,172 °F\n"} {
		now := on.Add(140 * time.Minute).Format("2006-01-02 15:04")
		w := plantest.TakeOff(t, plantest.Revised(t, p, log+more, now), "ribs")
		// The first plan's window spans so much; readings do not take a cook out of it.
		if w.Expected.Before(planned.Early) || w.Expected.After(planned.Late) {
			t.Errorf("off at %v, planned between %v and %v, with %q", w.Expected, planned.Early, planned.Late, more)
		}
	}
}

// What is outside the published limits is not served, sliced or looked at any more;
// what is served beside it stays. A fire that is out is rebuilt at once, in quiet
// hours too, but not for food that must not be eaten.
func TestWhatMustNotBeServedIsWithdrawn(t *testing.T) {
	p := plantest.Day(t, plantest.ReadFile(t, "testdata/logs/brisket-alone.yaml")+"  - {name: Chicken, cut: chicken-spatchcock, weight: 4 lb, serve: \"18:00\"}\n")
	log := "time,dish,kind,value\n08:00,brisket,on,\n10:00,brisket,core,110 °F\n10:00,brisket,stopped,\n13:10,brisket,restarted,\n"
	q := plantest.Revised(t, p, log, "2027-07-03 13:20")
	for _, f := range check.Plan(q) {
		t.Error(f)
	}
	for _, s := range q.Steps {
		switch {
		case s.Done:
		case s.Dish == "brisket" && (s.Kind == schedule.StepSlice || s.Kind == schedule.StepLook || !strings.Contains(s.Text, "throw it away")):
			t.Errorf("%s: %s", s.Kind, s.Text)
		case s.Kind == schedule.StepServe && s.Text != "Serve: Chicken. Do not serve Brisket: outside the published limits.":
			t.Error(s.Text)
		}
	}
	if f, _ := plantest.Finding(q, "stopped-over"); !strings.Contains(f.Text, "Throw it away") {
		t.Errorf("finding %q", f.Text)
	}
}

func TestADeadFireIsRebuiltAtOnce(t *testing.T) {
	p := plantest.Day(t, plantest.ReadFile(t, "testdata/logs/overnight.yaml"))
	const head = "time,dish,kind,value\n2027-07-02 22:00,butt,on,\n2027-07-03 02:00,butt,core,118 °F\n2027-07-03 03:00,,fire-out,\n"
	rebuild := func(q schedule.Plan) bool {
		for _, s := range q.Steps {
			if s.Kind == schedule.StepRefuel && s.At.Equal(*q.RevisedAt) && strings.HasPrefix(s.Text, "Rebuild the fire now") {
				return true
			}
		}
		return false
	}
	q := plantest.Revised(t, p, head, "2027-07-03 04:00")
	for _, f := range check.Plan(q) {
		t.Error(f)
	}
	if !rebuild(q) {
		t.Error("the fire is not rebuilt")
	}
	if q = plantest.Revised(t, p, head, "2027-07-03 06:00"); rebuild(q) { // 3 h, of which the grate was hot for half an hour: outside the published limits
		t.Error("a fire for food that must not be served")
	}
}

// A dish without a word is asked after, with a deadline, while it may still be on.
func TestASilentDishIsAskedAfter(t *testing.T) {
	p := plantest.Day(t, plantest.ReadFile(t, "testdata/logs/chicken-and-burgers.yaml"))
	f, _ := plantest.Finding(plantest.Revised(t, p, "time,dish,kind,value\n", "2027-07-03 17:50"), schedule.OffUnread)
	if !strings.HasPrefix(f.Text, "Is Chicken off?") || !strings.Contains(f.Text, "before 6:00 PM") {
		t.Errorf("finding %q", f.Text)
	}
}

// A reading that fits another dish on the fire is said to be of that: a probe that was
// pushed into the neighbor.
func TestAReadingOfAnotherDishIsNamed(t *testing.T) {
	p := plantest.Party(t, "../..")
	q := plantest.Revised(t, p, "time,dish,kind,value\n07:54,brisket,on,\n11:30,brisket,core,150 F\n15:00,brisket,core,172 F\n16:20,chickens,on,\n17:00,,grate,370 F\n17:00,chickens,core,112 F\n17:05,brisket,core,118 F\n", "2027-07-03 17:06")
	for _, f := range q.Findings {
		if strings.Contains(f.Text, "118 °F") && strings.Contains(f.Text, "Chickens") {
			return
		}
	}
	t.Errorf("the chickens are not named: %v", q.Findings)
}
