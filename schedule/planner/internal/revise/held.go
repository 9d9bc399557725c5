package revise

import "example.com/cookday/schedule/planner/internal/arrange"

// heldUntil is when what is expected off, or is off, comes off and can be held until, in
// minutes of its batch; false where it cannot be held.
func (v *Revision) heldUntil(a *liveBatch, p *arrange.Placed) (off, until float64, ok bool) {
	o, holds := v.day.ChosenHold(p)
	off = a.live.Total().Expected
	return off, off + o.Minutes, holds
}
