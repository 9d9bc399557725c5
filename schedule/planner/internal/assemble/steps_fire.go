package assemble

import (
	"fmt"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/arrange"
)

// fires are the steps that tend the fire.
func (it *Itinerary) fires() {
	for i := range it.Plan.Phases {
		ph := &it.Plan.Phases[i]
		f := it.A.Hearth.Fires[it.A.Solution.Phases[i].Fire]
		switch {
		case i == 0:
			it.light(ph, f, reasonText(it.A, it.A.Solution.WhyLight))
		case ph.Relit:
			it.CloseDown(&it.Plan.Phases[i-1])
			it.light(ph, f, "nothing needs a fire before")
		default:
			it.change(ph, &it.Plan.Phases[i-1], f)
		}
		it.add(schedule.Step{Kind: schedule.StepFireReady, At: ph.From, Phase: ph.Number, GrateC: ph.LevelC, Why: "the fire needs this long to come up",
			Text: fmt.Sprintf("The grate should read %s. Within %s is fine%s.%s", it.D.Grate(ph.LevelC), it.D.Slack(), it.elseText(ph), it.gauge(ph))})
		it.tend(ph)
	}
	if n := len(it.Plan.Phases); n > 0 {
		it.CloseDown(&it.Plan.Phases[n-1])
	}
}

// elseText is what to do where the grate is not as it should be.
func (it *Itinerary) elseText(ph *schedule.Phase) string {
	if ph.LidOff || !it.D.Grill.Charcoal() {
		return "; if not, wait"
	}
	return ". Colder? Wait. Hotter? Close the " + it.D.FineVent() + " a little"
}

// gauge says what the lid gauge shows, where that helps.
func (it *Itinerary) gauge(ph *schedule.Phase) string {
	if ph.Band != schedule.BandLow || it.D.Req.Grill.GaugeOffset == 0 {
		return ""
	}
	return fmt.Sprintf(" The lid gauge will show about %s.", it.D.Grate(ph.GaugeC))
}

// slowShell is told of every grill that is known by its zones alone: what burns in it, and how
// heavy it is, nobody said (common practice, no source).
const slowShell = "How long yours takes is not known here, nor how much it burns: a heavy shell of clay wants about 45 min, so light it that much sooner, and fill it for the whole cook."

func (it *Itinerary) light(ph *schedule.Phase, f fire.Fire, why string) {
	d := it.D
	desc, charcoal := d.Grill.Describe(f.Layout)
	if !charcoal || !d.Grill.Charcoal() {
		it.add(schedule.Step{Kind: schedule.StepLight, At: ph.SetupFrom, Phase: ph.Number, Attended: true, Minutes: arrange.HandsLight, Why: why,
			Text: "Light the grill and bring it to " + d.Level(ph.LevelC) + ". " + slowShell})
		return
	}
	lay := d.beforeQuiet(ph.SetupFrom.Add(-instant.Minutes(float64(desc.LayMinutes))))
	if e := d.Req.Earliest; e != nil && lay.Before(d.Clock(e)) {
		if lay = instant.Earlier(d.Clock(e), ph.SetupFrom); d.InQuiet(lay) {
			lay = ph.SetupFrom
		}
	}
	layText, pour := "Lay the fire, "+laidAs(f)+": "+d.layText(ph.Burn)+". "+ph.Build+chunksOnTop(ph.Burn), desc.Pour
	if burnAllLit(ph.Burn) {
		layText, pour = "Make the fire ready, "+ph.Layout+": "+d.chimneyLayText(ph.Burn)+".", ph.Build
		if ph.Burn.Chunks > 0 {
			pour += " The wood goes on top."
		}
	}
	if ph.Relit {
		layText = "Old ash out first, into a metal can with a lid. " + layText
	}
	it.add(schedule.Step{Kind: schedule.StepLayFire, At: lay, Phase: ph.Number, Attended: true, Minutes: float64(desc.LayMinutes), Text: layText, Why: "laid before it is lit"})
	it.add(schedule.Step{Kind: schedule.StepLight, At: ph.SetupFrom, Phase: ph.Number, Attended: true, Minutes: arrange.HandsLight, Why: why,
		Text: "Light " + d.litText(ph.Burn) + ", outdoors, away from walls and roofs."})
	poured := ph.SetupFrom.Add(instant.Minutes(float64(d.Grill.PourMinutes(f))))
	if d.grows(f) {
		it.growing(ph, poured, pour)
		return
	}
	it.add(schedule.Step{Kind: schedule.StepSetVents, At: poured, Phase: ph.Number, Attended: true, Minutes: 2,
		Text: pour + " Lid and vents: " + ph.Vents + ".", Why: "the first coals are gray at the edge by now"})
}

