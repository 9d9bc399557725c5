package revise

import (
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/day"
)

// Every minute of a cooked piece is in a place that the log tells of. Between its take-off and
// the first line that says where it is (in a box, an oven, the refrigerator, on the table) it is
// without heat for all that is known; that it is where the plan would have it is an assumption,
// which is asked after and clears no clock.

// Figures of a piece of which nothing says where it is (judgment).
const (
	placeAskedFrom = 30.0             // minutes after which it is asked after
	hotAsItWent    = 10 * time.Minute // so long after it went somewhere its outside tells how it stood before
	ventLate       = 30.0             // minutes after it should have gone in
	askedLeast     = 10.0             // minutes before the end of its clock it is asked after at the latest
	unplacedDoubt  = 0.1              // how likely it is that it stood in the open for all of the time
)

// unplaced is a stretch since the take-off of a piece in which nothing says where it was.
type unplaced struct {
	from, to time.Time
	by       schedule.EntryKind // what ended it; empty for now
}

func (g unplaced) minutes() float64 { return g.to.Sub(g.from).Minutes() }

// unplacedOf is that stretch; false for a piece that was put somewhere as it came off, or of
// which nothing says that it did. Its outside, read at 140 F or more, begins it anew.
func (v *Revision) unplacedOf(a *liveBatch) (g unplaced, ok bool) {
	if a.where != off || !a.off.logged || a.gone || a.batch.It.Verdict.Minimum.CoreC == 0 {
		return g, false
	}
	g = unplaced{from: a.off.at, to: v.now}
	end := func(at time.Time, by schedule.EntryKind) {
		if !at.After(g.to) {
			g.to, g.by = at, by
		}
	}
	if a.boxed.set {
		end(a.boxed.at, schedule.LogBoxed)
	}
	if a.served.set {
		end(a.served.at, schedule.LogServed)
	}
	for _, s := range a.waits() {
		if s.kind != schedule.LogStopped {
			end(s.from, s.kind)
		}
	}
	for _, e := range v.log {
		hot := e.Kind == schedule.LogOuter || e.Kind == schedule.LogColdest
		if e.Dish == a.batch.It.Dish.ID && hot && e.C >= safety.DangerHighC && e.At.After(g.from) && !e.At.After(g.to.Add(hotAsItWent)) {
			g.from = instant.Earlier(e.At, g.to)
		}
	}
	return g, true
}

// waits are the stands of a piece since it came off.
func (a *liveBatch) waits() []stand {
	i := slices.IndexFunc(a.stands, func(s stand) bool { return a.off.set && !s.from.Before(a.off.at) })
	if i < 0 {
		return nil
	}
	return a.stands[i:]
}

// plannedHot is for how many minutes a piece stays hot where the plan may have it wait, in a box
// or an oven: 0 for one that is to be chilled, or waits nowhere.
func (v *Revision) plannedHot(a *liveBatch) float64 {
	hot := 0.0
	if a.first == nil || v.chills {
		return 0
	}
	for _, o := range a.first.Options {
		if o.Method == schedule.HoldBox || o.Method == schedule.HoldOven {
			hot = math.Max(hot, math.Max(o.Hot, o.Minutes))
		}
	}
	return hot
}

// standsAs is a stretch of which nothing says where the piece was as the clock without heat takes
// it: whole where a line ends it that says where it went then, and less by what the plan's own
// wait would explain where none does; up to its serving where it may be eaten since.
func (v *Revision) standsAs(a *liveBatch) (s stand, ok bool) {
	g, ok := v.unplacedOf(a)
	if !ok {
		return s, false
	}
	switch g.by {
	case schedule.LogCounter: // it goes on there
	case schedule.LogBoxed:
	case "":
		g.to = instant.Earlier(g.to, v.serve(a))
		fallthrough
	default:
		g.from = g.from.Add(instant.Minutes(v.plannedHot(a)))
	}
	return stand{from: g.from, to: g.to, kind: schedule.LogCounter, untold: true}, g.to.After(g.from)
}

// allStands are the stands of a piece with the one of which nothing says where it was, in order.
func (v *Revision) allStands(a *liveBatch) []stand {
	s, ok := v.standsAs(a)
	if !ok {
		return a.stands
	}
	at := len(a.stands) - len(a.waits())
	return slices.Insert(slices.Clone(a.stands), at, s)
}

// isAdrift says whether a piece is past its time without heat unless it was where the plan would
// have it, which nobody logged.
func (v *Revision) isAdrift(a *liveBatch) bool {
	g, ok := v.unplacedOf(a)
	return ok && !a.condemned && g.by != schedule.LogBoxed && g.by != schedule.LogServed && g.by != schedule.LogCounter &&
		instant.Earlier(g.to, v.serve(a)).Sub(g.from).Minutes() > safety.OutLimit(v.day.Air.AirC)
}

