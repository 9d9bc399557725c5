package revise

import (
	"time"

	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/planner/internal/day"
)

// indoorStay is a stretch in which a piece cooked in the kitchen oven, before it went back on the grate.
type indoorStay struct {
	from, to time.Time
	c        float64 // as told, degC; 0 where nobody said so
	heats    []ovenHeat
}

// at is the heat of that oven at an instant, degC; 0 where nobody told it.
func (s indoorStay) at(t time.Time) float64 { return heatAt(s.c, s.heats, t) }

// backOnGrate says that a piece which cooked in the oven is on the grate again: what came with the oven is of a stretch that
// is over. What was taken out of the oven, or off, before that is back in heat where it was.
func (a *liveBatch) backOnGrate(at time.Time) {
	if !a.oven.set || a.off.set || !at.After(a.oven.at) {
		return
	}
	for _, s := range a.stands {
		if s.to.Equal(at) && s.from.After(a.oven.at) {
			return
		}
	}
	a.indoors = append(a.indoors, indoorStay{a.oven.at, at, a.ovenC, a.heats})
	a.oven, a.ovenC, a.heats, a.sent = known{}, 0, nil, ""
}

// wasIndoors is the oven that a piece was in at an instant, before it went back on the grate.
func (a *liveBatch) wasIndoors(t time.Time) (indoorStay, bool) {
	for _, s := range a.indoors {
		if !t.Before(s.from) && t.Before(s.to) {
			return s, true
		}
	}
	return indoorStay{}, false
}

// inside surrounds a piece in an oven of that heat, or of the heat of its way where nobody told it.
func (a *liveBatch) inside(ovenC, level float64, t time.Time) heat.Surroundings {
	if ovenC == 0 {
		ovenC = level
	}
	in := heat.Oven(ovenC)
	if a.wrap.set && !t.Before(a.wrap.at) {
		in = day.Covered(in, a.with)
	}
	return in
}

// insideAt says whether a piece was in the oven at an instant, before it went back on the grate.
func (a *liveBatch) insideAt(t time.Time) bool {
	_, was := a.wasIndoors(t)
	return was
}
