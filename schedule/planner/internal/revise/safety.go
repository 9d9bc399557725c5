package revise

import (
	"fmt"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/belief"
	"example.com/cookday/schedule/planner/internal/surprise"
)

// noteSafety puts the history of a piece before the rules: time without heat,
// chilling half-way, the danger zone, the hold. It never forbids; it says what
// is outside the published limits.
func (v *Revision) noteSafety(a *liveBatch, p *arrange.Placed, add func(schedule.Finding)) {
	if a.where == off && !a.condemned && v.noteUndone(a, add) { // what is past saving is not put back
		return
	}
	for i, f := range a.verdict {
		switch {
		case f.Code != "fire-out":
			add(v.earned(a, f))
		case !slices.ContainsFunc(a.verdict[i+1:], func(o safety.Finding) bool { return o.Code == f.Code }): // the newest counts the others
			add(v.heatless(a, f))
		}
	}
	v.noteStopped(a, add)
	v.noteRawOut(a, add)
	switch {
	case a.where == cooking:
		v.noteCoolOven(a, add)
		v.noteColdPlace(a, add)
	case a.where != off:
	case a.served.set && v.noteUnplaced(a, p, add):
	case a.served.set:
		v.noteServed(a, p, add)
	case a.condemned && v.judgedOver(a), v.noteSearUntold(a, add):
	default:
		grave, any := false, false
		told := func(f schedule.Finding) { grave, any = grave || f.Severity == schedule.Danger, true; add(f) }
		v.noteHold(a, p, told)
		if !grave && !v.noteUnplaced(a, p, add) { // how long it keeps, and how, does not stand beside the order to throw it away
			v.noteRead(a, p, told)
			v.noteBoxAlarm(a, p, told)
			v.noteOven(a, p, told)
			v.noteHotly(a, p, told)
			if !any {
				v.noteKept(a, add)
			}
		}
	}
}

// judged is what the history of a piece has earned, as it is taken to have been.
func (v *Revision) judged(a *liveBatch) []safety.Finding {
	return v.judgedIn(a, a.asRead(), world{grate: v.grate, readings: a.readings})
}

// pronounce judges the history of a piece. It is condemned where it is outside the limits
// whatever its open readings mean, and under suspicion where one of them makes it so.
func (v *Revision) pronounce(a *liveBatch) {
	over := func(all []safety.Finding) bool {
		return slices.ContainsFunc(all, func(f safety.Finding) bool { return f.Severity == safety.Danger })
	}
	a.verdict = v.judged(a)
	a.condemned, a.suspect = over(a.verdict) || v.unfitAhead(a.batch.It.Dish.ID), false
	worst := a.verdict
	if a.dire != nil {
		worst = v.judgedIn(a, a.asRead(), *a.dire)
	}
	if a.sound != nil {
		a.condemned = v.unfitAhead(a.batch.It.Dish.ID) || over(v.judgedIn(a, a.asRead(), world{grate: a.sound.grate, readings: a.sound.readings, chance: 1}))
		a.suspect = !a.condemned && over(worst)
		a.verdict = worst
	}
	a.unread = a.condemned && (v.onlyUnread(a) || v.onlyEarliest(a)) && !a.rawTooLong()
	if a.unread {
		a.condemned, a.suspect = false, true
	}
	v.doubtHeat(a)
	if a.late, a.slowFor = v.slowOverOf(a); a.slowFor > 0 {
		a.condemned, a.suspect, a.unread = true, false, false
	}
	v.keepVerdict(a)
	warm := slices.ContainsFunc(a.signs, func(s surprise.Verdict) bool { return v.codeOf(a, s) == schedule.WentOnWarm })
	open := slices.ContainsFunc(a.signs, func(s surprise.Verdict) bool { return v.codeOf(a, s) == schedule.ReadingOpen })
	a.colder, a.undone = a.inner() && v.shows(a) == shownLow, v.undoneChance(a)
	a.adrift = v.isAdrift(a) || v.searUntold(a)
	a.suspect = a.suspect || (warm || open) && !a.condemned && a.where == cooking || a.unshown() && !v.mealPast(a) && !a.condemned
}

