package revise

import (
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/belief"
)

// The clock of a piece that was below 140 °F when its fire died. What it rises by after that
// is no cooking that anybody saw: its time without heat begins when the air beside it has
// stopped heating, and goes on until it is in heat again, or until a probe pushed through it
// shows 140 °F or more (common practice, no source: the rule of a fire that is out, with no
// credit for what the meat may rise by itself).

// rawOutages are the outages in which a piece was below 140 °F when the air beside it stopped
// heating: by its newest reading of the hour before, or as it is foretold, slow as it may be
// where its inside may be dangerous; but for those in which its coldest place was read above
// that.
func (v *Revision) rawOutages(a *liveBatch, b *belief.Belief, w world, h grateHistory) []outage {
	var out []outage
	for _, o := range h.outages {
		from := instant.Later(o.from, a.on.at)
		if o.lid || !from.Before(instant.Earlier(o.to, v.until(a))) || v.provenHot(a, w, o) {
			continue
		}
		stop := v.stopsHeating(a, h, o)
		core := coreAt(b, stop, a.inner())
		if likely := a.asRead(); likely != nil { // at the earliest a fire failed it may have to have been hotter than it can be
			core = math.Min(core, coreAt(likely, stop, a.inner()))
		}
		if readRaw(b, from.Add(-recent).Sub(a.on.at).Minutes(), stop) || core < safety.DangerHighC {
			out = append(out, o)
		}
	}
	return out
}

// readRaw says whether the newest reading between two minutes was of raw meat.
func readRaw(b *belief.Belief, from, to float64) bool {
	raw := false
	for _, n := range b.Nodes {
		if n.Minute >= from && n.Minute <= to+1 {
			raw = n.CoreC < safety.DangerHighC
		}
	}
	return raw
}

// stopsHeating is the minute of an outage from which on the air beside a piece gives it no
// heat, from its put-on; the end of the outage, or now, where it still does.
func (v *Revision) stopsHeating(a *liveBatch, h grateHistory, o outage) float64 {
	end := instant.Earlier(o.to, v.until(a)).Sub(a.on.at).Minutes()
	for m := math.Max(o.from.Sub(a.on.at).Minutes(), 0); m < end; m++ {
		if safety.HeatlessShare(safety.DangerLowC, v.deadBeside(a, h, o, m)) > 0 {
			return m
		}
	}
	return end
}

// risenAtMost is what the core of a piece over a dead fire is taken to be now, if it was raw
// when that fire died and was not read since: what it comes to by itself at the least.
func (v *Revision) risenAtMost(a *liveBatch) (coreC float64, ok bool) {
	o, dead := v.grate.dead()
	if !dead || !v.overDeadFire(a) {
		return 0, false
	}
	for i, e := range a.cores {
		if e.At.After(o.from) && a.readings[i].Counts() {
			return 0, false
		}
	}
	if !v.rawOver(a) {
		return 0, false
	}
	now := a.journey.Now
	stop := v.stopsHeating(a, v.grate, o)
	outC := v.day.Night.AirC
	most := outC + (coreAt(a.believed, stop, true)+carryOverK-outC)*math.Exp(-coolsPerHour*(now-stop)/60)
	coreC = math.Min(most, math.Min(coreAt(a.believed, now, true), coreAt(a.believed, now, false)))
	return math.Max(coreC, math.Min(outC, a.believed.Journey.Body.StartC)), true
}

// rawOver says whether the fire is out under a piece that was raw when it died.
func (v *Revision) rawOver(a *liveBatch) bool {
	if a.believed == nil || !v.overDeadFire(a) {
		return false
	}
	h, _ := v.grate.fromEarliest()
	return slices.ContainsFunc(v.rawOutages(a, a.asRead(), world{grate: v.grate, readings: a.readings}, h), func(o outage) bool { return o.open })
}

