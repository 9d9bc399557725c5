package main

import (
	"strings"
	"testing"
)

// A command that is none gets a near one, and none that only has as many letters.
func TestNoSuchCommand(t *testing.T) {
	for word, want := range map[string]string{"plna": "did you mean plan?", "foo": "is no command of cookday; see", "when": "is no command of cookday; see"} {
		if r := invoke("", word); r.code != exitInput || !strings.Contains(r.errors, want) {
			t.Errorf("%s: %q, want %q", word, r.errors, want)
		}
	}
}

func TestAmountsForAHeadCount(t *testing.T) {
	out := mustRun(t, "", "amounts", "brisket", "burger", "--adults", "16", "--children", "6")
	for _, want := range []string{"Brisket", "Burger", "raw"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in\n%s", want, out)
		}
	}
	if same := mustRun(t, "", "amounts", "brisket", "burger", "--guests", "16", "--children", "6"); same != out {
		t.Errorf("by guests\n%s\nby adults\n%s", same, out)
	}
	if more := mustRun(t, "", "amounts", "brisket", "burger", "--adults", "32"); more == out {
		t.Error("more guests, the same amounts")
	}
}