// judgedOver says whether the history of a piece is outside the limits, whatever its hold shows.
func (v *Revision) judgedOver(a *liveBatch) bool {
	return slices.ContainsFunc(a.verdict, func(f safety.Finding) bool { return f.Severity == safety.Danger })
}

// onlyUnread says whether all that speaks against a piece on the fire is how long its fire may
// have been out, which no reading of its core tells yet.
func (v *Revision) onlyUnread(a *liveBatch) bool {
	unread := slices.ContainsFunc(v.grate.outages, func(o outage) bool { return o.unread && o.to.After(a.on.at) })
	return a.where == cooking && unread && !slices.ContainsFunc(a.verdict, func(f safety.Finding) bool {
		return f.Severity == safety.Danger && f.Code != "fire-out-over" && f.Code != "low-heat-over"
	})
}

// onlyEarliest says whether a piece on the fire is within the limits if its fire failed when it most
// likely did, and only outside them if it failed at the earliest that fits.
func (v *Revision) onlyEarliest(a *liveBatch) bool {
	if a.where != cooking {
		return false
	}
	likely, moved := v.grate, false
	likely.outages = slices.Clone(likely.outages)
	for i := range likely.outages {
		moved = moved || likely.outages[i].since().Before(likely.outages[i].from)
		likely.outages[i].earliest = time.Time{}
	}
	return moved && !slices.ContainsFunc(v.judgedIn(a, a.asRead(), world{grate: likely, readings: a.readings}), func(f safety.Finding) bool {
		return f.Severity == safety.Danger
	})
}

// judgedIn is the same in a world that may have been.
func (v *Revision) judgedIn(a *liveBatch, b *belief.Belief, w world) []safety.Finding {
	h := safety.History{Category: a.batch.It.Category, Prep: a.batch.It.Prep, AirC: v.day.Air.AirC}
	if a.on.set {
		h.Core = v.samples(a, a.cores, w.readings)
		clock, slow, low := v.clocked(a, b, w)
		h.Episodes, h.Slow = v.episodes(a, w.grate, clock), slow
		h.Episodes = withLowHeat(h.Episodes, low)
	}
	if _, raw := v.rawOut(a); raw > 0 {
		h.Episodes = append([]safety.Episode{{Kind: safety.RawOut, FromMinute: -raw, Spent: []safety.Spent{{Minute: -raw}, {Minutes: raw}}}}, h.Episodes...)
	}
	found, err := safety.JudgeHistory(h)
	v.fail(err)
	if slices.ContainsFunc(found, func(f safety.Finding) bool { return f.Code == "fire-out-over" }) {
		found = slices.DeleteFunc(found, func(f safety.Finding) bool { return f.Code == "low-heat-over" }) // one cause, one finding
	}
	return found
}

// fail keeps an error of the judge of safety. It looks at what this program made of the
// log, so that its error is a fault of the program: no plan is given then, for silence
// would be taken for a clean history.
func (v *Revision) fail(err error) {
	if v.err == nil && err != nil {
		v.err = fmt.Errorf("the history of a piece cannot be judged: %w", err)
	}
}

