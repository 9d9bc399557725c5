package assemble_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

func TestPlannedHoldSaysWhatIsLeftAtTheTable(t *testing.T) {
	p := plantest.Party(t, "../../../..")
	for _, dish := range p.Dishes {
		for _, h := range dish.Holds {
			if h.OuterLowC > h.OuterC || h.Chosen && h.CoreC > 0 && len(h.Course) == 0 {
				t.Errorf("%s: %+v", dish.Name, h)
			}
			for _, q := range h.Course {
				if q.At.After(dish.ServeAt) {
					t.Errorf("%s: a hold at %v, served at %v", dish.Name, q.At, dish.ServeAt)
				}
			}
		}
	}
	if p.Dishes[0].DoneEarly == "" {
		t.Error("nothing on a brisket done early")
	}
}

// What may not be held stands no longer than the published clock, and a plan in which it
// may have to says so (usda_danger_zone: 2 hr, 1 hr above 90 °F).
func TestWhatHasNoHoldStandsByTheClock(t *testing.T) {
	for weather, hours := range map[string]float64{"weather: {air: 70 °F}\n": 2, "weather: {air: 95 °F}\n": 1} {
		for _, c := range []string{"pork-belly, weight: 5 lb", "brisket, weight: 12 lb", "spare-ribs, weight: 3.3 lb, level: 275 °F"} {
			p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+weather, "{cut: "+c+", hold: [none]}"))
			if !p.Feasible {
				continue
			}
			early := p.ServeAt.Sub(plantest.Step(t, p, schedule.StepTakeOff, p.Dishes[0].ID).Window.Early).Hours()
			if _, told := plantest.Finding(p, schedule.CodeHoldShort); early > hours+0.5 && !told {
				t.Errorf("%s: off %.1f h before it is served on a fast day, and nothing says so", c, early)
			}
			if f, _ := plantest.Finding(p, schedule.CodeHoldShort); strings.Contains(f.Text, "until about 17:45") {
				t.Errorf("%s: %s", c, f.Text)
			}
		}
	}
}

func TestTravelIsPartOfTheHold(t *testing.T) {
	// A box carries a brisket through an hour on the road; a burger has no hold.
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22, "{name: Brisket, cut: brisket, weight: 12 lb, travel: 1h}"))
	if !p.Feasible {
		t.Fatal(p.Findings)
	}
	serve := plantest.StepsOf(p, schedule.StepServe, "")
	if len(serve) != 1 || serve[0].At.Format("15:04") != "17:00" || serve[0].Text != "Leave with Brisket, packed in the cooler: 1 hr on the way." {
		t.Errorf("%v", serve)
	}
	for _, h := range p.Dishes[0].Holds {
		if h.Chosen && h.Method != schedule.HoldBox {
			t.Errorf("travels in %s", h.Method)
		}
	}
	p = plantest.Plan(t, plantest.Evening(plantest.Kettle22, "{name: Burgers, cut: burger, weight: 6 oz, count: 4, travel: 1h}"))
	if _, said := plantest.Finding(p, "travel-short"); !said {
		t.Errorf("burgers travel an hour and nothing is said: %v", p.Findings)
	}
}
