package say

import "testing"

// Names that people give begin with any letter.
func TestFirstLetterOfAnyAlphabet(t *testing.T) {
	for text, want := range map[string][2]string{
		"brisket": {"Brisket", "brisket"}, "Éclair": {"Éclair", "éclair"}, "ärger": {"Ärger", "ärger"}, "": {"", ""}, "12 lb": {"12 lb", "12 lb"}, "肉": {"肉", "肉"},
	} {
		if got := [2]string{Upper(text), Lower(text)}; got != want {
			t.Errorf("%q: %q", text, got)
		}
	}
}
