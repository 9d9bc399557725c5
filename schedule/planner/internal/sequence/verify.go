package sequence

import "fmt"

// BrokenError says which rule a plan breaks.
type BrokenError struct {
	Rule   string // one of the names below
	Detail string
}

// Error names the rule and the place.
func (e *BrokenError) Error() string { return e.Rule + ": " + e.Detail }

// Names of the rules that Verify knows.
const (
	BrokenShape    = "shape"    // a task for each task, modes and places that exist
	BrokenMinutes  = "minutes"  // as long as the mode says after the mode before
	BrokenPhases   = "phases"   // order, changes and number of the fires
	BrokenPlace    = "place"    // a zone under each fire the task meets, inside its phases
	BrokenLag      = "lag"      // minutes between tasks
	BrokenGap      = "gap"      // minutes before serving
	BrokenEarliest = "earliest" // nothing before the earliest instant
	BrokenQuiet    = "quiet"    // nothing attended in quiet hours
	BrokenClosed   = "closed"   // no start, light or change in closed hours
	BrokenHands    = "hands"    // one pair of hands
	BrokenRoom     = "room"     // the capacity of each zone
	BrokenIdle     = "idle"     // no fire for nothing
	BrokenCost     = "cost"     // the objective, its parts and its bound
)

func broken(rule, detail string, args ...any) error {
	return &BrokenError{rule, fmt.Sprintf(detail, args...)}
}

// Verify checks a plan against the problem without the code that made it. The
// error is a *BrokenError. A solution without a plan is only checked for having
// none.
func Verify(p *Problem, s *Solution) error {
	if s.Status != Optimal && s.Status != Feasible {
		if len(s.Chains) > 0 || len(s.Phases) > 0 {
			return broken(BrokenShape, "%s, but there is a plan", s.Status)
		}
		return nil
	}
	v := verifier{p, s}
	for _, test := range []func() error{v.shape, v.phases, v.places, v.clocks, v.lights, v.idle, v.instants, v.hands, v.room, v.cost} {
		if err := test(); err != nil {
			return err
		}
	}
	return nil
}

type verifier struct {
	p *Problem
	s *Solution
}

// each calls f for every task with its mode until an error.
func (v verifier) each(f func(c, j int, t *Task, m *Mode, at Placed) error) error {
	for c, tasks := range v.s.Chains {
		for j, at := range tasks {
			t := &v.p.Chains[c].Tasks[j]
			if err := f(c, j, t, &t.Modes[at.Mode], at); err != nil {
				return err
			}
		}
	}
	return nil
}

func (v verifier) shape() error {
	if len(v.s.Chains) != len(v.p.Chains) {
		return broken(BrokenShape, "%d chains, want %d", len(v.s.Chains), len(v.p.Chains))
	}
	for c, tasks := range v.s.Chains {
		if len(tasks) != len(v.p.Chains[c].Tasks) {
			return broken(BrokenShape, "chain %d: %d tasks, want %d", c, len(tasks), len(v.p.Chains[c].Tasks))
		}
		before := 0
		for j, at := range tasks {
			modes := v.p.Chains[c].Tasks[j].Modes
			if at.Mode < 0 || at.Mode >= len(modes) {
				return broken(BrokenShape, "chain %d task %d: mode %d of %d", c, j, at.Mode, len(modes))
			}
			if want := modes[at.Mode].Minutes[before]; want == 0 || at.Start-at.End != want {
				return broken(BrokenMinutes, "chain %d task %d: %d minutes, want %d", c, j, at.Start-at.End, want)
			}
			before = at.Mode
		}
	}
	return nil
}