func (v *Revision) earned(a *liveBatch, f safety.Finding) schedule.Finding {
	text := a.batch.It.Dish.Name + ": " + f.Sentence
	if f.Code == rawOutOver {
		text = v.rawOutText(a)
	} else if f.Severity == safety.Danger && !a.hotBy.IsZero() {
		text = f.Sentence
	} else if f.Severity == safety.Danger && a.unread {
		text = fmt.Sprintf("%s is outside the published limits unless its fire went out later than that: measure now, and do not serve it before that is known. %s", a.batch.It.Dish.Name, f.Sentence)
	} else if o, ok := v.fireAsked(a); f.Severity == safety.Danger && ok {
		text = fmt.Sprintf("%s is outside the published limits unless its fire burned from %s to %s: log what the grate showed then (grate, with its time), and do not serve it before that is known. If nobody knows, it is not eaten. %s", a.batch.It.Dish.Name, v.clock(o.since()), v.clock(o.to), f.Sentence)
	} else if f.Severity == safety.Danger && a.suspect {
		text = fmt.Sprintf("%s is outside the published limits unless its probe was in the wrong place: measure now, and do not serve it before that is known. %s", a.batch.It.Dish.Name, f.Sentence)
	} else if f.Severity == safety.Danger && a.served.set {
		text += " Stop eating, and throw away what is left." + v.overText(a)
	} else if f.Severity == safety.Danger && f.Code == "hold-over" { // whoever stops after the rule must not eat it
		text = fmt.Sprintf("%s: throw it away.%s %s", a.batch.It.Dish.Name, v.overText(a), f.Sentence)
	} else if f.Severity == safety.Danger {
		text += " Throw it away." + v.overText(a)
		if _, dead := v.grate.dead(); dead && a.where == cooking && !v.isIndoors(a) {
			text += " Was it hot again before that, and nobody logged it? Log when, and ask again."
		}
	}
	if now, ok := v.slowNow(a, f); ok {
		text = now
	}
	return ofCatalogue(a, f.Caution, text)
}

// ofCatalogue is a caution of food safety's catalogue as it is said of a piece.
func ofCatalogue(a *liveBatch, c safety.Caution, text string) schedule.Finding {
	return schedule.Finding{Code: c.Code, Severity: schedule.Severity(c.Severity), Dishes: []string{a.batch.It.Dish.ID}, Text: text, Source: c.Source}
}

// samples are readings in minutes from the put-on, those in doubt left out.
func (v *Revision) samples(a *liveBatch, entries []schedule.Entry, readings []belief.Reading) []safety.Sample {
	doubt := map[int64]bool{}
	for i, r := range readings {
		if !r.Counts() {
			doubt[a.cores[i].At.UnixNano()] = true
		}
	}
	out := make([]safety.Sample, 0, len(entries))
	for _, e := range entries {
		if len(doubt) == 0 || e.Kind != schedule.LogCore && e.Kind != schedule.LogColdest || !doubt[e.At.UnixNano()] {
			out = append(out, safety.Sample{Minute: e.At.Sub(a.on.at).Minutes(), C: e.C})
		}
	}
	return out
}

// episodes are the stretches in which the piece was not cooked, in order.
func (v *Revision) episodes(a *liveBatch, fire grateHistory, clock *safety.HeatlessClock) []safety.Episode {
	kinds := map[schedule.EntryKind]safety.EpisodeKind{schedule.LogStopped: safety.Stopped, schedule.LogCounter: safety.Standing, schedule.LogChilled: safety.Chilled}
	var out []safety.Episode
	add := func(kind safety.EpisodeKind, from, to time.Time) {
		e := safety.Episode{Kind: kind, FromMinute: from.Sub(a.on.at).Minutes(), ToMinute: to.Sub(a.on.at).Minutes()}
		if n := len(out); n > 0 && e.FromMinute < out[n-1].ToMinute {
			e.FromMinute = out[n-1].ToMinute
		}
		if e.ToMinute > e.FromMinute {
			if kind == safety.FireOut && clock != nil {
				e.Spent = spentBetween(clock.Spent, e.FromMinute, e.ToMinute)
			}
			out = append(out, e)
		}
	}
	outages := fire.outages
	for _, s := range v.allStands(a) {
		for len(outages) > 0 && outages[0].since().Before(s.from) {
			v.outageOf(a, outages[0], add)
			outages = outages[1:]
		}
		add(kinds[s.kind], s.from, s.to)
		if n := len(out); s.untold && n > 0 && out[n-1].Kind == safety.Standing { // a hot core does not stop it
			e := &out[n-1]
			e.Spent = []safety.Spent{{Minute: e.FromMinute}, {Minute: e.ToMinute, Minutes: e.ToMinute - e.FromMinute}}
		}
	}
	for _, o := range outages {
		v.outageOf(a, o, add)
	}
	return out
}

