package assemble

import (
	"fmt"
	"math"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/spread"
)

// cook are the steps of a batch while it cooks.
func (it *Itinerary) cook(p *arrange.Placed) {
	d := it.D
	base := schedule.Step{Dish: p.It.Dish.ID, Batch: p.Number}
	name := it.name(p)
	it.putOn(base, p, name)
	for _, m := range d.milestones(p) {
		s := base
		s.Window, s.At, s.CoreC = m.Window, m.Window.Expected, m.CoreC
		switch m.Kind {
		case schedule.MilestoneStallBegins:
			s.Kind, s.Why = schedule.StepStallBegins, "the surface evaporates as fast as the grate heats it"
			s.Text = fmt.Sprintf("%s: from about %s the core only creeps. That is the stall, not a fault: leave it.", name, d.Core(m.CoreC))
		case schedule.MilestoneStallEnds:
			s.Kind, s.Text, s.Why = schedule.StepStallEnds, fmt.Sprintf("%s: from about %s the core climbs again.", name, d.Core(m.CoreC)), "the surface has dried, or is wrapped"
		case schedule.MilestoneWrap:
			s = it.wrapStep(s, p, name)
		case schedule.MilestoneTakeOff:
			it.turns(base, p, name)
			if !p.SearedLater() {
				it.look(base, p.Way.Total(), m.Window.Expected, fmt.Sprintf("%s: start checking; %s Done %s.", name, fastDays, it.doneText(p))+readyText(p), p)
			}
			s = it.takeOff(s, p, name)
			s.Text += cleanHands(p)
			it.crisp(base, p, name, m.Window.Expected)
			it.brown(base, p, name, m.Window.Expected)
		default:
			continue
		}
		it.add(s)
	}
	if p.SearedLater() {
		it.offForSear(base, p, name)
		s := base
		s.Kind, s.At, s.Attended, s.Minutes, s.GrateC = schedule.StepSear, d.At(p.Wrap), true, arrange.HandsWrap, d.airAt(p, 1, it.A)
		s.Text = fmt.Sprintf("%s: sear %s, %s in all by the clock, every face alike. Probes out.", name, d.over(), d.About(p.Way.Second.Expected))
		s.Why = whyStart(it.A, p, 1)
		it.add(s)
	}
}

func (it *Itinerary) putOn(s schedule.Step, p *arrange.Placed, name string) {
	d := it.D
	s.Kind, s.At, s.Attended, s.Minutes = schedule.StepPutOn, d.At(p.On), true, float64(p.HandsOn())
	s.GrateC, s.Why = d.airAt(p, 0, it.A), whyStart(it.A, p, 0)
	s.Text = fmt.Sprintf("%s: onto the grate, %s; %s.", name, d.zoneText(p.Zones[0], p.Way.Direct), d.Level(s.GrateC))
	if how := it.laid(p); how != "" {
		s.Text += " " + how
	}
	if p.It.FromFrozen {
		s.Text += " Straight from the freezer."
	}
	if place, _ := partLook(p.It.Cut.Look); place != "" && !p.It.Cut.Quick() {
		s.Text += " " + place
	}
	if it.afterRaw(p) {
		s.Text += " Where no raw meat lay, or on foil."
	}
	it.add(s)
}

// offForSear takes a piece off the slow side to stand until the coals are ready.
func (it *Itinerary) offForSear(s schedule.Step, p *arrange.Placed, name string) {
	d := it.D
	s.Kind, s.Attended, s.Minutes, s.CoreC = schedule.StepTakeOff, true, 2, p.Way.WrapC
	s.Window = d.window(p, p.Way.First.At)
	s.At = s.Window.Expected
	it.look(schedule.Step{Dish: s.Dish, Batch: s.Batch}, p.Way.First, s.At,
		fmt.Sprintf("%s: start checking; %s Off for the sear at %s inside.", name, fastDays, d.Core(s.CoreC)), p)
	s.Text = fmt.Sprintf("%s: off at %s inside; let stand until the sear.", name, d.Core(s.CoreC)) + cleanHands(p)
	if p.Way.First.Expected-p.Way.First.Early > day.SearStandMinutes-day.SearLagMinutes {
		s.Text = fmt.Sprintf("%s: off at %s inside, and seared within %s of that. Early? Change the fire and sear it sooner. Late? It stays on, and the change of fire waits for it.",
			name, d.Core(s.CoreC), d.About(day.SearStandMinutes)) + cleanHands(p)
	}
	s.Why = "the sear brings the rest"
	it.add(s)
}

func (it *Itinerary) wrapStep(s schedule.Step, p *arrange.Placed, name string) schedule.Step {
	s.Kind, s.Attended, s.Minutes = schedule.StepWrap, true, arrange.HandsWrap
	s.Text = fmt.Sprintf("%s: wrap tightly in %s at %s inside, or when the bark is set.", name, p.Way.With, it.D.Core(s.CoreC))
	s.Why = "wrapping ends the stall"
	if p.Way.Fixed { // by the clock, not by the core
		s.Why = "it comes due in quiet hours and waits for their end"
		s.Text = fmt.Sprintf("%s: wrap tightly in %s; the inside will be near %s. Done by then? Leave it bare.", name, p.Way.With, it.D.Core(s.CoreC))
	}
	if w := p.It.Dish.Wrap; w != nil && w.After != nil {
		s.Why = "the asked time on the grate"
	}
	if p.Oven {
		s.Text += fmt.Sprintf(" Then into a pan and the oven, hot at %s by now: it finishes there.", it.D.Grate(p.Way.LevelC))
	}
	return s
}

