package planner_test

import (
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// Logs that random rough ones found, each cut down to what matters: every revision
// of the party passes Check, and none moves what an earlier one of the same log took
// as done.
func TestRoughDaysAreSound(t *testing.T) {
	p := plantest.Party(t, "../..")
	for _, c := range []struct {
		name, log string
		now       []string
	}{
		{"dinner an hour earlier, and no more word", "07:42,,serving-moved,17:00\n", []string{"07:45", "15:30", "16:40", "19:00"}},
		{"dinner too early to follow", "16:30,,serving-moved,17:00\n", []string{"16:35", "17:10", "19:30"}},
		{"dinner later before a put-on", "15:40,,serving-moved,20:00\n", []string{"15:45", "16:30", "18:30", "21:00"}},
		{"dinner later, and on as if it were not", "07:54,brisket,on,\n08:27,,serving-moved,20:00\n16:07,chickens,on,\n", []string{"09:00", "16:10", "17:00"}},
		{"paper where foil was asked", "07:54,brisket,on,\n12:00,brisket,wrapped,paper\n", []string{"12:05", "13:00"}},
		{"wrapped as it went on", "07:54,brisket,on,\n07:54,brisket,wrapped,foil\n", []string{"08:10"}},
		{"lit four minutes late", "07:27,,lit,\n", []string{"14:46", "15:46", "16:20"}},
		{"lit two hours late, and no more word", "09:26,,lit,\n", []string{"10:00", "17:50", "23:30"}},
		{"into the oven bare", "07:54,brisket,on,\n11:00,brisket,to-oven,250 F\n", []string{"11:05", "16:10"}},
		{"all is off", "07:20,chickens,dish-cancelled,\n07:20,burgers,dish-cancelled,\n08:50,brisket,boxed,\n", []string{"08:53", "09:50"}},
		{"off and no longer wanted", "07:54,brisket,on,\n08:20,brisket,pulled,\n09:50,brisket,dish-cancelled,\n", []string{"08:30", "10:00"}},
		{"a light after food came off", "08:50,brisket,boxed,\n08:54,,lit,\n", []string{"08:52", "08:56"}},
		{"on far too late", "07:54,brisket,on,\n13:00,brisket,pulled,\n17:00,chickens,on,\n", []string{"17:05", "18:30", "20:00"}},
		{"off after dinner", "16:10,chickens,on,\n17:30,chickens,core,150 F\n18:10,chickens,pulled,\n", []string{"17:55", "18:15"}},
		{"chilled, and no word of its put-on", "09:23,brisket,chilled,\n", []string{"10:00", "14:30", "17:40", "23:00"}},
		{"stopped and never restarted", "08:34,brisket,on,\n08:50,brisket,chilled,\n", []string{"09:50", "12:00", "15:50", "17:40", "19:00", "21:38"}},
	} {
		before := p
		for _, now := range c.now {
			at, _ := time.ParseInLocation("2006-01-02 15:04", "2027-07-03 "+now, p.ServeAt.Location())
			var known []schedule.Entry
			entries, err := schedule.ReadLog([]byte("time,dish,kind,value\n2027-07-03 "+c.log), p)
			if err != nil {
				t.Fatal(err)
			}
			for _, e := range entries {
				if !e.At.After(at) {
					known = append(known, e)
				}
			}
			after, err := planner.Revise(t.Context(), before, known, at)
			if err != nil {
				t.Errorf("%s, at %s: %v", c.name, now, err)
				continue
			}
			for _, f := range check.Plan(after) {
				t.Errorf("%s, at %s: %s", c.name, now, f)
			}
			keepsThePast(t, before, after)
			before = after
		}
	}
}

// Odd logs, each of a kind that a drawn log once made unsound: into the oven without another
// word, one reading a day ago, left bare, back on after it was boxed, a grate as cold as the
// yard.
func TestOddLogsAreSound(t *testing.T) {
	p := plantest.Party(t, "../..")
	for _, c := range []struct{ log, now string }{
		{"2027-07-03 08:08,brisket,to-oven,250 F\n", "2027-07-03 10:56"},
		{"2027-07-03 06:47,brisket,wrapped,foil\n07:02,brisket,to-oven,80 F\n", "2027-07-03 10:38"},
		{"2027-07-03 06:48,brisket,coldest,74 F\n", "2027-07-04 17:27"},
		{"2027-07-03 07:58,brisket,wrapped,none\n", "2027-07-04 23:45"},
		{"2027-07-03 07:49,brisket,boxed,\n08:31,brisket,restarted,\n", "2027-07-03 09:25"},
		{"2027-07-03 07:30,,grate,74 F\n07:38,brisket,wrapped,foil\n", "2027-07-03 09:09"},
	} {
		plantest.Revised(t, p, "time,dish,kind,value\n"+c.log, c.now) // it is judged
	}
}

// What was told to follow dinner does, for want of another word: chickens that go on
// two hours later are not taken to be on already.
func TestWhatWasPlannedFollowsDinner(t *testing.T) {
	p := plantest.Party(t, "../..")
	on := plantest.StepAt(t, p, schedule.StepPutOn, "chickens")
	log := "time,dish,kind,value\n2027-07-03 15:40,,serving-moved,20:00\n"
	for now, done := range map[string]bool{"2027-07-03 16:30": false, "2027-07-03 18:30": true} {
		q := plantest.Revised(t, p, log, now)
		for _, s := range q.Steps {
			if s.Kind == schedule.StepPutOn && s.Dish == "chickens" && (s.Done != done || done && !s.At.Equal(on.Add(2*time.Hour))) {
				t.Errorf("at %s: put on at %v, done %t; planned at %v", now, s.At, s.Done, on)
			}
		}
	}
}

// A dish that was put where it is held, here the oven, and then called off was put there:
// the step for it stays.
func TestABoxStaysBoxed(t *testing.T) {
	p := plantest.Party(t, "../..")
	head := "time,dish,kind,value\n"
	boxed := "2027-07-03T08:59:00-05:00,brisket,boxed,\n"
	q := plantest.Revised(t, p, head+boxed, "2027-07-03 09:30")
	r := plantest.Revised(t, q, head+boxed+"2027-07-03T09:40:00-05:00,brisket,dish-cancelled,\n", "2027-07-03 10:00")
	for _, plan := range []schedule.Plan{q, r} {
		steps := plantest.StepsOf(plan, schedule.StepToOven, "brisket")
		if len(steps) != 1 || !steps[0].Done || steps[0].At.Format("15:04") != "08:59" {
			t.Errorf("revision %d: the steps that put the brisket away: %v", plan.Revision, steps)
		}
	}
}
