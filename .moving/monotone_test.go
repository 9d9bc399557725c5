package schedule

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/safety"
)

// drawWay is the bare way of cooking some large piece beside the coals on a day; it
// is empty where that never arrives.
func drawWay(t *rapid.T, weather string, label string) (*day, *item, way) {
	dish := rapid.SampledFrom([]struct {
		cut         string
		least, most float64 // lb
		gratesF     []float64
		band        string
	}{
		{"brisket", 8, 16, []float64{225, 250, 275}, bandLow},
		{"pork-butt", 5, 10, []float64{225, 250, 275}, bandLow},
		{"chicken", 3, 7, []float64{350, 375, 400}, bandHot},
		{"turkey", 10, 18, []float64{325, 350}, bandHot},
		{"rib-roast-boneless", 4, 9, []float64{250, 275}, bandLow},
	}).Draw(t, label+"cut")
	lb := rapid.Float64Range(dish.least, dish.most).Draw(t, label+"lb")
	grate := rapid.SampledFrom(dish.gratesF).Draw(t, label+"grate")
	return wayOn(t, weather, dish.cut, lb, grate, dish.band)
}

func wayOn(t interface{ Fatal(...any) }, weather, cutName string, lb, grateF float64, band string) (*day, *item, way) {
	r, err := Read([]byte(evening(kettle22+"oven: {hold: 170 F}\n"+weather, fmt.Sprintf("{cut: %s, weight: %.4f lb}", cutName, lb))))
	if err != nil {
		t.Fatal(err)
	}
	d, faults := resolve(r.withDefaults())
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	it := &d.items[0]
	ways := d.indirectWays(it, it.lots[0], band, celsius(grateF))
	for _, w := range ways {
		if w.with == "" {
			return d, it, w
		}
	}
	return d, it, way{}
}

// At the same grate a colder or windier day never cooks faster. The model's own grid
// is good for a few parts in a thousand.
func TestHarderDaysNeverCookFaster(t *testing.T) {
	const grid = 0.004
	rapid.Check(t, func(t *rapid.T) {
		air, wind := rapid.Float64Range(12, 95).Draw(t, "air F"), rapid.Float64Range(0, 15).Draw(t, "wind mph")
		colder, windier := rapid.Float64Range(0, 50).Draw(t, "colder"), rapid.Float64Range(0, 15).Draw(t, "windier")
		say := func(air, wind float64) string {
			return fmt.Sprintf("weather: {air: %.3f F, wind: %.3f mph}\n", air, wind)
		}
		_, it, mild := drawWay(t, say(air, wind), "")
		if mild.first.expected == 0 {
			return // never arrives, and a harder day is not asked to
		}
		grateF := fahrenheit(mild.levelC)
		_, _, hard := wayOn(t, say(air-colder, wind+windier), it.cut.Name, float64(it.lots[0].massKg)/0.45359237, grateF, mild.band)
		if hard.first.expected > 0 && hard.modelDone < mild.modelDone*(1-grid) {
			t.Errorf("%s at %.0f F: %.1f min on the mild day, %.1f on the harder", it.cut.Name, grateF, mild.modelDone, hard.modelDone)
		}
	})
}

// Whatever waits, the poor end is never later than the expected one, a better box
// and more pieces in it never cool faster, and an open stand never lengthens a hold.
func TestHoldsAreMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, it, w := drawWay(t, "weather: {air: 60 F}\n", "")
		if w.state == nil || w.pullC < safety.HoldFromC {
			return
		}
		method := rapid.SampledFrom([]string{HoldTent, HoldBox, HoldOven, HoldGrill, HoldCounter}).Draw(t, "method")
		pieces := rapid.IntRange(1, 6).Draw(t, "pieces")
		vent := leastVent(it, method)
		s := *w.state
		usual := d.course(w, method, pieces, vent, expectedEnd).untilOuterBelow(&s, safety.DangerHighC)
		poor := d.hotFor(w, method, pieces, vent)
		if poor > usual+0.01 {
			t.Errorf("%s in %s: %.1f min at the poor end, %.1f expected", it.cut.Name, method, poor, usual)
		}
		if more := d.hotFor(w, method, pieces+1, vent); more < poor-0.01 {
			t.Errorf("%s in %s: %.1f min, %.1f with one more piece", it.cut.Name, method, poor, more)
		}
		better, worse := rapid.Float64Range(2, 5).Draw(t, "u"), rapid.Float64Range(0, 3).Draw(t, "worse")
		hot := func(u float64) float64 {
			s := *w.state
			return course{{0, heat.Boxed(roomC, u)}}.untilOuterBelow(&s, safety.DangerHighC)
		}
		if a, b := hot(better), hot(better+worse); b > a+0.01 {
			t.Errorf("%s: %.1f min at %.2f W/(m2 K), %.1f at %.2f", it.cut.Name, a, better, b, better+worse)
		}
	})
}

func TestTravelIsPartOfTheHold(t *testing.T) {
	// A box carries a brisket through an hour on the road; a burger has no hold.
	p := planOf(t, evening(kettle22, "{name: Brisket, cut: brisket, weight: 12 lb, travel: 1h}"))
	sound(t, p)
	if !p.Feasible {
		t.Fatal(p.Findings)
	}
	serve := stepsOf(p, StepServe, "")
	if len(serve) != 1 || serve[0].At.Format("15:04") != "17:00" || serve[0].Text != "Leave with Brisket, boxed: 1 h on the way." {
		t.Errorf("%v", serve)
	}
	for _, h := range p.Dishes[0].Holds {
		if h.Chosen && h.Method != HoldBox {
			t.Errorf("travels in %s", h.Method)
		}
	}
	p = planOf(t, evening(kettle22, "{name: Burgers, cut: burger, weight: 6 oz, count: 4, travel: 1h}"))
	sound(t, p)
	if _, said := findingOf(p, "travel-short"); !said {
		t.Errorf("burgers travel an hour and nothing is said: %v", p.Findings)
	}
}
