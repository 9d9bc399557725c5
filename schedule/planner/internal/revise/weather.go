package revise

import (
	"fmt"
	"math"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/steer"
	"example.com/cookday/schedule/unit"
)

// sparksMS is a wind that takes embers out of a grill that burns, 15 mph; from 20 mph on nobody
// lights one (safety's figure for what is forecast; the first is common practice, no source).
const (
	sparksMS = 15 * 0.44704
	stormMS  = 20 * 0.44704
)

// noteWeather says what wind and rain ask for as they were logged last, while a fire burns or
// is to be lit.
func (v *Revision) noteWeather(add func(schedule.Finding)) {
	if wind := v.windNow(); wind >= sparksMS && v.windBurns() {
		text := fmt.Sprintf("Wind of %s: sparks. Keep the lid on, clear what can burn for 10 ft downwind, have water or a hose at hand for the ground, and stay beside it. A screen of metal or stone goes 3 ft off on the windy side.", v.day.Req.Units.Speed(unit.Speed(wind)))
		if wind >= stormMS {
			text = fmt.Sprintf("Wind of %s: sparks and embers fly. Light nothing and add no lit coals in it; keep the lid on, clear what can burn for 10 ft downwind, have a hose at hand for the ground, and don't leave it. With a fire warning: food off to the oven first, then both vents shut, lid on. Flames outside the grill: leave it, and call the fire service.", v.day.Req.Units.Speed(unit.Speed(wind)))
		}
		add(schedule.NewFinding(schedule.Sparks, "", text))
	}
	if v.rainsNow() && v.windBurns() {
		add(schedule.NewFinding(schedule.InTheRain, "", "Rain: keep the lid on, and leave the grill where it is. Never under a roof, a tent or a porch. Rain cools the lid and takes coals: read the grate, and add fuel a little sooner. Keep the coals still to be lit dry."))
	}
}

// stormOpens says whether the advice would open a vent in a wind that carries embers. Then
// it is not followed: what would be fed flies (judgment, with safety's figure for a forecast).
func (v *Revision) stormOpens() bool {
	if v.steered == nil || v.windNow() < stormMS {
		return false
	}
	a := v.steered.advice
	return a.Do == steer.Move && (a.To.Top > a.From.Top || a.To.Bottom > a.From.Bottom)
}

// windBurns says whether a fire burns, or one is wanted yet.
func (v *Revision) windBurns() bool {
	if v.fireWanted() {
		return true
	}
	o, dead := v.grate.dead()
	return v.foodOn() && !(dead && !o.asked)
}

// windNow is the wind as it was logged last, m/s.
func (v *Revision) windNow() float64 {
	wind := 0.0
	for _, e := range v.log {
		if e.Kind != schedule.LogWind {
			continue
		}
		if w, err := unit.ParseSpeed(e.Value); err == nil {
			wind = float64(w)
		}
	}
	return wind
}

// rainsNow says whether it rains, as was logged last.
func (v *Revision) rainsNow() bool {
	rains := false
	for _, e := range v.log {
		if e.Kind == schedule.LogRain {
			rains = e.Value != schedule.RainOver
		}
	}
	return rains
}

// noFuel says whether nothing is left to add: none was added since that was logged.
func (v *Revision) noFuel() bool {
	none := false
	for _, e := range v.log {
		switch e.Kind {
		case schedule.LogNoFuel:
			none = true
		case schedule.LogRefuelled, schedule.LogLitCoals, schedule.LogUnlitCoals, schedule.LogLit:
			none = false
		}
	}
	return none
}

// withoutFuel takes fuel that is not there out of the steps, and says by when the food has to
// go elsewhere.
func (v *Revision) withoutFuel(p *schedule.Plan, add func(schedule.Finding)) {
	if !v.noFuel() || !v.fireWanted() {
		return
	}
	var by time.Time
	for i, s := range p.Steps {
		if s.Done || s.Kind != schedule.StepRefuel {
			continue
		}
		if by.IsZero() {
			by = s.At
		}
		p.Steps[i].Text = "Leave this out: no coals are left."
	}
	_, dead := v.grate.dead()
	g, read := v.grate.lastRead(v.now, recent)
	ovenC := 0.0
	for _, a := range v.batches {
		if a.where == cooking && v.needsFire(a) {
			ovenC = math.Max(ovenC, v.indoorsC(a))
		}
	}
	if ovenC == 0 {
		ovenC = undoneOvenC
	}
	indoors := fmt.Sprintf("into the kitchen oven at %s", v.day.Grate(ovenC))
	switch {
	case dead || v.grate.sinks() || read && g.c < lowestKeepsC:
		add(schedule.NewFinding(schedule.NoFuel, "", fmt.Sprintf("No coals are left: take the food %s now, straight from the grate, in a rimmed pan. Coals bought now and logged put the fire back into the plan.", indoors)))
	case !by.IsZero():
		add(schedule.NewFinding(schedule.NoFuel, "", fmt.Sprintf("No coals are left, and this fire wants some by %s. Get some by then and log them, or take the food %s as soon as the grate falls below %s.", v.clock(by), indoors, v.day.Grate(lowestKeepsC))))
	}
}

// lowestKeepsC is the grate below which food that is not done is better in an oven, 225 F
// (fsis_smoking).
var lowestKeepsC = unit.FToC(225)
