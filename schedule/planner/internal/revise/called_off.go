package revise

import (
	"time"

	"example.com/cookday/schedule"
)

// calledOff is when a dish was last called off.
func (v *Revision) calledOff(id string) (at time.Time) {
	for _, e := range v.log {
		if e.Kind == schedule.LogDishCancelled && e.Dish == id {
			at = e.At
		}
	}
	return at
}

// asOf forgets what a batch is taken to have come to by its hours alone after an instant: of what was called off then, nothing
// more was done.
func (a *liveBatch) asOf(at time.Time) {
	if !a.on.logged && a.on.at.After(at) {
		*a = liveBatch{first: a.first, batch: a.batch}
		return
	}
	for _, k := range []*known{&a.wrap, &a.off} {
		if !k.logged && k.at.After(at) {
			*k = known{}
		}
	}
}
