package planner_test

import (
	"context"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner/internal/ahead"
)

// A bare butt at 225 °F is done in the morning for dinner and a box does not carry it
// that far: an oven alone is too little for so wide a window. What is offered is
// applied from outside, and the butt can then wait for dinner even on a fast day.
func TestWhatHelpsADishThatIsDoneTooEarly(t *testing.T) {
	const butt = "{name: Butt, cut: pork-butt, weight: 8 lb, level: 225 °F, wrap: none}"
	for _, text := range []string{
		plantest.Evening(plantest.Kettle22, butt),
		plantest.Evening(plantest.Kettle22, butt, "{name: Sausages, cut: sausage, weight: 4 oz, count: 8}"),
	} {
		r, err := schedule.Read([]byte(text))
		if err != nil {
			t.Fatal(err)
		}
		p := plantest.Plan(t, text)
		if !p.Feasible || countFindings(p, schedule.CodeHoldShort) == 0 || len(p.Remedies) == 0 {
			t.Fatalf("feasible %t, %d remedies, %+v", p.Feasible, len(p.Remedies), p.Findings)
		}
		for _, f := range remedyFaults(documentOf(r), p.Remedies) {
			t.Error(f)
		}
		said := ""
		for _, rem := range p.Remedies {
			said += rem.Text + " "
			mended := documentOf(r)
			for _, e := range rem.Edits {
				if err := mended.set(e); err != nil {
					t.Fatal(err)
				}
			}
			changed, err := mended.request()
			if err != nil {
				t.Fatal(err)
			}
			q, err := ahead.Plan(context.Background(), changed, ahead.Effort{})
			if err != nil || countFindings(q, schedule.CodeHoldShort) > 0 {
				t.Errorf("%s: %v, %+v", rem.Text, err, q.Findings)
			}
		}
		for _, want := range []string{"oven", "Wrap Butt in foil from 150 °F.", "Cook Butt at 275 °F."} {
			if !strings.Contains(said, want) {
				t.Errorf("%q is not offered: %s", want, said)
			}
		}
	}
}