const fastDays = "this may run early."

// FirstLookWhy is the reason of the first look at what cooks.
const FirstLookWhy = "the early end of its window"

// look is the first look, at the early end of a time on the grate that ends at off.
func (it *Itinerary) look(s schedule.Step, took spread.Pace, off time.Time, text string, p *arrange.Placed) {
	d := it.D
	if took.Expected < shortestLook || p.It.Cut.Style == cut.Timed {
		return
	}
	s.Kind, s.Attended, s.Minutes, s.Text, s.Why = schedule.StepLook, true, 2, text, FirstLookWhy
	s.At = off.Add(-instant.Minutes(math.Max(took.Expected/5, took.Expected-took.Early)))
	if d.InQuiet(s.At) {
		s.At = d.AfterQuiet(plans.FixedWindow(s.At)).Expected
	}
	if s.At.Before(off) {
		it.add(s)
	}
}

// shortestLook is the shortest cook, in minutes, that gets a first look: what is
// quicker is watched anyway.
const shortestLook = 30

// coverAfter is how many minutes a side stands before it wants a cover (assumption).
const coverAfter = 15

// doneByTheLook is when what goes by the clock comes off, by how the catalogue says that it looks.
func doneByTheLook(look string) string {
	if when, ok := strings.CutPrefix(look, "Ready when "); ok {
		return "off when " + when
	}
	return strings.TrimSpace("off when done. " + look)
}

func (it *Itinerary) takeOff(s schedule.Step, p *arrange.Placed, name string) schedule.Step {
	d := it.D
	s.Kind, s.Attended, s.Minutes = schedule.StepTakeOff, true, 2
	s.Why = "the core is at its target"
	if p.It.Cut.Style == cut.Timed {
		s.Text, s.CoreC = name+": "+doneByTheLook(p.It.Cut.Look), 0
		s.Why = "their time is up"
		if _, holds := d.ChosenHold(p); !holds && p.Took().Expected > 0 && p.On-p.Took().Expected-float64(p.It.Serve) > coverAfter {
			s.Text += " Keep covered until the table."
		}
		return s
	}
	if p.It.ByTheBend() {
		s.Text = fmt.Sprintf("%s: off %s.", name, it.doneText(p))
		s.Why = "thin tough cuts are done by time and by the bend, not by temperature alone"
		return s
	}
	s.Text = fmt.Sprintf("%s: off at %s inside, by the thermometer.", name, d.Core(s.CoreC)) + p.It.HoldSentence(d.Day)
	if p.Way.Sear {
		s.Text, s.Why = it.afterSear(p, name), "the sear goes by the clock, and the rest brings the core to its target"
	}
	if p.It.Cut.Style == cut.Small {
		s.Text += " " + p.It.Cut.Look
	}
	s.Text += it.skinAdvice(p)
	return s
}

// cleanHands names what takes a piece off that was raw when it went on: a second plate and
// second tongs.
func cleanHands(p *arrange.Placed) string {
	switch p.It.Category {
	case safety.Vegetable, safety.None, safety.Leftovers:
		return ""
	}
	return " Clean plate, clean tongs."
}

// afterSear takes a piece off the coals and has it measured: what a sear does to the middle
// is foreseen, and not known.
func (it *Itinerary) afterSear(p *arrange.Placed, name string) string {
	d, least := it.D, p.It.Verdict.Minimum.CoreC
	said := p.It.Verdict.Minimum.Whose() + " minimum"
	if p.It.TargetC < least {
		least, said = p.It.TargetC, "what was asked for, below "+p.It.Verdict.Minimum.Whose()+" minimum"
	}
	return fmt.Sprintf("%s: off the heat. After 3 min measure: %s or more, %s. Less? Back %s, and measure again.", name, d.Core(least), said, d.beside())
}

// doneText says how to tell that a piece is done. Where the bend tells it, the core is at
// its doneness and beyond: how far beyond, the model knows less well than the cook.
func (it *Itinerary) doneText(p *arrange.Placed) string {
	if p.It.ByTheBend() {
		return fmt.Sprintf("when the rack bends and its surface cracks; usually at %s inside", schedule.BendText(it.D.Req.Units))
	}
	return "at " + it.D.Core(p.Way.PullC) + " inside"
}

func (it *Itinerary) name(p *arrange.Placed) string {
	n := 0
	for _, b := range it.A.Batches {
		if b.It == p.It {
			n++
		}
	}
	return p.Label(n, it.D.Req.Units)
}

// zoneText says where a piece lies; the zones of a grill of another kind have names of
// their owner's.
func (d *Assembler) zoneText(zone string, direct bool) string {
	switch {
	case zone == "":
		return "in the oven"
	case d.Grill.Kind == fire.Upright:
		return "in the cooker"
	case !d.Grill.Lays():
		return "zone " + zone
	case direct:
		return "straight over the coals"
	case zone == "centre":
		return "in the center, away from the ring"
	}
	return "on the side away from the coals"
}
