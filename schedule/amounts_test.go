package schedule_test

import (
	"errors"
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/unit"
)

// A pound of raw brisket a person, 16 oz in the catalogue (common practice, no source);
// less 43 %; a burger a person; two meats share the guests.
func ExampleAmounts() {
	all, err := schedule.Amounts(schedule.Guests{Adults: 20, Children: 8}, []string{"brisket", "burger", "corn"})
	fmt.Println(err)
	for _, a := range all {
		fmt.Println(a.Text(unit.US))
	}
	// Output:
	// <nil>
	// Brisket: 12 lb raw, 6.8 lb cooked
	// Burger: 12 × 6 oz (4.5 lb raw, 3.4 lb cooked)
	// Corn: 24 × 11 oz (16.8 lb raw, 10.1 lb cooked)
}

func TestAmountsFaults(t *testing.T) {
	_, err := schedule.Amounts(schedule.Guests{}, []string{"brisket", "briskett"})
	var bad *schedule.InputError
	if !errors.As(err, &bad) || len(bad.Faults) != 2 || bad.Faults[0].Path != "guests" || bad.Faults[1].Path != "cuts[1]" {
		t.Errorf("%v", err)
	}
	if _, err := schedule.Amounts(schedule.Guests{Adults: 4}, nil); !errors.As(err, &bad) || bad.Faults[0].Path != "cuts" {
		t.Errorf("%v", err)
	}
}

// What is suggested is enough by its own reckoning, in plausible pieces, and more
// guests never need less.
func TestAmountsAreEnough(t *testing.T) {
	all := cut.All()
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.SampledFrom(all).Draw(t, "cut")
		g := schedule.Guests{Adults: rapid.IntRange(1, 80).Draw(t, "adults"), Children: rapid.IntRange(0, 40).Draw(t, "children")}
		a, err := schedule.Amounts(g, []string{c.Name})
		if err != nil {
			t.Fatal(err)
		}
		got := a[0]
		if got.MassKg < g.Eaters()*c.ServingKg-1e-6 || got.PieceKg < c.MinPieceKg-1e-9 || got.PieceKg > c.MaxPieceKg+0.05 {
			t.Errorf("%+v for %g eaters of %g kg each; a piece has %g to %g kg", got, g.Eaters(), c.ServingKg, c.MinPieceKg, c.MaxPieceKg)
		}
		g.Adults++
		more, err := schedule.Amounts(g, []string{c.Name})
		if err != nil || more[0].MassKg < got.MassKg-0.05*float64(got.Count+1) { // the rounding of pieces
			t.Errorf("%g kg, %g for one more", got.MassKg, more[0].MassKg)
		}
	})
}
