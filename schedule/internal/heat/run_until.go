package heat

import (
	"math"
)

// RunUntilOuterBelow advances until the outermost cell has fallen to a
// temperature in degC, or for at most maxSeconds. It is Reached at once where
// that cell is no warmer to begin with.
func (s *Sim) RunUntilOuterBelow(limitC, maxSeconds float64) Status {
	return s.runUntilBelow(s.cells-1, limitC, maxSeconds)
}

// Passing is a temperature of the outermost cell on its way down, and when it was passed.
type Passing struct {
	C      float64
	AtS    float64 // elapsed, as [Sim.RunUntilOuterBelow] would have ended at
	Passed bool
}

// RunUntilOuterBelowPast is RunUntilOuterBelow, and notes when a higher temperature was passed.
func (s *Sim) RunUntilOuterBelowPast(limitC, maxSeconds float64, past *Passing) Status {
	if !past.Passed && s.OuterC() <= past.C {
		past.AtS, past.Passed = s.elapsed, true
	}
	return s.runUntilBelowPast(s.cells-1, limitC, maxSeconds, past)
}

// runUntilBelow waits for a cell; the innermost stands for the centre.
func (s *Sim) runUntilBelow(cell int, limitC, maxSeconds float64) Status {
	return s.runUntilBelowPast(cell, limitC, maxSeconds, &Passing{Passed: true})
}

func (s *Sim) runUntilBelowPast(cell int, limitC, maxSeconds float64, past *Passing) Status {
	end := s.elapsed + clamp(maxSeconds, 0, MaxRunS, 0)
	now := s.state.tempC[cell]
	if now <= limitC {
		return Reached
	}
	for s.elapsed < end {
		s.next(end, math.Inf(1))
		after := s.state.tempC[cell]
		if !past.Passed && after <= past.C {
			share := (now - past.C) / (now - after)
			past.AtS, past.Passed = s.elapsed-(1-share)*s.lastS, true
		}
		if after <= limitC {
			share := (now - limitC) / (now - after)
			s.backTo(share, (1-share)*s.lastS)
			return Reached
		}
		now = after
	}
	return TimedOut
}
