package planner_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule/internal/plantest"
)

const (
	rawBreast  = "serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: {adults: 8, frail: false}\ndishes: [{cut: turkey-breast, weight: 6 lb, prep: [injected]}]\n"
	rawBurning = "time,dish,kind,value\n2027-07-03 13:40,,lit,\n2027-07-03 14:20,turkey-breast,on,\n2027-07-03 15:00,,grate,340 F\n"
)

// A piece that was raw when its fire died has a clock that begins when the air has stopped
// heating, about 25 min after it, whatever a forecast thinks that it rises to: it does not
// move with the hour of the question, a colder core or another line never gives it longer, and
// nothing gives it longer than no reading at all. It was an hour and more later, and slid.
func TestTheClockOfRawMeatOverADeadFire(t *testing.T) {
	breast := plantest.Plan(t, rawBreast)
	by := func(log, now string) time.Duration {
		t.Helper()
		q := plantest.Revised(t, breast, log, now)
		f, ok := plantest.Finding(q, "fire-out")
		if !ok || !strings.Contains(f.Text, "into heat by") {
			t.Fatalf("%s\nat %s: %v", log, now, q.Findings)
		}
		return clockIn(t, f.Text, "into heat by")
	}
	const out = "2027-07-03 16:05,,fire-out,\n"
	unread := by(rawBurning+out, "2027-07-03 16:40")
	for _, coreF := range []int{60, 101, 134} {
		log := rawBurning + fmt.Sprintf("2027-07-03 16:00,turkey-breast,core,%d F\n", coreF) + out
		first := by(log, "2027-07-03 16:06")
		if first < 18*time.Hour+20*time.Minute || first > 18*time.Hour+35*time.Minute || first > unread {
			t.Errorf("%d °F: by %v, unread by %v", coreF, first, unread)
		}
		for _, now := range []string{"2027-07-03 16:31", "2027-07-03 17:20", "2027-07-03 18:10"} {
			if again := by(log, now); again > first || again < first-2*time.Minute {
				t.Errorf("%d °F: by %v, asked at %s by %v", coreF, first, now, again)
			}
		}
		for name, line := range map[string]string{"a cold grate": ",grate,95 F", "colder than it should be": "turkey-breast,core,112 F", "pushed through": "turkey-breast,coldest,110 F"} {
			log := log + "2027-07-03 17:20," + line + "\n"
			if again := by(log, "2027-07-03 17:31"); again > first {
				t.Errorf("%d °F, %s: by %v, was by %v", coreF, name, again, first)
			}
			q := plantest.Revised(t, breast, log, "2027-07-03 17:31")
			for _, f := range q.Findings {
				if strings.Contains(f.Text, "ignored") {
					t.Errorf("%d °F, %s: %s", coreF, name, f.Text)
				}
			}
		}
	}
	seen := rawBurning + "2027-07-03 16:00,turkey-breast,core,101 F\n2027-07-03 17:20,,grate,95 F\n2027-07-03 17:21,turkey-breast,core,112 F\n"
	if got := by(seen, "2027-07-03 17:31"); got > unread+10*time.Minute {
		t.Errorf("nobody told of the fire: by %v", got)
	}
}

// A core over a dead fire may rise a little by itself, and then it falls: it was told to be at
// 155 °F three hours after it had been read at 101. A probe pushed through the piece that shows
// 140 °F or more stops its clock; a plain one does not.
func TestRawMeatOverADeadFireDoesNotCookOn(t *testing.T) {
	breast := plantest.Plan(t, rawBreast)
	log := rawBurning + "2027-07-03 16:00,turkey-breast,core,101 F\n2027-07-03 16:05,,fire-out,\n"
	for _, now := range []string{"2027-07-03 17:00", "2027-07-03 17:30", "2027-07-03 18:20"} {
		q := plantest.Revised(t, breast, log, now)
		for _, c := range q.Dishes[0].Batches[0].Curve {
			if at := c.At.Format("15:04"); at <= now[11:] && c.LowC > 57 { // 135 °F
				t.Errorf("asked at %s: on the slow side %.0f °C at %s", now, c.LowC, at)
			}
		}
	}
	for line, stops := range map[string]bool{"core,150 F": false, "coldest,150 F": true} {
		q := plantest.Revised(t, breast, log+"2027-07-03 17:20,turkey-breast,"+line+"\n", "2027-07-03 18:35")
		if _, over := plantest.Finding(q, "fire-out-over"); over == stops {
			t.Errorf("%s: %v", line, q.Findings)
		}
	}
}

// What a bird lay raw and out of the refrigerator before it went on counts in its 4 h below 140 °F too:
// they began at the put-on.
func TestRawMinutesCountInTheSlowClock(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-07-04, time: \"18:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 26 in}\nguests: 6\ndishes: [{id: chicken, cut: chicken, weight: 4.5 lb, level: 350 F, prep: []}]\n")
	const on = "2027-07-04 13:15,chicken,on,\n2027-07-04 13:30,,grate,270 F\n2027-07-04 14:40,chicken,core,80 F\n2027-07-04 15:40,chicken,core,112 F\n2027-07-04 16:10,chicken,core,128 F\n"
	for before, over := range map[string]bool{
		"":                                    false,
		"2027-07-04 12:00,chicken,counter,\n": true,
		"2027-07-04 12:00,chicken,counter,\n2027-07-04 12:10,chicken,chilled,\n": false,
	} {
		q := plantest.Revised(t, p, "time,dish,kind,value\n"+before+on, "2027-07-04 16:11")
		f, is := plantest.Finding(q, "slow-over")
		if is != over || over && !strings.Contains(f.Text, "1 hr 15 min that it lay raw and out") {
			t.Errorf("%q: over 4 h %v: %v", before, is, q.Findings)
		}
		if out := q.Dishes[0].Chance == 0; out != over {
			t.Errorf("%q: chance %.3f", before, q.Dishes[0].Chance)
		}
	}
}
