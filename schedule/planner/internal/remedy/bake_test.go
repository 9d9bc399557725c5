package remedy

import (
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner/internal/assemble"
)

// What is planned with a change is what its edits ask for.
func TestBakingTakesTheOven(t *testing.T) {
	r, err := schedule.Read([]byte(`
format: 1
serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
oven: {hold: 170 F}
dishes:
  - {cut: flatbread}
  - {cut: burger, weight: 6 oz}
`))
	if err != nil {
		t.Fatal(err)
	}
	r = r.WithDefaults()
	for _, c := range dishChanges(r, 0, assemble.Trouble{Dishes: []string{"flatbread"}}) {
		changed, err := r.With(c.edits...)
		if err != nil {
			t.Fatal(err)
		}
		if c.code == codeElsewhere && (changed.Oven == nil) != c.bakes {
			t.Errorf("%q leaves the oven %v", c.text, changed.Oven)
		}
	}
}
