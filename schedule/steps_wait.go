package schedule

import (
	"fmt"
	"sort"
	"strings"
	"time"

	"example.com/cookday/schedule/cut"
)

// wait are the rest, the hold and the knife.
func (it *itinerary) wait(p *placed) {
	d := it.d
	base := Step{Dish: p.it.dish.ID, Batch: p.number}
	name := it.name(p)
	off := d.window(p, p.takeOff)
	held, holds := d.chosenHold(p)
	if rest := p.it.restMinutes(); rest > 0 {
		s := base
		s.Kind, s.Window, s.At = StepRest, off, off.Expected
		s.Text, s.Why = fmt.Sprintf("Let %s rest at least %s.", name, d.about(rest)), "the juices settle and the heat evens out"
		if place := map[string]string{HoldBox: "box", HoldOven: "oven"}[held.method]; holds && place != "" { // where it goes at once
			s.Text = fmt.Sprintf("Let %s rest at least %s, uncut; the %s will do.", name, d.about(rest), place)
		}
		if holds && held.vent > 0 {
			s.Text, s.Why = strings.TrimSpace(d.standText(p, held, name)), "shut in at once it would go on cooking"
		}
		it.add(s)
	}
	if holds {
		it.holdStep(base, p, held, off)
		it.holdEnds(base, p, held, off)
	}
	if p.it.cut.Style != cut.Small && p.it.cut.Style != cut.Timed {
		it.knife(base, p, name)
	}
}

// knife is the last work on a piece that is cut up before it is served.
func (it *itinerary) knife(s Step, p *placed, name string) {
	d := it.d
	serve := float64(p.it.serve)
	s.Kind, s.At, s.Attended, s.Minutes = StepSlice, d.at(serve+sliceMinutes), true, sliceMinutes
	if rested := it.rested(p); rested.After(s.At) { // the rest comes first
		s.At = earlier(rested, d.at(serve))
	}
	if travel := p.it.travelMinutes(); travel > 0 {
		s.At = d.at(serve - travel)
	}
	s.Text, s.Why = fmt.Sprintf("%s %s.", knifeWord(p.it), name), "just before serving: cut meat cools fast"
	if d.chill { // nobody waits for the evening with what is done
		last := d.at(serve)
		s.Window = shift(d.window(p, p.takeOff), p.it.restMinutes())
		s.Window = Window{earlier(s.Window.Early, last), earlier(s.Window.Expected, last), earlier(s.Window.Late, last)}
		s.At = s.Window.Expected
		s.Text, s.Why = d.portionText(name)+" Chill it at once.", "hot meat may stand for 2 h; thin portions chill fast enough"
	}
	it.add(s)
}

// rested is when the least rest of a batch is expected to be over.
func (it *itinerary) rested(p *placed) time.Time {
	return it.d.window(p, p.takeOff).Expected.Add(minutes(p.it.restMinutes()))
}

// sliceMinutes is how long before the table the knife comes out (assumption).
const sliceMinutes = 10

// knifeWord is what is done with a piece before it is served.
func knifeWord(it *item) string {
	switch {
	case it.cut.Style == cut.Bird:
		return "Carve"
	case it.doneness == "pulled":
		return "Pull"
	}
	return "Slice"
}

func (it *itinerary) holdStep(base Step, p *placed, o holdOption, off Window) {
	d := it.d
	s := base
	s.Kind = map[string]string{HoldBox: StepBox, HoldOven: StepToOven}[o.method]
	if s.Kind == "" {
		s.Kind = StepHold
	}
	if p.on-p.way.total().expected-p.it.restMinutes() <= float64(p.it.serve) && s.Kind == StepHold {
		return
	}
	after := o.vent
	if s.Kind == StepHold {
		after = p.it.restMinutes()
	}
	s.Attended, s.Minutes, s.Window = true, 5, shift(off, after)
	if last := d.at(float64(p.it.serve)); s.Window.Expected.After(last) {
		s.Window.Early, s.Window.Expected = earlier(s.Window.Early, last), last
	}
	s.At = s.Window.Expected
	// What is cut up as soon as it has rested is not covered for that.
	if knife := d.at(float64(p.it.serve) + sliceMinutes); s.Kind == StepHold && p.it.travelMinutes() == 0 && !s.At.Before(knife) && p.off-p.it.restMinutes() <= float64(p.it.serve) {
		return
	}
	s.Text, s.Why = d.keepText(o, it.name(p)), "done early is normal: it waits warm"
	it.add(s)
}

// servings are one step for each instant at which food is served, or leaves.
func (it *itinerary) servings() {
	d := it.d
	type leaving struct {
		at     int
		travel float64
	}
	names := map[leaving][]string{}
	var order []leaving
	for i := range d.items {
		l := leaving{d.items[i].serve, d.items[i].travelMinutes()}
		if len(names[l]) == 0 {
			order = append(order, l)
		}
		names[l] = append(names[l], d.items[i].dish.Name)
	}
	sort.SliceStable(order, func(i, j int) bool { return order[i].at > order[j].at })
	for _, l := range order {
		s := Step{Kind: StepServe, At: d.at(float64(l.at)), Attended: true, Minutes: 5, Why: "the asked time"}
		switch list := listed(names[l], "and"); {
		case d.chill:
			s.Text, s.Why = "At the latest now into the refrigerator, one layer in shallow pans: "+list+".", "chilled within 2 h and 6 h, and cold overnight"
		case l.travel > 0:
			s.Text, s.Why = leaveText(list, d.about(l.travel)), fmt.Sprintf("on the table at %s", localClock(d.at(float64(l.at)-l.travel)))
		default:
			s.Text = serveText(list)
		}
		it.add(s)
	}
}

const serveWord = "Serve: "

// serveText and leaveText bring what is ready to the table, here or elsewhere.
func serveText(list string) string { return serveWord + list + "." }
func leaveText(list, time string) string {
	return "Leave with " + list + ", boxed: " + time + " on the way."
}
