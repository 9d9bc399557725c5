package planner_test

import (
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// A plan that a cook kept from each edition of the model is read and revised by this one.
// The first edition's party, a brisket of 12 lb with a night's sleep before, is no longer
// promised at 90 %: the meat is on the fire all the same, and the cook is told.
func TestPlansOfEachEditionAreRevised(t *testing.T) {
	for _, c := range []struct {
		file string
		told bool
	}{{"model_1", true}, {"model_2", true}, {"model_3", true}, {"model_4", true}, {"model_5", true}, {"model_6", true}, {"model_7", false}} {
		kept, err := schedule.ReadPlan([]byte(plantest.ReadFile(t, "testdata/editions/"+c.file+".json")))
		if err != nil {
			t.Fatal(err)
		}
		on := plantest.StepAt(t, kept, schedule.StepPutOn, "brisket").Format("2006-01-02T15:04:05Z07:00")
		log := "time,dish,kind,value\n" + on + ",brisket,on,\n2027-07-03T11:00:00-05:00,brisket,core,139 F\n"
		p := plantest.Revised(t, kept, log, "2027-07-03 11:05")
		_, told := plantest.Finding(p, "other-model")
		if told != c.told {
			t.Errorf("%s: told of another edition: %t, want %t", c.file, told, c.told)
		}
		off := plantest.TakeOff(t, p, "brisket")
		if p.Provenance.Model == "" || p.ID != kept.ID || !off.Expected.After(p.Log[len(p.Log)-1].At) {
			t.Errorf("%s: model %q, id %s for %s, off at %v", c.file, p.Provenance.Model, p.ID, kept.ID, off)
		}
		t.Logf("%s: %d findings, chance %.2f, off %v to %v", c.file, len(p.Findings), p.Chance.All, off.Early, off.Late)
	}
}
