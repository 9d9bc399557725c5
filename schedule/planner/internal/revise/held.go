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
	"example.com/cookday/schedule/planner/internal/belief"
	"example.com/cookday/schedule/planner/internal/day"
)

// heldUntil is when what is expected off, or is off, comes off and can be held until, in
// minutes of its batch; false where it cannot be held.
func (v *Revision) heldUntil(a *liveBatch, p *arrange.Placed) (off, until float64, ok bool) {
	o, holds := v.day.ChosenHold(p)
	off = a.live.Total().Expected
	return off, off + o.Minutes, holds
}

// How warm an oven is that nobody read: many run 20 to 30 F over or under (common
// practice, no source). One that was read is off by what its thermometer is.
const (
	ovenSetK  = 15 / 1.8
	ovenOffC  = 50 // an hour or so after it went off, its door shut (assumption)
	ovenReadK = 5 / 1.8
	sureHeld  = 0.9 // a hold is told to last for so long with this chance
)

// holdAsRead lets the readings of a piece that is held say until when it may be: just
// under its surface as read there, or by its core and what the model has between the two.
func (v *Revision) holdAsRead(a *liveBatch, p *arrange.Placed) {
	if a.where != off || !a.off.logged || !a.boxed.set || p.Hold < 0 || a.readHold() || p.Options[p.Hold].Rule.Kind != safety.HoldOuterAbove {
		return
	}
	o := p.Options[p.Hold]
	all := v.heldReadings(a)
	if len(all) == 0 {
		return
	}
	from, ok := v.outerNow(p, o, all)
	if !ok {
		var known []belief.Held
		if known, ok = v.asBoxed(a, p, o, all); ok {
			from, all = known[len(known)-1], append(known, all...)
		}
	}
	cooling := belief.NewCooling(v.warmth(a, p, o), all)
	hot := 0.0
	if ok {
		hot = cooling.Until(from, safety.DangerHighC, sureHeld)
	}
	for _, h := range all { // it was below by then, whatever was foretold
		if h.Outer && h.C <= safety.DangerHighC && h.Minute > from.Minute {
			hot = math.Min(hot, h.Minute)
		}
	}
	c := o.Rule.Clock(hot)
	o.Minutes, o.Hot, o.Eaten, o.Read = c.Served, c.Hot, c.Eaten, true
	p.Options = slices.Clone(p.Options) // the day's answer is kept for others
	p.Options[p.Hold] = o
}

// readHold says whether the piece stands without heat: a clock tells then, no reading.
func (a *liveBatch) readHold() bool { return len(a.waits()) > 0 }

// heldReadings are those since the take-off, in minutes from it.
func (v *Revision) heldReadings(a *liveBatch) []belief.Held {
	var out []belief.Held
	for _, e := range v.log {
		core := e.Kind == schedule.LogCore || e.Kind == schedule.LogColdest
		if e.Dish == a.batch.It.Dish.ID && (core || e.Kind == schedule.LogOuter) && !e.At.Before(a.boxed.at) && !(a.hotly.set && e.At.After(a.hotly.at)) {
			out = append(out, belief.Held{Minute: e.At.Sub(a.off.at).Minutes(), C: e.C, Outer: e.Kind == schedule.LogOuter})
		}
	}
	return out
}

// warmth is what is about a piece that is held.
func (v *Revision) warmth(a *liveBatch, p *arrange.Placed, o day.HoldOption) belief.Warmth {
	if o.Method != schedule.HoldOven {
		return belief.Warmth{AirC: v.day.Finished(p.It, p.Way, p.MassKg, o.Method).BoxAirC}
	}
	w := belief.Warmth{AirC: o.OvenC, SdK: ovenSetK}
	for _, e := range v.log {
		if e.Kind == schedule.LogOven && !e.At.Before(a.boxed.at) {
			w = belief.Warmth{AirC: e.C, SdK: ovenReadK}
		}
	}
	if _, off := v.ovenOff(a); off {
		w = belief.Warmth{AirC: ovenOffC, SdK: ovenSetK}
	}
	return w
}

