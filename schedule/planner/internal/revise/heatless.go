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

// lidBurnsOut is how long a lid may be off before the coals under it may be gone, for all
// that is known (judgment).
const lidBurnsOut = time.Hour

// newFireTakes is from the match to a grate that gives heat, minutes (common practice, no source).
const newFireTakes = 40

// heatless says of a piece that was without heat how long it was, and by when it must be hot
// again: a clock time, which does not move while nothing changes.
func (v *Revision) heatless(a *liveBatch, f safety.Finding) schedule.Finding {
	out := v.earned(a, f)
	name, limit := a.batch.It.Dish.Name, safety.OutLimit(v.day.Air.AirC)
	spent := fmt.Sprintf("%s without heat between 40 and 140 °F (4 and 60 °C), and the published limit is %s", v.span(f.Counted), v.span(limit))
	oven := fmt.Sprintf("an oven at %s", v.day.Grate(undoneOvenC))
	o, dead := v.grate.dead()
	hot := "a hot fire or " + oven
	if v.noFuel() {
		hot = oven
	} else if limit-f.Counted < newFireTakes {
		hot = oven + "; a new fire takes longer than that"
	}
	g, looked := v.grate.lastRead(v.now, recent)
	switch on := a.where == cooking && !v.isIndoors(a); {
	case on && dead && f.Counted < 1 && looked && g.c >= safety.LowHeatC && !g.at.Before(o.since()):
		out.Text = fmt.Sprintf("%s: in heat as long as the grate reads %s or more. Under that its time without heat begins, and it has %s at the most: then into %s, and measure it.", name, v.day.Grate(safety.LowHeatC), v.span(limit), hot)
	case on && dead && v.rawOver(a):
		out.Text = fmt.Sprintf("%s: into heat by %s, that is %s, then measure it. %s Past that it is thrown away.%s", name, v.clock(v.rawBy(a, f)), hot, v.rawSpent(f, spent), v.rawRead(a, o))
	case on && dead && f.Counted < 1 && !v.hotInside(a):
		out.Text = fmt.Sprintf("%s: into heat now, that is %s, then measure it. %s between 40 and 140 °F (4 and 60 °C), and without heat it has %s at the most.", name, hot, v.insideNow(a), v.span(limit))
	case on && dead && f.Counted < 1:
		out.Text = fmt.Sprintf("%s: into heat before it cools, that is %s, then measure it. It is above 140 °F (60 °C) throughout as far as is known; from when it is not, it may be without heat for %s.", name, hot, v.span(limit))
	case on && dead:
		out.Text = fmt.Sprintf("%s: into heat by %s, that is %s, then measure it. It has had %s. Past that it is thrown away.", name, v.clock(v.now.Add(instant.Minutes(limit-f.Counted))), hot, spent)
	case on && v.unproven(&o, a):
		out.Text = fmt.Sprintf("%s: read the grate by %s. It must be hot again by then, %s or more; if it is not, take the food to %s before that. Look at the coals too: add fuel if less than half is left. The lid was off from %s to %s: %s.%s",
			name, v.clock(v.heatBy(a, o, f)), v.day.Grate(safety.LowHeatC), oven, v.clock(o.from), v.clock(o.to), spent, v.readTooSoon(o))
	case f.Counted < 1 && !v.hotInside(a):
		return about(a, schedule.HeatLost, fmt.Sprintf("%s: the fire was out for a while. %s between 40 and 140 °F (4 and 60 °C); another outage counts from its start.", name, v.insideNow(a)))
	case f.Counted < 1:
		return about(a, schedule.HeatLost, fmt.Sprintf("%s: the fire was out for a while, and it stayed above 140 °F (60 °C) throughout, as far as is known.", name))
	default:
		return about(a, schedule.HeatLost, fmt.Sprintf("%s: %s. Another outage counts on top of that.", name, spent))
	}
	return out
}

// hotInside says whether a piece is above the zone of danger in its coldest place, by its newest
// reading and by what is believed of a slow one.
func (v *Revision) hotInside(a *liveBatch) bool {
	if a.believed == nil {
		return len(a.cores) > 0 && a.cores[len(a.cores)-1].C > safety.DangerHighC
	}
	coldest := math.Inf(1)
	a.believed.Walk(func(_, to belief.Instant) { coldest = math.Min(to.ColdestC, to.CoreC) })
	if n := len(a.cores); n > 0 {
		coldest = math.Min(coldest, a.cores[n-1].C)
	}
	return coldest > safety.DangerHighC && a.believed.CoreC(a.believed.Journey.Now, sureHeld) > safety.DangerHighC
}

// insideNow says how warm a piece is inside, as it was read last or else is believed.
func (v *Revision) insideNow(a *liveBatch) string {
	switch n := len(a.cores); {
	case n > 0:
		return fmt.Sprintf("It was at %s inside at %s:", v.day.Core(a.cores[n-1].C), v.clock(a.cores[n-1].At))
	case a.believed != nil:
		return fmt.Sprintf("On the slow side it is at %s inside:", v.day.Core(a.believed.CoreC(a.believed.Journey.Now, sureHeld)))
	}
	return "Nobody measured it: it may be"
}

