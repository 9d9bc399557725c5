package schedule

import (
	"slices"
	"strings"
	"testing"

	"example.com/cookday/schedule/internal/safety"
)

func TestNoticesAreSound(t *testing.T) {
	seen := map[string]bool{}
	for _, n := range Notices() {
		if seen[n.Code] || n.Code == "" || strings.ToLower(n.Code) != n.Code {
			t.Errorf("code %q is there twice, or no code", n.Code)
		}
		seen[n.Code] = true
		if !slices.Contains([]Severity{Info, Warning, Danger}, n.Severity) || !strings.HasSuffix(n.Text, ".") && !strings.HasSuffix(n.Text, "?") {
			t.Errorf("%+v", n)
		}
		if n.Source == "" || n.Source != ours && safety.Document(n.Source) == "" {
			t.Errorf("%s: source %q is nowhere", n.Code, n.Source)
		}
		if word := strings.ToLower(n.Text); strings.Contains(word, " safe ") || strings.Contains(word, "safe.") {
			t.Errorf("%s calls food safe: %s", n.Code, n.Text)
		}
	}
	for _, c := range safety.Catalogue() {
		if !seen[c.Code] {
			t.Errorf("%s of the safety catalogue is missing", c.Code)
		}
	}
}