// outageOf is the part of an outage that the piece was on the grate for.
func (v *Revision) outageOf(a *liveBatch, o outage, add func(safety.EpisodeKind, time.Time, time.Time)) {
	from, to := instant.Later(o.since(), a.on.at), o.to
	for _, s := range a.indoors { // it was in the oven meanwhile
		if s.from.After(from) && s.from.Before(to) {
			add(safety.FireOut, from, s.from)
		}
		if s.to.After(from) && !s.from.After(to) {
			from = s.to
		}
	}
	for _, k := range []known{a.off, a.oven} {
		if k.set && k.at.Before(to) {
			to = k.at
		}
	}
	if o.open && a.where == cooking && from.Equal(v.now) {
		to = from.Add(justOn) // it went on over a dead fire this very minute
	}
	if to.After(from) {
		add(safety.FireOut, from, to)
	}
}

// justOn is a moment that is no time for a clock, and is told of.
const justOn = time.Second

// noteHold follows a hold by its readings: just under the surface where it was
// measured there, else in the core, which is warmer.
func (v *Revision) noteHold(a *liveBatch, p *arrange.Placed, add func(schedule.Finding)) {
	if waits := a.waits(); len(waits) > 0 {
		if waits[len(waits)-1].kind == schedule.LogCounter {
			v.noteStands(a, add)
			v.noteCooling(a, add)
		}
		return
	}
	method := schedule.HoldTent
	if p.Hold >= 0 {
		method = p.Options[p.Hold].Method
	}
	rule := safety.HoldFor(v.day.Finished(p.It, p.Way, p.MassKg, method))
	held := a.outers
	if len(held) == 0 {
		held = a.cores
	}
	end := v.now
	if serve := v.serve(a); serve.Before(end) {
		end = serve
	}
	var samples []safety.Sample
	for _, s := range v.samples(a, held, a.readings) {
		if at := a.on.at.Add(instant.Minutes(s.Minute)); !at.Before(a.off.at) && !at.After(end) {
			samples = append(samples, s)
		}
	}
	if rule.Kind == safety.HoldByClock {
		samples = []safety.Sample{{Minute: a.off.at.Sub(a.on.at).Minutes(), C: p.Way.PullC}, {Minute: end.Sub(a.on.at).Minutes(), C: p.Way.PullC}}
	}
	if hot, ok := v.reheated(a, p, rule, v.withColdest(a, samples)); ok {
		at := a.on.at.Add(instant.Minutes(hot.Minute))
		add(about(a, schedule.HoldRead, fmt.Sprintf("%s: reheated to %s at %s. Eat it now. It is not reheated again, and what is left is not kept.", a.batch.It.Dish.Name, v.day.Core(hot.C), v.clock(at))))
		return
	}
	if len(samples) == 0 || rule.Kind == safety.HoldNone || rule.Kind == safety.HoldRoastOven || end.Before(a.off.at) {
		return
	}
	if text, ok := v.eatNow(a, p, rule); ok {
		add(about(a, schedule.StandsOpen, text))
		return
	}
	r, err := safety.JudgeHold(rule, samples)
	if v.fail(err); r.Finding != nil {
		f := v.earned(a, *r.Finding)
		if text := v.coolText(a, p, rule, samples); text != "" && f.Severity == schedule.Danger {
			f.Text = text
		}
		add(f)
	}
}

