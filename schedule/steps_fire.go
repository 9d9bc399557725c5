package schedule

import (
	"fmt"
	"time"

	"example.com/cookday/schedule/internal/fire"
)

// fires are the steps that tend the fire.
func (it *itinerary) fires() {
	for i := range it.plan.Phases {
		ph := &it.plan.Phases[i]
		f := it.a.hearth.fires[it.a.solution.Phases[i].Fire]
		switch {
		case i == 0:
			it.light(ph, f, reasonText(it.a, it.a.solution.WhyLight))
		case ph.Relit:
			it.closeDown(&it.plan.Phases[i-1])
			it.light(ph, f, "nothing needs a fire before")
		default:
			it.change(ph, &it.plan.Phases[i-1], f)
		}
		it.add(Step{Kind: StepFireReady, At: ph.From, Phase: ph.Number, GrateC: ph.LevelC, Why: "the fire needs this long to come up",
			Text: fmt.Sprintf("The grate should be there now: %s. Not yet? Wait. %s", it.d.level(ph.LevelC), it.gauge(ph))})
		it.tend(ph)
	}
	if n := len(it.plan.Phases); n > 0 {
		it.closeDown(&it.plan.Phases[n-1])
	}
}

// gauge says what the lid gauge shows, where that helps.
func (it *itinerary) gauge(ph *Phase) string {
	if ph.Band != bandLow || it.d.req.Grill.GaugeOffset == 0 {
		return it.d.slack() + " either way is good enough."
	}
	return fmt.Sprintf("The lid gauge will show about %s. %s either way is good enough.", it.d.grate(ph.GaugeC), it.d.slack())
}

func (it *itinerary) light(ph *Phase, f fire.Fire, why string) {
	d := it.d
	desc, charcoal := fire.Describe(f.Layout)
	if !charcoal || d.grill.Kind == fire.OtherKind {
		it.add(Step{Kind: StepLight, At: ph.SetupFrom, Phase: ph.Number, Attended: true, Minutes: handsLight, Why: why,
			Text: "Light the grill and bring it to " + d.level(ph.LevelC) + "."})
		return
	}
	lay := d.beforeQuiet(ph.SetupFrom.Add(-minutes(float64(desc.LayMinutes))))
	if e := d.req.Earliest; e != nil && lay.Before(d.clock(e)) {
		if lay = earlier(d.clock(e), ph.SetupFrom); d.inQuiet(lay) {
			lay = ph.SetupFrom
		}
	}
	layText, pour := "Lay the fire, "+ph.Layout+": "+d.layText(ph.Burn)+". "+ph.Build, "Pour the lit coals in place."
	if ph.Burn.allLit() {
		layText, pour = "Make the fire ready, "+ph.Layout+": "+d.chimneyLayText(ph.Burn)+".", ph.Build
		if ph.Burn.Chunks > 0 {
			pour += " The wood goes on top."
		}
	}
	it.add(Step{Kind: StepLayFire, At: lay, Phase: ph.Number, Attended: true, Minutes: float64(desc.LayMinutes), Text: layText, Why: "laid before it is lit"})
	it.add(Step{Kind: StepLight, At: ph.SetupFrom, Phase: ph.Number, Attended: true, Minutes: handsLight, Why: why,
		Text: "Light " + d.litText(ph.Burn) + ", outdoors, away from walls and roofs."})
	it.add(Step{Kind: StepSetVents, At: ph.SetupFrom.Add(minutes(float64(d.grill.PourMinutes(f)))), Phase: ph.Number, Attended: true, Minutes: 2,
		Text: pour + " Lid and vents: " + ph.Vents + ".", Why: "the first coals are grey at the edge by now"})
}