// readTooSoon says of a cool grate that it was read right after the lid went on.
func (v *Revision) readTooSoon(o outage) string {
	for _, e := range slices.Backward(v.log) {
		if e.Kind == schedule.LogGrate && e.At.After(o.to) && e.At.Before(o.to.Add(lidSettles)) {
			return fmt.Sprintf(" The %s that the grate showed at %s was too soon after that to count.", v.day.Grate(e.C), v.clock(e.At))
		}
	}
	return ""
}

// heatBy is when the time without heat is over that a piece had before its lid went on, if
// the fire under it is dead.
func (v *Revision) heatBy(a *liveBatch, o outage, f safety.Finding) time.Time {
	return o.to.Add(instant.Minutes(safety.OutLimit(v.day.Air.AirC) - f.Counted)).Truncate(time.Minute)
}

// unproven finds a lid that was off for so long, or a grate that was read so cold after it,
// that its fire may be out, where nothing shows heat since.
func (v *Revision) unproven(found *outage, a *liveBatch) bool {
	n := len(v.grate.outages)
	if n == 0 {
		return false
	}
	o := v.grate.outages[n-1]
	if !o.lid || o.open || o.to.Before(a.on.at) || slices.ContainsFunc(v.told(schedule.LogLit), func(t time.Time) bool { return t.After(o.to) }) {
		return false
	}
	cold, hot := o.to.Sub(o.from) >= lidBurnsOut, false
	for _, e := range v.log {
		if e.Kind == schedule.LogGrate && e.At.After(o.to) {
			cold, hot = cold || e.C < safety.LowHeatC, hot || e.C >= safety.LowHeatC
		}
	}
	*found = o
	return cold && !hot && !v.warmedSince(a, o.to)
}

// warmedSince says whether the core of a piece rose after an instant, by what was read.
func (v *Revision) warmedSince(a *liveBatch, at time.Time) bool {
	const risesK = 1.0
	first := -1
	for i, e := range a.cores {
		switch {
		case e.At.Before(at) || i < len(a.readings) && !a.readings[i].Counts():
		case first < 0:
			first = i
		case e.C > a.cores[first].C+risesK:
			return true
		}
	}
	return false
}

// doubtHeat puts a piece under suspicion whose time without heat is over unless its fire came
// back under the lid, which nothing shows.
func (v *Revision) doubtHeat(a *liveBatch) {
	var o outage
	if a.hotBy = (time.Time{}); a.condemned || a.where != cooking || v.isIndoors(a) || !v.unproven(&o, a) {
		return
	}
	for i, f := range slices.Backward(a.verdict) {
		if f.Code != "fire-out" {
			continue
		}
		by := v.heatBy(a, o, f)
		if v.now.Before(by) {
			return
		}
		over, _ := safety.Lookup("fire-out-over")
		over.Sentence = fmt.Sprintf("Read the grate and measure %s now, and do not serve it before that is known. Its %s without heat were over at %s unless the fire was hot again by then. The lid was off from %s to %s, and nothing that was logged since shows heat.",
			a.batch.It.Dish.Name, v.span(safety.OutLimit(v.day.Air.AirC)), v.clock(by), v.clock(o.from), v.clock(o.to))
		a.verdict = slices.Clone(a.verdict)
		a.verdict[i].Caution = over
		a.hotBy, a.unread, a.suspect = by, true, true
		return
	}
}

// noteStopped says of a piece that was taken off the heat before it was done by when it must
// be back in it.
func (v *Revision) noteStopped(a *liveBatch, add func(schedule.Finding)) {
	n := len(a.stands)
	if n == 0 || !a.stands[n-1].open || a.stands[n-1].kind != schedule.LogStopped || a.condemned {
		return
	}
	by := a.stands[n-1].from.Add(instant.Minutes(safety.OutLimit(v.day.Air.AirC) - v.spentBefore(a, a.stands[n-1].from)))
	if !by.After(v.now) {
		return
	}
	if since, waits := a.waitsForSear(); waits {
		v.noteSearWaits(a, since, by, add)
		return
	}
	if since, lies := a.lies(v.now); lies {
		add(about(a, schedule.StandsOpen, fmt.Sprintf("%s: into an oven at %s now, in a rimmed pan, or onto a hot fire, by %s at the very latest: past that it is thrown away. It has been off the heat since %s, and is not done.",
			a.batch.It.Dish.Name, v.day.Grate(undoneOvenC), v.clock(by), v.clock(since))))
		return
	}
	add(about(a, schedule.StandsOpen, fmt.Sprintf("%s: off the heat since %s, and not done. Back on the fire, or into an oven at %s, within 15 min; by %s at the very latest. Past that it is thrown away.",
		a.batch.It.Dish.Name, v.clock(a.stands[n-1].from), v.day.Grate(undoneOvenC), v.clock(by))))
}

// spentBefore are the minutes that a piece was without heat before an instant, as they were
// told: each whole.
func (v *Revision) spentBefore(a *liveBatch, at time.Time) float64 {
	spent := 0.0
	for _, s := range a.stands {
		if s.from.Before(at) && s.kind == schedule.LogStopped {
			spent += s.to.Sub(s.from).Minutes()
		}
	}
	for _, o := range v.grate.outages {
		if from := instant.Later(o.since(), a.on.at); from.Before(at) && o.to.After(from) {
			spent += instant.Earlier(o.to, at).Sub(from).Minutes()
		}
	}
	return spent
}