// coolText says of a hold that was read below its limit what to do, and what nobody knows;
// empty where it was not.
func (v *Revision) coolText(a *liveBatch, p *arrange.Placed, rule safety.HoldRule, samples []safety.Sample) string {
	at := func(s safety.Sample) string { return v.clock(a.on.at.Add(instant.Minutes(s.Minute))) }
	where, before := "just under its surface", ""
	if len(a.outers) == 0 {
		where = "in its middle, and its surface is cooler"
	}
	for _, s := range samples {
		if s.C >= rule.LimitC {
			before = " It was last read above that at " + at(s) + "."
			continue
		}
		by, since := v.reheatBy(a, p, s)
		if a.hotly.set && by.After(v.now) {
			return fmt.Sprintf("%s: leave it in the oven until it reads 165 °F (74 °C) everywhere, by %s, or throw it away. Log the coldest place (coldest). It showed %s at %s, and may have been below %s since %s. Do not serve it before that.",
				a.batch.It.Dish.Name, v.clock(by), v.day.Core(s.C), at(s), v.day.Core(rule.LimitC), v.clock(since))
		}
		if by.After(v.now.Add(reheatLeast)) {
			how := "in a rimmed pan"
			if by.Sub(v.now) < slicedWithin {
				how = "cut in slices, one layer in a covered pan"
			}
			return fmt.Sprintf("%s: into an oven at %s now, %s, until it reads 165 °F (74 °C) everywhere, by %s, once, or throw it away. Log the coldest place (coldest). It showed %s at %s %s, and may have been below %s since %s. Do not serve it as it is.",
				a.batch.It.Dish.Name, v.day.Grate(undoneOvenC), how, v.clock(by), v.day.Core(s.C), at(s), where, v.day.Core(rule.LimitC), v.clock(since))
		}
		return fmt.Sprintf("Do not serve %s, and throw it away. It showed %s at %s %s, and nobody knows how long it has been below %s.%s",
			a.batch.It.Dish.Name, v.day.Core(s.C), at(s), where, v.day.Core(rule.LimitC), before)
	}
	return ""
}

// noteStands says until when what stands on a counter is eaten or in heat: the clock runs
// from when it was put there, for its surface cools from then on, however hot its core is.
func (v *Revision) noteStands(a *liveBatch, add func(schedule.Finding)) {
	by := v.standsBy(a)
	if a.unshown() || !a.stands[len(a.stands)-1].open || a.condemned || !by.After(v.now) || slices.ContainsFunc(a.verdict, func(f safety.Finding) bool { return f.Severity == safety.Danger }) {
		return
	}
	add(about(a, schedule.StandsOpen, fmt.Sprintf("%s: without heat since %s. Eat it by %s, or chill it, or put it into an oven at %s now, while it is above %s just under its surface. A hot core does not stop that clock.",
		a.batch.It.Dish.Name, v.clock(v.openSince(a)), v.clock(by), v.day.Grate(ovenHoldC), v.day.Core(safety.DangerHighC))))
}

// openSince is since when a piece that is off stands open without a break.
func (v *Revision) openSince(a *liveBatch) time.Time {
	since := a.stands[len(a.stands)-1].from
	if !a.boxed.set && a.off.at.Before(since) {
		since = a.off.at
	}
	return since
}

// standsBy is the end of the clock of what stands open.
func (v *Revision) standsBy(a *liveBatch) time.Time {
	return v.openSince(a).Add(instant.Minutes(safety.OutLimit(v.day.Air.AirC)))
}

// noteCooling follows a piece that cools on a counter by its readings.
func (v *Revision) noteCooling(a *liveBatch, add func(schedule.Finding)) {
	stand := a.stands[len(a.stands)-1]
	var samples []safety.Sample
	for _, s := range v.samples(a, a.cores, a.readings) {
		if at := a.on.at.Add(instant.Minutes(s.Minute)); !at.After(stand.to) {
			samples = append(samples, s)
		}
	}
	r, err := safety.JudgeCooling(samples)
	if v.fail(err); r.Finding != nil {
		add(v.earned(a, *r.Finding))
	}
}
