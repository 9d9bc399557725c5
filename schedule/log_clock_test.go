package schedule_test

import (
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

// A clock without a date is the nearest one: lines out of their order are of the same
// night, and none lands days away. The plan is on from eight in the evening to two the
// next afternoon; the hours are invented.
func TestClocksOfALog(t *testing.T) {
	loc, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	on := time.Date(2027, 7, 3, 20, 0, 0, 0, loc)
	p := schedule.Plan{TZ: "America/Chicago", ServeAt: time.Date(2027, 7, 4, 14, 0, 0, 0, loc),
		Dishes: []schedule.DishPlan{{ID: "brisket", Name: "Brisket"}},
		Steps:  []schedule.Step{{Kind: schedule.StepPutOn, At: on}}}
	for _, c := range []struct{ name, times, want string }{
		{"in order over midnight", "20:00 01:00 07:00 13:30", "3 20:00, 4 01:00, 4 07:00, 4 13:30"},
		{"in no order", "07:00 01:00 20:00 02:00", "4 07:00, 4 01:00, 3 20:00, 4 02:00"},
		{"a slip of twenty minutes", "08:30 08:12 09:00", "4 08:30, 4 08:12, 4 09:00"},
		{"a little before the light", "19:20 19:50", "3 19:20, 3 19:50"},
		{"dinner is late", "12:00 18:30 21:15", "4 12:00, 4 18:30, 4 21:15"},
		{"a long silence", "20:00 13:00", "3 20:00, 4 13:00"},
		{"midnight", "23:59 00:00 00:01", "3 23:59, 4 00:00, 4 00:01"},
	} {
		log := "time,dish,kind,value\n"
		for _, at := range strings.Fields(c.times) {
			log += at + ",brisket,core,150 F\n"
		}
		entries, err := schedule.ReadLog([]byte(log), p)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		var got []string
		for _, e := range entries {
			got = append(got, e.At.Format("2 15:04"))
		}
		if s := strings.Join(got, ", "); s != c.want {
			t.Errorf("%s: %s, want %s", c.name, s, c.want)
		}
	}
}

// Dinner is moved to the hour that is nearest to its own and still to come.
func TestClockOfAMovedServing(t *testing.T) {
	loc, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	serve := time.Date(2027, 7, 4, 18, 0, 0, 0, loc)
	p := schedule.Plan{TZ: "America/Chicago", ServeAt: serve, Steps: []schedule.Step{{Kind: schedule.StepLight, At: serve.Add(-20 * time.Hour)}}}
	for _, c := range []struct{ at, to, want string }{
		{"08:00", "20:00", "4 20:00"}, {"08:00", "17:00", "4 17:00"}, {"23:00", "18:30", "4 18:30"}, {"17:30", "00:30", "5 00:30"},
	} {
		entries, err := schedule.ReadLog([]byte("time,kind,value\n"+c.at+",serving-moved,"+c.to+"\n"), p)
		if err != nil {
			t.Error(err)
			continue
		}
		got, err := time.Parse(time.RFC3339, entries[0].Value)
		if err != nil || got.In(loc).Format("2 15:04") != c.want {
			t.Errorf("at %s to %s: %v %v, want %s", c.at, c.to, got, err, c.want)
		}
	}
}
