package push

import (
	"net/http"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/cookday/api/store"
)

// Each step is told when it is due, in order, and not before.
func TestStepsAreToldWhenTheyAreDue(t *testing.T) {
	h := newHouse(t, onDisk(t))
	h.begin()
	p := h.planned("")
	for at := start; at.Before(p.ServeAt.Add(10 * time.Minute)); at = at.Add(5 * time.Minute) {
		h.clock.set(at)
		want := expected(p, at)
		h.until("what is due at "+at.String(), func() bool { return len(h.bell.heard(p.ID)) >= len(want) })
		if got := h.bell.heard(p.ID); !slices.Equal(got, want) {
			t.Fatalf("at %s: %v, want %v", at, got, want)
		}
	}
	if n := len(h.bell.heard(p.ID)); n != len(p.Steps)+1 || n < 8 { // the least that burgers need, by hand
		t.Errorf("%d told of %d steps", n, len(p.Steps))
	}
	h.settled()
	if len(h.bell.took) != len(p.Steps)+1 {
		t.Errorf("%d messages for %d steps: some came twice, and nothing failed", len(h.bell.took), len(p.Steps))
	}
}

// A way that is silent for hours gets everything afterwards, in order; a message whose
// answer was lost comes again as it was.
func TestAWayThatIsSilent(t *testing.T) {
	h := newHouse(t, onDisk(t))
	h.begin()
	p := h.planned("")
	h.until("the plan", func() bool { return len(h.bell.heard(p.ID)) == 1 })
	h.bell.set(errSilent, false)
	end := p.ServeAt.Add(time.Hour)
	for at := start.Add(5 * time.Minute); at.Before(end); at = at.Add(5 * time.Minute) {
		h.clock.set(at)
		if at.Minute() == 30 {
			h.bell.set(errSilent, true)
		}
		time.Sleep(3 * time.Millisecond)
	}
	h.bell.set(nil, false)
	h.clock.set(end.Add(2 * time.Minute))
	want := expected(p, end)
	h.until("all of it", func() bool { return len(h.bell.heard(p.ID)) >= len(want) })
	if got := h.bell.heard(p.ID); !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	if dead, err := h.store.DeadLetters(t.Context(), 10); err != nil || len(dead) > 0 {
		t.Errorf("%v %v", dead, err)
	}
}

