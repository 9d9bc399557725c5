package unit

import "testing"

func TestOwnLeavesOneSystem(t *testing.T) {
	for _, c := range []struct{ text, us, metric string }{
		{"1 hr above 90 °F (32 °C): eat it", "1 hr above 90 °F: eat it", "1 hr above 32 °C: eat it"},
		{"between 40 and 140 °F (4 and 60 °C).", "between 40 and 140 °F.", "between 4 and 60 °C."},
		{"from 135 to 70 °F (57 to 21 °C) within 2 hr, to 41 °F (5 °C)", "from 135 to 70 °F within 2 hr, to 41 °F", "from 57 to 21 °C within 2 hr, to 5 °C"},
		{"10 ft (3 m) clear; wind under 10 mph (16 km/h)", "10 ft clear; wind under 10 mph", "3 m clear; wind under 16 km/h"},
		{"rack (the big one), 250 °F (all day)", "rack (the big one), 250 °F (all day)", "rack (the big one), 250 °F (all day)"},
	} {
		if got := US.Own(c.text); got != c.us {
			t.Errorf("us: %q", got)
		}
		if got := Metric.Own(c.text); got != c.metric {
			t.Errorf("metric: %q", got)
		}
	}
}
