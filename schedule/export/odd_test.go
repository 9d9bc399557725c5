package export

import (
	"os"
	"testing"
)

// A sheet with names from right to left, in wide letters and without an end is kept for
// the browser to look at: testdata/odd.html, renewed with the other golden files.
func TestOddSheet(t *testing.T) {
	p := invented()
	p.Name = "יום שבת במרפסת"
	for i, name := range []string{"חזה בקר (מעושן)", "牛胸肉・ブリスケット", "<Burgers> & 'friends' of a name that does not want to end, whatever the paper says"} {
		p.Dishes[i].Name = name
	}
	for i := range p.Steps {
		if id := p.Steps[i].Dish; id != "" {
			p.Steps[i].Text = "Now see to " + map[string]string{"brisket": p.Dishes[0].Name, "chickens": p.Dishes[1].Name, "burgers": p.Dishes[2].Name}[id] + ", 12 of them"
		}
	}
	const path = "testdata/odd.html"
	got := exported(t, p, "html")
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s differs at %q", path, firstDifference(got, string(want)))
	}
}
