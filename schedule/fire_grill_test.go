package schedule

import (
	"testing"

	"example.com/cookday/schedule/unit"
)

// TestGrillOfAFire reads grills as a request has them.
func TestGrillOfAFire(t *testing.T) {
	for said, want := range map[string]struct {
		grill  string
		inches float64
	}{
		"kettle": {"kettle", 22}, `Kettle 18"`: {"kettle", 18}, "22.5 inch kettle": {"kettle", 22.5},
		"bullet smoker 14 in": {"smoker", 14}, "55 gal drum": {"drum", 22}, "kamado": {"ceramic", 22},
	} {
		q, err := ReadFireInquiry(map[string]string{"want": "250 F", "shows": "260 F", "grill": said}, nil)
		if err != nil {
			t.Errorf("%q: %v", said, err)
		} else if d := q.Diameter - unit.FromInches(want.inches); q.Grill != want.grill || d > 1e-9 || d < -1e-9 {
			t.Errorf("%q is read as %s of %.1f in, not %s of %.1f in", said, q.Grill, q.Diameter.Inches(), want.grill, want.inches)
		}
	}
	for _, said := range []string{"offset smoker", "gas grill", "kettle 20 x 30 in", "fireplace"} {
		if _, err := ReadFireInquiry(map[string]string{"want": "250 F", "shows": "260 F", "grill": said}, nil); err == nil {
			t.Errorf("%q is taken as a grill of coals", said)
		}
	}
}