// What is refused for good is given up after a few tries and listed; what comes after it
// is told.
func TestWhatIsRefused(t *testing.T) {
	for name, s := range map[string]func() *house{
		"file":   func() *house { return newHouse(t, onDisk(t)) },
		"memory": func() *house { return newHouse(t, store.NewMemory()) },
	} {
		h := s()
		h.begin()
		h.bell.set(errNever, false)
		p := h.planned("")
		minutes := 0
		h.until(name+": it is given up", func() bool {
			minutes++ // each try waits for the clock
			h.clock.set(start.Add(time.Duration(min(minutes, 30)) * time.Minute))
			dead, _ := h.store.DeadLetters(t.Context(), 10)
			return len(dead) > 0
		})
		h.bell.set(nil, false)
		h.clock.set(p.ServeAt.Add(time.Hour))
		want := expected(p, p.ServeAt)[1:]
		h.until(name+": the rest", func() bool { return len(h.bell.heard(p.ID)) >= len(want) })
		if got := h.bell.heard(p.ID); !slices.Equal(got, want) {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
		dead, err := h.store.DeadLetters(t.Context(), 10)
		if err != nil || len(dead) != 1 || dead[0].Event != "0.0" || dead[0].Tries != 5 || dead[0].Fault != "never" {
			t.Errorf("%s: %+v %v", name, dead, err)
		}
		h.end()
	}
}

// A process that ends and comes back goes on where the last one was, with what came due
// meanwhile; revisions come between the steps, where they belong.
func TestGoesOnAfterARestart(t *testing.T) {
	h := newHouse(t, onDisk(t))
	h.begin()
	p := h.planned("")
	h.clock.set(start.Add(80 * time.Minute)) // 17:20
	h.until("the first steps", func() bool { return len(h.bell.heard(p.ID)) == len(expected(p, h.clock.now())) })
	h.end()
	h.clock.set(start.Add(90 * time.Minute))
	h.begin()
	h.until("what came due meanwhile", func() bool { return len(h.bell.heard(p.ID)) == len(expected(p, h.clock.now())) })
	told := h.bell.heard(p.ID)
	h.logged(p, "grate", "370 F")
	h.end()
	h.clock.set(p.ServeAt.Add(time.Hour))
	h.begin()
	h.until("the revision and its steps", func() bool { return len(h.bell.heard(p.ID)) >= len(told)+2 })
	h.settled()
	got := h.bell.heard(p.ID)
	if len(got) < len(told)+2 || got[len(told)] != "1.0" {
		t.Errorf("after %v: %v", told, got[len(told):])
	}
	for _, id := range got[len(told):] {
		if !strings.HasPrefix(id, "1.") {
			t.Errorf("%s of the plan that was revised", id)
		}
	}
}

// The clock leaps ahead and back: nothing is forgotten, nothing is out of order, and
// nothing waits for a time that a wrong clock gave.
func TestClocksThatJump(t *testing.T) {
	h := newHouse(t, onDisk(t))
	h.begin()
	p := h.planned("")
	h.until("the plan", func() bool { return len(h.bell.heard(p.ID)) == 1 })
	h.bell.set(errSilent, false)
	h.clock.set(start.Add(48 * time.Hour)) // leases, tries and all steps are due by it
	time.Sleep(20 * time.Millisecond)
	h.clock.set(start.Add(time.Minute))
	h.bell.set(nil, false)
	time.Sleep(20 * time.Millisecond)
	if got := h.bell.heard(p.ID); !slices.Equal(got, []string{"0.0"}) {
		t.Errorf("before they are due: %v", got)
	}
	h.clock.set(start.Add(-24 * time.Hour))
	time.Sleep(20 * time.Millisecond)
	for at := start; at.Before(p.ServeAt.Add(10 * time.Minute)); at = at.Add(10 * time.Minute) {
		h.clock.set(at)
		want := expected(p, at)
		h.until("what is due at "+at.String(), func() bool { return len(h.bell.heard(p.ID)) >= len(want) })
		if got := h.bell.heard(p.ID); !slices.Equal(got, want) {
			t.Fatalf("at %s: %v, want %v", at, got, want)
		}
	}
	if dead, err := h.store.DeadLetters(t.Context(), 10); err != nil || len(dead) > 0 {
		t.Errorf("given up: %v %v", dead, err)
	}
}

// The end of a plan is told, and then nothing is left of it; a trial is told only where
// that is asked for; nothing that is told holds the plan's id.
func TestEndsAndTrials(t *testing.T) {
	h := newHouse(t, onDisk(t))
	h.begin()
	trial := h.planned("?trial=true")
	p := h.planned("")
	h.until("the plan", func() bool { return len(h.bell.heard(p.ID)) == 1 })
	h.call(http.MethodDelete, "/v1/plans/"+p.ID, "")
	h.until("the end", func() bool { return slices.Contains(h.bell.heard(p.ID), "end") })
	if got := h.bell.heard(trial.ID); got != nil {
		t.Errorf("a trial: %v", got)
	}
	h.end()
	h.cfg.Trials = true
	h.begin()
	h.loggedTrial(trial.ID)
	h.until("the trial", func() bool { return len(h.bell.heard(trial.ID)) > 0 })
	h.settled()
	for key, body := range h.bell.bodies {
		if strings.Contains(body, p.ID) || strings.Contains(body, trial.ID) {
			t.Errorf("%s holds the owner's secret: %s", key, body)
		}
	}
	if _, err := h.store.Plan(t.Context(), p.ID); err == nil {
		t.Error("the plan is still there")
	}
}

// loggedTrial revises a trial.
func (h *house) loggedTrial(id string) {
	h.call(http.MethodPost, "/v1/plans/"+id+"/readings?at=2027-07-03T22:20:00Z", `{"time": "2027-07-03T22:19:00Z", "kind": "lit"}`)
}
