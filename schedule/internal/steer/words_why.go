package steer

import (
	"fmt"

	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/unit"
)

// why is one reason.
func (w wording) why() string {
	a := w.a
	level := w.grate(a.Want.LevelC)
	if a.TopBelowLeast && a.Do == Move && a.To.Top > a.From.Top && a.Now.Middle > a.Want.LevelC {
		return "Why: with food on, the top vent stays at an eighth or more, also where it is too hot: the bottom one closes instead."
	}
	switch a.Why {
	case InBand:
		return fmt.Sprintf("Why: it stays near %s by itself.", level)
	case ComingRight:
		return "Why: it is on its way back by itself."
	case PassesBy:
		return fmt.Sprintf("Why: it is on its way back, and may go past %s.", level)
	case Warms:
		return "Why: the fire is still growing after the light. That is no dying fire."
	case Hot:
		return fmt.Sprintf("Why: the fire has more air than %s needs.", level)
	case Cool:
		if a.AllOpen() {
			if !a.Ashy {
				return fmt.Sprintf("Why: all vents are open and it is still too cool for %s: too few coals are lit, or they are damp.", level)
			}
			return fmt.Sprintf("Why: all vents are open and it is still too cool for %s. Ash below, damp coals, or few that are lit.", level)
		}
		return fmt.Sprintf("Why: the fire has less air than %s needs.", level)
	case Rising:
		return fmt.Sprintf("Why: it is on its way above %s.", level)
	case Sinking:
		return fmt.Sprintf("Why: it is on its way below %s.", level)
	case ManyLit:
		return "Why: more coals are lit than the vents can hold back; a bed gives its heat back slowly."
	case Leaks:
		return "Why: air gets in beside the vents. Is the lid seated, the door shut, the ash cleaner closed?"
	case Starved:
		return "Why: many coals are lit and get too little air."
	case FewLit:
		return "Why: few coals are lit. More air alone won't do it."
	case Spent:
		return "Why: the coals are nearly burnt."
	case Ashed:
		return "Why: ash keeps the air from the coals."
	case ColdLoad:
		return fmt.Sprintf("Why: cold food takes %s for up to two hours, and it comes back by itself. Don't chase it.", coldTakes(w.sys))
	case FreshCoals:
		return "Why: fresh coals take heat and smolder white until they catch, 15 to 30 min. Don't chase it."
	case LitLately:
		return "Why: lit coals were added just now, and take 15 to 20 min to show. Lid shut."
	case Caught:
		return "Why: more coals caught while the lid was off, and the grate rises for half an hour after that."
	case Unfelt:
		return "Why: it was touched within the last 15 min. What that does is not felt yet."
	case NearLevel:
		return fmt.Sprintf("Why: it is within 25 °F of %s. Moving for that chases the fire.", level)
	case VentsShut:
		return "Why: both vents are shut. The coals get no air, and go out."
	case WindBlows:
		return "Why: the wind changed the fire, not the vents."
	}
	return w.whyReading()
}

func coldTakes(sys unit.System) string {
	if sys == unit.Metric {
		return "8 to 22 °C"
	}
	return "15 to 40 °F"
}

func (w wording) whyReading() string {
	a := w.a
	switch a.Why {
	case BadReading:
		return "Why: the fire can hardly have changed so fast. The probe may touch food or grate, or sit in a draft. If it reads the same again, believe it."
	case FatBurns:
		return "Why: it went up at once and nothing was touched. That can be burning fat. Without flames: was the lid off, or the probe moved?"
	case FarOver:
		return fmt.Sprintf("Why: so far above %s with food on, fat may burn, or the probe sits over the coals. Without flames move it 2 in from the food, away from the coals.", w.grate(a.Want.LevelC))
	case GaugeAlone:
		return "Why: a gauge in the lid may stand far from the grate."
	case LidWasOff:
		return "Why: what the probe shows so soon after the lid means little."
	case ColdGrill:
		return fmt.Sprintf("Why: so cool, nothing burns any more. The food's time without heat counts from the earliest moment at which the grate may have fallen under %s: half as fast until it is under %s, then in full. Nobody knows when? From the last time you saw it hotter.",
			w.grate(safety.HalfHeatC), w.grate(safety.NoHeatC))
	case FireOut:
		return "Why: the log says that it went out."
	case NothingRead:
		return "Why: there is no fresh reading to go by."
	}
	return ""
}

// Cautions of fire, in the words of safety.
const (
	openCarefully = "Before you open the lid: " + safety.ThenOpenStarved
	litCarefully  = "Food to a tray under foil, raw to its own, 10 min at most; note when. Add lit coals through a hinged side, or with grate and food off. Pour away from you, long gloves, nobody within 3 ft."
	upwind        = "Stay upwind for 20 min: fresh coals give off carbon monoxide. Never in a house, garage, shed, tent or porch, nor under a roof."
	screenSafely  = "A screen may stand on one side, of metal or stone, 3 ft off, nothing overhead. Don't move or turn a lit grill."
	stormy        = "Wind over 20 mph carries sparks: light nothing in it. Stay with the grill, or finish the food in the kitchen oven: " + ovenHeat + "."
	noHeat        = "Without heat food may lie between 40 and 140 °F for 2 hr in all, 1 hr on a day above 90 °F. That clock runs from the earliest moment at which the fire may have failed."
	smothered     = "If you shut them: the food is without heat from then on. Measure it before you go on."
	tooCool       = "Under 200 °F for more than half an hour is no heat to cook on: measure the food, and don't count on the vents alone."
)

