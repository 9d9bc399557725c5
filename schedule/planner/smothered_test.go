package planner_test

import (
	"fmt"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

const smotheredChickens = "  - {id: chicken, cut: chicken, weight: 4.5 lb, count: 2, prep: []}\n"

// The clock of no heat runs from when both vents were shut under raw meat, and not from when somebody
// found the grate cold: it cools by physics, and nobody needs to have read it. It had 35 min where over an
// hour was due (from 268 F it is at 200 F after 10 min, at 170 F after 17, by the 26 min of a shut shell), and none at all before it was read.
func TestShutVentsStartTheClock(t *testing.T) {
	log := "2027-07-03 15:13,,lit,\n2027-07-03 15:34,,vents,both open\n2027-07-03 15:48,,grate,372 F\n2027-07-03 15:50,chicken,on,\n2027-07-03 17:05,,grate,268 F\n2027-07-03 17:06,chicken,core,84 F\n2027-07-03 17:10,,vents,both shut\n"
	for _, of := range []struct {
		more, now string
		least     float64 // minutes without heat
		words     string
	}{
		{"2027-07-03 18:30,,grate,150 F\n", "18:31", 60, "The fire is out: the grate was at 150 °F"},
		{"", "18:31", 60, "both vents were shut at 5:10 PM"},
		{"", "18:05", 30, ""},
		{"2027-07-03 18:29,,vents,both open\n", "18:31", 60, "both vents were shut at 5:10 PM"},
		{"2027-07-03 17:55,,vents,both open\n2027-07-03 18:20,,grate,310 F\n", "18:31", 0, ""},
	} {
		q := trouble{served("18:00") + "quiet: []\n", smotheredChickens, log + of.more, "2027-07-03 " + of.now}.revised(t)
		if of.least == 0 {
			q.lacks(t, "fire-died", "fire-out", "fire-out-over")
			continue
		}
		if of.words != "" {
			q.wants(t, "fire-died", of.words)
		}
		spent := 0.0
		for _, f := range q.Findings {
			if f.Code == "fire-out" {
				spent = without(t, f.Text)
			}
		}
		if spent < of.least || spent > of.least+15 {
			t.Errorf("%s %s: %v min without heat, want %v or a little more", of.more, of.now, spent, of.least)
		}
		steered := 0
		for _, s := range q.Steps {
			if s.Kind == schedule.StepSetVents && !s.Done {
				steered++
			}
		}
		if steered > 1 || of.words == "" && steered == 0 {
			t.Errorf("%s %s: %d orders for the vents", of.more, of.now, steered)
		}
	}
}

// without reads "It has had 50 min without heat", minutes.
func without(t *testing.T, text string) float64 {
	t.Helper()
	var h, m int
	_, after, _ := strings.Cut(text, "It has had ")
	if _, err := fmt.Sscanf(after, "%d hr %d min", &h, &m); err != nil {
		h, m = 0, 0
		if _, err := fmt.Sscanf(after, "%d min", &m); err != nil {
			_, _ = fmt.Sscanf(after, "%d hr", &h)
		}
	}
	return float64(60*h + m)
}

// Raw meat that lay out before it went on is told of by a line before its put-on: past two hours, or one above 90 F
// (usda_danger_zone), it is thrown away, cooked on or not; less counts on. Such a line made the whole log dead, or was set aside.
func TestRawMeatThatLayOutIsNotCooked(t *testing.T) {
	lit := "2027-07-03 15:13,,lit,\n"
	on := "2027-07-03 15:50,chicken,on,\n2027-07-03 16:00,,grate,360 F\n"
	for _, of := range []struct{ log, now, code, words string }{
		{"2027-07-03 13:00,chicken,counter,\n" + lit, "15:14", "raw-out-over", "throw it away, and do not cook it"},
		{"2027-07-03 13:00,chicken,counter,\n" + lit + on, "16:01", "raw-out-over", "from 1:00 PM, for 2 hr 4"},
		{"2027-07-03 13:00,chicken,core,72 F\n" + lit + on, "16:01", "raw-out-over", "throw it away"},
		{"2027-07-03 13:00,chicken,counter,\n", "14:00", schedule.StandsOpen, "onto the hot grate by 3:00 PM"},
		{"2027-07-03 14:50,chicken,counter,\n" + lit + on, "16:01", schedule.HeatLost, "counts on from that"},
		{"2027-07-03 13:00,chicken,counter,\n2027-07-03 13:20,chicken,chilled,\n" + lit + on, "16:01", "", ""},
	} {
		q := trouble{served("18:00") + "quiet: []\n", smotheredChickens, of.log, "2027-07-03 " + of.now}.revised(t)
		if of.code == "" {
			q.lacks(t, "raw-out-over", schedule.HeatLost, schedule.StandsOpen)
			continue
		}
		q.wants(t, of.code, of.words)
		if of.code == "raw-out-over" {
			q.unserved(t)
		} else {
			q.lacks(t, "raw-out-over")
		}
	}
}

// The rest in the open that the plan asks for rings no alarm of its own: a brisket that was put away as told, or sooner, is
// not to be measured for that. What stood far longer than that is.
func TestTheRestThatWasAskedForRingsNoAlarm(t *testing.T) {
	log := "2027-07-03 00:10,,lit,\n2027-07-03 00:40,brisket,on,\n2027-07-03 06:00,brisket,core,160 F\n2027-07-03 06:05,brisket,wrapped,paper\n2027-07-03 10:30,brisket,core,203 F\n2027-07-03 10:31,brisket,pulled,\n"
	for _, of := range []struct {
		in   string
		asks bool
	}{{"11:15", false}, {"11:40", false}, {"12:29", true}} {
		q := trouble{served("17:00") + "quiet: []\n", troubledBrisket, log + "2027-07-03 " + of.in + ",brisket,to-oven,170 F\n", "2027-07-03 " + of.in}.revised(t)
		asked := false
		for _, f := range q.Findings {
			asked = asked || strings.Contains(f.Text, "nothing tells of heat before")
		}
		if asked != of.asks {
			t.Errorf("put away at %s: asks for its surface: %t", of.in, asked)
		}
	}
}

// Nobody is sent to the grate on waking for a core that is off the fire, nor told what it is done at.
func TestWakingAsksForNoCoreThatIsOff(t *testing.T) {
	day := plantest.Plan(t, "serve: {date: 2027-08-21, time: \"18:00\", tz: America/Chicago}\ngrill: {kind: upright, diameter: 18.5 in, levels: 2}\nguests: 9\nweather: {air: 84 F, night: 70 F}\nbox: usual\ndishes:\n  - {cut: brisket, weight: 11 lb, prep: [], level: 275 F}\n")
	q := plantest.Revised(t, day, "time,dish,kind,value\n2027-08-21 01:30,,lit,\n2027-08-21 02:15,,grate,270 F\n2027-08-21 02:16,brisket,on,\n2027-08-21 07:00,brisket,core,164 F\n2027-08-21 07:10,brisket,wrapped,\n2027-08-21 10:30,brisket,core,204 F\n2027-08-21 10:31,brisket,pulled,\n2027-08-21 11:00,brisket,boxed,cooler\n", "2027-08-21 11:01")
	plantest.Judge(t, q)
	for _, s := range q.Steps {
		if s.Kind == schedule.StepWaking && !s.Done {
			t.Errorf("%s: %s", s.At, s.Text)
		}
	}
}
