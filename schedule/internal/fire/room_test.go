package fire

import (
	"math"
	"testing"
)

// Patties of 11 cm over the coals of a 22 in kettle: 13 on an even layer are a maker's figure (from memory), 6 over a
// two-zone fire follow from it. The search must find places for them too, which the rule does not use.
func TestPattiesOnTheGrate(t *testing.T) {
	patty := Footprint{LengthM: 0.11, WidthM: 0.11, Disc: true}
	for _, row := range []struct {
		fire Fire
		zone string
		fit  int
	}{{Fire{TwoZone, 180}, "direct", 6}, {Fire{Spread, 190}, "direct", 13}} {
		for _, z := range kettle(22).Zones(row.fire) {
			if z.Name != row.zone {
				continue
			}
			if n := int(UsableM2(z, true) / CoverM2(patty)); n != row.fit {
				t.Errorf("%s: room for %d patties, want %d", row.fire.Layout, n, row.fit)
			}
			if places := mustArrange(t, z, repeat(patty, row.fit)); len(places) != row.fit {
				t.Errorf("%s: %d places", row.fire.Layout, len(places))
			}
		}
	}
}

func repeat(f Footprint, n int) []Footprint {
	pieces := make([]Footprint, n)
	for i := range pieces {
		pieces[i] = f
	}
	return pieces
}

// mustArrange also checks what the search promises: inside the figure, no two on top of each other.
func mustArrange(t *testing.T, z Zone, pieces []Footprint) []Place {
	t.Helper()
	places, ok := Arrange(z, nil, pieces)
	if !ok {
		t.Fatalf("%s: no places for %d pieces: %v", z.Name, len(pieces), places)
	}
	for i, p := range places {
		b := newBody(pieces[i], p)
		if !b.inside(&z.Shape, p.At) {
			t.Errorf("piece %d hangs out of the zone: %+v", i, p)
		}
		for j := range i {
			if b.overlapsAny([]body{newBody(pieces[j], places[j])}, p.At) {
				t.Errorf("pieces %d and %d overlap", i, j)
			}
		}
	}
	return places
}

func TestArrangeMixedPieces(t *testing.T) {
	z := kettle(22).Zones(Fire{Banked, 120})[0]
	brisket := Footprint{LengthM: 0.36, WidthM: 0.20}
	rack := Footprint{LengthM: 0.40, WidthM: 0.13, Rack: true}
	mustArrange(t, z, []Footprint{brisket})
	mustArrange(t, z, []Footprint{rack})
	if _, ok := Arrange(z, nil, []Footprint{rack, rack}); ok { // the second would cross the rim
		t.Error("two long racks found places beside the coals of a 22 in kettle")
	}
	short := Footprint{LengthM: 0.30, WidthM: 0.13, Rack: true}
	mustArrange(t, z, []Footprint{short, short})
	if _, ok := Arrange(z, nil, []Footprint{{LengthM: 0.60, WidthM: 0.10}}); ok {
		t.Error("a piece longer than the grate found a place")
	}
	lying := Spot{Piece: brisket, Place: mustArrange(t, z, []Footprint{brisket})[0]}
	patty := Footprint{LengthM: 0.11, WidthM: 0.11, Disc: true}
	places, ok := Arrange(z, []Spot{lying}, []Footprint{patty})
	lies := newBody(patty, places[0])
	if !ok || lies.overlapsAny([]body{newBody(brisket, lying.Place)}, places[0].At) {
		t.Errorf("patty beside the brisket: %v %v", places, ok)
	}
}

// Areas of the figures against the shares they were cut for; 1e-9 is rounding.
func TestZoneShapesHaveTheirArea(t *testing.T) {
	grills := []Grill{kettle(22), {Kind: Box, WidthM: 0.8, DepthM: 0.5}}
	for _, g := range grills {
		for _, d := range Layouts() {
			for _, z := range g.Zones(Fire{d.Layout, d.MinC}) {
				if math.Abs(z.Shape.AreaM2()-z.AreaM2) > 1e-9 {
					t.Errorf("%s %s %s: figure %g m2, zone %g m2", g.Kind, d.Layout, z.Name, z.Shape.AreaM2(), z.AreaM2)
				}
			}
		}
	}
}

