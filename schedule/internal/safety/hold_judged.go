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
// is over where the last of the piece had to be eaten or chilled, counted from when it was
// last known to be hot; where a fall below the line earns no time, or came at a moment that
// nobody knows, at that.
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
		at, below := firstBelow(outer, rule.LimitC)
		if before, hot := lastAbove(outer, rule.LimitC); below && hot && rule.AddedMinutes > 0 {
			at = before + rule.AddedMinutes + rule.EatMinutes
		}
		r.Ends = below && (at < last || rule.AddedMinutes == 0 || outer[0].C < rule.LimitC)
		r.UntilMinute = min(at, last)
	}
	if r.Ends {
		f := found("hold-over", rule.Sentence(), r.UntilMinute, last-r.UntilMinute)
		f.Source = rule.Source
		r.Finding = &f
	}
	return r, nil
}

// lastAbove is the last minute at which the history is known to be at levelC or above,
// before it is first below: the clock may have begun then. false if it never was.
func lastAbove(samples []Sample, levelC float64) (minute float64, ok bool) {
	for _, s := range samples {
		if s.C < levelC {
			break
		}
		minute, ok = s.Minute, true
	}
	return minute, ok
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
