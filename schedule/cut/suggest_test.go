package cut

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.com/cookday/schedule/internal/testbed"
)

// What is meant comes before what has like letters.
func TestSuggestionsGoByMeaning(t *testing.T) {
	for typed, want := range map[string]string{
		"flank of beef": "flank-steak", "beef galbi": "short-ribs-thin", "asado criollo": "short-ribs-thick", "smoked brisket": "brisket",
		"grilled wings": "chicken-wing", "king oyster prawns": "shrimp", "lamb kebabs with mint": "lamb-skewer", "belly of pork, sliced thin": "pork-belly-slices",
		"margherita pizza": "pizza", "halloumi fries": "halloumi", "smoked turkey breasts": "turkey-breast", "oxtails, smoked": "beef-cheek",
	} {
		if got := Suggest(typed, 3); got[0] != want {
			t.Errorf("%q: %v, want %s first", typed, got, want)
		}
	}
}

// One letter is put in, left out, changed or swapped with the next, in names of five
// letters and more; what is meant comes first in at least nine of ten.
func TestSuggestionsForSlipsOfThePen(t *testing.T) {
	var names []string
	for _, food := range testbed.Rows(t, "testdata/foods.csv") {
		for _, name := range namesOf(food) {
			if len(name) >= 5 {
				names = append(names, name)
			}
		}
	}
	const tries, least = 200, 180 // 90 %
	dice := rand.New(rand.NewPCG(15, 6))
	first, taken := 0, 0
	for range tries {
		name := names[dice.IntN(len(names))]
		wrong := slip(dice, name)
		if cuts, outside := Named(wrong); len(cuts)+len(outside) > 0 { // hyphens, a plural: no slip, or another food
			taken++
		}
		meant := leads(name)
		if got := Suggest(wrong, 1); slices.Contains(meant, got[0]) {
			first++
		} else {
			t.Logf("%q for %q: %v, want one of %v", wrong, name, got, meant)
		}
	}
	t.Logf("%d of %d first; %d of them were names still", first, tries, taken)
	if first < least {
		t.Errorf("%d of %d first, want %d", first, tries, least)
	}
}

// leads are the cuts that a name leads to, or the nearest of a food outside.
func leads(name string) []string {
	cuts, outside := Named(name)
	all := ids(cuts)
	for _, o := range outside {
		all = append(all, o.Nearest...)
	}
	return all
}

// slip puts one letter in, leaves one out, changes one or swaps two that differ.
func slip(dice *rand.Rand, name string) string {
	for {
		letters := []rune(name)
		at := dice.IntN(len(letters) - 1)
		other := rune('a' + dice.IntN(26))
		switch dice.IntN(4) {
		case 0:
			letters = slices.Insert(letters, at, other)
		case 1:
			letters = slices.Delete(letters, at, at+1)
		case 2:
			letters[at] = other
		default:
			letters[at], letters[at+1] = letters[at+1], letters[at]
		}
		if wrong := string(letters); !strings.EqualFold(wrong, name) {
			return wrong
		}
	}
}
