package heat

import "math"

// RunFor advances by a time in s, at most MaxDirectS.
func (s *Slab) RunFor(seconds float64) {
	s.run(math.Inf(1), math.Inf(1), s.after(seconds), nil)
}

// after is the elapsed time some seconds from now, at most MaxDirectS.
func (s *Slab) after(seconds float64) float64 { return s.elapsed + clamp(seconds, 0, MaxDirectS, 0) }

// RunTo advances until the middle has come to a temperature in degC, turning the
// piece every flipEveryS seconds (0 for never), or for at most maxSeconds.
func (s *Slab) RunTo(coreC, flipEveryS, maxSeconds float64) Status {
	if !(flipEveryS > 0) {
		flipEveryS = math.Inf(1)
	}
	return s.run(coreC, flipEveryS, s.after(maxSeconds), nil)
}

// run advances to a temperature of the middle or to an elapsed time. The trail may
// be nil.
func (s *Slab) run(coreC, flipEveryS, end float64, kept *trail) Status {
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
		kept.take(&old)
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
	var unturned trail
	start := s.elapsed
	maxSeconds = clamp(maxSeconds, 0, MaxDirectS, 0)
	status = s.run(coreC, math.Inf(1), s.after(maxSeconds), &unturned)
	for range halvings {
		half := (s.elapsed - start) / 2
		if math.Abs(half-flipS) < turnCloseS {
			break
		}
		flipS = half
		flipAt := start + flipS
		*s = unturned.before(flipAt)
		if status = s.run(coreC, math.Inf(1), flipAt, nil); status == TimedOut {
			s.Flip()
			status = s.run(coreC, math.Inf(1), s.after(maxSeconds-flipS), nil)
		}
	}
	return flipS, status
}

// trail keeps states of a run on its way, so that another that parts from it later
// need not go all the way again. They lie ever farther apart as the run grows.
type trail struct {
	states [16]Slab
	kept   int
	steps  int // of the run so far
	every  int // of which one in so many is kept
}

func (t *trail) take(s *Slab) {
	if t == nil {
		return
	}
	if t.steps%max(t.every, 1) == 0 {
		if t.kept == len(t.states) {
			for i := range t.kept / 2 {
				t.states[i] = t.states[2*i]
			}
			t.kept, t.every = t.kept/2, 2*max(t.every, 1)
		}
		if t.steps%max(t.every, 1) == 0 {
			t.states[t.kept] = *s
			t.kept++
		}
	}
	t.steps++
}

// before is the last state kept before an elapsed time, or the first one.
func (t *trail) before(elapsed float64) Slab {
	i := t.kept - 1
	for i > 0 && t.states[i].elapsed >= elapsed {
		i--
	}
	return t.states[max(i, 0)]
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
