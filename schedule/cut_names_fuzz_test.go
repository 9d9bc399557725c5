package schedule

import (
	"slices"
	"strings"
	"testing"

	"example.com/cookday/schedule/cut"
)

// Whatever is mistyped: a name of the catalogue and no more than asked for, each once, and
// a name that is right comes first. A name leads to one cut, or a sentence says why not.
func FuzzSuggestedCuts(f *testing.F) {
	f.Add("briskett", uint8(3))
	f.Add("Boston butt", uint8(1))
	f.Add("", uint8(0))
	f.Add("\xff\u202e", uint8(200))
	f.Fuzz(func(t *testing.T, name string, most uint8) {
		n := int(most)
		got := cut.Suggest(name, n)
		if len(got) > n || n > 0 && len(got) == 0 {
			t.Fatalf("%d names for %d", len(got), n)
		}
		for i, g := range got {
			if _, ok := cut.Find(g); !ok || slices.Index(got, g) != i {
				t.Errorf("%q is no cut, or there twice", g)
			}
		}
		if _, ok := cut.Find(name); ok && n > 0 && got[0] != name {
			t.Errorf("%q is a cut, and %q is nearer", name, got[0])
		}
		if c, why := cut.One(name); (c.Name == "") != (why != "") || strings.ContainsAny(why, "\n\r") {
			t.Errorf("%q is %q, and %q", name, c.Name, why)
		}
	})
}
