package planner_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

const (
	kettle26 = "grill: kettle 26 in\n"
	kettle18 = "grill: kettle 18 in\n"
	butt8    = "{name: Butt, cut: pork-butt, weight: 8 lb}"
)

// overnightDay is a shoulder for noon on a grill, with a fire through the night.
func overnightDay(grill, rest string, dishes ...string) string {
	return strings.Replace(plantest.Evening(grill+"overnight: true\n"+rest, dishes...), "18:00", "12:00", 1)
}

// lies fails unless the first fire lies so, and the finding says why.
func lies(t *testing.T, p schedule.Plan, layout, code string) {
	t.Helper()
	if !p.Feasible || len(p.Phases) == 0 {
		t.Fatalf("no plan: %v", p.Findings)
	}
	if got := p.Phases[0].Layout; got != layout {
		t.Errorf("the coals lie %s, want %s", got, layout)
	}
	if _, ok := plantest.Finding(p, code); !ok && code != "" {
		t.Errorf("no finding %s among %v", code, p.Findings)
	}
}

// A ring is laid for a night where it lasts (common practice, no source), and only there: never so that it runs down
// while people sleep, never for a day, never on another grill than a kettle.
func TestRingThroughTheNight(t *testing.T) {
	short := "quiet: [{from: \"23:30\", to: \"04:00\"}]\n"
	for _, c := range []struct{ name, document, layout, code string }{
		{"a large kettle", overnightDay(kettle26, "", butt8), "ring", "layout-ring"},
		{"a short night", overnightDay(plantest.Kettle22, short, butt8), "ring", "layout-ring"},
		{"a usual kettle", overnightDay(plantest.Kettle22, "", butt8), "ring", "layout-ring"},
		{"too small to last", overnightDay(kettle18, "", butt8), "banked", ""},
		{"a day", plantest.Evening(kettle26, "{name: Ribs, cut: spare-ribs, weight: 3 lb, level: 250 F}"), "banked", ""},
		{"a nap", plantest.Evening(kettle26+"quiet: [{from: \"11:00\", to: \"12:00\"}]\n", butt8), "banked", ""},
		{"a box", overnightDay("grill: box 30 x 20 in\n", short, butt8), "banked", ""},
		{"no room in it", overnightDay(plantest.Kettle22, short, "{name: Butts, cut: pork-butt, weight: 8 lb, count: 3}"), "banked", ""},
		{"banked is asked for", overnightDay(kettle26, "layout: banked\n", butt8), "banked", "layout-asked"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := plantest.Day(t, c.document)
			lies(t, p, c.layout, c.code)
			if _, short := plantest.Finding(p, "fire-cannot-last"); short && c.layout == "ring" {
				t.Errorf("a ring that nobody asked for runs down in the night: %v", p.Findings)
			}
		})
	}
}

// A layout may be asked for by name, for the day or for a dish; a cook's other words for it are read.
func TestLayoutAskedFor(t *testing.T) {
	ribs := func(of string) string { return "{name: Ribs, cut: spare-ribs, weight: 3 lb, level: 250 F" + of + "}" }
	for _, c := range []struct{ name, document, layout string }{
		{"for the day", plantest.Evening(plantest.Kettle22+"layout: ring\n", ribs("")), "ring"},
		{"for a dish", plantest.Evening(plantest.Kettle22, ribs(", layout: ring")), "ring"},
		{"by another name", plantest.Evening(plantest.Kettle22, ribs(", layout: snake")), "ring"},
		{"the dish wins", plantest.Evening(plantest.Kettle22+"layout: ring\n", ribs(", layout: banked")), "banked"},
		{"over the coals", plantest.Evening(plantest.Kettle22+"layout: two-zone\n", "{name: Burgers, cut: burger, weight: 6 oz, count: 6}"), "two-zone"},
		{"at a heat that can be had so", plantest.Evening(plantest.Kettle22+"layout: banked\n", "{name: Chicken, cut: whole-chicken, weight: 4 lb, level: 325 F}"), "banked"},
	} {
		t.Run(c.name, func(t *testing.T) { lies(t, plantest.Day(t, c.document), c.layout, "layout-asked") })
	}
}