func (v verifier) phases() error {
	n, most := len(v.s.Phases), v.p.MaxPhases
	if most == 0 {
		most = DefaultPhases
	}
	if n > most {
		return broken(BrokenPhases, "%d phases, at most %d", n, most)
	}
	if n == 0 && v.s.Light != -1 {
		return broken(BrokenPhases, "a light at %d and no fire", v.s.Light)
	}
	for k, ph := range v.s.Phases {
		if ph.Fire < 0 || ph.Fire >= len(v.p.Fires) || ph.Begin < ph.End {
			return broken(BrokenPhases, "phase %d: fire %d from %d to %d", k, ph.Fire, ph.Begin, ph.End)
		}
		if k == 0 && v.s.Light != ph.Begin+v.p.Fires[ph.Fire].Setup {
			return broken(BrokenPhases, "light at %d, first phase at %d", v.s.Light, ph.Begin)
		}
		if k == n-1 {
			if ph.End != 0 {
				return broken(BrokenPhases, "the last phase ends at %d, not at the last serving instant", ph.End)
			}
			continue
		}
		next := v.s.Phases[k+1]
		if next.Fire == ph.Fire || next.Fire < 0 || next.Fire >= len(v.p.Fires) {
			return broken(BrokenPhases, "phase %d: fire %d after %d", k+1, next.Fire, ph.Fire)
		}
		if change := v.p.Change[ph.Fire][next.Fire]; change < 0 || ph.End != next.Begin+change {
			return broken(BrokenPhases, "phase %d ends at %d, the next begins at %d, a change takes %d", k, ph.End, next.Begin, change)
		}
	}
	return nil
}

func (v verifier) places() error {
	return v.each(func(c, j int, _ *Task, m *Mode, at Placed) error {
		if at.FirstPhase == -1 && at.LastPhase == -1 {
			if m.Places[0].Fire != OvenFire {
				return broken(BrokenPlace, "chain %d task %d: no phase, but not in the oven", c, j)
			}
			return nil
		}
		if at.FirstPhase < 0 || at.LastPhase < at.FirstPhase || at.LastPhase >= len(v.s.Phases) {
			return broken(BrokenPlace, "chain %d task %d: phases %d to %d", c, j, at.FirstPhase, at.LastPhase)
		}
		for k := at.FirstPhase; k <= at.LastPhase; k++ {
			if v.zone(m, k) < 0 {
				return broken(BrokenPlace, "chain %d task %d: no place in phase %d", c, j, k)
			}
		}
		first, last := v.s.Phases[at.FirstPhase], v.s.Phases[at.LastPhase]
		inside := at.Start <= first.Begin && at.End >= last.End
		if at.FirstPhase < at.LastPhase {
			inside = inside && at.Start > first.End && at.End < last.Begin
		}
		if !inside {
			return broken(BrokenPlace, "chain %d task %d: from %d to %d is outside phases %d to %d", c, j, at.Start, at.End, at.FirstPhase, at.LastPhase)
		}
		return nil
	})
}

// zone is where a mode cooks in phase k, -1 for nowhere.
func (v verifier) zone(m *Mode, k int) int {
	for _, pl := range m.Places {
		if pl.Fire == v.s.Phases[k].Fire {
			return pl.Zone
		}
	}
	return -1
}

// clocks checks lags and gaps.
func (v verifier) clocks() error {
	return v.each(func(c, j int, t *Task, m *Mode, at Placed) error {
		if j+1 < len(v.s.Chains[c]) {
			lag := at.End - v.s.Chains[c][j+1].Start
			if lag < t.LagMin || t.LagMax >= 0 && lag > t.LagMax {
				return broken(BrokenLag, "chain %d task %d: %d minutes to the next, want %d to %d", c, j, lag, t.LagMin, t.LagMax)
			}
			return nil
		}
		gap := at.End - v.p.Chains[c].Serve
		if gap < m.Gap.Min || m.Gap.Max >= 0 && gap > m.Gap.Max {
			return broken(BrokenGap, "chain %d: %d minutes before serving, want %d to %d", c, gap, m.Gap.Min, m.Gap.Max)
		}
		return nil
	})
}
