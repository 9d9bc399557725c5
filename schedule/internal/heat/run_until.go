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

// runUntilBelow waits for a cell; the innermost stands for the centre.
func (s *Sim) runUntilBelow(cell int, limitC, maxSeconds float64) Status {
	end := s.elapsed + clamp(maxSeconds, 0, MaxRunS, 0)
	now := s.state.tempC[cell]
	if now <= limitC {
		return Reached
	}
	for s.elapsed < end {
		s.next(end, math.Inf(1))
		after := s.state.tempC[cell]
		if after <= limitC {
			share := (now - limitC) / (now - after)
			s.backTo(share, (1-share)*s.lastS)
			return Reached
		}
		now = after
	}
	return TimedOut
}
