package planner_test

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/plantest"
)

// Menus beyond any grill: what can be had together is kept, the rest is fitted in with
// changes of its own or cooked somewhere else. Each remedy leads to the day it tells of.
func TestTooMuchOfAMenuStillGetsAnAnswer(t *testing.T) {
	nine := ""
	for _, c := range []string{"brisket, weight: 12 lb", "pork-butt, weight: 8 lb", "chicken, weight: 4 lb", "burger, weight: 6 oz", "sausage, weight: 4 oz", "spare-ribs, weight: 3.3 lb", "tri-tip, weight: 1.8 lb", "steak, weight: 14.5 oz", "chicken-thigh, weight: 5.5 oz"} {
		nine += "{cut: " + c + "}\n"
	}
	for _, text := range []string{
		plantest.Evening("grill: {kind: kettle, diameter: 18 in}\nquiet: [{from: \"22:00\", to: \"06:00\"}]\nearliest: \"06:00\"", strings.Split(strings.TrimSpace(nine), "\n")...),
		plantest.Evening("grill: {kind: kettle, diameter: 18 in}", "{name: Burgers, cut: burger, weight: 6 oz, count: 24}",
			"{name: Sausages, cut: sausage, weight: 4 oz, count: 12}", "{name: Wings, cut: chicken-wing, weight: 3.5 oz, count: 20}"),
		plantest.Evening("grill: {kind: kettle, diameter: 26 in}\noven: {hold: 170 F}\nquiet: [{from: \"22:00\", to: \"06:00\"}]", "{name: Brisket, cut: brisket, weight: 12 lb}",
			"{name: Burgers, cut: burger, weight: 6 oz, count: 40}", "{name: Thighs, cut: chicken-thigh, weight: 5.5 oz, count: 20}",
			"{name: Tri-tip, cut: tri-tip, weight: 1.8 lb, finish: sear}", "{name: Sausages, cut: sausage, weight: 4 oz, count: 30}"),
	} {
		r, err := schedule.Read([]byte(text))
		if err != nil {
			t.Fatal(err)
		}
		p := plantest.Plan(t, text)
		if p.Feasible || len(p.Remedies) == 0 {
			t.Errorf("feasible %v, %d remedies\n%s", p.Feasible, len(p.Remedies), text)
		}
		for _, f := range remedyFaults(documentOf(r), p.Remedies) {
			t.Error(f)
		}
		for _, rem := range p.Remedies {
			seen := map[string]bool{}
			for _, part := range strings.Split(rem.Price, "; ") {
				if seen[part] {
					t.Errorf("%q says %q twice", rem.Price, part)
				}
				seen[part] = true
			}
		}
	}
}

// twiceFaults are the dishes that a remedy both changes and sends away.
func twiceFaults(rem schedule.Remedy, r schedule.Request) []string {
	var faults []string
	ids, changed := plans.IDsOf(r.WithDefaults()), map[string]bool{}
	for _, e := range rem.Edits {
		m := dishPath.FindStringSubmatch(e.Path)
		if m == nil {
			continue
		}
		i, _ := strconv.Atoi(m[1])
		switch {
		case i == len(ids):
			ids = append(ids, "")
		case m[2] != "":
			changed[ids[i]] = true
		case e.Value == "null":
			if changed[ids[i]] {
				faults = append(faults, fmt.Sprintf("%q changes %s and sends it away: %v", rem.Text, ids[i], rem.Edits))
			}
			ids = slices.Delete(ids, i, i+1)
		}
	}
	return faults
}

var dishPath = regexp.MustCompile(`^dishes\[(\d+)\](\..*)?$`)
