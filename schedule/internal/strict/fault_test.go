package strict_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/internal/strict"
)

func TestReadStopsCountingFaults(t *testing.T) {
	var b strings.Builder
	b.WriteString(plantest.Terrace)
	for range 30 {
		b.WriteString("  - {a: 1, b: 1, c: 1, d: 1, e: 1, f: 1}\n")
	}
	_, err := schedule.Read([]byte(b.String()))
	got := plantest.Faults(t, err)
	if len(got) != strict.MaxFaults+1 || !strings.Contains(got[strict.MaxFaults].Sentence, "more faults") {
		t.Errorf("%d faults, the last %q", len(got), got[len(got)-1])
	}
}
