package planner_test

import (
	"fmt"
	"strings"
	"testing"

	"example.com/cookday/schedule"
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
