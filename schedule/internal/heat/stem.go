package heat

import "math"

// Stem is a body on its way to a core temperature, from which cooks branch off that end after
// ever more seconds: the steps that all of them make are made once.
type Stem struct {
	sim     Sim
	coreC   float64
	startS  float64
	reached bool
}

// Start begins where a body is.
func (t *Stem) Start(s *Sim, coreC float64) {
	*t = Stem{sim: *s, coreC: coreC, startS: s.elapsed, reached: s.CoreC() >= coreC}
}

// Within is the body after [Sim.RunWithin] with so many seconds from the start, to the last bit;
// they are not fewer than the last time it was asked.
func (t *Stem) Within(seconds float64) Sim {
	end := t.startS + clamp(seconds, 0, MaxRunS, 0)
	s := &t.sim
	for !t.reached && 2*s.stepS <= end-s.elapsed { // the end is nothing to such a step
		t.reached = s.next(math.Inf(1), t.coreC)
	}
	branch := *s
	if !t.reached {
		branch.runWithin(t.coreC, end)
	}
	return branch
}
