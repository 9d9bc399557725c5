package safety

import "fmt"

// The two stages of cooling cooked food (FDA Food Code 3-501.14). The 6 h run from the
// start: the second stage gets whatever the first left over.
const (
	CoolingFirstMinutes = 120.0
	CoolingWholeMinutes = 360.0
)

// The temperatures of the stages, from 135 F through 70 F to 41 F, in degC.
const (
	CoolingStartC  = (135.0 - 32) * 5 / 9
	CoolingMiddleC = (70.0 - 32) * 5 / 9
	CoolingEndC    = (41.0 - 32) * 5 / 9
)

// CoolingKind is the answer of JudgeCooling.
type CoolingKind string

// The answers.
const (
	CoolingWithin     CoolingKind = "within"     // reached 41 F inside both limits
	CoolingOutside    CoolingKind = "outside"    // one limit is past
	CoolingUnfinished CoolingKind = "unfinished" // not cold yet, and no limit past yet
	CoolingNotStarted CoolingKind = "not-started"
)

// CoolingReport compares the cooling of a core with the two stages.
type CoolingReport struct {
	Kind        CoolingKind
	StartMinute float64 // when the core last fell through 135 F
	// StartKnown is false when the record begins below 135 F: the clock then runs
	// from its first sample, and the true times are longer.
	StartKnown     bool
	FirstMinutes   float64 // from 135 to 70 F; so far, if not there yet
	WholeMinutes   float64 // from 135 to 41 F; so far, if not there yet
	FirstMarginMin float64 // limit - FirstMinutes; negative: outside
	WholeMarginMin float64
	Finding        *Finding // set when outside
}

// JudgeCooling looks at the last cooling in a history of the core (or of the warmest
// point known), which may begin with the cook and must end before any reheating.
func JudgeCooling(samples []Sample) (CoolingReport, error) {
	if err := checkSamples(samples); err != nil {
		return CoolingReport{}, err
	}
	var r CoolingReport
	r.StartMinute, r.StartKnown = lastFall(samples, CoolingStartC)
	if !r.StartKnown {
		if len(samples) == 0 || samples[len(samples)-1].C >= CoolingStartC {
			r.Kind = CoolingNotStarted
			return r, nil
		}
		r.StartMinute = samples[0].Minute
	}
	end := samples[len(samples)-1].Minute
	cooling := stretch(samples, r.StartMinute, end)
	minuteOf := func(levelC float64) (float64, bool) {
		at, ok := settledAt(cooling, levelC)
		if !ok {
			at = end
		}
		return at - r.StartMinute, ok
	}
	var cold bool
	r.FirstMinutes, _ = minuteOf(CoolingMiddleC)
	r.WholeMinutes, cold = minuteOf(CoolingEndC)
	r.FirstMarginMin = CoolingFirstMinutes - r.FirstMinutes
	r.WholeMarginMin = CoolingWholeMinutes - r.WholeMinutes
	switch {
	case r.FirstMarginMin < -roundingMinutes || r.WholeMarginMin < -roundingMinutes:
		r.Kind = CoolingOutside
		r.Finding = r.finding()
	case cold:
		r.Kind = CoolingWithin
	default:
		r.Kind = CoolingUnfinished
	}
	return r, nil
}

// roundingMinutes keeps the rounding of a sum of doubles from breaking a limit that is
// met exactly; far below a second.
const roundingMinutes = 1e-6

func (r CoolingReport) finding() *Finding {
	levelC, took, limit, over := CoolingMiddleC, r.FirstMinutes, CoolingFirstMinutes, -r.FirstMarginMin
	if over <= 0 {
		levelC, took, limit, over = CoolingEndC, r.WholeMinutes, CoolingWholeMinutes, -r.WholeMarginMin
	}
	measured := fmt.Sprintf("Cooling to %s takes at least %s; the published limit is %s.",
		spokenMost(levelC), spokenMinutes(took), spokenMinutes(limit))
	f := found("cooling-outside", measured, r.StartMinute+limit, over)
	return &f
}
