package planner_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/plantest"
)

// Every cut of the catalogue is planned, or refused with a reason, where only the cut is
// said and its weight, a count, or how many eat.
func TestEveryCutIsPlannedWithTheLeastThatCanBeSaid(t *testing.T) {
	had, not := 0, 0
	for i, c := range cut.All() {
		for k, said := range []string{fmt.Sprintf("weight: %.3f kg", c.Typical), "count: 2", ""} {
			if testing.Short() && (i+k)%4 > 0 {
				continue
			}
			dish, guests := "{cut: "+c.Name+"}", ""
			if said != "" {
				dish = "{cut: " + c.Name + ", " + said + "}"
			} else {
				guests = "guests: 8\n"
			}
			p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+guests+"weather: {air: 70 F, night: 60 F, humidity: 55%, wind: 5 mph}\n", dish)) // all of it: nothing of the day is assumed
			if p.Feasible {
				had++
			} else if not++; !plainlyRefused(p) {
				t.Errorf("%s, %s: no plan, and no reason: %v", c.Name, said, p.Findings)
			}
			d := p.Request.Dishes[0]
			if float64(d.Weight) < c.MinPieceKg-1e-9 || float64(d.Weight) > c.MaxPieceKg+1e-9 || d.Count < 1 {
				t.Errorf("%s, %s: %d of %.2f kg", c.Name, said, d.Count, float64(d.Weight))
			}
			if _, told := plantest.Finding(p, schedule.CodeAssumed); told != (len(d.Assumed) > 0) || said == "" && !told {
				t.Errorf("%s, %s: assumed %v, and told: %t", c.Name, said, d.Assumed, told)
			}
		}
	}
	t.Logf("%d planned, %d not", had, not)
	if not > had/4 {
		t.Errorf("%d of %d cannot be had", not, had+not)
	}
}

func plainlyRefused(p schedule.Plan) bool {
	for _, f := range p.Findings {
		if f.Severity == schedule.Danger && f.Text != "" {
			return true
		}
	}
	return false
}

// What is assumed is told in one breath, and feeds the guests: two meats share 12 adults,
// a side is for all of them.
func TestWhatIsAssumedIsTold(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+"guests: 12\n", "{name: Burgers, cut: burger}", "{name: Thighs, cut: chicken-thigh, count: 6}", "{name: Sausages, cut: sausage}", "{name: Corn, cut: corn}"))
	f, ok := plantest.Finding(p, schedule.CodeAssumed)
	if !ok || !strings.HasPrefix(f.Text, "Assumed: Burgers, ") || !strings.Contains(f.Text, "for the guests, 12") || strings.Count(f.Text, ";") < 3 {
		t.Fatalf("%q", f.Text)
	}
	for i, share := range map[int]float64{0: 4, 2: 4, 3: 12} { // three meats share, corn is for all
		d := p.Request.Dishes[i]
		c, _ := cut.Find(d.Cut)
		if need, has := share*c.ServingKg, float64(d.Weight)*float64(d.Count); has < need-1e-9 || has > need+c.Typical+1e-9 {
			t.Errorf("%s: %.2f kg for %.0f, who eat %.2f", d.Name, has, share, need)
		}
	}
}

// What an edit sets is no longer assumed, and what is assumed comes back from JSON.
func TestAnEditTakesBackWhatWasAssumed(t *testing.T) {
	r := plantest.Request(t, plantest.Evening(plantest.Kettle22+"guests: 8\n", "{cut: brisket}"))
	if d := r.Dishes[0]; !d.Assumes(schedule.AssumedCount) || !d.Assumes(schedule.AssumedWeight) || d.Count != 1 {
		t.Fatalf("%+v", d)
	}
	// 8 adults at a pound each would be 8 lb; no shop sells a whole one below 10 (kitchen.yaml).
	if got := float64(r.Dishes[0].Weight); math.Abs(got-10*0.4536) > 0.05 {
		t.Errorf("%.2f kg for 8", got)
	}
	heavier, err := r.With(schedule.NewEdit("dishes[0].weight", "14 lb"))
	if err != nil || heavier.Dishes[0].Assumes(schedule.AssumedWeight) || !heavier.Dishes[0].Assumes(schedule.AssumedCount) {
		t.Errorf("%v, %+v", err, heavier.Dishes[0])
	}
	if len(r.Dishes[0].Assumed) != 2 {
		t.Error("the edit writes to the request that it was made of")
	}
}
