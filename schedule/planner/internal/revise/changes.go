package revise

import (
	"fmt"
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/say"
)

// shortestChange is the least move of a step, in minutes, that is worth a word.
const shortestChange = 3

// changes says what moved against the first plan, and why.
func (v *Revision) changes(p *schedule.Plan) []schedule.Change {
	before := map[string]schedule.Step{}
	for _, s := range v.planned {
		before[s.ID] = s
	}
	var out []schedule.Change
	for _, s := range p.Steps {
		b, was := before[s.ID]
		delete(before, s.ID)
		moved := s.At.Sub(b.At).Minutes()
		if !s.Done && (v.isUnfit(s.Dish) || s.Kind == schedule.StepLook && v.isSuspect(s.Dish)) || v.loose && (s.Kind == schedule.StepServe || s.Kind == schedule.StepSlice) {
			continue // a finding says it, and louder
		}
		if was && math.Abs(moved) < shortestChange {
			continue
		}
		c := schedule.Change{Step: s.ID, Kind: s.Kind, Dish: s.Dish, Minutes: math.Round(moved), Why: v.why(s)}
		name := v.stepName(s)
		switch {
		case !was && s.Done:
			continue
		case !was:
			c.Minutes, c.Text = 0, fmt.Sprintf("%s: new, at %s.", name, v.clock(s.At))
		case s.Done:
			c.Text = fmt.Sprintf("%s: done at %s, %s than planned.", name, v.clock(s.At), v.moves(moved))
		default:
			c.Text = fmt.Sprintf("%s: %s (was %s), %s.", name, v.clock(s.At), v.clock(b.At), v.moves(moved))
		}
		out = append(out, c)
	}
	for _, s := range v.planned {
		if _, gone := before[s.ID]; gone {
			out = append(out, schedule.Change{Step: s.ID, Kind: s.Kind, Dish: s.Dish, Why: v.why(s),
				Text: fmt.Sprintf("%s: dropped (was %s).", v.stepName(s), v.clock(s.At))})
		}
	}
	return out
}

// stepNames are the kinds of step in the cook's words.
var stepNames = map[schedule.StepKind]string{
	schedule.StepThaw: "into the refrigerator to thaw", schedule.StepSalt: "salt", schedule.StepTakeOut: "out of the refrigerator", schedule.StepLayFire: "lay the fire", schedule.StepLight: "light", schedule.StepFireReady: "fire ready", schedule.StepSetVents: "pour the coals, set the vents",
	schedule.StepPutOn: "put on", schedule.StepStallBegins: "stall begins", schedule.StepWrap: "wrap", schedule.StepStallEnds: "stall ends", schedule.StepLook: "first look",
	schedule.StepCheckFire: "look at the fire", schedule.StepRefuel: "add fuel", schedule.StepBeforeSleep: "before you sleep", schedule.StepWaking: "on waking", schedule.StepChangeFire: "change the fire", schedule.StepProbesOut: "probes out",
	schedule.StepFlip: "turn", schedule.StepTakeOff: "take off", schedule.StepRest: "rest", schedule.StepBox: "into the cooler", schedule.StepToOven: "into the oven", schedule.StepIndoors: "from the grate into the oven", schedule.StepCheckOven: "look at what is in the oven", schedule.StepHold: "hold",
	schedule.StepSear: "sear", schedule.StepSlice: "slice", schedule.StepChill: "into the refrigerator", schedule.StepServe: "serve", schedule.StepCloseDown: "shut the grill down",
}

func (v *Revision) stepName(s schedule.Step) string {
	name := stepNames[s.Kind]
	if s.Dish == "" {
		return say.Upper(name)
	}
	for _, a := range v.batches {
		if a.batch.It.Dish.ID == s.Dish {
			return a.batch.It.Dish.Name + ", " + name
		}
	}
	return s.Dish + ", " + name
}