// overText is what an order to throw a piece away says of why, where nothing tells of heat.
func (v *Revision) overText(a *liveBatch) string {
	g, ok := v.unplacedOf(a)
	if !ok || g.minutes() <= placeAskedFrom {
		return ""
	}
	until := "since"
	if g.by != "" {
		until = fmt.Sprintf("until %s", v.clock(g.to))
	}
	return fmt.Sprintf(" It came off at %s, and nothing tells of heat %s. Was it in an oven or a cooler, and nobody logged it? Log that with its time, and ask again.", v.clock(a.off.at), until)
}

// noteUnplaced asks where a piece is, or was, of which nothing says it; it says whether it did.
func (v *Revision) noteUnplaced(a *liveBatch, p *arrange.Placed, add func(schedule.Finding)) bool {
	g, ok := v.unplacedOf(a)
	limit := safety.OutLimit(v.day.Air.AirC)
	if !ok || a.condemned || a.unshown() && !v.mealPast(a) || g.minutes() <= placeAskedFrom {
		return false
	}
	over, by := g.minutes() > limit, v.clock(g.from.Add(instant.Minutes(limit)).Truncate(time.Minute))
	name, stood := a.label(), fmt.Sprintf("Its %s without heat were over at %s", v.span(limit), by)
	where, line := v.plannedPlace(p)
	ask := ""
	switch {
	case g.by == schedule.LogBoxed && (a.readHeld(g.to) || v.stoodAsPlanned(a, p, g)):
	case g.by == schedule.LogBoxed:
		if v.now.After(g.from.Add(instant.Minutes(limit))) {
			by = ""
		}
		ask = fmt.Sprintf("Measure %s just under the surface now: it was off at %s, and nothing tells of heat before %s. At %s or more: log it (outer), and it stays there. %s",
			name, v.clock(a.off.at), v.clock(g.to), v.day.Core(safety.DangerHighC), v.belowText(by))
	case g.by == schedule.LogServed && over && !v.now.After(a.served.at.Add(instant.Minutes(limit))):
		ask = fmt.Sprintf("%s: in %s from %s until it was served at %s? Then nothing is wrong: log it (%s, with its time). If it stood: stop eating, and throw away what is left. %s.",
			name, where, v.clock(a.off.at), v.clock(a.served.at), line, stood)
	case g.by == schedule.LogChilled && over:
		ask = fmt.Sprintf("%s: in %s from %s until it was chilled at %s? Then log it (%s, with its time). If it stood: throw it away, chilled or not. %s.",
			name, where, v.clock(a.off.at), v.clock(g.to), line, stood)
	case g.by != "" || v.tents(a, p):
	case !v.now.Before(v.serve(a)):
		ask = v.eatenText(a, g)
	case over && g.minutes()-v.plannedHot(a) > limit: // no wait that was planned explains it
		c, _ := safety.Lookup("standing-over")
		add(ofCatalogue(a, c, fmt.Sprintf("%s: throw it away. %s.%s", name, stood, v.overText(a))))
		return true
	case over:
		ask = fmt.Sprintf("%s: in %s since %s? Then log it (%s, with its time). If it stood: throw it away. %s.", name, where, v.clock(a.off.at), line, stood)
	default:
		ask = fmt.Sprintf("%s: in %s since %s? Then log it (%s, with its time). If it stood: measure it just under the surface now. At %s or more: into an oven at %s, or eat it by %s. %s",
			name, where, v.clock(a.off.at), line, v.day.Core(safety.DangerHighC), v.day.Grate(v.keepC(a)), by, v.belowText(by))
	}
	if ask == "" {
		return false
	}
	code := schedule.StandsOpen
	if g.by == "" && !v.now.Before(v.serve(a)) {
		code = schedule.Leftovers
	}
	a.placeAsked = true
	add(about(a, code, ask))
	return true
}

// readHeld says whether a piece was read where it counts since an instant.
func (a *liveBatch) readHeld(since time.Time) bool {
	read := func(e schedule.Entry) bool { return e.Kind != schedule.LogCore && e.At.After(since) }
	return slices.ContainsFunc(a.outers, read) || slices.ContainsFunc(a.cores, read)
}

// belowText is what becomes of a piece that is found below the line; by is the end of its clock,
// empty where that is over.
func (v *Revision) belowText(by string) string {
	if by == "" {
		return "Below that: throw it away."
	}
	return fmt.Sprintf("Below that: reheat it to 165 °F (74 °C) in an oven at %s by %s, once, or throw it away.", v.day.Grate(undoneOvenC), by)
}

