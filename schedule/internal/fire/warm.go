package fire

import (
	"math"
)

// About 90 % of a rise is there after 15 min (common practice, no source): a time constant of 6.5 min. With the vents
// shut the shell and the coals hold their heat: four times slower (practice says several times; assumption).
const (
	warmMinutes     = 6.5
	coolMinutes     = 4 * warmMinutes
	closeEnoughK    = 25 / 1.8 // 25 F either way is good enough (common practice)
	ventMinutes     = 15       // until a change of vents takes effect (common practice)
	warmBurnMinutes = 15       // the warm-up burns at the level's rate (assumption)
	handMinutes     = 5        // grate off, coals moved, grate on (assumption)
	chimneyMinutes  = 20       // a full chimney, 15-20 min (common practice)
)

// WarmUp is the grate temperature some minutes after the fire was set to go from one temperature to another, degC.
func WarmUp(minutes, fromC, toC float64) float64 {
	return toC + (fromC-toC)*math.Exp(-max(minutes, 0)/TimeConstantMinutes(fromC, toC))
}

// TimeConstantMinutes is the first-order time constant of a change of the grate's temperature.
func TimeConstantMinutes(fromC, toC float64) float64 {
	if toC < fromC {
		return coolMinutes
	}
	return warmMinutes
}

// SetupMinutes is the time from the light to a fire at 90 % of its level: lighting, then warming.
func (g Grill) SetupMinutes(f Fire) int {
	d := g.describe(f.Layout)
	if d == nil || !g.Charcoal() {
		return ventMinutes // assumption: burners or an oven come up as a vent change does
	}
	return d.LightMinutes + d.WarmMinutes
}

// PourMinutes is the time from the light until the lit coals are poured in place, 0
// where there are none.
func (g Grill) PourMinutes(f Fire) int {
	if d := g.describe(f.Layout); d != nil && g.Charcoal() {
		return d.LightMinutes
	}
	return 0
}

// ChangeMinutes is the time until the next fire is within 25 F (14 K) of its level; not ok where the coals cannot be
// relaid so. Lit coals that are added must be lit before it begins (ChangeAdvice says how long before).
func (g Grill) ChangeMinutes(from, to Fire) (minutes int, ok bool) {
	if from == to {
		return 0, true
	}
	if !canBecome(from.Layout, to.Layout) {
		return 0, false
	}
	need := float64(ventMinutes)
	if drop := from.LevelC - to.LevelC; drop > closeEnoughK {
		need = max(need, coolMinutes*math.Log(drop/closeEnoughK))
	}
	if from.Layout != to.Layout {
		need += handMinutes
	}
	return 5 * int(math.Ceil(need/5)), true
}

func canBecome(from, to Layout) bool {
	if from == to {
		return true
	}
	d := describe(from)
	if d == nil {
		return false
	}
	for _, l := range d.Becomes {
		if l == to {
			return true
		}
	}
	return false
}
