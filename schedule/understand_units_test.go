package schedule

import (
	"encoding/json"
	"testing"
	"time"

	"example.com/cookday/schedule/unit"
)

// A request of which all is metric is answered so; one that was written by this program, in the
// units of its model, keeps the units that it had: it came back in Celsius.
func TestUnitsAreThoseOfTheCook(t *testing.T) {
	const day = "serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\n"
	for text, want := range map[string]unit.System{
		day + "grill: kettle 57 cm\ndishes: [{cut: pork-butt, weight: 3.5 kg}]\n": unit.Metric,
		day + "grill: kettle 22 in\ndishes: [{cut: pork-butt, weight: 8 lb}]\n":   unit.US,
		day + "grill: kettle 22 in\ndishes: [{cut: pork-butt, weight: 3.5 kg}]\n": unit.US,
	} {
		r, err := Understand([]byte(text), time.Time{})
		if err != nil || r.Units != want {
			t.Fatalf("%s%q, want %q: %v", text, r.Units, want, err)
		}
		written, err := json.Marshal(r)
		if err != nil {
			t.Fatal(err)
		}
		if again, err := Understand(written, time.Time{}); err != nil || again.Units != want {
			t.Errorf("%s\ncomes back as %q, want %q: %v", written, again.Units, want, err)
		}
	}
}
