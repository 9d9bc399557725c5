package assemble

import (
	"fmt"
	"math"
	"sort"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/unit"
)

// portionText says how thick a dish may be cut to chill in time.
func (d *Assembler) portionText(name string) string {
	t, _ := day.ThickestPortion()
	return fmt.Sprintf("%s: slice or pull, no piece thicker than %s.", name, d.Req.Units.Length(unit.Length(t)))
}

// Wait are the rest, the hold and the knife.
func (it *Itinerary) Wait(p *arrange.Placed) {
	d := it.D
	base := schedule.Step{Dish: p.It.Dish.ID, Batch: p.Number}
	name := it.name(p)
	off := d.window(p, p.TakeOff)
	held, holds := d.ChosenHold(p)
	if rest := p.It.RestMinutes(); rest > 0 {
		s := base
		s.Kind, s.Window, s.At = schedule.StepRest, off, off.Expected
		s.Text, s.Why = fmt.Sprintf("%s: rest at least %s.", name, d.About(rest)), "the juices settle and the heat evens out"
		if place := map[string]string{schedule.HoldBox: "cooler", schedule.HoldOven: "oven"}[held.Method]; holds && place != "" { // where it goes at once
			s.Text = fmt.Sprintf("%s: rest at least %s, uncut; the %s will do.", name, d.About(rest), place)
		}
		if holds && held.Vent > 0 {
			s.Text, s.Why = strings.TrimSpace(d.standText(p, held, name)), "shut in at once it would go on cooking"
		}
		it.add(s)
	}
	if holds {
		it.holdStep(base, p, held, off)
		it.nightSteps(base, p, held)
		it.holdEnds(base, p, held, off)
	}
	if !p.It.Cut.Quick() {
		it.knife(base, p, name)
	}
}

// knife is the last work on a piece that is cut up before it is served.
func (it *Itinerary) knife(s schedule.Step, p *arrange.Placed, name string) {
	d := it.D
	s.Kind, s.At, s.Attended, s.Minutes = schedule.StepSlice, d.cutAt(p), true, sliceMinutes
	s.Text, s.Why = fmt.Sprintf("%s: %s.", knifeWord(p.It), name), "just before serving: cut meat cools fast"
	if d.Chill { // nobody waits for the evening with what is done
		last := d.At(float64(p.It.Serve))
		s.Window = plans.Shift(d.window(p, p.TakeOff), p.It.RestMinutes())
		s.Window = schedule.Window{Early: instant.Earlier(s.Window.Early, last), Expected: instant.Earlier(s.Window.Expected, last), Late: instant.Earlier(s.Window.Late, last)}
		s.At = s.Window.Expected
		s.Text = d.portionText(name) + " Chill it at once, and if it is late: chill first, sleep after."
		s.Why = "hot meat may stand for " + d.About(safety.OutLimit(d.Air.AirC)) + d.outWhy() + "; thin portions chill fast enough"
	}
	it.add(s)
	if d.Chill {
		it.chill(s, p, name)
	}
}

// chill is when what is eaten another day goes into the refrigerator: once it is cut up, and no
// later than food may stand after it is off the heat.
func (it *Itinerary) chill(s schedule.Step, p *arrange.Placed, name string) {
	d := it.D
	most := safety.OutLimit(d.Air.AirC)
	s.Kind, s.Window = schedule.StepChill, plans.Shift(d.window(p, p.TakeOff), math.Min(p.It.RestMinutes()+sliceMinutes+panMinutes, most))
	s.At = s.Window.Expected
	s.Text = fmt.Sprintf("%s: into the refrigerator by now, one layer in shallow pans, at most %s after it is off the heat%s.", name, d.About(most), d.outWhy())
	s.Why = "cooked food stands no longer, and chills within 2 hr and 6 hr"
	it.add(s)
}

// outWhy is why food stands out of heat and cold no longer on a hot day.
func (d *Assembler) outWhy() string {
	if safety.OutLimit(d.Air.AirC) == safety.OutLimit(day.RoomC) {
		return ""
	}
	return ": it is above " + d.Req.Units.Grate(unit.Temperature(safety.HotAirC)) + " outside"
}

// panMinutes is how long the pieces take to lie in their pans (assumption).
const panMinutes = 5

// cutAt is when a piece is cut up.
func (d *Assembler) cutAt(p *arrange.Placed) time.Time {
	serve := float64(p.It.Serve)
	if travel := p.It.TravelMinutes(); travel > 0 {
		return d.At(serve - travel)
	}
	at := d.At(serve + sliceMinutes)
	if rested := d.rested(p); rested.After(at) { // the rest comes first
		return instant.Earlier(rested, d.At(serve))
	}
	return at
}

