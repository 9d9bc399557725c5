package planner_test

import (
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// A fire that runs 50 F low moves dinner by some hours on the same day: not to the next
// morning, and nothing is cleared off the grate for what comes after it. Before, the vents
// were to be closed two minutes later.
func TestALowFireMovesDinnerOnTheSameDay(t *testing.T) {
	party := plantest.Party(t, "../..")
	for _, log := range []string{
		"time,dish,kind,value\n05:52,,lit,\n06:25,Brisket,on,\n09:30,Brisket,core,140 F\n11:00,Brisket,core,148 F\n12:00,Brisket,core,149 F\n12:00,,grate,225 F\n",
		"time,dish,kind,value\n05:52,,lit,\n06:25,Brisket,on,\n09:30,Brisket,core,140 F\n11:00,Brisket,core,148 F\n12:00,,grate,110 F\n12:00,Brisket,core,138 F\n12:20,,lit,\n12:40,,grate,240 F\n12:40,Brisket,core,137 F\n",
	} {
		p := plantest.Revised(t, party, log, "2027-07-03 12:42")
		if p.ServeAt.YearDay() != party.ServeAt.YearDay() {
			t.Errorf("dinner is at %s", p.ServeAt)
		}
		if f, cleared := plantest.Finding(p, "stands-in-the-way"); cleared {
			t.Error(f.Text)
		}
		off := plantest.StepAt(t, p, schedule.StepTakeOff, "brisket")
		for _, s := range plantest.Steps(p, schedule.StepCloseDown) {
			if s.At.Before(off) {
				t.Errorf("close down at %s, the brisket comes off at %s", s.At, off)
			}
		}
	}
}
