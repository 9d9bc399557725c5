package assemble

import (
	"fmt"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/unit"
)

// turns are the flips over the coals.
func (it *Itinerary) turns(base schedule.Step, p *arrange.Placed, name string) {
	if !p.Way.Direct {
		return
	}
	if finishesBeside(p) {
		it.thickTurns(base, p, name)
		return
	}
	for i := 1; i <= p.Way.Flips; i++ {
		s := base
		s.Kind, s.Attended, s.Minutes = schedule.StepFlip, true, 1
		s.At = it.D.At(p.On - p.Way.First.Expected*float64(i)/float64(p.Way.Flips+1))
		s.Text, s.Why = fmt.Sprintf("%s: turn.", name), "both faces take the fire"
		it.add(s)
	}
}

// What is thick burns over a fire this hot before its middle is done: it gets a few minutes a
// side, the middle of 4 to 5, and goes on beside the coals (common practice, no source).
const thickAside = 4.5

var thickFromC = unit.FToC(450)

// finishesBeside says whether a piece over the coals ends beside them.
func finishesBeside(p *arrange.Placed) bool {
	thick := p.It.Body(p.MassKg).ThicknessM > day.ThickM+1e-4
	return thick && p.Way.LevelC >= thickFromC-0.5 && p.Way.First.Expected > 2*thickAside+1
}

// thickTurns are the turn of a thick piece and its move to where no coals are.
func (it *Itinerary) thickTurns(base schedule.Step, p *arrange.Placed, name string) {
	s := base
	s.Kind, s.Attended, s.Minutes = schedule.StepFlip, true, 1
	s.At = it.D.At(p.On - thickAside)
	s.Text, s.Why = fmt.Sprintf("%s: turn. 4 to 5 min a side %s, no longer.", name, it.D.over()), "a piece this thick is black outside before it is done inside"
	it.add(s)
	s.At = it.D.At(p.On - 2*thickAside)
	s.Text = fmt.Sprintf("%s: move %s, lid on, until done %s.", name, it.D.beside(), it.doneText(p))
	it.add(s)
}

// crispBelowC is the grate below which the skin of a bird stays soft: 325 F (common
// practice, no source).
var crispBelowC = unit.FToC(325)

// crispSurelyC is the grate from which it crisps by itself: 400 F (common practice, no source).
var crispSurelyC = unit.FToC(399)

// afterTakeOff is when a piece that was measured goes over the coals.
const afterTakeOff = 2 * time.Minute

// crisp finishes the skin of a bird that cooked beside a gentle fire. The piece is at its
// minimum before; the coals earn it no credit.
func (it *Itinerary) crisp(s schedule.Step, p *arrange.Placed, name string, off time.Time) {
	if !skinned(p) || p.Way.LevelC >= crispBelowC-0.5 {
		return
	}
	d := it.D
	s.Kind, s.Attended, s.Minutes, s.At, s.GrateC = schedule.StepSear, true, 5, off.Add(afterTakeOff), 0
	s.Text = fmt.Sprintf("%s: crisp the skin, only once it reads %s or more, skin side down %s for 3 to 5 min, tongs in hand for flare-ups; or in an oven at %s.",
		name, d.Core(p.It.Verdict.Minimum.CoreC), d.over(), d.Grate(unit.FToC(450)))
	s.Why = "skin stays rubbery on a grate this cool"
	it.add(s)
}

// skinWetFactor is what the catalogue gives to skin.
const skinWetFactor = 0.3

// brown finishes sausages, which cook through beside the coals: at their minimum first.
func (it *Itinerary) brown(s schedule.Step, p *arrange.Placed, name string, off time.Time) {
	if p.It.Category != safety.Sausage || p.Way.Direct || p.Oven {
		return
	}
	s.Kind, s.Attended, s.Minutes, s.At, s.GrateC = schedule.StepSear, true, 2, off.Add(afterTakeOff), 0
	s.Text = fmt.Sprintf("%s: brown %s, a minute a side, only once each reads %s or more.", name, it.brownAt(), it.D.Core(p.It.Verdict.Minimum.CoreC))
	s.Why = it.D.beside() + " they stay pale"
	it.add(s)
}

// brownAt is where they brown: a grill of another kind may have no place hot enough.
func (it *Itinerary) brownAt() string {
	if it.D.Grill.BurnsCharcoal() {
		return it.D.over()
	}
	return it.D.over() + " or in a hot pan"
}

// skinAdvice is what the take-off of pieces of a bird adds where the grate crisps skin only
// just: 325 to 400 F (common practice, no source).
func (it *Itinerary) skinAdvice(p *arrange.Placed) string {
	whole := p.It.Cut.Style == cut.Bird && p.It.Cut.Spread != "flat-bird"
	if !skinned(p) || whole || p.Way.LevelC < crispBelowC-0.5 || p.Way.LevelC > crispSurelyC {
		return ""
	}
	return " For crisper skin, 3 min skin side down " + it.D.over() + " once that is read."
}

// skinned says whether a piece has the skin of a bird and cooked beside the coals to its end.
func skinned(p *arrange.Placed) bool {
	return p.It.Cut.Poultry && p.It.Cut.WetFactor <= skinWetFactor && !p.Way.Direct && !p.Way.Sear && !p.Oven
}
