package schedule

import (
	"fmt"
	"math"
	"time"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
)

// cook are the steps of a batch while it cooks.
func (it *itinerary) cook(p *placed) {
	d := it.d
	base := Step{Dish: p.it.dish.ID, Batch: p.number}
	name := it.name(p)
	it.putOn(base, p, name)
	for _, m := range d.milestones(p) {
		s := base
		s.Window, s.At, s.CoreC = m.Window, m.Window.Expected, m.CoreC
		switch m.Kind {
		case MilestoneStallBegins:
			s.Kind, s.Why = StepStallBegins, "the surface evaporates as fast as the grate heats it"
			s.Text = fmt.Sprintf("%s: the core all but stops near %s. That is the stall, not a fault: leave it.", name, d.core(m.CoreC))
		case MilestoneStallEnds:
			s.Kind, s.Text, s.Why = StepStallEnds, fmt.Sprintf("%s: the core climbs again.", name), "the surface has dried, or is wrapped"
		case MilestoneWrap:
			s = it.wrapStep(s, p, name)
		case MilestoneTakeOff:
			it.turns(base, p, name)
			if !p.searedLater() {
				it.look(base, p.way.total(), m.Window.Expected, fmt.Sprintf("First look at %s: %s Done is %s.", name, fastDays, it.doneText(p)), p)
			}
			s = it.takeOff(s, p, name)
		default:
			continue
		}
		it.add(s)
	}
	if p.searedLater() {
		it.offForSear(base, p, name)
		s := base
		s.Kind, s.At, s.Attended, s.Minutes, s.GrateC = StepSear, d.at(p.wrap), true, handsWrap, d.airAt(p, 1, it.a)
		s.Text = fmt.Sprintf("Sear %s over the coals, about %s, turned once. Probes out.", name, d.about(p.way.second.expected))
		s.Why = whyStart(it.a, p, 1)
		it.add(s)
	}
}

func (it *itinerary) putOn(s Step, p *placed, name string) {
	d := it.d
	s.Kind, s.At, s.Attended, s.Minutes = StepPutOn, d.at(p.on), true, float64(p.handsOn())
	s.GrateC, s.Why = d.airAt(p, 0, it.a), whyStart(it.a, p, 0)
	s.Text = fmt.Sprintf("Put on %s: %s, %s.", name, d.zoneText(p.zones[0], p.way.direct), d.level(s.GrateC))
	if p.it.fromFrozen {
		s.Text += " Straight from the freezer."
	}
	if p.it.cut.Look != "" && p.it.cut.Style != cut.Small && p.it.cut.Style != cut.Timed {
		s.Text += " " + p.it.cut.Look
	}
	it.add(s)
}

// offForSear takes a piece off the slow side to stand until the coals are ready.
func (it *itinerary) offForSear(s Step, p *placed, name string) {
	d := it.d
	s.Kind, s.Attended, s.Minutes, s.CoreC = StepTakeOff, true, 2, p.way.wrapC
	s.Window = d.window(p, p.way.first.at)
	s.At = s.Window.Expected
	it.look(Step{Dish: s.Dish, Batch: s.Batch}, p.way.first, s.At,
		fmt.Sprintf("First look at %s: %s Off for the sear at %s in the core.", name, fastDays, d.core(s.CoreC)), p)
	s.Text = fmt.Sprintf("Take off %s at %s in the core and let stand until the sear.", name, d.core(s.CoreC))
	s.Why = "the sear brings the rest"
	it.add(s)
}

func (it *itinerary) wrapStep(s Step, p *placed, name string) Step {
	s.Kind, s.Attended, s.Minutes = StepWrap, true, handsWrap
	s.Text = fmt.Sprintf("Wrap %s tightly in %s at %s in the core, or when the bark is set.", name, p.way.with, it.d.core(s.CoreC))
	s.Why = "wrapping ends the stall"
	if p.way.fixed { // by the clock, not by the core
		s.Why = "it comes due in quiet hours and waits for their end"
		s.Text = fmt.Sprintf("Wrap %s tightly in %s; the core will be near %s.", name, p.way.with, it.d.core(s.CoreC))
	}
	if w := p.it.dish.Wrap; w != nil && w.After != nil {
		s.Why = "the asked time on the grate"
	}
	if p.oven {
		s.Text += fmt.Sprintf(" It goes on in the oven at %s.", it.d.grate(p.way.levelC))
	}
	return s
}

