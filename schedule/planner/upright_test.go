package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// A plan for an upright smoker says how many coals, how many of them lit, and where its vents begin; the top one stays a
// quarter open or more, for it is steered by the bottom.
func TestUprightFire(t *testing.T) {
	p := plantest.Day(t, plantest.Evening("grill: {kind: upright, diameter: 18.5 in, water_pan: true}\n", "{name: Ribs, cut: spare-ribs, weight: 3 lb, level: 225 F}"))
	ph := p.Phases[0]
	if b := ph.Burn; b == nil || b.Light < 10 || b.Light > 20 || b.Lay <= b.Light || p.Fuel == nil {
		t.Fatalf("the fire of %+v", ph.Burn)
	}
	if ph.TopOpen < 0.25 || ph.LowOpen <= 0 || !strings.Contains(ph.Vents, "adjust with the bottom vents") {
		t.Errorf("vents %q: top %.2f, bottom %.2f", ph.Vents, ph.TopOpen, ph.LowOpen)
	}
	if lay := stepTexts(p, schedule.StepLayFire); !strings.Contains(lay, "in the coal ring") || strings.Contains(lay, "one side") {
		t.Errorf("laid so: %q", lay)
	}
}

// A heat that a cooker full of water is not likely to hold is told before the day, with how little is known of it.
func TestUprightTooWeak(t *testing.T) {
	document := plantest.Evening("grill: {kind: upright, diameter: 18.5 in, water_pan: true}\n", "{name: Ribs, cut: spare-ribs, weight: 3 lb, level: 300 F}")
	if f, ok := plantest.Finding(plantest.Day(t, document), "fire-weak"); !ok || !strings.Contains(f.Text, "may be anything from") || !strings.Contains(f.Text, "water_pan: false") {
		t.Errorf("%q", f.Text)
	}
	low := strings.Replace(document, "300 F", "225 F", 1)
	if f, ok := plantest.Finding(plantest.Day(t, low), "fire-weak"); ok {
		t.Errorf("at 225 F: %q", f.Text)
	}
}
