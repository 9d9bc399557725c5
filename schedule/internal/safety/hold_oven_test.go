package safety

import (
	"testing"
)

// A piece left in an oven for a night: every condition alone.
func TestOvernightOven(t *testing.T) {
	butt := func(change func(*Finished)) Finished {
		f := finished(Shoulder, Pork, 200, InOven)
		f.OvenC = celsius(170)
		if change != nil {
			change(&f)
		}
		return f
	}
	cases := []struct {
		name      string
		f         Finished
		unwatched float64
		staysOn   bool
		want      bool
	}{
		{"a butt for nine hours", butt(nil), 9 * 60, false, true},
		{"eleven hours", butt(nil), 11 * 60, false, true},
		{"longer, and nobody knows of the oven", butt(nil), 11*60 + 1, false, false},
		{"longer in an oven that stays on", butt(nil), 14 * 60, true, true},
		{"longer than is practised", butt(nil), 16 * 60, true, false},
		{"an oven at 165 °F", butt(func(f *Finished) { f.OvenC = celsius(165) }), 9 * 60, false, false},
		{"sliced at 185 °F", butt(func(f *Finished) { f.CoreC = celsius(185) }), 9 * 60, false, false},
		{"frail guests", butt(func(f *Finished) { f.Frail = true }), 9 * 60, false, false},
		{"injected", butt(func(f *Finished) { f.Prep.Injected = true }), 9 * 60, false, false},
		{"rolled", butt(func(f *Finished) { f.Prep.Rolled = true }), 9 * 60, false, false},
		{"stuffed", butt(func(f *Finished) { f.Prep.Stuffed = true }), 9 * 60, false, false},
		{"in a box", butt(func(f *Finished) { f.Place = InBox }), 9 * 60, false, false},
		{"ribs", butt(func(f *Finished) { f.Piece = Ribs }), 9 * 60, false, false},
		{"a turkey", butt(func(f *Finished) { f.Piece, f.Category = Turkey, Poultry }), 9 * 60, false, false},
		{"ground", butt(func(f *Finished) { f.Category = Ground }), 9 * 60, false, false},
	}
	for _, x := range cases {
		if got := Overnight(x.f, x.unwatched, x.staysOn); got != x.want {
			t.Errorf("%s: %t", x.name, got)
		}
	}
	if most := HoldFor(butt(nil)).Clock(1e9).Served; most != 16*60 {
		t.Errorf("in an oven for %v min at the most", most)
	}
}

// roast_oven_minimum.csv: 250 °F from 10 lb, 350 °F below, still and dry.
func TestRoastLevels(t *testing.T) {
	for _, r := range readRows(t, "roast_oven_minimum.csv") {
		if r["oven_type"] != "still dry" {
			continue // a convection oven is no grill, and a humid one neither
		}
		kg := map[string]float64{"under 10 lb": 9.9 * kgPerLb, "10 lb or more": 10 * kgPerLb}[r["weight_class"]]
		if got := fahrenheit(RoastLevelC(kg)); !near(got, r.number(t, "oven_min_f")) {
			t.Errorf("%s: %v °F", r["weight_class"], got)
		}
	}
}

// Alarms in the middle, at the poor end (safety rules); none for chickens.
func TestAlarms(t *testing.T) {
	for p, want := range map[Piece]float64{Shoulder: 170, Turkey: 160, Ribs: 155} {
		if c, ok := AlarmC(p); !ok || !near(fahrenheit(c), want) {
			t.Errorf("%s: %v °F", p, fahrenheit(c))
		}
	}
	if _, ok := AlarmC(Bird); ok {
		t.Error("a chicken has an alarm")
	}
}

// A box is good by what a hold of it showed, not by its name: holding_2.csv's good boxes
// pass, its usual ones do not. Starts are those of the rows, near 200 °F.
func TestGoodBoxes(t *testing.T) {
	for _, x := range []struct {
		id           string
		hours, coreF float64
		good         bool
	}{
		{"H5", 7, 160, true}, {"H9", 10, 140, true}, {"H12a", 13, 146, true}, {"H12b", 12.5, 145, true},
		{"H1", 5, 145, false}, {"H2", 5, 160, false}, {"H3b", 2, 174, false}, {"H4", 3, 165, false}, {"H8", 6, 140, false},
		{"an hour", 1, 199, false},
	} {
		if got := celsius(x.coreF) >= GoodBoxC(x.hours); got != x.good {
			t.Errorf("%s: good %t", x.id, got)
		}
	}
}
