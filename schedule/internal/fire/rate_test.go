package fire

import (
	"math"
	"testing"
)

func kettle(inches float64) Grill { return Grill{Kind: Kettle, DiameterM: inches * inchM} }

var mildCalm = Weather{AirC: fahrenheit(70)}

// Common practice, no source: briquettes an hour. The first row fixes the law's free constant; 10 % is how closely
// practice is said to be known, real fires differ by a factor of two.
func TestRateAgainstPractice(t *testing.T) {
	for _, row := range []struct{ inches, levelF, perHour float64 }{
		{22.5, 250, 10.6}, {22.5, 350, 16}, {22.5, 212, 8}, {14.5, 350, 12}, {18.5, 350, 14}, {26.75, 350, 18},
	} {
		got := kettle(row.inches).RatePerHour(fahrenheit(row.levelF), mildCalm)
		t.Logf("%5.2f in %3.0f F: %.1f an hour, practice %.1f (%+.1f %%)", row.inches, row.levelF, got, row.perHour, 100*(got/row.perHour-1))
		if math.Abs(got/row.perHour-1) > 0.10 {
			t.Errorf("%.2f in at %.0f F: %.2f an hour, practice %.1f", row.inches, row.levelF, got, row.perHour)
		}
	}
}

// USDA FSIS (alternate routes to the turkey): 15 briquettes an hour hold 225-300 F, size of the grill not given. The
// range that every amount carries must cover it.
func TestRateRangeCoversFSIS(t *testing.T) {
	got := kettle(22.5).RatePerHour((fahrenheit(225)+fahrenheit(300))/2, mildCalm)
	t.Logf("%.1f an hour, FSIS 15 (%+.0f %%)", got, 100*(got/15-1))
	if got*rangeFactor < 15 || got/rangeFactor > 15 {
		t.Errorf("%.1f an hour, FSIS says 15: outside the factor of %d", got, rangeFactor)
	}
}

// Published heating values and weighings that the constants must lie between: Btu/lb x 2326 = J/kg.
func TestConstantsWithinPublishedRanges(t *testing.T) {
	for _, row := range []struct {
		name, source     string
		got, least, most float64
	}{
		{"briquettes, J/kg", "hobby_fuel 7,000-9,000 Btu/lb", briquetteJPerKg, 7000 * 2326, 9000 * 2326},
		{"lump, J/kg", "hobby_fuel 10,000 Btu/lb to ipcc_default 29.5 MJ/kg", lumpJPerKg, 10000 * 2326, 29.5e6},
		{"one briquette, kg", "briquette_weighing 0.8488 and 0.9025 oz", briquetteKg, 0.8488 * 0.028349523, 0.9025 * 0.028349523},
		{"chimney of briquettes, kg", "chimney_test 5-6 lb", kettle(22).chimneyKg(), 5 * poundKg, 6 * poundKg},
		{"chimney of lump, kg", "chimney_test 2-4 lb", Grill{Fuel: Lump}.chimneyKg(), 2 * poundKg, 4 * poundKg},
		{"bulk density, kg/m3", "en_1860_2 not less than 130", kettle(22).bulkKgM3(), 130, math.Inf(1)},
	} {
		if row.got < row.least || row.got > row.most {
			t.Errorf("%s: %g outside %g-%g (%s)", row.name, row.got, row.least, row.most, row.source)
		}
	}
}

// The same heat from less mass: lump by its heating value. A box burns as the kettle of its area.
func TestLumpAndBoxByEnergyAndArea(t *testing.T) {
	k := kettle(22.5)
	lump := k
	lump.Fuel = Lump
	level := fahrenheit(250)
	heat := k.RateKgPerHour(level, mildCalm) * briquetteJPerKg
	if got := lump.RateKgPerHour(level, mildCalm) * lumpJPerKg; math.Abs(got/heat-1) > 1e-12 {
		t.Errorf("lump gives %g J/h, briquettes %g", got, heat)
	}
	side := math.Sqrt(k.nominalM2())
	box := Grill{Kind: Box, WidthM: 2 * side, DepthM: side / 2}
	if a, b := box.RatePerHour(level, mildCalm), k.RatePerHour(level, mildCalm); math.Abs(a/b-1) > 1e-12 {
		t.Errorf("box %g, kettle of the same area %g an hour", a, b)
	}
}

// A cook at 5-10 F behind a windbreak says to plan 50 % more fuel than in summer at 300 F (home cook's report F014; wind
// not given). The cold alone must explain most of that in the law: 20 % off one person's round figure.
func TestColdCookNeedsHalfAsMuchAgain(t *testing.T) {
	g, level := kettle(18.5), fahrenheit(300)
	ratio := g.RatePerHour(level, Weather{AirC: fahrenheit(7.5)}) / g.RatePerHour(level, mildCalm)
	t.Logf("%.2f times, the cook says 1.5", ratio)
	if math.Abs(ratio/1.5-1) > 0.20 {
		t.Errorf("%.2f times the fuel of a summer day, the cook says 1.5", ratio)
	}
}

// A full chimney, all lit, is said to stay at 300 F or more for 2.5-3.5 h (consumer test as quoted, weak; cooker not
// given). The law, made for coals that catch one from another under a throttled lid, gives more than twice that: a bed
// of lit coals burns faster than its heat is needed. That is why beds are topped up by the hour, not by the law.
func TestLitBedBurnsFasterThanTheLaw(t *testing.T) {
	g := kettle(22.5)
	hours := g.chimneyKg() / g.RateKgPerHour(fahrenheit(300), mildCalm)
	t.Logf("law %.1f h, test 2.5-3.5 h", hours)
	bed := g.Plan(Fire{TwoZone, fahrenheit(300)}, Need{Slices: []Slice{{60, mildCalm}}})
	if hours < 3.5 || bed.LastsMinutes/60 > 2.5 {
		t.Errorf("law %.1f h, bed %.1f h: the bed's own life is no longer on the safe side", hours, bed.LastsMinutes/60)
	}
}

// Rain and a water pan cost what it takes to boil that water off, 2.5 MJ/kg (steam tables, rounded): 1 mm of rain an
// hour on the lid of a kettle, 0.3 kg an hour from a pan (both assumptions of the factors), at 250 F on a mild day. A
// third off for the round factors; a shelter keeps most of the rain and the wind away.
func TestRainAndPanCostTheirWater(t *testing.T) {
	const latentJKg = 2.5e6
	g, level := kettle(22.5), fahrenheit(250)
	dry := g.HeatW(level, mildCalm)
	rain, windy := mildCalm, mildCalm
	rain.Rain, windy.WindMS = true, 5
	pan := g
	pan.WaterPan = true
	for _, row := range []struct {
		name       string
		costW, kgH float64
	}{
		{"rain", g.HeatW(level, rain) - dry, g.GrateAreaM2()},
		{"water pan", pan.HeatW(level, mildCalm) - dry, 0.3},
	} {
		if want := row.kgH * latentJKg / 3600; math.Abs(row.costW/want-1) > 1.0/3 {
			t.Errorf("%s costs %.0f W, boiling its water off takes %.0f", row.name, row.costW, want)
		}
	}
	for _, w := range []Weather{rain, windy} {
		open, sheltered := g.HeatW(level, w)-dry, 0.0
		w.Sheltered = true
		if sheltered = g.HeatW(level, w) - dry; sheltered <= 0 || sheltered > open/2 {
			t.Errorf("%+v costs %.0f W in the open and %.0f in a shelter", w, open, sheltered)
		}
	}
}
