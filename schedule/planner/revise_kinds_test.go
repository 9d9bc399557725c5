package planner_test

import (
	"errors"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// Kinds of rough logs that once led to a plan which breaks a rule, each as short as it
// gets: the answer is sound, or an error that says why there is none.
func TestKindsOfRoughLogs(t *testing.T) {
	p := plantest.Party(t, "../..")
	for _, c := range []struct{ name, log string }{
		{"a wrap that is taken as done before it was due", "2027-07-03 06:33,,serving-moved,20:00\n2027-07-03 06:54,brisket,on,\n"},
		{"wrapped a minute after it went into the oven", "2027-07-03 07:54,brisket,on,\n2027-07-03 09:27,brisket,to-oven,\n2027-07-03 09:28,brisket,wrapped,paper\n"},
		{"wrapped an hour after it went into the oven", "2027-07-03 07:54,brisket,on,\n2027-07-03 09:00,brisket,to-oven,275 F\n2027-07-03 10:00,brisket,wrapped,foil\n"},
		{"a grate read cold before anything is on", "2027-07-03 06:21,,vents,top 1/16\n2027-07-03 06:31,,grate,2 C\n2027-07-03 06:45,brisket,dish-cancelled,\n"},
		{"a fire read cold on the first morning", "2027-07-03 06:12,,vents,\"top 1, bottom 1\"\n2027-07-03 06:22,,unlit-coals,30\n2027-07-03 06:38,,grate,1 C\n"},
		{"a meal served as the first dish goes on", "2027-07-03 05:42,,lit,\n2027-07-03 05:44,burgers,boxed,\n2027-07-03 06:00,chickens,boxed,\n2027-07-03 06:36,,no-fuel,\n2027-07-03 06:44,brisket,on,\n2027-07-03 06:44,chickens,pulled,\n2027-07-03 06:44,,served,\n"},
		{"lit late", "2027-07-03 09:00,,lit,\n"},
		{"lit when the next fire was due", "2027-07-03 15:40,,lit,\n"},
		{"lit shortly before dinner", "2027-07-03 16:40,,lit,\n"},
		{"lit too late for anything to be on before dinner", "2027-07-03 17:00,,lit,\n"},
	} {
		for _, now := range []string{"2027-07-03 06:45", "2027-07-03 10:24", "2027-07-03 17:05", "2027-07-03 18:30", "2027-07-03 22:00", "2027-07-04 08:35", "2027-07-05 03:56"} {
			at, err := time.ParseInLocation("2006-01-02 15:04", now, p.ServeAt.Location())
			if err != nil {
				t.Fatal(err)
			}
			entries, err := schedule.ReadLog([]byte("time,dish,kind,value\n"+c.log), p)
			if err != nil {
				t.Fatal(err)
			}
			if at.Before(entries[len(entries)-1].At) {
				continue
			}
			q, err := planner.Revise(t.Context(), p, entries, at)
			var refused *schedule.InputError
			switch {
			case errors.As(err, &refused):
				t.Logf("%s, at %s: %v", c.name, now, err)
			case err != nil:
				t.Fatal(err)
			}
			for _, f := range check.Plan(q) {
				if err == nil {
					t.Errorf("%s, at %s: %v", c.name, now, f)
				}
			}
		}
	}
}

// What was called off before a fire that was lit late is put on by no revision, and so by
// none at another hour.
func TestACalledOffDishIsNotPutOnTwice(t *testing.T) {
	p := plantest.Party(t, "../..")
	on := func(now string) (at time.Time, done bool) {
		q := plantest.Revised(t, p, "time,dish,kind,value\n2027-07-03 05:59,brisket,dish-cancelled,\n2027-07-03 11:29,,lit,\n", now)
		for _, s := range q.Steps {
			if s.Kind == schedule.StepPutOn && s.Dish == "brisket" && s.Done {
				return s.At, true
			}
		}
		return at, false
	}
	first, was := on("2027-07-03 11:51")
	if then, is := on("2027-07-03 12:51"); was && (!is || !then.Equal(first)) {
		t.Errorf("put on at %v, and an hour later at %v", first, then)
	}
}
