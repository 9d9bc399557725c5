package planner_test

import (
	"testing"

	"example.com/cookday/schedule/internal/plantest"
)

func TestMenuAgainstGuests(t *testing.T) {
	for guests, code := range map[string]string{"guests: 30\n": "too-little", "guests: 3\n": "too-much", "guests: 12\n": ""} {
		p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+guests, "{cut: burger, weight: 6 oz, count: 12}", "{cut: corn, count: 4}"))
		_, little := plantest.Finding(p, "too-little")
		_, much := plantest.Finding(p, "too-much")
		if little != (code == "too-little") || much != (code == "too-much") {
			t.Errorf("%s: %v", guests, p.Findings)
		}
	}
}