// Geometry: 62 % of a disc holds its diameter; the longest piece on 45 % is shorter; a box's is its diagonal.
func TestLongestChord(t *testing.T) {
	k := kettle(22)
	if got := k.Zones(Fire{Banked, 120})[0].LongestChordM(); math.Abs(got-k.grateM()) > 1e-9 {
		t.Errorf("banked indirect: %g m", got)
	}
	direct := k.Zones(Fire{TwoZone, 180})[1]
	half := math.Sqrt(k.grateM()*k.grateM()/4 - direct.Shape.CutM*direct.Shape.CutM)
	if got := direct.LongestChordM(); math.Abs(got-2*half) > 1e-9 || got >= k.grateM() {
		t.Errorf("two-zone direct: %g m", got)
	}
	box := Grill{Kind: Box, WidthM: 0.5, DepthM: 0.4}
	if got := box.Zones(Fire{Banked, 120})[0].LongestChordM(); math.Abs(got-math.Hypot(0.31, 0.4)) > 1e-12 {
		t.Errorf("box: %g m", got)
	}
}

func TestOtherGrillFollowsItsOwnRange(t *testing.T) {
	g := Grill{Kind: OtherKind, OtherZones: []OtherZone{{Name: "left", AreaM2: 0.1, MinC: 100, MaxC: 180}, {Name: "right", AreaM2: 0.2, MinC: 200, MaxC: 300, Direct: true}}}
	zones := g.Zones(Fire{Other, 150})
	if zones[0].LiftK != 0 || zones[1].LiftK != 50 || math.Abs(zones[1].Share-2.0/3) > 1e-12 {
		t.Errorf("%+v", zones)
	}
	b := g.Plan(Fire{Other, 150}, Need{Slices: []Slice{{60, mildCalm}}})
	if b.Buy.MassKg != 0 || len(b.Notes) != 1 || b.Notes[0] != NoCharcoal {
		t.Errorf("charcoal advice for another kind of grill: %+v", b)
	}
}

func BenchmarkArrangeTwelvePatties(b *testing.B) {
	z := kettle(22).Zones(Fire{Spread, 190})[0]
	pieces := repeat(Footprint{LengthM: 0.11, WidthM: 0.11, Disc: true}, 12)
	for b.Loop() {
		Arrange(z, nil, pieces)
	}
}

func BenchmarkArrangeTooTight(b *testing.B) {
	z := kettle(22).Zones(Fire{Banked, 120})[0]
	pieces := repeat(Footprint{LengthM: 0.34, WidthM: 0.18}, 4)
	for b.Loop() {
		Arrange(z, nil, pieces)
	}
}

// The rule goes by area alone. Of zones filled up to the most with equal ovals, the search, which takes what it finds
// first, must find places for two thirds at least (50 of 63 when it was set; 56 at a share of 0.65, 7 at 0.85): the
// others are drawn a little smaller, and all of them are told to be tight.
func TestRoomRuleAgainstPlaces(t *testing.T) {
	found, tried := 0, 0
	for _, f := range []Fire{{Banked, 120}, {TwoZone, 180}, {Spread, 190}} {
		z := kettle(22).Zones(f)[0]
		for _, lengthM := range []float64{0.14, 0.16, 0.18, 0.20, 0.22, 0.24, 0.26} {
			for _, roundness := range []float64{0.6, 0.8, 0.95} {
				piece := Footprint{LengthM: lengthM, WidthM: lengthM * roundness}
				if _, ok := Arrange(z, nil, repeat(piece, int(UsableM2(z, false)/CoverM2(piece)))); ok {
					found++
				}
				tried++
			}
		}
	}
	t.Logf("places for %d of %d full zones", found, tried)
	if share := float64(found) / float64(tried); share < 2.0/3 || share > 0.9 {
		t.Errorf("places for %d of %d full zones", found, tried)
	}
}
