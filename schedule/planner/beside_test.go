package planner_test

import (
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

const chickenDay = `format: 1
serve: {date: 2027-08-14, time: "17:30", tz: America/New_York}
grill: kettle 26 in
weather: {air: 88 F, wind: 4 mph}
dishes:
`

// What has skin and bone, or is whole, is black over the coals before it is done: it lies beside
// them in one load where it fits, and over them where that is asked for. Boneless thighs and
// wings go over them (guide-A, guide-D and newspaper-US of direct.csv).
func TestWhatBurnsOverTheCoalsLiesBeside(t *testing.T) {
	for dish, direct := range map[string]bool{
		"{name: Bird, cut: chicken-thigh, count: 16, prep: []}":              false,
		"{name: Bird, cut: chicken-leg, count: 6, prep: []}":                 false,
		"{name: Bird, cut: whole-fish, count: 3, weight: 12 oz}":             false,
		"{name: Bird, cut: boneless thighs, count: 8, prep: []}":             true,
		"{name: Bird, cut: chicken-thigh, count: 6, prep: [], zone: direct}": true,
	} {
		p := plantest.Plan(t, chickenDay+"  - "+dish+"\n  - {cut: hot-dog, count: 20}\n")
		d, _ := p.Dish("bird")
		if n := len(d.Batches); n != 1 || d.Batches[0].Stages[0].Direct != direct {
			t.Errorf("%s: %d loads, over the coals: %t", dish, n, d.Batches[0].Stages[0].Direct)
		}
	}
}

// A roast stands no longer than half an hour, as it is expected, between the slow side and its
// sear, where its reserve for a slow day once had it stand for two, below its minimum; the reserve is in
// its rest.
func TestASearedRoastDoesNotStand(t *testing.T) {
	p := plantest.Plan(t, `format: 1
serve: {date: 2027-12-25, time: "17:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 26 in, fuel: lump}
weather: {air: 19 F, wind: 11 mph}
oven: yes
dishes:
  - {name: Roast, cut: rib-roast-bone-in, weight: 8 lb, target: {final: 132 F}, level: 250 F, finish: sear}
`)
	off, sear := plantest.FirstAt(p, schedule.StepTakeOff, "roast"), plantest.FirstAt(p, schedule.StepSear, "roast")
	if stands := sear.Sub(off); stands < 0 || stands > 30*time.Minute {
		t.Errorf("off at %v, seared at %v", off, sear)
	}
	for _, s := range plantest.StepsOf(p, schedule.StepTakeOff, "roast")[:1] {
		if !strings.Contains(s.Text, "Early? Change the fire and sear it sooner.") {
			t.Error(s.Text)
		}
	}
	d, _ := p.Dish("roast")
	if d.Chance < 0.6 {
		t.Errorf("in time with %.2f", d.Chance)
	}
}

// Corn takes longer over a cooler fire, and a name that means more than is planned says so once.
func TestWhatGoesByTheClockKnowsTheHeat(t *testing.T) {
	minutes := func(level string) float64 {
		p := plantest.Plan(t, chickenDay+"  - {cut: corn, count: 2, level: "+level+"}\n  - {name: Smash burgers, cut: burger, count: 4}\n")
		if f, said := plantest.Finding(p, "planned-plain"); !said || !strings.Contains(f.Text, "griddle") {
			t.Errorf("%v", p.Findings)
		}
		d, _ := p.Dish("corn")
		return d.Batches[0].Stages[0].Minutes.Expected
	}
	if hot, mild := minutes("400 F"), minutes("350 F"); mild < 1.1*hot {
		t.Errorf("%.0f min at 350 F, %.0f at 400 F", mild, hot)
	}
}

// A day that cannot be had on the coals that are asked for is followed on those that it has.
func TestADayOnOtherCoalsThanAskedIsFollowed(t *testing.T) {
	p := plantest.Plan(t, chickenDay+"  - {cut: chicken-leg, count: 4}\n  - {cut: steak, count: 2, zone: direct}\nlayout: banked\n")
	q := plantest.Revised(t, p, "time,dish,kind,value\n", p.LightAt.Add(-time.Hour).Format("2006-01-02 15:04"))
	if !q.Feasible || len(q.Phases) == 0 {
		t.Errorf("%v", q.Findings)
	}
}

// A butt with a target at which it comes apart is pulled, as one without a target is; salmon in
// fillets is portions, and ears of corn are not eaten in six sittings.
func TestWordsOfTheKitchen(t *testing.T) {
	p := plantest.Plan(t, chickenDay+"  - {name: Butt, cut: pork-butt, weight: 6 lb, target: 203 F}\n  - {name: Salmon, cut: salmon fillets, count: 4}\n")
	if s := plantest.StepsOf(p, schedule.StepSlice, "butt"); len(s) != 1 || !strings.HasPrefix(s[0].Text, "Pull") {
		t.Errorf("%v", s)
	}
	if d, _ := p.Dish("salmon"); d.Cut != "fish-fillet" || d.Count != 4 {
		t.Errorf("%s, %d", d.Cut, d.Count)
	}
	q := plantest.Plan(t, strings.Replace(chickenDay, "26 in", "22 in", 1)+"  - {cut: pork-tenderloin, count: 3}\n  - {cut: sausage, count: 20}\n  - {cut: corn, count: 18}\n")
	for _, r := range q.Remedies {
		if strings.Contains(r.Text, "four sittings") || strings.Contains(r.Text, "five sittings") || strings.Contains(r.Text, "six sittings") {
			t.Error(r.Text)
		}
	}
}
