package fire

import "testing"

// Every opening that is said is one that a hand can set, and is read back as it was said.
func TestMarksAreReadAsSaid(t *testing.T) {
	for _, m := range marks() {
		for _, text := range []string{m.words, m.short} {
			if share, err := ParseOpening(text); err != nil || share != m.share {
				t.Errorf("%q is read as %v, %v", text, share, err)
			}
		}
		if m.words == "a sixteenth" {
			t.Error("nobody sets a sixteenth")
		}
	}
	for _, text := range []string{"a sixteenth", "sixteenth", "1/16"} {
		if share, err := ParseOpening(text); err != nil || share != 1./16 {
			t.Errorf("%q is read as %v, %v", text, share, err)
		}
	}
}
