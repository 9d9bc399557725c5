package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/unit"
)

const smoker = `grill:
  kind: other
  zones:
    - {name: smoker, width: 20 in, depth: 30 in, min: 200 F, max: 300 F}
    - {name: firebox, width: 14 in, depth: 14 in, min: 400 F, max: 700 F, direct: true}
`

// A described zone that is never as hot as a cut likes it cooks it as hot as it can; its
// owner's name for it is said, and no coals are.
func TestDescribedZonesAreUsedAsTheyAre(t *testing.T) {
	for _, c := range []string{"chicken, weight: 4 lb", "chicken-spatchcock, weight: 4.5 lb", "turkey, weight: 12 lb", "salmon-side, weight: 2.5 lb", "chicken-thigh, weight: 5 oz", "duck, weight: 5 lb"} {
		p := plantest.Plan(t, plantest.Evening(smoker, "{cut: "+c+"}"))
		if !p.Feasible {
			t.Errorf("%s: %v", c, p.Findings)
			continue
		}
		if ph := p.Phases[0]; ph.LevelC > unit.FToC(301) && p.Dishes[0].Batches[0].Stages[0].LevelC < unit.FToC(301) {
			t.Errorf("%s: brought to %.0f C for a zone that has 149", c, ph.LevelC)
		}
		if got := putOnTexts(p); !strings.Contains(got, "zone ") || strings.Contains(got, "coals") {
			t.Errorf("%s: %s", c, got)
		}
	}
	p := plantest.Plan(t, plantest.Evening(smoker, "{cut: st-louis-ribs, weight: 2.8 lb, count: 3}", "{cut: chicken-spatchcock, weight: 4.5 lb}"))
	if !p.Feasible {
		t.Errorf("ribs and a chicken in one smoker: %v", p.Findings)
	}
	// A zone that has the usual level is used at that.
	p = plantest.Plan(t, plantest.Evening(strings.Replace(smoker, "300 F", "400 F", 1), "{cut: chicken-spatchcock, weight: 4.5 lb}"))
	if got := p.Dishes[0].Batches[0].Stages[0].LevelC; got < unit.FToC(349) {
		t.Errorf("at %.0f C where 191 can be had", got)
	}
}

// A plan at an asked level is sound whatever the level: what a cook asks for is no fault
// of the plan.
func TestBirdAtAnAskedLevelIsSound(t *testing.T) {
	for _, level := range []string{"250 F", "275 F", "300 F", "325 F"} {
		for _, c := range []string{"chicken, weight: 4 lb", "turkey-breast, weight: 5 lb"} {
			p := plantest.Plan(t, plantest.Evening(plantest.Kettle22, "{cut: "+c+", level: "+level+"}"))
			if !p.Feasible {
				t.Errorf("%s at %s: %v", c, level, p.Findings)
			}
		}
	}
}

// putOnTexts are the sentences of all put-ons.
func putOnTexts(p schedule.Plan) string {
	var out []string
	for _, s := range plantest.Steps(p, schedule.StepPutOn) {
		out = append(out, s.Text)
	}
	return strings.Join(out, "\n")
}
