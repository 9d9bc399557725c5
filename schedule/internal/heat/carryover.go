package heat

import "math"

const (
	// CarryOverFactor is the share of the modelled rise of the exact centre after
	// the pull that a probe sees: a probe is not at the coldest point and pieces
	// are uneven. It comes from six measured means of roasts.
	CarryOverFactor = 0.63

	longestRiseS   = 4 * 3600
	pastPeakK      = 0.05
	pullIterates   = 12
	pullToleranceK = 0.02
)

// Peak is the carry-over of a piece taken from the heat.
type Peak struct {
	CoreC  float64 // degC, what a probe reads at its highest
	AfterS float64 // s after the pull
}

// CarryOver returns the peak that the core comes to when the body is moved into
// surroundings of rest now. The Sim itself does not move.
func (s *Sim) CarryOver(rest Surroundings) Peak {
	branch := *s
	branch.Change(rest)
	pulled, start := branch.CoreC(), branch.elapsed
	end := start + longestRiseS
	best, bestAt := pulled, start
	rate := 0.0
	for branch.elapsed < end {
		core := branch.CoreC()
		branch.next(end, math.Inf(1))
		after := branch.CoreC()
		turned, mid := (after-core)/branch.lastS, branch.elapsed-branch.lastS
		if after > best {
			best, bestAt = after, branch.elapsed
		}
		if turned < 0 && rate > 0 {
			// Between the middles of two steps the rate goes through nought.
			bestAt = mid + branch.lastS*(rate/(rate-turned)-0.5)
			bestAt = math.Max(bestAt, start)
		}
		if after < best-pastPeakK {
			break
		}
		rate = turned
	}
	return Peak{CoreC: ProbeCoreC(pulled, best), AfterS: bestAt - start}
}

// ProbeCoreC turns a modelled core temperature after the pull into what a probe
// reads: a rise above the temperature at the pull is scaled by CarryOverFactor,
// later cooling is as modelled. All in degC.
func ProbeCoreC(pulledC, modelledC float64) float64 {
	return pulledC + CarryOverFactor*math.Max(modelledC-pulledC, 0) + math.Min(modelledC-pulledC, 0)
}

// PullForPeak returns the core temperature in degC at which to pull, so that the
// peak in the surroundings of rest is peakC. It reports false where the core is
// already too warm for that or the present surroundings cannot bring it there
// within maxSeconds. The Sim itself does not move.
func (s *Sim) PullForPeak(peakC float64, rest Surroundings, maxSeconds float64) (pullC float64, ok bool) {
	pullC = peakC
	for range pullIterates {
		branch := *s
		if pullC < s.CoreC() || branch.RunTo(pullC, maxSeconds) != Reached {
			return pullC, false
		}
		over := branch.CarryOver(rest).CoreC - peakC
		if math.Abs(over) < pullToleranceK {
			return pullC, true
		}
		pullC -= over
	}
	return pullC, true
}
