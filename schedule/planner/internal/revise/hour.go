package revise

import (
	"context"
	"slices"
	"time"
)

// The hour that was asked for is kept where it is not lost yet, and something that the cook may
// do makes it likely (judgment).
const (
	notLost   = 0.25      // chance of it as the cook stands
	decently  = 0.5       // and with what may be done
	nearSleep = time.Hour // before people sleep dinner is too late
)

// reaches are the codes of options that bring a late piece to its hour.
var reaches = []string{"hotter", "wrap-now", "oven-finish"}

// keepsHour is the day as near to the hour that was asked for as is expected, where dinner would
// move into the hours of sleep only to be surer, and a hotter grate, a wrap or the oven reaches
// that hour: that is for the cook to choose, and costs no night. Nil where nothing reaches it.
func (v *Revision) keepsHour(ctx context.Context, l remainder) (*Revision, error) {
	if !v.day.InQuiet(v.day.End) && !v.day.InQuiet(v.day.End.Add(nearSleep)) {
		return nil, nil
	}
	if v.attempt.later == 0 || v.attempt.halfway || !v.askedEnd().After(v.now) || v.chanceAsOf(l, v.attempt.later) < notLost {
		return nil, nil
	}
	i, why := v.troubled(l)
	if i < 0 || !v.reached(ctx, l, i, why) {
		return nil, ctx.Err()
	}
	w := v.copied()
	w.day, w.attempt, w.likely = v.asking, attempt{}, true
	w.rebind()
	left, err := w.arrangeLeft(ctx)
	if err != nil || w.attempt.later >= v.attempt.later {
		return nil, ctx.Err()
	}
	w.remainder = left
	return w, nil
}

// reached says whether something that the cook may do brings a piece to the asked hour.
func (v *Revision) reached(ctx context.Context, l remainder, i int, why string) bool {
	return slices.ContainsFunc(v.options(l.bound[i], l.all[i], why), func(o option) bool {
		if !slices.Contains(reaches, o.code) {
			return false
		}
		o.entry.At = v.now
		w, ok := v.with(ctx, o.entry)
		return ok && w.attempt.later == 0 && w.remainder.chance() >= decently
	})
}
