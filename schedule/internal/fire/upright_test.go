package fire

import "testing"

// Upright cookers and drums as practice has them (common practice, no source; the bounds are wide because reports are): what
// is lit and laid, what burns an hour, how long a full ring lasts, how long it takes to come up.
func TestUprightPractice(t *testing.T) {
	water := Grill{Kind: Upright, DiameterM: 18.5 * inchM, Levels: 2, WaterPan: true}
	large := Grill{Kind: Upright, DiameterM: 22.5 * inchM, Levels: 2, WaterPan: true}
	dry := water
	dry.WaterPan = false
	drum := Grill{Kind: Kettle, DiameterM: 22.5 * inchM, Deep: true}
	plan := func(g Grill, f, hours float64) Burn {
		l := Other
		if g.Lays() {
			l = Banked
		}
		return g.Plan(Fire{l, fahrenheit(f)}, Need{First: true, Slices: []Slice{{Minutes: 60 * hours, Weather: Weather{AirC: fahrenheit(70)}}}})
	}
	for _, c := range []struct {
		name        string
		got         float64
		least, most float64
	}{
		{"18.5 in with water, 225 F: lit", float64(plan(water, 225, 8).Light.Count), 10, 20},
		{"18.5 in with water, 250 F: lit", float64(plan(water, 250, 8).Light.Count), 12, 25},
		{"22.5 in with water, 250 F: lit", float64(plan(large, 250, 8).Light.Count), 15, 30},
		{"drum, 250 F: lit", float64(plan(drum, 250, 6).Light.Count), 10, 25},
		{"18.5 in with water, 250 F: an hour", float64(plan(water, 250, 8).Expected.Count) / 8, 9, 18},
		{"18.5 in without, 250 F: an hour", float64(plan(dry, 250, 8).Expected.Count) / 8, 8, 16},
		{"18.5 in, a full ring, pounds", water.holdKg() / poundKg, 10, 18},
		{"18.5 in with water, 225 F: hours of a full ring", plan(water, 225, 24).LastsMinutes / 60, 10, 24},
		{"18.5 in: minutes from the light", float64(water.SetupMinutes(Fire{Other, fahrenheit(250)})), 30, 60},
	} {
		t.Logf("%-50s %.1f (%.0f to %.0f)", c.name, c.got, c.least, c.most)
		if c.got < c.least || c.got > c.most {
			t.Errorf("%s: %.1f, practice has %.0f to %.0f", c.name, c.got, c.least, c.most)
		}
	}
	if lit, without := plan(water, 250, 8).Light.Count, plan(dry, 250, 8).Light.Count; lit <= without {
		t.Errorf("%d are lit for a full pan, %d for none", lit, without)
	}
}

// Only an upright cooker has the ring at its bottom, and nothing else; another kind has no coals at all.
func TestUprightLaysOneWay(t *testing.T) {
	for _, d := range Layouts() {
		if _, ok := (Grill{Kind: Upright, DiameterM: 0.47}).Describe(d.Layout); ok {
			t.Errorf("an upright cooker lays %s", d.Layout)
		}
	}
	for kind, want := range map[Kind]bool{Upright: true, OtherKind: false, Kettle: false, Box: false} {
		if _, ok := (Grill{Kind: kind, DiameterM: 0.47}).Describe(Other); ok != want {
			t.Errorf("%s: %t", kind, ok)
		}
	}
}
