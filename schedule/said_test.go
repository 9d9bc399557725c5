package schedule

import (
	"math"
	"testing"

	"example.com/cookday/schedule/unit"
)

// A dish is called what the cook calls it, and weighs what such a thing weighs. Its id
// stays the cut's, so that logs and automations need not know which word was used.
func TestADishIsCalledAsItWasSaid(t *testing.T) {
	for _, tt := range []struct {
		said, name, id string
		count          int
		ounces         float64 // of a piece; 0 is not looked at
	}{
		{"asparagus", "Asparagus", "vegetables", 20, 0.7},
		{"ribeye steak", "Ribeye steak", "steak", 2, 0},
		{"boston-butt", "Boston butt", "pork-butt", 1, 0},
		{"tortillas", "Tortillas", "flatbread", 16, 1.5},
		{"portobellos", "Portobellos", "vegetables", 4, 3},
		{"corn", "Corn", "corn", 4, 0},                            // the catalogue's own
		{"chicken wings", "Chicken wings", "chicken-wing", 12, 0}, // its plural: its own as well
		{"pork butt", "Pork butt", "pork-butt", 1, 0},
	} {
		r := Request{Dishes: []Dish{{Cut: tt.said, Count: tt.count}}}.WithDefaults()
		d := r.Dishes[0]
		if d.Name != tt.name || d.ID != tt.id {
			t.Errorf("%s: is called %q, %q; want %q, %q", tt.said, d.Name, d.ID, tt.name, tt.id)
		}
		if tt.ounces > 0 && math.Abs(float64(d.Weight-unit.FromOunces(tt.ounces))) > 1e-9 {
			t.Errorf("%s: a piece of %v, want %g oz", tt.said, d.Weight, tt.ounces)
		}
		if again := r.WithDefaults(); again.Dishes[0].Name != d.Name || again.Dishes[0].ID != d.ID || again.Dishes[0].Weight != d.Weight {
			t.Errorf("%s: a second time it is %+v", tt.said, again.Dishes[0])
		}
	}
	two := Request{Dishes: []Dish{{Cut: "asparagus"}, {Cut: "asparagus"}, {Cut: "zucchini", Name: "Asparagus"}}}.WithDefaults()
	if a, b := two.Dishes[0], two.Dishes[1]; a.Name != "Asparagus 2" || b.Name != "Asparagus 3" || a.ID == b.ID {
		t.Errorf("two of a name: %q %q, %q %q", a.Name, b.Name, a.ID, b.ID)
	}
}

// Guests are fed in pieces of the size that was said: about as much of it, in more pieces.
func TestGuestsAreFedInSpears(t *testing.T) {
	fed := func(said string) float64 {
		d := Request{Guests: &Guests{Adults: 6}, Dishes: []Dish{{Cut: said}}}.WithDefaults().Dishes[0]
		return float64(d.Count) * float64(d.Weight)
	}
	pieces, spears := fed("vegetables"), fed("asparagus")
	if pieces <= 0 || spears < pieces || spears > 1.1*pieces {
		t.Errorf("%.2f kg in pieces, %.2f kg in spears", pieces, spears)
	}
}

// A sausage of two kinds keeps its cook's word too, for who buys by the sheet.
func TestASausageKeepsItsName(t *testing.T) {
	r, err := Read([]byte("serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\ndishes: [8 bratwurst, 15 merguez]\n"))
	if err != nil {
		t.Fatal(err)
	}
	if a, b := r.Dishes[0], r.Dishes[1]; a.Name != "Bratwurst" || a.Cut != "sausage" || b.Name != "Merguez" {
		t.Errorf("%q of %s, %q", a.Name, a.Cut, b.Name)
	}
}
