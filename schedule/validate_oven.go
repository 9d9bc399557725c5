package schedule

import (
	"time"

	"example.com/cookday/schedule/unit"
)

func (v *validator) oven() {
	if o := v.r.Oven; o != nil {
		ranged(v, "oven.hold", "oven temperature to hold at", o.Hold, leastOvenHold, mostOvenHold, v.units.Grate)
	}
}

// mostBoxHours is longer than a box keeps anything hot.
const mostBoxHours = 24

// box: only a good one has something to show.
func (v *validator) box() {
	b := v.r.Box
	if b == nil || !v.word("box.kind", b.Kind, boxKinds...) || b.Logged == nil {
		return
	}
	if b.Kind != BoxGood {
		v.faults.Add("box.logged", "is what shows that a box is good; write kind: good, or leave logged out")
		return
	}
	v.span("box.logged.after", b.Logged.After, mostBoxHours*time.Hour)
	ranged(v, "box.logged.core", "core temperature after a hold", b.Logged.Core, unit.FromFahrenheit(32), mostCore, v.units.Core)
}
