package heat

const (
	// A core that rises more slowly than 7.5 degF/h between 125 and 190 degF, in air
	// above that range, is in its stall: a definition, no fact of nature.
	stallRateKS                   = 7.5 / 1.8 / 3600
	stallLowC, stallHighC         = 51.7, 87.8
	shortestStallS        float64 = 900
)

// stallWatch follows the rate of the core from step to step.
type stallWatch struct {
	slow             bool
	beginS, endS     float64 // of the whole slow stretch so far
	beginC, endC     float64
	lastMidS, lastKS float64 // middle of the step before and its rate
	seen             bool
}

// Stall is the slow stretch of the core: when, from the start in s, and at which
// core temperatures in degC.
type Stall struct{ BeginS, EndS, BeginCoreC, EndCoreC float64 }

// Stall returns the slow stretch up to now; an unfinished one ends now. It
// reports false when the core has not been slow for a quarter of an hour.
func (s *Sim) Stall() (Stall, bool) {
	w := &s.stall
	if !w.seen {
		return Stall{}, false
	}
	st := Stall{BeginS: w.beginS, EndS: w.endS, BeginCoreC: w.beginC, EndCoreC: w.endC}
	if w.slow {
		st.EndS, st.EndCoreC = s.elapsed, s.CoreC()
	}
	return st, st.EndS-st.BeginS >= shortestStallS
}

// watch takes in the step just made.
func (w *stallWatch) watch(s *Sim) {
	if s.lastS <= 0 {
		return
	}
	before, core := s.coreOf(&s.before), s.CoreC()
	rate, mid := (core-before)/s.lastS, s.elapsed-s.lastS/2
	inRange := core > stallLowC && core < stallHighC && s.face.airC > stallHighC
	slow := inRange && rate < stallRateKS
	if slow != w.slow {
		// The rate is taken to change evenly between the middles of two steps.
		at := s.elapsed - s.lastS
		if change := rate - w.lastKS; change != 0 && w.lastMidS > 0 && inRange {
			at = w.lastMidS + (mid-w.lastMidS)*clamp((stallRateKS-w.lastKS)/change, 0, 1, 0)
		}
		coreAt := before + rate*(at-(s.elapsed-s.lastS))
		if slow && !w.seen {
			w.beginS, w.beginC, w.seen = at, coreAt, true
		}
		if !slow {
			w.endS, w.endC = at, coreAt
		}
		w.slow = slow
	}
	w.lastMidS, w.lastKS = mid, rate
}
