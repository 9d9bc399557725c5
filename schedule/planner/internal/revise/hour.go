package revise

import "context"

// notLost is the chance of the hour that was asked for, as things stand, from which on dinner
// does not move by hours only to be surer (judgment).
const notLost = 0.25

// keepsHour is the day as near to the hour that was asked for as is expected, where dinner would
// move only to be surer and that hour is not lost yet: one reading more would move it back. What
// the hour's chance is, is said beside the hour that has the asked one, and a cook may choose.
// So it is, too, where dinner would move over a night while people sleep: nobody is called out of
// bed for what the morning may decide. Nil where the day stays as it is.
func (v *Revision) keepsHour(ctx context.Context, l remainder) (*Revision, error) {
	if v.attempt.later == 0 || v.attempt.halfway || !v.askedEnd().After(v.now) {
		return nil, nil
	}
	lost := v.chanceAsOf(l, v.attempt.later) < notLost
	if lost && !(v.day.InQuiet(v.now) && v.overNight()) {
		return nil, nil
	}
	w := v.copied()
	w.day, w.attempt, w.likely = v.asking, attempt{}, true
	w.rebind()
	left, err := w.arrangeLeft(ctx)
	if err != nil || w.attempt.later >= v.attempt.later || lost && w.overNight() {
		return nil, ctx.Err()
	}
	w.remainder = left
	return w, nil
}