// outerNow is the newest that is known of the place just under the surface: as read there, or
// else by the core. What has fallen below the limit was above it last; false if it never was.
func (v *Revision) outerNow(p *arrange.Placed, o day.HoldOption, all []belief.Held) (belief.Held, bool) {
	for _, outer := range []bool{true, false} {
		for _, h := range slices.Backward(all) {
			if h.Outer != outer {
				continue
			}
			if !h.Outer {
				h = belief.Held{Minute: h.Minute, C: h.C - v.surfaceBelow(p, o, h.Minute), Outer: true}
			}
			if h.C > safety.DangerHighC && !fellBefore(all, h.Minute) {
				return h, true
			}
		}
	}
	return belief.Held{}, false
}

// fastestBox is how fast what is in a box may cool and the box still be one, 1/h (assumption: half
// as fast again as the fastest on record, 0.226).
const fastestBox = 0.34

// asBoxed is how warm a piece was just under its surface as it went into a box, and what its
// core was read at before, where the first reading after that has the place below the line;
// false where it did not go in hot, as it came off, or no box cools so fast.
func (v *Revision) asBoxed(a *liveBatch, p *arrange.Placed, o day.HoldOption, all []belief.Held) (known []belief.Held, ok bool) {
	in := a.boxed.at.Sub(a.off.at).Minutes()
	if o.Method != schedule.HoldBox || in > placeAskedFrom || len(all) == 0 {
		return nil, false
	}
	for _, e := range slices.Backward(a.cores) {
		if e.At.After(a.off.at.Add(offReading)) || e.At.Before(a.off.at.Add(-placesFor)) {
			continue
		}
		below := v.surfaceBelow(p, o, in)
		if alarm, ok := safety.AlarmC(p.It.Piece(p.MassKg)); ok { // as cool as it soon is
			below = math.Max(below, alarm-safety.DangerHighC)
		}
		from := belief.Held{Minute: in, C: e.C - below, Outer: true}
		core := belief.Held{Minute: e.At.Sub(a.off.at).Minutes(), C: e.C}
		if from.C <= safety.DangerHighC {
			return nil, false
		}
		was := core
		if all[0].Outer {
			was = from
		}
		return []belief.Held{core, from}, boxCools(was, all[0], v.warmth(a, p, o).AirC)
	}
	return nil, false
}

// boxCools says that a box may have cooled a place so far from one reading to the next.
func boxCools(was, is belief.Held, airC float64) bool {
	if is.C <= airC || is.Minute <= was.Minute {
		return false
	}
	return math.Log((was.C-airC)/(is.C-airC))*60/(is.Minute-was.Minute) <= fastestBox
}

// fellBefore says whether the place just under the surface was read at the line or below it
// by a minute.
func fellBefore(all []belief.Held, minute float64) bool {
	return slices.ContainsFunc(all, func(h belief.Held) bool {
		return h.Outer && h.C <= safety.DangerHighC && h.Minute <= minute
	})
}

// surfaceBelow is by how much the place just under the surface is cooler than the core
// some minutes after the take-off, as expected; where the model does not follow the piece, what an alarm in its core allows for.
func (v *Revision) surfaceBelow(p *arrange.Placed, o day.HoldOption, minutes float64) float64 {
	if p.Way.State == nil {
		alarm, ok := safety.AlarmC(p.It.Piece(p.MassKg))
		if !ok {
			return math.Inf(1)
		}
		return alarm - safety.DangerHighC
	}
	s := day.Follow(p.Way.State, v.day.Course(p.Way, o.Waiting, day.ExpectedEnd)).After(minutes)
	return math.Max(s.CoreC()-s.OuterC(), 0)
}

// noteRead says what the readings of a hold have changed.
func (v *Revision) noteRead(a *liveBatch, p *arrange.Placed, add func(schedule.Finding)) {
	if p.Hold < 0 || !p.Options[p.Hold].Read || a.unshown() {
		return
	}
	o := p.Options[p.Hold]
	hot, served, eaten := v.heldClocks(a, o)
	if served.Before(v.serve(a)) {
		return // said as a hold that is too short
	}
	add(about(a, schedule.HoldRead, fmt.Sprintf("By its readings, %s stays above %s just under its surface until about %s: on the table by %s, eaten by %s.%s",
		p.It.Dish.Name, v.day.Core(safety.DangerHighC), v.clock(hot), v.clock(served), v.clock(eaten), v.middleText(a, p, o))))
}

