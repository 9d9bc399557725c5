package main

import (
	"strings"
	"testing"
)

func TestAmountsForAHeadCount(t *testing.T) {
	out := mustRun(t, "", "amounts", "brisket", "burger", "--adults", "16", "--children", "6")
	for _, want := range []string{"Whole brisket", "Burger patty", "raw"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in\n%s", want, out)
		}
	}
	if more := mustRun(t, "", "amounts", "brisket", "burger", "--adults", "32"); more == out {
		t.Error("more guests, the same amounts")
	}
}
