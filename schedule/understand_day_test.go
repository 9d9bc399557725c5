package schedule_test

import (
	"testing"
	"time"

	"example.com/cookday/schedule"
)

// A day named by the week is the next one until something is noted; then it is that of its log,
// and a Saturday that is past does not leap a week.
func TestTheDayOfTheWeekIsThatOfTheLog(t *testing.T) {
	const request = "serve: Saturday 6 PM, Chicago\ngrill: kettle 22 in\nguests: 8\ndishes: [pork butt 8 lb, corn]\n"
	on := func(day, hour int) time.Time { return time.Date(2026, 12, day, hour, 0, 0, 0, time.UTC) } // December 5 is a Saturday
	const undated = "time,dish,kind,value\n07:55,pork butt,on,\n"
	for _, c := range []struct {
		now  time.Time
		log  string
		want string
	}{
		{on(2, 16), "", "2026-12-05"},
		{on(5, 9), "", "2026-12-05"},
		{on(5, 9), undated, "2026-12-05"},
		{on(6, 1), undated, "2026-12-05"},
		{on(7, 20), undated, "2026-12-05"},
		{on(4, 22), undated, "2026-12-05"},
		{on(9, 12), "time,dish,kind,value\n2026-12-05T07:55:00Z,pork butt,on,\n", "2026-12-05"},
		{on(20, 12), "time,dish,kind,value\n2026-12-04T23:55:00Z,pork butt,on,\n", "2026-12-05"},
		{on(9, 12), "", "2026-12-12"},
	} {
		r, err := schedule.UnderstandWithLog([]byte(request), c.now, []byte(c.log))
		if err != nil || r.Serve.Date.String() != c.want {
			t.Errorf("at %s with %q: %v %v, want %s", c.now, c.log, err, r.Serve.Date, c.want)
		}
	}
	if _, err := schedule.UnderstandWithLog([]byte("serve: tomorrow 6 PM, Chicago\ngrill: kettle 22 in\nguests: 8\ndishes: [pork butt 8 lb]\n"), on(5, 9), []byte(undated)); err == nil {
		t.Error("tomorrow is another day each day")
	}
}