// upFor is when somebody is up for a piece at the latest: it is cut up, or served.
func (d *Assembler) upFor(p *arrange.Placed) time.Time {
	serve := d.At(float64(p.It.Serve))
	if p.It.Cut.Quick() {
		return serve
	}
	return instant.Earlier(d.cutAt(p), serve)
}

// rested is when the least rest of a batch is expected to be over.
func (d *Assembler) rested(p *arrange.Placed) time.Time {
	return d.window(p, p.TakeOff).Expected.Add(instant.Minutes(p.It.RestMinutes()))
}

// sliceMinutes is how long before the table the knife comes out (assumption).
const sliceMinutes = 10

// knifeWord is what is done with a piece before it is served.
func knifeWord(it *day.Item) string {
	switch {
	case it.Cut.Style == cut.Bird:
		return "Carve"
	case it.Doneness == "pulled" || pullsFrom(it.Cut) > 0 && it.TargetC >= pullsFrom(it.Cut)-1:
		return "Pull"
	}
	return "Slice"
}

// pullsFrom is the core from which a cut comes apart by hand, degC; 0 for one that is never pulled.
func pullsFrom(c cut.Cut) float64 {
	if g, ok := c.FindDoneness("pulled"); ok {
		return g.CoreC
	}
	return 0
}

func (it *Itinerary) holdStep(base schedule.Step, p *arrange.Placed, o day.HoldOption, off schedule.Window) {
	d := it.D
	s := base
	s.Kind = map[string]schedule.StepKind{schedule.HoldBox: schedule.StepBox, schedule.HoldOven: schedule.StepToOven}[o.Method]
	if s.Kind == "" {
		s.Kind = schedule.StepHold
	}
	if p.On-p.Way.Total().Expected-p.It.RestMinutes() <= float64(p.It.Serve) && s.Kind == schedule.StepHold {
		return
	}
	after := o.Vent
	if s.Kind == schedule.StepHold {
		if after = p.It.RestMinutes(); o.Method == schedule.HoldTent && after <= shortRest {
			after = 0 // it rests under the foil
		}
	}
	s.Attended, s.Minutes, s.Window = true, 5, it.boxStep(base, p, o, plans.Shift(off, after))
	if last := d.At(float64(p.It.Serve)); s.Window.Expected.After(last) {
		s.Window.Early, s.Window.Expected = instant.Earlier(s.Window.Early, last), last
	}
	s.At, s.Window.Late = s.Window.Expected, instant.Earlier(s.Window.Late, d.At(float64(p.It.Serve)))
	// What is cut up as soon as it has rested is not covered for that.
	if knife := d.At(float64(p.It.Serve) + sliceMinutes); s.Kind == schedule.StepHold && p.It.TravelMinutes() == 0 && !s.At.Before(knife) && p.Off-p.It.RestMinutes() <= float64(p.It.Serve) {
		return
	}
	if least := d.leastHold(batchesOf(p.It, it.All), o.Method); least.Minutes < o.Minutes { // one clock for a dish
		o.Minutes, o.Hot, o.Eaten = least.Minutes, least.Hot, least.Eaten
	}
	s.Text, s.Why = d.keepText(p, o, it.name(p), p.On-p.Took().Expected), "done early is normal: it waits warm"
	it.add(s)
}

// shortRest is a rest, in minutes, that is no more than that of a hold under foil (assumption).
const shortRest = 30

// servings are one step for each instant at which food is served, or leaves.
func (it *Itinerary) servings() {
	d := it.D
	type leaving struct {
		at     int
		travel float64
	}
	names := map[leaving][]string{}
	var order []leaving
	for i := range d.Items {
		l := leaving{d.Items[i].Serve, d.Items[i].TravelMinutes()}
		if len(names[l]) == 0 {
			order = append(order, l)
		}
		names[l] = append(names[l], d.Items[i].Dish.Name)
	}
	sort.SliceStable(order, func(i, j int) bool { return order[i].at > order[j].at })
	if d.Chill { // each dish is chilled by its own clock
		return
	}
	for _, l := range order {
		s := schedule.Step{Kind: schedule.StepServe, At: d.At(float64(l.at)), Attended: true, Minutes: 5, Why: "the asked time"}
		switch list := say.Listed(names[l], "and"); {
		case l.travel > 0:
			s.Text, s.Why = LeaveText(list, d.About(l.travel)), fmt.Sprintf("on the table at %s", say.LocalClock(d.Req.Units, d.At(float64(l.at)-l.travel)))
		default:
			s.Text = ServeText(list)
		}
		it.add(s)
	}
}

const ServeWord = "Serve: "

// ServeText and leaveText bring what is ready to the table, here or elsewhere.
func ServeText(list string) string { return ServeWord + list + "." }

func LeaveText(list, time string) string {
	return "Leave with " + list + ", packed in the cooler: " + time + " on the way."
}