func (it *itinerary) change(ph, before *Phase, f fire.Fire) {
	d := it.d
	from := it.a.hearth.fires[it.a.solution.Phases[ph.Number-2].Fire]
	left := 0.0
	if b := before.Burn; b != nil {
		left = b.LeftKg
	}
	next := d.grill.Plan(f, fire.Need{Slices: d.weatherBetween(ph.From, ph.To)})
	c := d.grill.ChangeAdvice(from, f, left, next)
	if c.LeadMinutes > 0 {
		it.add(Step{Kind: StepLight, At: ph.SetupFrom.Add(-minutes(float64(c.LeadMinutes))), Phase: ph.Number, Attended: true, Minutes: 3,
			Text: "Light a chimney for the change: " + d.amountText(c.Add) + "." + d.fewerText(c), Why: "the coals must be lit before they are added"})
	}
	if c.ProbesOut {
		it.add(Step{Kind: StepProbesOut, At: ph.SetupFrom, Phase: ph.Number, Attended: true, Minutes: 1,
			Text: "Probes and cables out of the grill.", Why: "searing heat is above what they stand"})
	}
	text := "Change the fire to " + ph.Layout + " (" + d.level(ph.LevelC) + "). "
	if c.LiftGrate && it.rides(ph.Number) {
		text += "Food off the grate first. "
	}
	it.add(Step{Kind: StepChangeFire, At: ph.SetupFrom, Phase: ph.Number, Attended: true, Minutes: handsChange, GrateC: ph.LevelC,
		Text: text + c.Coals, Why: "the next dishes want another heat"})
	if at := ph.SetupFrom.Add(handsChange * time.Minute); ph.Vents != "" && !d.inQuiet(at) && at.Before(ph.From) {
		it.add(Step{Kind: StepSetVents, At: at, Phase: ph.Number, Attended: true, Minutes: 2, GrateC: ph.LevelC,
			Text: "Lid and vents: " + ph.Vents + ".", Why: "the coals lie as they should"})
	}
}

// rides says whether food lies on the grate while the fire becomes phase n.
func (it *itinerary) rides(n int) bool {
	for _, dish := range it.plan.Dishes {
		for _, b := range dish.Batches {
			for _, s := range b.Stages {
				if s.Phase > 0 && s.Phase < n && s.PhaseTo >= n {
					return true
				}
			}
		}
	}
	return false
}

// tend are the refuels and the looks at the fire within a phase.
func (it *itinerary) tend(ph *Phase) {
	d := it.d
	if ph.Burn == nil {
		return
	}
	for _, r := range ph.Burn.Refuels {
		text := "Add " + countText(d.req.Units, r.Count, r.MassKg) + ", unlit, where the fire goes next"
		if r.Lit {
			text = "Add " + countText(d.req.Units, r.Count, r.MassKg) + ", lit, to the coals: start the chimney 20 min before"
		}
		it.add(Step{Kind: StepRefuel, At: r.Window.Expected, Window: r.Window, Phase: ph.Number, Attended: true, Minutes: 5,
			Text: text + ". Open the bottom vent, wait a minute, then lift the lid away from you.", Why: "what lies there runs down about then"})
	}
	every := time.Duration(checkLow)
	if ph.Band != bandLow {
		every = checkHot
	}
	text := "Look at the grate thermometer: " + d.level(ph.LevelC) + ". Touch the top vent only if it is " + d.slack() + " off."
	for at := ph.From.Add(every); at.Before(ph.To.Add(-every / 3)); at = at.Add(every) {
		if d.inQuiet(at) {
			continue
		}
		it.add(Step{Kind: StepCheckFire, At: at, Phase: ph.Number, Attended: true, Minutes: 1, GrateC: ph.LevelC,
			Text: text, Why: "fires drift; leave the lid shut, air makes them hotter"})
		text = "The fire again: " + d.level(ph.LevelC) + "?"
	}
}

// Fires are looked at every 50 minutes in the hot band (common practice 45-60,
// no source), every two hours in the low one (assumption).
const (
	checkHot = 50 * time.Minute
	checkLow = 2 * time.Hour
)

func (it *itinerary) closeDown(last *Phase) {
	c := fire.CloseDown(last.LevelC, it.d.air.AirC)
	text := "Shut the grill down."
	if last.Burn != nil {
		lid := "Close all vents."
		if last.Layout == string(fire.Heap) { // which burns with the lid off
			lid = "Lid on, and close all vents."
		}
		text = lid + fmt.Sprintf(" The shell stays too hot to touch for about %s; ash stays hot for up to %d h.",
			it.d.about(float64(c.TouchMinutes)), c.ColdHours)
	}
	it.add(Step{Kind: StepCloseDown, At: last.To, Phase: last.Number, Attended: true, Minutes: 2, Text: text, Why: "nothing is on the grate after that"})
}
