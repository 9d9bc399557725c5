package export

import (
	"strings"
	"testing"

	"github.com/emersion/go-ical"
	"pgregory.net/rapid"
)

// Whatever a stranger writes, lines keep to their width and no letter is lost.
func TestWrapKeepsWidthAndLetters(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := clean(rapid.String().Draw(t, "text"))
		n := rapid.IntRange(4, 80).Draw(t, "columns")
		var back strings.Builder
		for _, line := range Wrap(text, n) {
			if columns(line) > n {
				t.Fatalf("%d columns in %q", columns(line), line)
			}
			back.WriteString(line)
		}
		if squeeze(back.String()) != squeeze(text) {
			t.Fatalf("%q became %q", text, back.String())
		}
	})
}

func TestWrapKeepsNumberAndUnitTogether(t *testing.T) {
	for _, line := range Wrap("Take it off at 203 F, not before, and rest it for 30 min.", 17) {
		if strings.HasSuffix(line, "203") || strings.HasSuffix(line, "30") {
			t.Errorf("torn apart after %q", line)
		}
	}
}

// A value folded and escaped by us comes back from a parser that is not ours.
func TestFoldingAndEscapingComeBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := clean(rapid.String().Draw(t, "text"))
		c := &icalendar{view: &view{}}
		c.begin("VCALENDAR")
		c.line("NAME", escape(want))
		c.end("VCALENDAR")
		cal, err := ical.NewDecoder(strings.NewReader(c.String())).Decode()
		if err != nil {
			t.Fatal(err)
		}
		if got, err := cal.Props.Text("NAME"); err != nil || got != want {
			t.Fatalf("%q became %q, %v", want, got, err)
		}
	})
}

func TestCleanIsPlainAndStable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := clean(rapid.String().Draw(t, "text"))
		if clean(s) != s || strings.ContainsAny(s, "\x00\x1b\n\r\t\u202e\u2066\u2028") {
			t.Fatalf("%q", s)
		}
	})
}
