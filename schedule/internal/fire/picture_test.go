package fire

import (
	"math"
	"testing"
)

// Coals lie within the grate's outline, the fuse is as long as it was laid and keeps its gap, and the top vent of a
// fire at one side is on the other.
func TestPicture(t *testing.T) {
	for _, g := range []Grill{kettle(22), {Kind: Box, WidthM: 0.7, DepthM: 0.45}} {
		for _, d := range Layouts() {
			f := Fire{d.Layout, d.MinC}
			p, ok := g.Picture(f, g.Plan(f, need(10, mildCalm)))
			if !ok {
				t.Fatalf("%s %s: no picture", g.Kind, d.Layout)
			}
			for _, point := range p.Fuse {
				if !p.Grate.Contains(point, p.FuseWidthM/2) {
					t.Errorf("%s: fuse at %+v hangs out", g.Kind, point)
				}
			}
			lo, hi := p.Coals.bounds()
			if d.Layout == Banked && (hi.XM >= 0 || !p.Grate.Contains(p.TopVent, 0) || p.TopVent.XM <= 0) {
				t.Errorf("%s: coals %v to %v, vent %v", g.Kind, lo, hi, p.TopVent)
			}
		}
	}
}

func TestFuseLengthAndGap(t *testing.T) {
	for _, g := range []Grill{kettle(22), {Kind: Box, WidthM: 0.7, DepthM: 0.45}} {
		b := g.Plan(Fire{Ring, 121}, need(24, mildCalm))
		p, _ := g.Picture(Fire{Ring, 121}, b)
		sum := 0.0
		for i := 1; i < len(p.Fuse); i++ {
			sum += away(p.Fuse[i-1], p.Fuse[i])
		}
		// Straight steps cut the bends: at most 2 % on a kettle, a corner each on a box.
		if sum > b.Ring.ArcM+1e-9 || sum < b.Ring.ArcM*0.95 {
			t.Errorf("%s: fuse drawn %.3f m, laid %.3f m", g.Kind, sum, b.Ring.ArcM)
		}
		if gap := away(p.Fuse[0], p.Fuse[len(p.Fuse)-1]); gap < 0.15 {
			t.Errorf("%s: head and tail only %.2f m apart", g.Kind, gap)
		}
		if math.Abs(b.Ring.ArcM-b.Ring.MostM) > 1e-9 {
			t.Errorf("%s: a day's fuse is %.2f of %.2f m", g.Kind, b.Ring.ArcM, b.Ring.MostM)
		}
	}
}
