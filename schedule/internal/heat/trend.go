package heat

import "math"

// trend follows how the core moves, to say when it will be, or was, somewhere.
type trend struct {
	rateKS  float64 // mean over the last step, K/s
	midS    float64 // middle of that step
	bendKS2 float64 // change of the rate from step to step, K/s2
	steps   int     // since the surroundings changed
}

// follow takes in a step of dt seconds that ended at endS.
func (t *trend) follow(beforeC, afterC, dt, endS float64) {
	rate, mid := (afterC-beforeC)/dt, endS-dt/2
	t.bendKS2 = 0
	if t.steps > 0 && mid > t.midS {
		t.bendKS2 = (rate - t.rateKS) / (mid - t.midS)
	}
	t.rateKS, t.midS = rate, mid
	t.steps++
}

// until is the time in s that a rise takes which begins offset seconds after the
// middle of the last step; infinite where it does not come.
func (t *trend) until(riseK, offset float64) float64 {
	v := t.rateKS + t.bendKS2*offset
	d := v*v + 2*t.bendKS2*riseK
	if math.IsInf(riseK, 1) || d < 0 || v+math.Sqrt(d) <= 0 {
		return math.Inf(1)
	}
	return 2 * riseK / (v + math.Sqrt(d))
}
