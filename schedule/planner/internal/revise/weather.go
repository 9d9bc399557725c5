package revise

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/say"
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
func (v *Revision) noteWeather(l remainder, add func(schedule.Finding)) {
	if wind := v.windNow(); wind >= sparksMS && v.windBurns() {
		text := fmt.Sprintf("Wind of %s: sparks. Keep the lid on, clear what can burn for 10 ft downwind, have water or a hose at hand for the ground, and stay beside it. A screen of metal or stone goes 3 ft off on the windy side.", v.day.Req.Units.Speed(unit.Speed(wind)))
		if wind >= stormMS {
			text = fmt.Sprintf("Wind of %s: sparks and embers fly. Light nothing and add no lit coals in it; keep the lid on, clear what can burn for 10 ft downwind, have a hose at hand for the ground, and don't leave it. With a fire warning: food off to the oven first, then both vents shut, lid on. Flames outside the grill: leave it, and call the fire service.", v.day.Req.Units.Speed(unit.Speed(wind)))
		}
		add(schedule.NewFinding(schedule.Sparks, "", text))
		if wind >= stormMS {
			v.eachUnlit(l, func(a *liveBatch, by time.Time) {
				add(about(a, schedule.Sparks, fmt.Sprintf("%s: cook it in the kitchen oven at %s unless the wind is under 20 mph by %s. Log the wind then. It still wants a fire, and none is lit or fed in this wind.", a.batch.It.Dish.Name, v.roastC(a), v.clock(by))))
			})
		}
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

// unlitInStorm has no coals lit, added or shifted in a wind that carries embers.
func (v *Revision) unlitInStorm(steps []schedule.Step) []schedule.Step {
	if v.windNow() < stormMS {
		return steps
	}
	for i, s := range steps {
		if !s.Done && slices.Contains([]schedule.StepKind{schedule.StepLight, schedule.StepRefuel, schedule.StepChangeFire}, s.Kind) && !strings.HasPrefix(s.Text, "Leave this out") {
			steps[i].Text = "Only once the wind is under 20 mph: " + say.Lower(s.Text)
		}
	}
	return steps
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

// withoutFuel takes fuel that is not there out of the steps, and says what that means: for what
// goes indoors, and for what still wants a fire.
func (v *Revision) withoutFuel(p *schedule.Plan, l remainder, add func(schedule.Finding)) {
	sent := slices.ContainsFunc(v.batches, func(a *liveBatch) bool { return a.sent == whyNoCoals })
	if !v.noFuel() || !sent && !v.fireWanted() {
		return
	}
	for i, s := range p.Steps {
		switch {
		case s.Done, strings.HasPrefix(s.Text, "Leave this out"):
		case s.Kind == schedule.StepRefuel:
			p.Steps[i].Text = "Leave this out, even with food still on: no coals are left."
		case s.Kind == schedule.StepLight, s.Kind == schedule.StepChangeFire:
			p.Steps[i].Text = "Only with coals by then: " + say.Lower(s.Text)
		}
	}
	if sent {
		add(schedule.NewFinding(schedule.NoFuel, "", "No coals are left: the food goes on in the kitchen oven. Coals bought now and logged put the fire back into the plan."))
	}
	v.eachUnlit(l, func(a *liveBatch, by time.Time) {
		add(about(a, schedule.NoFuel, fmt.Sprintf("%s: get coals and log them by %s, or cook it in the kitchen oven at %s. It still wants a fire, and no coals are left.", a.batch.It.Dish.Name, v.clock(by), v.roastC(a))))
	})
}

// roastC is the oven that takes what was to cook on a fire, as a cook sets it: as hot as that,
// and at least what meat wants that is not seared first.
func (v *Revision) roastC(a *liveBatch) string {
	return v.day.Grate(math.Min(math.Max(a.way().AirC, undoneOvenC), hottestOvenC))
}

// eachUnlit visits the dishes that are not on yet, with the instant at which their fire must
// have its coals.
func (v *Revision) eachUnlit(l remainder, visit func(a *liveBatch, by time.Time)) {
	seen := map[string]bool{}
	for i, a := range l.bound {
		if a.where != waiting || seen[a.batch.It.Dish.ID] {
			continue
		}
		seen[a.batch.It.Dish.ID] = true
		visit(a, instant.Later(v.now, v.day.At(l.all[i].On).Add(-instant.Minutes(newFireTakes))))
	}
}

// hottestOvenC is a kitchen oven at its usual end, 500 F (common practice, no source).
var hottestOvenC = unit.FToC(500)

// lowestKeepsC is the grate below which food that is not done is better in an oven, 225 F
// (fsis_smoking).
var lowestKeepsC = unit.FToC(225)
