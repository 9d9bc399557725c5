package cut_test

import (
	"math"
	"testing"

	"example.com/cookday/schedule/cut"
)

// To measure the usual thickness of a piece changes nothing: what slows the heat beside
// its size, skin and bone, is still there. And thicker never cooks faster.
func TestMeasuringTheUsualThicknessChangesNothing(t *testing.T) {
	for _, c := range cut.All() {
		usual, w, _ := c.Dimensions(c.Typical, 0)
		t0, w0, l0 := c.HeatDimensions(c.Typical, 0)
		t1, w1, l1 := c.HeatDimensions(c.Typical, usual)
		if math.Abs(t0-t1)+math.Abs(w0-w1)+math.Abs(l0-l1) > 1e-12 {
			t.Errorf("%s: measured %.4f x %.4f x %.4f m, else %.4f x %.4f x %.4f", c.Name, t1, w1, l1, t0, w0, l0)
		}
		if thicker, _, _ := c.HeatDimensions(c.Typical, usual*1.1); usual*1.1 < w && thicker <= t1 {
			t.Errorf("%s: %.4f m heats like %.4f m", c.Name, usual*1.1, thicker)
		}
	}
}
