package schedule

import (
	"fmt"
	"math"
)

// shortestChange is the least move of a step, in minutes, that is worth a word.
const shortestChange = 3

// changes says what moved against the first plan, and why.
func (v *revision) changes(p *Plan) []Change {
	before := map[string]Step{}
	for _, s := range v.planned {
		before[s.ID] = s
	}
	var out []Change
	for _, s := range p.Steps {
		b, was := before[s.ID]
		delete(before, s.ID)
		moved := s.At.Sub(b.At).Minutes()
		if !s.Done && v.isUnfit(s.Dish) {
			continue // a finding says it, and louder
		}
		if was && math.Abs(moved) < shortestChange {
			continue
		}
		c := Change{Step: s.ID, Kind: s.Kind, Dish: s.Dish, Minutes: math.Round(moved), Why: v.why(s)}
		name := v.stepName(s)
		switch {
		case !was && s.Done:
			continue
		case !was:
			c.Minutes, c.Text = 0, fmt.Sprintf("%s: new, at %s.", name, v.clock(s.At))
		case s.Done:
			c.Text = fmt.Sprintf("%s: was at %s, %s than planned.", name, v.clock(s.At), v.moves(moved))
		default:
			c.Text = fmt.Sprintf("%s: at %s, not at %s; %s.", name, v.clock(s.At), v.clock(b.At), v.moves(moved))
		}
		out = append(out, c)
	}
	for _, s := range v.planned {
		if _, gone := before[s.ID]; gone {
			out = append(out, Change{Step: s.ID, Kind: s.Kind, Dish: s.Dish, Why: v.why(s),
				Text: fmt.Sprintf("%s: falls away, it was for %s.", v.stepName(s), v.clock(s.At))})
		}
	}
	return out
}

// stepNames are the kinds of step in the cook's words.
var stepNames = map[string]string{
	StepThaw: "into the refrigerator to thaw", StepTakeOut: "out of the refrigerator", StepLayFire: "lay the fire", StepLight: "light", StepFireReady: "fire ready", StepSetVents: "pour the coals, set the vents",
	StepPutOn: "put on", StepStallBegins: "stall begins", StepWrap: "wrap", StepStallEnds: "stall ends", StepLook: "first look",
	StepCheckFire: "look at the fire", StepRefuel: "add fuel", StepChangeFire: "change the fire", StepProbesOut: "probes out",
	StepFlip: "turn", StepTakeOff: "take off", StepRest: "rest", StepBox: "into the box", StepToOven: "into the oven", StepHold: "hold",
	StepSear: "sear", StepSlice: "slice", StepServe: "serve", StepCloseDown: "shut the grill down",
}

func (v *revision) stepName(s Step) string {
	name := stepNames[s.Kind]
	if s.Dish == "" {
		return upper(name)
	}
	for _, a := range v.afoot {
		if a.batch.it.dish.ID == s.Dish {
			return a.batch.it.dish.Name + ", " + name
		}
	}
	return s.Dish + ", " + name
}
