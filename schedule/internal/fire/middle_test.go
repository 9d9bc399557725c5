package fire

import (
	"math"
	"testing"
)

// One piece alone lies in the middle of its zone; many stay within it and as far from each other as they were.
func TestWhatLiesTogetherGoesToTheMiddle(t *testing.T) {
	brisket := Footprint{LengthM: 0.36, WidthM: 0.20}
	patty := Footprint{LengthM: 0.11, WidthM: 0.11, Disc: true}
	for _, f := range []Fire{{Banked, 120}, {TwoZone, 180}, {Spread, 190}, {Heap, 300}} {
		for _, z := range kettle(22).Zones(f) {
			for _, pieces := range [][]Footprint{{brisket}, {patty}, repeat(patty, 2), repeat(patty, 4)} {
				places, ok := Arrange(z, nil, pieces)
				if !ok {
					continue
				}
				var spots []Spot
				for i, p := range places {
					spots = append(spots, Spot{pieces[i], p})
				}
				by := Toward(z, spots)
				lo, hi := z.Shape.bounds()
				middle := Point{(lo.XM + hi.XM) / 2, (lo.YM + hi.YM) / 2}
				for i, s := range spots {
					b := newBody(s.Piece, s.Place)
					moved := Point{s.Place.At.XM + by.XM, s.Place.At.YM + by.YM}
					if !b.inside(&z.Shape, moved) {
						t.Errorf("%s %s: piece %d of %d leaves the zone", f.Layout, z.Name, i, len(pieces))
					}
					if d := math.Hypot(moved.XM-middle.XM, moved.YM-middle.YM); len(pieces) == 1 && s.Piece.Disc && d > 1e-9 {
						t.Errorf("%s %s: alone it lies %.3f m from the middle", f.Layout, z.Name, d)
					}
				}
			}
		}
	}
	if by := Toward(kettle(22).Zones(Fire{Spread, 190})[0], nil); by != (Point{}) {
		t.Errorf("nothing is moved by %v", by)
	}
}
