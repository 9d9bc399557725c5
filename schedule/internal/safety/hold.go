package safety

import "fmt"

// HoldKind says what ends a hold.
type HoldKind string

// The holds.
const (
	HoldNone       HoldKind = "none"        // small direct pieces: serve at once
	HoldOuterAbove HoldKind = "outer-above" // until the outer layer falls to LimitC
	HoldByClock    HoldKind = "by-clock"    // until LimitMinutes after the heat
	HoldRoastOven  HoldKind = "roast-oven"  // as long as the oven stays at LimitC or above
)

// HoldFromC is where a piece counts as hot when it leaves the heat: 150 F, ten degrees
// above the line it must stay above. An assumption; the 140 F is published.
const HoldFromC = (150.0 - 32) * 5 / 9

// roastHoldC is what a roast may be held at (FDA Food Code 3-501.16).
const roastHoldC = (130.0 - 32) * 5 / 9

// HoldRule says how long a finished piece may wait.
type HoldRule struct {
	Kind         HoldKind
	LimitC       float64 // degC; outer layer (HoldOuterAbove) or oven (HoldRoastOven), else 0
	LimitMinutes float64 // HoldByClock only; 0 elsewhere
	Source       string
	Sentence     string
}

// Finished is a piece that leaves the heat and is to wait.
type Finished struct {
	CoreC float64
	Small bool    // patties, steaks, chops
	Roast bool    // whole-muscle roasts cooked by the roast rule
	AirC  float64 // that it would wait in
	OvenC float64 // of the warm oven on offer, 0 if there is none
}

// HoldFor is the rule for a finished piece.
//
// The household charts hold at 140 F, the Food Code at 135 F: the stricter stands.
// The oven's 130 F is for roasts whose core has itself been to 130 F.
func HoldFor(f Finished) HoldRule {
	limit := outLimit(f.AirC)
	switch {
	case f.Small:
		return HoldRule{Kind: HoldNone, Source: NoSource, Sentence: "Serve it straight from the grill."}
	case f.CoreC >= HoldFromC:
		return HoldRule{Kind: HoldOuterAbove, LimitC: DangerHighC, Source: "usda_danger_zone",
			Sentence: fmt.Sprintf("Hold it hot. When the meat just under its surface falls to %s, serve it or chill it.", spoken(DangerHighC))}
	case f.Roast && f.OvenC >= roastHoldC && f.CoreC >= roastHoldC:
		return HoldRule{Kind: HoldRoastOven, LimitC: roastHoldC, Source: "fda_3_501_16",
			Sentence: fmt.Sprintf("Hold it in an oven at %s or above.", spoken(roastHoldC))}
	default:
		return HoldRule{Kind: HoldByClock, LimitMinutes: limit, Source: "usda_danger_zone",
			Sentence: fmt.Sprintf("Serve it or chill it within %s of taking it off.", spokenMinutes(limit))}
	}
}

// HoldReport compares a hold with its rule.
type HoldReport struct {
	UntilMinute float64 // the rule ends the hold here
	Ends        bool    // false: the record ends within the rule, and UntilMinute is its end
	MarginK     float64 // least outer temperature - limit; HoldOuterAbove only
	MarginMin   float64 // minutes left at the end of the record; HoldByClock only
	Finding     *Finding
}

// JudgeHold follows a hold: the history of the outer layer from the moment the piece
// left the heat to its serving or chilling. For HoldRoastOven give the oven's.
func JudgeHold(rule HoldRule, outer []Sample) (HoldReport, error) {
	if err := checkSamples(outer); err != nil {
		return HoldReport{}, err
	}
	if len(outer) == 0 {
		return HoldReport{}, fmt.Errorf("hold: no samples; give the outer layer from taking off to serving")
	}
	first, last := outer[0].Minute, outer[len(outer)-1].Minute
	r := HoldReport{UntilMinute: last}
	switch rule.Kind {
	case HoldByClock:
		r.MarginMin = rule.LimitMinutes - (last - first)
		if r.MarginMin < 0 {
			r.Ends, r.UntilMinute = true, first+rule.LimitMinutes
		}
	case HoldOuterAbove, HoldRoastOven:
		r.UntilMinute, r.Ends = firstBelow(outer, rule.LimitC)
		r.MarginK = leastC(outer) - rule.LimitC
	}
	if r.Ends {
		f := found("hold-over", rule.Sentence, r.UntilMinute, last-r.UntilMinute)
		f.Source = rule.Source
		r.Finding = &f
	}
	return r, nil
}

// firstBelow is the first minute at which the history is below levelC, or its end.
func firstBelow(samples []Sample, levelC float64) (float64, bool) {
	for i, s := range samples {
		if s.C >= levelC {
			continue
		}
		if i == 0 {
			return s.Minute, true
		}
		return crossing(samples[i-1], s, levelC), true
	}
	return samples[len(samples)-1].Minute, false
}

func leastC(samples []Sample) float64 {
	least := samples[0].C
	for _, s := range samples[1:] {
		least = min(least, s.C)
	}
	return least
}
