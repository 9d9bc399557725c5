package export

import (
	"strings"
	"testing"
	"time"
)

// The head of a sheet says what somebody has to do next: what is due at the first
// instant from now on, done steps and those that happen by themselves left out.
func TestNextIsWhatSomebodyHasToDo(t *testing.T) {
	p := invented()
	last := p.Steps[len(p.Steps)-1].At
	for _, now := range []time.Time{p.Steps[0].At, p.ServeAt.Add(-5 * time.Hour), last.Add(time.Minute)} {
		v, err := look(p, now)
		if err != nil {
			t.Fatal(err)
		}
		want := ""
		for _, s := range p.Steps {
			if s.Attended && !s.Done && !s.At.Before(now) {
				want = v.stepTitle(s)
				break
			}
		}
		if got := v.next(); want == "" && got != "" || !strings.Contains(got, want) {
			t.Errorf("at %s: %q, want %s", now, got, want)
		}
		if sheet := textOf(t, p, Options{Now: now}); want != "" && !strings.Contains(sheet, "\nNext      "+v.next()[:10]) {
			t.Errorf("at %s the sheet does not say %q", now, v.next())
		}
	}
	if v, _ := look(p, time.Time{}); v.next() != "" {
		t.Errorf("without a now: %q", v.next())
	}
}
