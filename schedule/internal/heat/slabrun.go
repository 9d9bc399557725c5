package heat

import "math"

// RunFor advances by a time in s, at most MaxDirectS.
func (s *Slab) RunFor(seconds float64) { s.run(math.Inf(1), math.Inf(1), seconds) }

// RunTo advances until the middle has come to a temperature in degC, turning the
// piece every flipEveryS seconds (0 for never), or for at most maxSeconds.
func (s *Slab) RunTo(coreC, flipEveryS, maxSeconds float64) Status {
	if !(flipEveryS > 0) {
		flipEveryS = math.Inf(1)
	}
	return s.run(coreC, flipEveryS, maxSeconds)
}

func (s *Slab) run(coreC, flipEveryS, maxSeconds float64) Status {
	end := s.elapsed + clamp(maxSeconds, 0, MaxDirectS, 0)
	flipAt := s.elapsed + math.Max(flipEveryS, slabStepS)
	for {
		before, at := s.CoreC(), s.elapsed
		if before >= coreC {
			return Reached
		}
		if at >= end {
			return TimedOut
		}
		until := math.Min(end, flipAt)
		dt := slabStepS / s.pace
		if at+dt >= until {
			dt = until - at
		}
		old := *s
		s.step(dt)
		if s.elapsed > until-1e-6 {
			s.elapsed = until
		}
		if after := s.CoreC(); after >= coreC {
			// A step as long as the target needs lands on it closely enough.
			*s = old
			s.step(dt * (coreC - before) / (after - before))
			return Reached
		}
		if s.elapsed >= flipAt {
			s.Flip()
			flipAt += math.Max(flipEveryS, slabStepS)
		}
	}
}

const (
	// How often the time of the only turn is corrected, and when it is close
	// enough in s. The time to the target depends weakly on it.
	halvings   = 4
	turnCloseS = 5
)

// RunToTurnedOnce advances until the middle has come to a temperature in degC
// with one turn half-way, or for at most maxSeconds, and returns when the turn
// was, in s from now.
func (s *Slab) RunToTurnedOnce(coreC, maxSeconds float64) (flipS float64, status Status) {
	start := *s
	maxSeconds = clamp(maxSeconds, 0, MaxDirectS, 0)
	status = s.run(coreC, math.Inf(1), maxSeconds)
	for range halvings {
		half := (s.elapsed - start.elapsed) / 2
		if math.Abs(half-flipS) < turnCloseS {
			break
		}
		flipS = half
		*s = start
		if status = s.run(coreC, math.Inf(1), flipS); status == TimedOut {
			s.Flip()
			status = s.run(coreC, math.Inf(1), maxSeconds-flipS)
		}
	}
	return flipS, status
}

// CarryOver returns the peak that the middle comes to when the slab is moved
// into surroundings of rest now. The Slab itself does not move.
func (s *Slab) CarryOver(rest Surroundings) Peak {
	branch := *s
	branch.Change(Fire{Hot: rest, Top: rest})
	pulled := branch.CoreC()
	best, bestAt := pulled, branch.elapsed
	for branch.elapsed < s.elapsed+MaxDirectS {
		branch.step(slabStepS)
		core := branch.CoreC()
		if core > best {
			best, bestAt = core, branch.elapsed
		}
		if core < best-pastPeakK {
			break
		}
	}
	return Peak{CoreC: ProbeCoreC(pulled, best), AfterS: bestAt - s.elapsed}
}