// middleText says when the middle comes to the line, as expected, where it was measured:
// far later than the meat just under the surface, which is what counts.
func (v *Revision) middleText(a *liveBatch, p *arrange.Placed, o day.HoldOption) string {
	all := v.heldReadings(a)
	for _, h := range slices.Backward(all) {
		if h.Outer || h.C <= safety.DangerHighC {
			continue
		}
		m := belief.NewCooling(v.warmth(a, p, o), all).Until(h, safety.DangerHighC, 0.5)
		if m-h.Minute >= belief.LongestAhead {
			return ""
		}
		return fmt.Sprintf(" Its middle is expected at %s at about %s, later than its surface, and does not count.", v.day.Core(safety.DangerHighC), v.clock(a.off.at.Add(instant.Minutes(m))))
	}
	return ""
}

// kept says of what waits without enough heat that it is served only if it got some: the
// clocks of some servings, in the words of their steps.
func (v *Revision) kept(steps []schedule.Step, l remainder) []schedule.Step {
	for i, s := range steps {
		if s.Kind != schedule.StepServe || s.Done {
			continue
		}
		for k, a := range l.bound {
			from, by, short := v.shortOfHeat(a, l.all[k])
			if short && by.Before(s.At) && !a.condemned && v.serve(a).Equal(s.At) {
				steps[i].Text += fmt.Sprintf(" %s only if it was in heat, at 140 °F (60 °C) or more throughout, from %s on.", a.batch.It.Dish.Name, v.clock(from))
			}
		}
	}
	return steps
}

// shortOfHeat is from when what is off and does not keep as it waits now must be in heat, and
// the end of its clock without that, by what is known of it.
func (v *Revision) shortOfHeat(a *liveBatch, p *arrange.Placed) (from, by time.Time, short bool) {
	waits := a.waits()
	switch n := len(waits); {
	case a.where != off:
		return from, by, false
	case a.adrift:
		return a.off.at, a.off.at.Add(instant.Minutes(safety.OutLimit(v.day.Air.AirC))), true
	case n > 0:
		return v.standsBy(a), v.standsBy(a), waits[n-1].kind == schedule.LogCounter && waits[n-1].open
	case p.Hold < 0:
		return from, by, false
	}
	o, _ := v.day.ChosenHold(p)
	hot, served, _ := v.heldClocks(a, o) // below the line a warm oven does not mend it
	if o.Hot == 0 {
		hot = served
	}
	return hot, served, o.Read || a.boxed.set && o.Hot > 0
}

// heldClocks are the instants of a hold: hot until, on the table by, eaten by.
func (v *Revision) heldClocks(a *liveBatch, o day.HoldOption) (hot, served, eaten time.Time) {
	at := func(m float64) time.Time { return v.day.HeldUntil(v.u(a.off.at), m) } // as the steps say it
	return at(o.Hot), at(o.Minutes), at(o.Eaten)
}

// fallsText is what a hold that does not last to its serving asks for, by its readings or as
// such a hold cools.
func (v *Revision) fallsText(a *liveBatch, p *arrange.Placed) string {
	o, _ := v.day.ChosenHold(p)
	name, by := a.batch.It.Dish.Name, "By its readings"
	if !o.Read {
		by = "By how such a piece cools"
	}
	hot, served, eaten := v.heldClocks(a, o)
	below := "reheat it to 165 °F (74 °C) in an oven at " + v.day.Grate(undoneOvenC) + " within 2 hr of falling there, once, or throw it away"
	if !eaten.After(v.now) {
		below = "throw it away"
	}
	if !served.After(v.now) {
		return fmt.Sprintf("Measure %s just under the surface now. %s, it should be on the table by %s. Still at %s or more: eat it now, or into an oven at %s with it. Below that: %s.",
			name, by, v.clock(served), v.day.Core(safety.DangerHighC), v.day.Grate(ovenHoldC), below)
	}
	when := fmt.Sprintf("it comes to %s just under its surface at about %s", v.day.Core(safety.DangerHighC), v.clock(hot))
	if !hot.After(v.now) {
		when = fmt.Sprintf("it is at %s just under its surface", v.day.Core(safety.DangerHighC))
	}
	keep := fmt.Sprintf("Put %s into an oven at %s now", name, v.day.Grate(ovenHoldC))
	if a.heldIn() == schedule.HeldInOven {
		keep = fmt.Sprintf("Put the oven of %s up, to %s beside the meat by a thermometer, now", name, v.day.Grate(ovenHoldC))
	}
	return fmt.Sprintf("%s, or eat it by %s, or chill it. %s, %s, and does not keep until %s.%s",
		keep, v.clock(served), by, when, v.clock(v.serve(a)), v.middleText(a, p, o))
}