// What is asked for and cannot be had leaves a plan, and a finding that says why.
func TestLayoutNotHad(t *testing.T) {
	for _, c := range []struct{ name, document, why string }{
		{"no heat of its", plantest.Evening(plantest.Kettle22+"layout: ring\n", "{name: Burgers, cut: burger, weight: 6 oz, count: 6}"), "225 °F to 275 °F"},
		{"no room", overnightDay(plantest.Kettle22, "", "{name: Butts, cut: pork-butt, weight: 8 lb, count: 3, layout: ring}"), "too little room"},
		{"it runs down", overnightDay("grill: kettle 14 in\n", "layout: ring\n", "{name: Butt, cut: pork-butt, weight: 4 lb}"), "does not last"},
		{"no coals", plantest.Evening(`grill: {kind: other, zones: [{name: all, width: 24 in, depth: 18 in, min: 200 F, max: 450 F}]}
layout: ring
`, "{name: Ribs, cut: spare-ribs, weight: 3 lb, level: 250 F}"), "This grill has none"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := plantest.Day(t, c.document)
			f, ok := plantest.Finding(p, "layout-not-had")
			if !p.Feasible || !ok || !strings.Contains(f.Text, c.why) {
				t.Errorf("feasible %v, the finding is %q, want %q in it; %v", p.Feasible, f.Text, c.why, p.Findings)
			}
			if slices.ContainsFunc(p.Phases, func(ph schedule.Phase) bool { return ph.Layout == "ring" }) {
				t.Error("there is a ring all the same")
			}
		})
	}
}

// A ceramic cooker is told honestly what is not known of it, and how it can be told all the same.
func TestCeramicIsToldHonestly(t *testing.T) {
	plantest.Refused(t, plantest.Evening("grill: ceramic 18 in\n", butt8), "grill", "stores heat for hours")
	p := plantest.Day(t, plantest.Evening("grill: {kind: other, zones: [{name: grate, width: 16 in, depth: 16 in, min: 225 F, max: 600 F}]}\n", butt8))
	if !p.Feasible || p.Phases[0].Burn != nil || p.Phases[0].Vents != "" {
		t.Errorf("%v, %+v", p.Findings, p.Phases)
	}
}

// A word that is no layout is answered with those that are.
func TestLayoutUnknown(t *testing.T) {
	plantest.Refused(t, plantest.Evening(plantest.Kettle22+"layout: pyramid\n", butt8), "layout", "banked, ring, two-zone, spread and heap")
	plantest.Refused(t, plantest.Evening(plantest.Kettle22, "{cut: pork-butt, weight: 8 lb, layout: rings}"), "dishes[0].layout", "cookday layouts")
}

// A day whose layout was asked for, had or not, is followed like any other.
func TestLayoutFollowed(t *testing.T) {
	for _, layout := range []string{"ring", "banked", "heap"} {
		p := plantest.Day(t, plantest.Evening(plantest.Kettle22+"layout: "+layout+"\n", "{name: Butt, cut: pork-butt, weight: 6 lb}", "{name: Chicken, cut: whole-chicken, weight: 4 lb}"))
		on := plantest.FirstAt(p, schedule.StepPutOn, "butt")
		log := "time,dish,kind,value\n" + on.Format("2006-01-02 15:04") + ",butt,on,\n" + on.Add(2*time.Hour).Format("2006-01-02 15:04") + ",,grate,290 F\n"
		r := plantest.Revised(t, p, log, on.Add(2*time.Hour+time.Minute).Format("2006-01-02 15:04"))
		if !r.Feasible {
			t.Errorf("%s: %v", layout, r.Findings)
		}
	}
}
