package planner_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

const lidOffAtNight = "2027-07-02 21:20,,lit,\n2027-07-02 22:00,butt,on,\n2027-07-03 02:30,butt,core,144 F\n2027-07-03 02:30,,grate,251 F\n2027-07-03 03:10,,lid-opened,\n2027-07-03 04:58,,lid-closed,\n2027-07-03 04:58,butt,core,134 F\n2027-07-03 05:00,,grate,150 F\n"

// The clock of time without heat is a deadline that does not move with the hour of the
// question, and past it the answer is another one. It was "1 hr 36 min" at 5:20 and at 6:01.
func TestTimeWithoutHeatIsADeadline(t *testing.T) {
	c := trouble{served("14:00") + "quiet: []\n", troubledButt, lidOffAtNight, "2027-07-03 05:02"}
	for _, c.now = range []string{"2027-07-03 05:02", "2027-07-03 05:20"} {
		q := c.revised(t)
		q.wants(t, "fire-out", "read the grate by 5:22 AM", "oven at 325 °F", "too soon after that to count")
		q.lacks(t, schedule.LidWasOff) // it says the same
	}
	c.now = "2027-07-03 06:01"
	past := c.revised(t)
	past.unserved(t)
	past.wants(t, "fire-out-over", "Read the grate and measure Pork butt now", "over at 5:22 AM unless the fire was hot again")
	c.log += "2027-07-03 05:19,,grate,240 F\n"
	hot := c.revised(t)
	hot.wants(t, schedule.HeatLost, "without heat")
	hot.lacks(t, "fire-out", "fire-out-over")

	c = trouble{served("14:00") + "quiet: []\n", troubledButt, "2027-07-02 21:20,,lit,\n2027-07-02 22:00,butt,on,\n2027-07-03 00:30,butt,core,110 F\n2027-07-03 00:30,,grate,251 F\n2027-07-03 01:00,,fire-out,\n2027-07-03 01:30,butt,core,118 F\n", ""}
	var by []string
	for _, c.now = range []string{"2027-07-03 01:40", "2027-07-03 02:20"} {
		f, _ := plantest.Finding(c.revised(t).Plan, "fire-out")
		by = append(by, clockIn(t, f.Text, "into heat by").String())
	}
	if by[0] != by[1] || by[0] < "2h45m" || by[0] > "3h30m" { // 2 hours from the cold grate, which has some heat at first
		t.Errorf("into heat by %v", by)
	}
	c.now = "2027-07-03 03:40"
	c.revised(t).wants(t, "fire-out-over", "hrow it away")
}

// What was taken off the heat undone has a deadline too.
func TestWhatIsTakenOffUndoneHasADeadline(t *testing.T) {
	c := trouble{served("14:00") + "quiet: []\n", troubledButt, "2027-07-02 21:20,,lit,\n2027-07-02 22:00,butt,on,\n2027-07-03 02:30,butt,core,134 F\n2027-07-03 02:31,butt,stopped,\n", ""}
	for _, c.now = range []string{"2027-07-03 02:35", "2027-07-03 04:00"} {
		c.revised(t).wants(t, schedule.StandsOpen, "by 4:31 AM at the very latest")
	}
	c.now = "2027-07-03 04:40"
	late := c.revised(t)
	late.lacks(t, schedule.StandsOpen)
	late.unserved(t)
}

// What is in the kitchen oven needs no fire: nobody feeds one, rebuilds it or moves its vents.
func TestWhatIsInTheOvenNeedsNoFire(t *testing.T) {
	for _, of := range []string{",,fire-out,", ",,grate,150 F", ",,grate,310 F", ",,vents,\"top 1/2, bottom 1/2\"\n2027-07-03 07:31,,grate,215 F"} {
		q := trouble{served("16:00") + "quiet: []\n", troubledButt, "2027-07-03 00:10,,lit,\n2027-07-03 00:40,butt,on,\n2027-07-03 04:00,butt,core,140 F\n2027-07-03 04:00,,grate,250 F\n2027-07-03 06:00,butt,core,160 F\n2027-07-03 06:05,butt,wrapped,foil\n2027-07-03 06:30,butt,to-oven,275 F\n2027-07-03 07:30" + of + "\n", "2027-07-03 07:35"}.revised(t)
		q.lacks(t, "fire-died", "grate-off-level", "grate-drifts", "grate-doubted", "gauge-only")
		shut := 0
		for _, s := range q.Steps {
			switch {
			case s.Done:
			case s.Kind == schedule.StepCloseDown:
				shut++
			case slices.Contains([]schedule.StepKind{schedule.StepRefuel, schedule.StepCheckFire, schedule.StepSetVents}, s.Kind) && !strings.HasPrefix(s.Text, "Leave this out"):
				t.Errorf("%s: %s", of, s.Text)
			}
		}
		want := 1 // an hour after it went indoors nobody has logged its vents shut
		if strings.Contains(of, "fire-out") {
			want = 0
		}
		if shut != want {
			t.Errorf("%s: told %d times to shut the grill", of, shut)
		}
	}
}

// What its history condemns is not told to go back on the heat because it was not done either.
func TestWhatIsCondemnedDoesNotGoBack(t *testing.T) {
	q := trouble{served("14:00") + "quiet: []\n", troubledButt, "2027-07-02 21:20,,lit,\n2027-07-02 22:00,butt,on,\n2027-07-03 00:30,butt,core,110 F\n2027-07-03 00:30,,grate,251 F\n2027-07-03 01:00,,fire-out,\n2027-07-03 01:30,butt,core,118 F\n2027-07-03 04:30,butt,core,104 F\n2027-07-03 04:31,butt,pulled,\n", "2027-07-03 04:40"}.revised(t)
	q.wants(t, "fire-out-over", "hrow it away")
	q.lacks(t, schedule.OffUndone, schedule.OffUnread)
	q.unserved(t)
}
