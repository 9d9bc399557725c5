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

// A core that has risen since dusk proves no fire at dawn: 110 F where 170 F was foretold is
// asked about, with the clock of a dead fire; a cold grate dates it hours back and not to
// when it was seen. Before, both were taken for a slow cook.
func TestARiseProvesNoFire(t *testing.T) {
	p := plantest.Plan(t, `format: 1
serve: {date: 2027-07-03, time: "13:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
oven: {hold: 170 F}
overnight: true
dishes: [{name: Brisket, cut: brisket, weight: 12 lb}]
`)
	for _, evening := range []string{"75 F", "98 F"} {
		log := "time,dish,kind,value\n2027-07-02 20:10,,lit,\n2027-07-02 20:45,Brisket,on,\n2027-07-02 22:50,,grate,255 F\n2027-07-02 22:50,Brisket,core," + evening + "\n2027-07-03 05:05,Brisket,core,110 F\n"
		q := plantest.Revised(t, p, log, "2027-07-03 05:06")
		if _, asked := plantest.Finding(q, schedule.ReadingOpen); !asked {
			t.Errorf("%s in the evening: %v", evening, q.Findings)
		}
		q = plantest.Revised(t, p, log+"2027-07-03 05:06,,grate,88 F\n", "2027-07-03 05:07")
		if q.Chance.All > 0 {
			t.Errorf("%s in the evening and a cold grate: chance %.2f", evening, q.Chance.All)
		}
	}
}