// rawBy is when the time without heat of such a piece is over, if its fire stays dead: it does
// not move with the hour of the question.
func (v *Revision) rawBy(a *liveBatch, f safety.Finding) time.Time {
	left, limit := safety.OutLimit(v.day.Air.AirC)-f.Counted, 2*safety.OutLimit(v.day.Air.AirC)
	for m := 0.0; m < limit; m++ {
		at := v.now.Add(instant.Minutes(m))
		if left -= safety.HeatlessShare(safety.DangerLowC, v.airBeside(a, at.Add(time.Minute/2))); left < 0 {
			return at.Truncate(time.Minute)
		}
	}
	return v.now.Add(instant.Minutes(limit)).Truncate(time.Minute)
}

// rawSpent says how much of its time without heat such a piece has had.
func (v *Revision) rawSpent(f safety.Finding, spent string) string {
	if f.Counted >= 1 {
		return fmt.Sprintf("It has had %s.", spent)
	}
	return fmt.Sprintf("It is not cooked, and from when its grate is too cold to cook, about 25 min after the fire, it has %s at the most between 40 and 140 °F (4 and 60 °C).", v.span(safety.OutLimit(v.day.Air.AirC)))
}

// rawRead says of the newest reading of such a piece since its fire died what it shows.
func (v *Revision) rawRead(a *liveBatch, o outage) string {
	n := len(a.cores)
	if n == 0 || !a.cores[n-1].At.After(o.from) {
		return ""
	}
	e := a.cores[n-1]
	if e.C < safety.DangerHighC {
		return fmt.Sprintf(" It was at %s at %s: it has not cooked on.", v.day.Core(e.C), v.clock(e.At))
	}
	return fmt.Sprintf(" The %s at %s, at one place, does not stop that clock. A probe pushed through it does, where its coldest place shows %s or more (coldest).", v.day.Core(e.C), v.clock(e.At), v.day.Core(safety.DangerHighC))
}

// What a piece rises by once the air beside it has stopped heating, and how fast it cools then:
// the first is common practice, no source, and a middling figure of it; the second is a bare
// turkey that fell from 147 to 143 °F in ten minutes.
const (
	carryOverK   = 10 / 1.8
	coolsPerHour = 0.33
)

// coreAt is the core at a minute of the past of a piece, by its readings, and as foretold or
// slow in what nobody read.
func coreAt(b *belief.Belief, minute float64, slow bool) float64 {
	core, walk := b.Journey.Body.StartC, b.Walk
	if slow {
		walk = b.SlowWalk
	}
	walk(func(from, to belief.Instant) {
		if from.Minute <= minute {
			share := 1.0
			if to.Minute > minute {
				share = (minute - from.Minute) / (to.Minute - from.Minute)
			}
			core = from.CoreC + share*(to.CoreC-from.CoreC)
		}
	})
	return core
}

// provenHot says whether a probe pushed through the piece in an outage showed that all of it
// is above the zone of danger.
func (v *Revision) provenHot(a *liveBatch, w world, o outage) bool {
	for i, e := range a.cores {
		counts := i >= len(w.readings) || w.readings[i].Counts()
		if e.Kind == schedule.LogColdest && counts && e.C >= safety.DangerHighC && !e.At.Before(o.from) && (o.open || !e.At.After(o.to)) {
			return true
		}
	}
	return false
}

// within finds the outage that an instant lies in.
func within(all []outage, at time.Time) (outage, bool) {
	for _, o := range all {
		if !at.Before(o.from) && (o.open || at.Before(o.to)) {
			return o, true
		}
	}
	return outage{}, false
}

// spendRaw counts a stretch of such a clock, by the minute: the air beside the piece decides.
func spendRaw(clock *safety.HeatlessClock, from, to float64, airC func(minute float64) float64) {
	for from < to {
		next := math.Min(math.Floor(from)+1, to)
		clock.Spend(from, next, safety.DangerLowC, safety.DangerLowC, safety.DangerLowC, airC((from+next)/2))
		from = next
	}
}

// deadBeside is the air beside a piece at a minute of an outage, from the put-on.
func (v *Revision) deadBeside(a *liveBatch, h grateHistory, o outage, minute float64) float64 {
	x := *v
	x.grate = h
	return x.airBeside(a, a.on.at.Add(instant.Minutes(minute)))
}