func (w wording) also() []string {
	a, out := w.a, []string(nil)
	say := func(when bool, text string) {
		if when {
			out = append(out, text)
		}
	}
	say(a.Do == LookFirst, "Flames outside the grill: leave it and call the fire service.")
	say(a.RoseFast, "It came up fast, as a fire does after the light. Flames or heavy smoke? "+putOut)
	say((a.Do == LookFirst || a.RoseFast) && !a.Want.NoFood, smothered)
	say(a.Do == Relight && !a.Want.NoFood, noHeat)
	say(a.tight(), openCarefully)
	say(a.Do == AddLit || a.Do == Relight && !a.Stormy, litCarefully)
	say(a.Do == AddLit || a.Do == AddUnlit || a.Do == Relight && !a.Stormy, upwind)
	say(a.Why == WindBlows, screenSafely)
	say(a.Figures() && a.LitN > 1 && a.Reach != TooHot && a.Now.Middle > a.Want.LevelC+farTooHotK && a.In30.High > a.Want.LevelC+bandK, "If it is no lower at the next look: "+coalsOut)
	say(a.Ending, "By what was logged the coals are nearly gone. Fed since? Log it. If not, lay 20 unlit ones against the lit ones now.")
	say(a.Stormy, stormy)
	say(a.TopBelowLeast && a.Do != Move && a.Why != VentsShut, "With food on, keep the top vent at an eighth or more. Close the bottom one instead.")
	say(a.Figures() && !a.Want.NoFood && a.Now.Middle < coolC && (a.In30.Middle < coolC || a.LongCool), tooCool)
	say(a.Trust == GaugeOnly, fmt.Sprintf("With the grate at %s the lid gauge may show anything from %s.", w.grate(a.Want.LevelC), w.span(Range{Low: a.GaugeAtLevelLowC, High: a.GaugeAtLevelHiC})))
	say(a.Do == Leave && a.AllOpen(), "Both vents are open already.")
	say(a.Want.LevelC >= searC && a.AllOpen() && max(a.Now.Middle, a.In30.Middle) < a.Want.LevelC-bandK, "To sear, take the lid off and lay the food straight over the coals: there it is far hotter than the air under a lid.")
	say(len(a.Remedies) == 0 && (a.Do == Move && a.To.Top > 0.99 && a.From.Top <= 0.99 || a.Do == Leave && (a.AllOpen() && a.Why == Cool || a.Why == FewLit || a.Why == Spent || a.Why == Ashed)), a.lookAtCoals())
	return append(out, w.otherWays()...)
}

// lookAtCoals is what a fire may lack that vents did not help.
func (a Advice) lookAtCoals() string {
	if !a.Ashy {
		return "If it is no higher at the next look, look at the coals: too few may be lit."
	}
	return "If it is no higher at the next look, look at the coals: few are left, or ash keeps the air from them."
}

// farTooHotK is so far above a level that fewer coals are the surer cure (80 °F; judgment).
const (
	farTooHotK = 80 / 1.8
	coalsOut   = "take coals out. Food off first, grate off, long gloves, into a metal pail with a lid."
)

// coolC is the grate below which vents alone are not counted on with food, degC.
const coolC = (200.0 - 32) / 1.8

// searC is the level from which on a cook wants to brown rather than to roast (400 °F; judgment).
const searC = (400.0 - 32) / 1.8

// AllOpen says whether the vents have no more to give.
func (a Advice) AllOpen() bool { return a.From.Top > 0.99 && a.From.Bottom > 0.99 }

// tight says whether the fire may flare when the lid is opened: little air on many lit coals.
func (a Advice) tight() bool {
	return a.Why == VentsShut || min(a.From.Top, a.From.Bottom) <= nearlyShut+1e-9 && a.LitN > starvedN || a.Why == Starved
}

// otherWays are what vents cannot do, and what can.
func (w wording) otherWays() []string {
	a, out := w.a, []string(nil)
	if a.Reach == TooHot {
		if a.MinutesToBand > 0 {
			out = append(out, fmt.Sprintf("At these vents it takes about %d min to come down.", a.MinutesToBand))
		} else {
			out = append(out, fmt.Sprintf("The vents alone won't bring it to %s within two hours. Let the plan take a higher level.", w.grate(a.Want.LevelC)))
		}
		out = append(out, "Or take coals out: food off first, grate off, long gloves, into a metal pail with a lid. Next time light fewer.")
	}
	if a.NoneHelps {
		out = append(out, fmt.Sprintf("Nothing of this brings it to %s in 45 min. Give the food more time, or finish it in the kitchen oven: %s.", w.grate(a.Want.LevelC), ovenHeat))
	}
	for _, r := range a.Remedies {
		if r.Do == a.Do && r.Count == a.Count || r.Do == ClearAsh && a.Do == AddLit && a.Ashy { // what to do says it
			continue
		}
		text := ""
		switch r.Do {
		case ClearAsh:
			text = "Clearing the ash"
		case AddUnlit:
			text = fmt.Sprintf("%d unlit coals", r.Count)
		case AddLit:
			text = fmt.Sprintf("%d more lit coals", r.Count)
		}
		if a.Do == Leave || a.Do == Move {
			text = "If it is no higher at the next look: " + lowerFirst(text)
		}
		out = append(out, fmt.Sprintf("%s would bring %s in 45 min.", text, w.span(r.In45)))
	}
	return out
}

func lowerFirst(s string) string {
	if s == "Clearing the ash" {
		return "clearing the ash"
	}
	return s
}
