package safety

import "testing"

// Of the columns that cover a piece the slowest is taken.
func TestTheSlowerTableIsTaken(t *testing.T) {
	cases := []struct {
		c      Category
		fatPct float64
		want   LethalityTable
	}{
		{Beef, 20, tableOf(BeefProduct, 0, "fsis_app_a_beef", 7)},
		{Pork, 0, tableOf(RoastProduct, 0, "fda_3_401_11B", 0)},
		{Poultry, 1, tableOf(TurkeyProduct, 1, "fsis_poultry_2005", 7)},
		{Poultry, 3, tableOf(TurkeyProduct, 5, "fsis_poultry_2005", 7)},
		{Poultry, 5.5, tableOf(PoultryProduct, 12, "fsis_poultry_2005", 7)}, // a thigh with its skin is fatter than 5
		{Poultry, 14.5, tableOf(PoultryProduct, 12, "fsis_poultry_2005", 7)},
	}
	for _, x := range cases {
		got, ok := LethalityTableFor(x.c, x.fatPct)
		if !ok || got.Source != x.want.Source || got.Product != x.want.Product || got.FatPct != x.want.FatPct || got.LogReduction != x.want.LogReduction {
			t.Errorf("%s, %v pct: %s %s %v", x.c, x.fatPct, got.Source, got.Product, got.FatPct)
		}
	}
	for _, c := range []Category{Ground, GroundPoultry, Sausage, Fish, HamCooked, Leftovers, None, Vegetable} {
		if got, ok := LethalityTableFor(c, 10); ok {
			t.Errorf("%s: nothing is published, got %s", c, got.Source)
		}
	}
}

// A water-bath guide's times for the thinnest pieces (5 mm) include their warming up
// and aim at other germs as well: none may be shorter than the table's hold alone.
func TestBathGuideIsNeverShorter(t *testing.T) {
	for _, r := range readRows(t, "water_bath_5mm.csv") {
		c, minutes := r.number(t, "bath_c"), r.number(t, "time_min")
		table := tableOf(BeefProduct, 0, "fsis_app_a_beef", 7)
		if r["food"] == "poultry" {
			table = tableOf(TurkeyProduct, 5, "fsis_poultry_2005", 7)
		}
		if c < 58 && r["food"] == "poultry" {
			continue // below the table's first row
		}
		if need := table.Seconds(c) / 60; need > minutes {
			t.Errorf("%s at %v degC: guide %v min, table %.1f", r["food"], c, minutes, need)
		}
	}
}
