package planner_test

import (
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

const buttAhead = `format: 1
serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
oven: {hold: 170 F}
dishes:
  - {name: Butt, cut: pork-butt, weight: 8 lb, ready: day-before}
  - {name: Hot dogs, cut: hot-dog, weight: 2 oz, count: 8}
`

// A revision of the day of serving keeps what was cooked the day before and how it is
// warmed for the table, at the hour to which serving was moved.
func TestARevisionKeepsTheDayBefore(t *testing.T) {
	p := plantest.Plan(t, buttAhead)
	warmAt := func(q schedule.Plan) string {
		for _, s := range plantest.StepsOf(q, schedule.StepToOven, "") {
			return s.At.Format("15:04")
		}
		return "never"
	}
	const head = "time,dish,kind,value\n"
	const moved = head + "2027-07-03T14:00:00-05:00,,serving-moved,2027-07-03T19:00:00-05:00\n"
	for _, c := range []struct{ log, now, warm string }{
		{head, "2027-07-03 15:00", warmAt(p)},
		{head, "2027-07-02 15:00", warmAt(p)},
		{moved, "2027-07-03 15:00", "17:45"},
		{moved, "2027-07-03 18:30", "17:45"},
	} {
		q := plantest.Revised(t, p, c.log, c.now)
		for _, q := range []schedule.Plan{q, plantest.Revised(t, q, head, c.now)} { // a revision of it keeps it too
			plantest.Judge(t, q)
			if q.Ahead == nil || len(q.Steps) < len(p.Steps)-3 || warmAt(q) != c.warm {
				t.Errorf("at %s: %d steps of %d, warmed from %s on, want %s", c.now, len(q.Steps), len(p.Steps), warmAt(q), c.warm)
			}
		}
	}
}

// A plan of two days is followed on its first day too: the log of that day moves what is
// cooked that day, and both days go on as one plan.
func TestTheDayBeforeIsFollowed(t *testing.T) {
	p := plantest.Plan(t, buttAhead)
	on := plantest.FirstAt(*p.Ahead.Plan, schedule.StepPutOn, "butt")
	log := "time,dish,kind,value\n" + on.Add(40*time.Minute).Format("2006-01-02 15:04") + ",butt,on,\n" + on.Add(4*time.Hour).Format("2006-01-02 15:04") + ",butt,core,120 F\n"
	now := on.Add(4*time.Hour + 2*time.Minute)
	q := plantest.Revised(t, p, log, now.Format("2006-01-02 15:04"))
	plantest.Judge(t, q)
	plantest.Judge(t, *q.Ahead.Plan)
	if b := q.Ahead.Plan; b.Revision == 0 || len(b.Log) != 2 || len(q.Log) != 0 {
		t.Fatalf("revision %d of the day before, %d entries, %d of the day itself", b.Revision, len(b.Log), len(q.Log))
	}
	for _, s := range q.Steps {
		if s.Kind == schedule.StepPutOn && s.At.Equal(on.Add(40*time.Minute)) != s.Done {
			t.Errorf("put on at %v, done %v", s.At, s.Done)
		}
		if s.Kind == schedule.StepTakeOff && s.Done {
			t.Errorf("off at %v, it is %v", s.At, now)
		}
	}
	// Handing in the same log again, with a line more of the next day, keeps both.
	dogs := plantest.FirstAt(p, schedule.StepPutOn, "hot-dogs")
	more := plantest.Revised(t, q, log+dogs.Format("2006-01-02 15:04")+",hot-dogs,on,\n", dogs.Add(2*time.Minute).Format("2006-01-02 15:04"))
	plantest.Judge(t, more)
	if len(more.Ahead.Plan.Log) != 2 || len(more.Log) != 1 {
		t.Errorf("%d entries of the day before, %d of the day itself", len(more.Ahead.Plan.Log), len(more.Log))
	}
}

// What is done the day before is in the refrigerator within two hours of its take-off, within one
// in air above 90 F (usda_danger_zone), whatever hour the evening's chilling was counted from; and
// once it is off, nobody is told to serve what is eaten the next day.
func TestTheDayBeforeChillsByItsOwnClock(t *testing.T) {
	for air, most := range map[string]time.Duration{"70 F": 2 * time.Hour, "95 F": time.Hour} {
		p := plantest.Plan(t, buttAhead+"weather: {air: "+air+", night: 70 F}\n")
		off, in := plantest.FirstAt(*p.Ahead.Plan, schedule.StepTakeOff, "butt"), plantest.FirstAt(*p.Ahead.Plan, schedule.StepChill, "butt")
		if in.Before(off) || in.Sub(off) > most {
			t.Errorf("air of %s: off at %v, chilled at %v", air, off, in)
		}
		at := func(d time.Duration) string { return off.Add(d).Format("2006-01-02 15:04") }
		on := plantest.FirstAt(*p.Ahead.Plan, schedule.StepPutOn, "butt").Format("2006-01-02 15:04")
		log := "time,dish,kind,value\n" + on + ",butt,on,\n" + at(-2*time.Minute) + ",butt,core,203 F\n" + at(-time.Minute) + ",butt,pulled,\n"
		q := plantest.Revised(t, p, log, at(0))
		var chills, looks int
		for _, s := range q.Steps {
			switch {
			case s.Kind == schedule.StepServe && s.At.Before(p.Ahead.ChillAt.Add(time.Minute)):
				t.Errorf("air of %s: %s", air, s.Text)
			case s.Kind == schedule.StepChill && !s.Done && s.At.Sub(off) <= most:
				chills++
			case s.Kind == schedule.StepLook && !s.Done && s.At.Before(off.Add(most+2*time.Hour)) && s.At.After(off):
				looks++
			}
		}
		if chills != 1 || looks != 1 {
			t.Errorf("air of %s, off: %d steps to chill it, %d to look at it then", air, chills, looks)
		}
	}
}
