package schedule

import (
	"slices"
	"testing"

	"example.com/cookday/schedule/cut"
)

func TestNearestCuts(t *testing.T) {
	for typed, want := range map[string]string{
		"briskt": "brisket", "Brisket": "brisket", "birsket": "brisket", "beef brisket": "brisket", "spatchcock chicken": "chicken-spatchcock",
		"pork shoulder": "pork-butt", "hamburger": "burger", "prime rib": "rib-roast-bone-in", "babybacks": "baby-backs", "potato": "potatoes", "wings": "chicken-wing", "salmon": "salmon-side", "belly": "pork-belly",
	} {
		if got := cut.Suggest(typed, 3); len(got) == 0 || len(got) > 3 || !slices.Contains(got[:min(2, len(got))], want) {
			t.Errorf("%q: got %v, want %s among the first two", typed, got, want)
		}
	}
	if got := cut.Suggest("x", 1000); len(got) != len(Cuts().Cuts) {
		t.Errorf("got %d names", len(got))
	}
}