// searedLater says whether a piece leaves the slow side before its sear.
func (p *placed) searedLater() bool { return p.way.sear && p.stages() == 2 }

// turns are the flips over the coals.
func (it *itinerary) turns(base Step, p *placed, name string) {
	if !p.way.direct {
		return
	}
	for i := 1; i <= p.way.flips; i++ {
		s := base
		s.Kind, s.Attended, s.Minutes = StepFlip, true, 1
		s.At = it.d.at(p.on - p.way.first.expected*float64(i)/float64(p.way.flips+1))
		s.Text, s.Why = fmt.Sprintf("Turn %s.", name), "both faces take the fire"
		it.add(s)
	}
}

const fastDays = "fast days are as common as slow ones."

// look is the first look, at the early end of a time on the grate that ends at off.
func (it *itinerary) look(s Step, took pace, off time.Time, text string, p *placed) {
	d := it.d
	if took.expected < shortestLook || p.it.cut.Style == cut.Timed {
		return
	}
	s.Kind, s.Attended, s.Minutes, s.Text, s.Why = StepLook, true, 2, text, "the early end of its window"
	s.At = off.Add(-minutes(math.Max(took.expected/5, took.expected-took.early)))
	if d.inQuiet(s.At) {
		s.At = d.afterQuiet(fixedWindow(s.At)).Expected
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

func (it *itinerary) takeOff(s Step, p *placed, name string) Step {
	d := it.d
	s.Kind, s.Attended, s.Minutes = StepTakeOff, true, 2
	s.Why = "the core is at its target"
	if p.it.cut.Style == cut.Timed {
		s.Text, s.CoreC = fmt.Sprintf("Take off %s when they look done.", name), 0
		s.Why = "their time is up"
		if _, holds := d.chosenHold(p); !holds && p.took().expected > 0 && p.on-p.took().expected-float64(p.it.serve) > coverAfter {
			s.Text += " Keep covered until the table."
		}
		return s
	}
	if p.it.byTheBend() {
		s.Text = fmt.Sprintf("Take off %s %s.", name, it.doneText(p))
		s.Why = "thin tough cuts are done by time and by the bend, not by temperature alone"
		return s
	}
	s.Text = fmt.Sprintf("Take off %s at %s in the core, by the thermometer.", name, d.core(s.CoreC)) + p.it.holdSentence(d)
	if p.it.cut.Style == cut.Small {
		s.Text += " " + p.it.cut.Look
	}
	return s
}

// byTheBend says whether a dish is done by time and by the bend.
func (it *item) byTheBend() bool {
	return it.cut.TenderMinutes[1] > 0 && it.dish.Target == nil && it.dish.Finish == ""
}

// doneText says how to tell that a piece is done. Where the bend tells it, the core is at
// its doneness and beyond: how far beyond, the model knows less well than the cook.
func (it *itinerary) doneText(p *placed) string {
	if p.it.byTheBend() {
		return fmt.Sprintf("when the rack bends and its surface cracks; the core is at %s or more then", it.d.core(math.Min(p.it.targetC, p.way.pullC)))
	}
	return it.d.core(p.way.pullC) + " in the core"
}

func (it *itinerary) name(p *placed) string {
	n := 0
	for _, b := range it.a.batches {
		if b.it == p.it {
			n++
		}
	}
	return p.label(n, it.d.req.Units)
}

// zoneText says where a piece lies; the zones of a grill of another kind have names of
// their owner's.
func (d *day) zoneText(zone string, direct bool) string {
	switch {
	case zone == "":
		return "in the oven"
	case d.grill.Kind == fire.OtherKind:
		return "zone " + zone
	case direct:
		return "straight over the coals"
	case zone == "centre":
		return "in the centre, away from the ring"
	}
	return "on the side away from the coals"
}
