package planner_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// Days that cannot be done as asked, what a cook would say stands in the way, and what
// of it the planner must find (common practice, no source). Each remedy is applied from
// outside and must lead to the day that it tells of.
func TestRemediesOfHardDays(t *testing.T) {
	const head = "format: 1\nserve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\n"
	for _, c := range []struct{ name, day, why, remedy string }{
		{"neither before six nor in the night", "earliest: \"06:00\"\nquiet: [{from: \"22:00\", to: \"06:00\"}]\ngrill: {kind: kettle, diameter: 22 in}\ndishes:\n  - {name: Picnic, cut: pork-picnic, weight: 8 lb, serve: \"12:00\"}\n",
			"nothing may start before 6:00 AM Sat", "Begin at 6:45 PM Fri"},
		{"too many ribs, and too late a start", "earliest: \"13:00\"\ngrill: {kind: kettle, diameter: 22 in}\ndishes:\n  - {name: Ribs, cut: spare-ribs, weight: 3 lb, count: 8}\n",
			"they don't all fit on the grate at once", "Cook 2 of the 8 Ribs. Begin at 12:45 PM Sat"},
		{"a large turkey on a small kettle", "grill: {kind: kettle, diameter: 14 in}\ndishes:\n  - {name: Turkey, cut: turkey, weight: 18 lb}\n",
			"no room on the grate", "Cook Turkey of 7.2 lb instead of 18 lb."},
		{"nobody to light it", "quiet: [{from: \"20:00\", to: \"14:00\"}]\ngrill: {kind: kettle, diameter: 22 in}\ndishes:\n  - {name: Brisket, cut: brisket, weight: 12 lb}\n",
			"nobody is there to tend the fire or to take anything off between 8:00 PM and 2:00 PM", "Give up the quiet hours."},
		{"burgers for many", "grill: {kind: kettle, diameter: 18 in}\ndishes:\n  - {name: Burgers, cut: burger, weight: 6 oz, count: 24}\n",
			"the first batch won't hold until the rest is done", "Serve Burgers in two sittings, 12 at 5:30 PM, 12 at 6:00 PM."},
		{"a hand's breadth of grate", "grill: {kind: other, zones: [{name: all, width: 4 in, depth: 4 in, min: 225 F, max: 300 F}]}\ndishes:\n  - {name: Brisket, cut: brisket, weight: 12 lb}\n",
			"no room on the grate", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, err := schedule.Read([]byte(head + c.day))
			if err != nil {
				t.Fatal(err)
			}
			p, err := planner.Make(context.Background(), r)
			if err != nil || p.Feasible {
				t.Fatalf("feasible %v, %v", p.Feasible, err)
			}
			if !strings.Contains(p.Findings[0].Text, c.why) {
				t.Errorf("%q does not say that %s", p.Findings[0].Text, c.why)
			}
			has := func(rem schedule.Remedy) bool { return strings.Contains(rem.Text, c.remedy) }
			if c.remedy != "" && !slices.ContainsFunc(p.Remedies, has) {
				t.Errorf("no remedy says %q: %+v", c.remedy, p.Remedies)
			}
			if none := countFindings(p, schedule.CodeNoRemedy) == 1; none != (len(p.Remedies) == 0) || none != (c.remedy == "") {
				t.Errorf("%d remedies; the plan says there is none: %v", len(p.Remedies), none)
			}
			for _, f := range append(clashFaults(documentOf(r), p), remedyFaults(documentOf(r), p.Remedies)...) {
				t.Error(f)
			}
			plantest.Judge(t, p)
		})
	}
}

func countFindings(p schedule.Plan, code string) int {
	n := 0
	for _, f := range p.Findings {
		if f.Code == code {
			n++
		}
	}
	return n
}

// Three birds on a grate for two: a second sitting asks less of the cook than a bird fewer,
// though it changes more of the request.
func TestASecondSittingStandsBesideFewerBirds(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+"oven: {hold: 170 F}", "{name: Chickens, cut: chicken-spatchcock, weight: 4 lb, count: 3}"))
	var codes []string
	for _, rem := range p.Remedies {
		codes = append(codes, rem.Code)
	}
	for _, code := range []string{"sittings", "starters", "fewer"} {
		if !slices.Contains(codes, code) {
			t.Errorf("remedies %v, without %s", codes, code)
		}
	}
}

// What goes by the clock may be baked in the kitchen oven, and then nothing is held there.
func TestTheOvenBakesOrHolds(t *testing.T) {
	text := plantest.Evening("grill: {kind: kettle, diameter: 18 in}\noven: {hold: 170 F}\nquiet: []", "{name: Turkey, cut: turkey, weight: 12 lb}", "{name: Beans, cut: beans-pan}")
	r, err := schedule.Read([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	p := plantest.Plan(t, text)
	for _, f := range remedyFaults(documentOf(r), p.Remedies) {
		t.Error(f)
	}
	for _, rem := range p.Remedies {
		if bakes.MatchString(rem.Text) {
			if !slices.Contains(rem.Edits, schedule.Edit{Path: "oven", Value: "null"}) {
				t.Errorf("%q keeps the oven to hold in: %v", rem.Text, rem.Edits)
			}
			return
		}
	}
	t.Errorf("nothing is baked in the kitchen: %v", p.Remedies)
}