// eatenText asks whether a piece was eaten whose serving is past, with the end of its clock.
func (v *Revision) eatenText(a *liveBatch, g unplaced) string {
	limit := safety.OutLimit(v.day.Air.AirC)
	by := g.from.Add(instant.Minutes(limit)).Truncate(time.Minute)
	hot := instant.Earlier(v.serve(a), g.from.Add(instant.Minutes(v.plannedHot(a))))
	text := fmt.Sprintf("%s: was it eaten? Then log it (served, with its time). ", a.batch.It.Dish.Name)
	if by.After(v.now) {
		text += fmt.Sprintf("Eat it by %s; what is left goes into the refrigerator by then, cut small.", v.clock(by))
	} else {
		text += fmt.Sprintf("What is left and stood out since %s is thrown away since %s.", v.clock(g.from), v.clock(by))
	}
	if kept := hot.Add(instant.Minutes(limit)).Truncate(time.Minute); kept.After(by) && kept.After(v.now) {
		text += fmt.Sprintf(" Was it in an oven or a cooler, and hot, until %s? Then it has until %s: log it (to-oven or boxed, with its time).", v.clock(hot), v.clock(kept))
	}
	return text
}

// plannedPlace is where the plan has a piece wait, in words, and the line of a log that says so.
func (v *Revision) plannedPlace(p *arrange.Placed) (where, line string) {
	if o, holds := v.day.ChosenHold(p); holds {
		switch o.Method {
		case schedule.HoldOven:
			return "the oven", "to-oven"
		case schedule.HoldBox:
			return "the cooler", "boxed"
		}
	}
	return "an oven or a cooler", "to-oven or boxed"
}

// stoodAsPlanned says whether a piece was put away when the plan has it put away, after it stood open until it stopped
// cooking, or at most ventLate after that: the rest that was asked for rings no alarm.
func (v *Revision) stoodAsPlanned(a *liveBatch, p *arrange.Placed, g unplaced) bool {
	vent := 0.0
	if o, holds := v.day.ChosenHold(p); holds {
		vent = o.Vent
	}
	for _, all := range [][]day.HoldOption{p.Options, firstOptions(a)} {
		for _, o := range all {
			vent = math.Max(vent, o.Vent)
		}
	}
	return vent > 0 && g.minutes() <= math.Min(vent+ventLate, safety.OutLimit(v.day.Air.AirC)-askedLeast)
}

// firstOptions are the ways to wait that a piece had as first planned.
func firstOptions(a *liveBatch) []day.HoldOption {
	if a.first == nil {
		return nil
	}
	return a.first.Options
}

// tents says whether a piece rests in the open as planned, and may.
func (v *Revision) tents(a *liveBatch, p *arrange.Placed) bool {
	o, holds := v.day.ChosenHold(p)
	if after, ok := v.waitsAfter(a, ""); ok && holds {
		o.Vent = math.Max(o.Vent, after.Minutes())
	}
	if holds && o.Vent > 0 && v.now.Before(v.serve(a)) && v.now.Before(a.off.at.Add(instant.Minutes(math.Min(o.Vent+ventLate, safety.OutLimit(v.day.Air.AirC)-askedLeast)))) {
		return true // it sits open first, as planned, and is told to go in then
	}
	if holds && o.Method != schedule.HoldTent {
		return false
	}
	_, served, _ := v.heldClocks(a, o)
	return v.now.Before(v.serve(a)) && (holds && served.After(v.now) || v.serve(a).Sub(a.off.at).Minutes() <= 2*placeAskedFrom)
}

// keepC is the oven that keeps a piece hot, degC.
func (v *Revision) keepC(a *liveBatch) float64 {
	return safety.OvenSettingC(a.batch.It.Piece(a.batch.MassKg), ovenHoldC)
}

// noteKept asks whether a piece was eaten that waits hot, by the log, and whose serving is past.
func (v *Revision) noteKept(a *liveBatch, add func(schedule.Finding)) {
	g, ok := v.unplacedOf(a)
	if !ok || g.by != schedule.LogBoxed && g.by != schedule.LogToOven || a.hotly.set || !v.now.After(v.serve(a)) {
		return
	}
	add(about(a, schedule.Leftovers, fmt.Sprintf("%s: was it eaten? Then log it (served, with its time). If it still waits since %s: measure it just under the surface now. At %s or more it may be eaten, or chilled, cut small. Below that, and nobody knows since when: throw it away.",
		a.batch.It.Dish.Name, v.clock(g.to), v.day.Core(safety.DangerHighC))))
}

// noteEaten asks whether a piece was eaten that was read done and never logged off, and whose
// serving is long past.
func (v *Revision) noteEaten(a *liveBatch, add func(schedule.Finding)) bool {
	if a.off.logged || len(a.cores) == 0 || a.cores[len(a.cores)-1].C < a.way().PullC || v.now.Before(v.serve(a)) || a.served.set || a.unshown() {
		return false
	}
	by := a.off.at.Add(instant.Minutes(safety.OutLimit(v.day.Air.AirC)))
	last := a.cores[len(a.cores)-1]
	add(about(a, schedule.Leftovers, fmt.Sprintf("%s: was it eaten? Then log it (off and served, with their times). It was read at %s at %s, and nothing was logged since. What is left and stood out is thrown away from %s on.",
		a.batch.It.Dish.Name, v.day.Core(last.C), v.clock(last.At), v.clock(by))))
	return true
}
