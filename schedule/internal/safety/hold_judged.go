package safety

import "fmt"

// HoldReport compares a hold with its rule.
type HoldReport struct {
	UntilMinute float64 // the rule ends the hold here
	Ends        bool    // false: the record ends within the rule, and UntilMinute is its end
	MarginK     float64 // least outer temperature - limit; HoldOuterAbove only
	MarginMin   float64 // minutes left on the clock at the end of the record; HoldByClock only
	Finding     *Finding
}

// JudgeHold follows a hold: the history of the outer layer from the moment the piece
// left the heat to its serving or chilling. For HoldRoastOven give the oven's. The record
// is over where the last of the piece had to be eaten or chilled; where a fall below the
// line earns no time, at that.
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
		eaten := rule.Clock(0).Eaten
		r.MarginMin = eaten - (last - first)
		if r.MarginMin < 0 {
			r.Ends, r.UntilMinute = true, first+eaten
		}
	case HoldOuterAbove, HoldRoastOven:
		r.MarginK = leastC(outer) - rule.LimitC
		added := 0.0
		if rule.AddedMinutes > 0 {
			added = rule.AddedMinutes + rule.EatMinutes
		}
		if at, below := firstBelow(outer, rule.LimitC); below {
			r.UntilMinute = min(at+added, last)
			r.Ends = at+added < last || added == 0
		}
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