// laidAs is how the coals of a fire lie, in a word or two.
func laidAs(f fire.Fire) string {
	if f.Layout == fire.Other {
		return "in the coal ring"
	}
	return string(f.Layout)
}

func (it *Itinerary) change(ph, before *schedule.Phase, f fire.Fire) {
	d := it.D
	from := it.A.Hearth.Fires[it.A.Solution.Phases[ph.Number-2].Fire]
	left := 0.0
	if b := before.Burn; b != nil {
		left = b.LeftKg
	}
	next := d.Grill.Plan(f, fire.Need{Slices: d.WeatherBetween(ph.From, ph.To)})
	c := d.Grill.ChangeAdvice(from, f, left, next)
	if c.LeadMinutes > 0 {
		it.add(schedule.Step{Kind: schedule.StepLight, At: ph.SetupFrom.Add(-instant.Minutes(float64(c.LeadMinutes))), Phase: ph.Number, Attended: true, Minutes: 3,
			Text: "Light " + d.amountText(c.Add) + " for the next fire" + d.fewerText(c) + ".", Why: "the coals must be lit before they are added"})
	}
	if c.ProbesOut {
		it.add(schedule.Step{Kind: schedule.StepProbesOut, At: ph.SetupFrom, Phase: ph.Number, Attended: true, Minutes: 1,
			Text: "Take probes and cables out of the grill.", Why: "searing heat is more than they stand"})
	}
	text := "Change the fire: " + laidAs(f) + ", " + d.Level(ph.LevelC) + ". "
	if !d.Grill.BurnsCharcoal() {
		text = "Bring the grill to " + d.Level(ph.LevelC) + ". "
	}
	switch {
	case c.LiftGrate && it.rides(ph.Number):
		text += "Take the food and the grate off first. "
	case c.LiftGrate:
		text += "Take the grate off first. "
	}
	it.add(schedule.Step{Kind: schedule.StepChangeFire, At: ph.SetupFrom, Phase: ph.Number, Attended: true, Minutes: arrange.HandsChange, GrateC: ph.LevelC,
		Text: text + c.Coals + d.woodText(ph.Burn), Why: "the next dishes need another heat"})
	if at := ph.SetupFrom.Add(arrange.HandsChange * time.Minute); ph.Vents != "" && !d.InQuiet(at) && at.Before(ph.From) {
		it.add(schedule.Step{Kind: schedule.StepSetVents, At: at, Phase: ph.Number, Attended: true, Minutes: 2, GrateC: ph.LevelC,
			Text: "Lid and vents: " + ph.Vents + ".", Why: "the coals lie as they should"})
	}
}

// rides says whether food lies on the grate while the fire becomes phase n.
func (it *Itinerary) rides(n int) bool {
	for _, dish := range it.Plan.Dishes {
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

// CloseDown is the end of a fire: its vents are shut.
func (it *Itinerary) CloseDown(last *schedule.Phase) {
	c := fire.CloseDown(last.LevelC, it.D.Air.AirC)
	text := "Shut the grill down."
	if last.Burn != nil {
		lid := "Close all vents."
		if last.Layout == string(fire.Heap) { // which burns with the lid off
			lid = "Lid on, and close all vents."
		}
		if names := it.mayBeOn(last); len(names) > 0 {
			lid = fmt.Sprintf("Only once %s %s off: %s Still on? Keep the fire fed.", say.Listed(names, "and"), isAre(len(names)), say.Lower(lid))
		}
		text = lid + fmt.Sprintf(" The shell stays too hot to touch for about %s; ash stays hot for up to %d hr.",
			it.D.About(float64(c.TouchMinutes)), c.ColdHours)
	}
	it.add(schedule.Step{Kind: schedule.StepCloseDown, At: last.To, Phase: last.Number, Attended: true, Minutes: 2, Text: text, Why: "nothing is on the grate after that"})
}

// mayBeOn are the dishes over the last fire that a slow day still has on the grate when it is
// planned to be shut.
func (it *Itinerary) mayBeOn(last *schedule.Phase) []string {
	var names []string
	for _, p := range it.All {
		k := p.Stages() - 1
		if p.Carried || p.Phases[k].First < 0 || p.Phases[k].Last != last.Number-1 || p.Way.Sear || !it.D.window(p, p.TakeOff).Late.After(last.To.Add(instant.Quarter)) {
			continue
		}
		if name := p.It.Dish.Name; !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

func isAre(n int) string {
	if n == 1 {
		return "is"
	}
	return "are"
}
