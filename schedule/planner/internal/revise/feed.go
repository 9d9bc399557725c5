package revise

import (
	"fmt"
	"math"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/steer"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/unit"
)

// What a fire is fed with that sinks: lit coals for the level, and unlit ones beside them for no more than a few hours, for
// what lies on a live bed catches (judgment).
const (
	feedsFor     = 3 * time.Hour
	leastLit     = 20
	hotLit       = 30 // of a hot fire
	mostBeside   = 60 // unlit ones: what lies on a live bed catches
	leastBeside  = 10 // of them, else none
	feedsByCoals = 5
)

// hotLevelC is a level that wants more of them (judgment).
var hotLevelC = unit.FToC(300)

// feedNow is how a fire that sinks is fed, with a count: how many lit, which bring it back, and how many unlit for the hours to
// come, of what it burns an hour; by which vent it gets air meanwhile.
func (v *Revision) feedNow(p *schedule.Plan) string {
	lit, unlit := v.feedCounts(p)
	text := "Light " + v.coals(lit, "") + " now, to add in 20 min"
	if unlit > 0 {
		text += "; " + v.coals(unlit, "unlit") + " go beside them for the hours to come"
	}
	return text + ". " + v.airMeanwhile() + assemble.AddLit + " " + safety.OpenStarved
}

// feedShort is the same in a few words.
func (v *Revision) feedShort(p *schedule.Plan) string {
	lit, unlit := v.feedCounts(p)
	if unlit == 0 {
		return v.coals(lit, "lit")
	}
	return v.coals(lit, "lit") + ", and " + v.coals(unlit, "unlit") + " beside them"
}

func (v *Revision) feedCounts(p *schedule.Plan) (lit, unlit int) {
	lit = leastLit
	if v.grate.levelAt(v.now, v.plannedLevel) >= hotLevelC {
		lit = hotLit
	}
	if v.steered != nil {
		lit = max(lit, v.steered.lit)
	}
	if unlit = v.unlitBeside(p, lit); unlit < leastBeside {
		unlit = 0
	}
	return lit, unlit
}

// coals are so many of this grill's fuel: "20 briquettes", or what gives the same heat in lump.
func (v *Revision) coals(n int, state string) string {
	if state != "" {
		state += " "
	}
	if v.day.Grill.Fuel == fire.Lump {
		const many = 100.0
		return say.Mass(v.day.Req.Units, float64(n)*many/v.day.Grill.Pieces(fire.Amount{MassKg: many})) + " of " + state + "lump"
	}
	return fmt.Sprintf("%d %sbriquettes", n, state)
}

// unlitBeside are the coals for the hours that the fire in hand still burns, three at the most, less the lit ones.
func (v *Revision) unlitBeside(p *schedule.Plan, lit int) int {
	if v.phases < 1 || v.phases > len(p.Phases) {
		return 0
	}
	ph := p.Phases[v.phases-1]
	left := min(ph.To.Sub(v.now), feedsFor)
	perHour := v.day.Grill.Pieces(fire.Amount{MassKg: v.day.Grill.RateKgPerHour(v.grate.levelAt(v.now, v.plannedLevel), v.day.Air)})
	n := perHour*left.Hours()*feedMargin - float64(lit)
	return feedsByCoals * int(math.Round(min(max(n, 0), mostBeside)/feedsByCoals))
}

// airMeanwhile opens one vent of a fire that waits for its coals, as far as is known how they stand.
func (v *Revision) airMeanwhile() string {
	switch {
	case v.allOpenTold():
		return "The vents are open: rake the ash out below. "
	case v.steered == nil:
		return "Until then give it a little more air. "
	}
	if v.setsVents() {
		return "" // a step of its own
	}
	a := v.steered.advice
	switch {
	case a.From.Top > 0.99 && a.From.Bottom > 0.99:
		return "The vents are open; rake the ash out below. "
	case v.day.Grill.SteersBottom() && a.From.Bottom <= 0.99, a.From.Top > 0.99:
		return fmt.Sprintf("Until then open the %s fully, and leave the top one. ", v.day.BottomVents())
	}
	return "Until then open the top vent fully, and leave the bottom one. "
}

// wantsFuel says whether the advice in hand is of a fire that is short of coals or of air, and not of one that comes back by
// itself.
func (v *Revision) wantsFuel() bool {
	a := v.steered.advice
	switch a.Why {
	case steer.ComingRight, steer.PassesBy, steer.ColdLoad, steer.FreshCoals, steer.Caught, steer.Unfelt, steer.Warms, steer.LidWasOff, steer.BadReading, steer.NothingRead, steer.GaugeAlone, steer.VentsShut:
		return false
	}
	return !a.InDip
}

// stillHot says whether a fire that was seen to fail still gives heat to cook by: it is fed, with the food where it is.
func (v *Revision) stillHot() bool {
	g, ok := v.grate.lastRead(v.now, oldReading)
	return ok && !g.gauge && g.c >= safety.LowHeatC
}
