package schedule

import "testing"

// A leg that stands between the slow side and the sear: dinner is at 13:30 and nobody is
// there from 13:00 on, so that the sear must be over by then, however long the leg stood.
func TestSearIsOverBeforeQuietHours(t *testing.T) {
	p := planOf(t, `format: 1
serve: {date: 2027-07-03, time: "13:30", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
oven: {hold: 170 F}
quiet: [{from: "13:00", to: "14:00"}]
confidence: 0.8
dishes:
  - {name: Legs, cut: veal-leg, weight: 6.5 lb, count: 2, finish: sear}
`)
	if !p.Feasible {
		t.Fatalf("%+v", p.Findings)
	}
	for _, f := range Check(p) {
		t.Error(f)
	}
}
