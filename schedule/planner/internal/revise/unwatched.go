package revise

import (
	"context"
	"fmt"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/belief"
	"example.com/cookday/schedule/planner/internal/surprise"
	"example.com/cookday/schedule/unit"
)

// What a fire that nobody read for long is asked by (judgment): within what a reading of its grate and
// one of a core go together, for how long it must have been unread to have gone out, left a piece without
// heat for longer than a clock allows, and come back, and how slow a piece must be then: one sound cook in 15 is, and of fires that nobody looked at for hours far more go out.
const (
	freshWeak  = time.Hour
	longUnread = 3 * time.Hour
	tooSlow    = 1.5
)

// coolAtHeat is a core that hardly any heat at its grate leaves in doubt still, 150 F: in air above 140 F and above the core it
// has heat now, and the hours before are what is asked.
var coolAtHeat = unit.FToC(150)

// unwatchedHeat is the code of that question.
const unwatchedHeat = "unwatched-heat"

// noteUnwatched asks after a fire that nobody read for long, of which the grate or the core under it tells
// that it may have failed: if it did at the earliest that fits, the piece is outside the limits. What was
// read later takes nothing back; what the grate showed meanwhile does.
func (v *Revision) noteUnwatched(a *liveBatch, add func(schedule.Finding)) {
	if a.where == waiting || a.condemned || v.isIndoors(a) || !a.told() {
		return
	}
	for _, u := range v.unread(a) {
		if v.reckoned(u) {
			continue
		}
		spent, core, asked, err := v.withoutHeat(a, u)
		if v.fail(err); err != nil {
			return
		}
		if !asked {
			continue
		}
		showed := ""
		if u.weak {
			showed = fmt.Sprintf(" the grate was at %s,", v.day.Grate(u.endC))
		}
		if a.where == cooking { // it is measured, and its fire kept up, while that is asked
			a.unwatched, a.suspect = true, true
		}
		add(about(a, unwatchedHeat, fmt.Sprintf("%s may have been without heat for %s: it was at %s after %s,%s and nobody read the grate from %s to %s. If an alarm or a graph shows 200 °F (93 °C) or more all that time, log what it showed, such as grate 230 at 3:00 AM. If not: over 2 hr between 40 and 140 °F without heat it is thrown away.",
			a.batch.It.Dish.Name, spent, v.day.Core(core.C), v.span(core.At.Sub(a.on.at).Minutes()), showed, v.clock(u.from), v.clock(u.to))))
		return
	}
}

// gap is a stretch in which nobody read the grate under a piece, with what it showed at the end.
type gap struct {
	from, to time.Time
	endC     float64
	weak     bool // that is hardly any heat
}

// unread are the stretches in which nobody read the grate under a piece for longer than food may be
// without heat; the last may go on.
func (v *Revision) unread(a *liveBatch) (out []gap) {
	since, end := a.on.at, v.until(a)
	limit := instant.Minutes(safety.OutLimit(v.day.Air.AirC))
	for _, r := range v.grate.readings {
		if r.gauge || !r.at.After(a.on.at) || r.at.After(end) {
			continue
		}
		if r.at.Sub(since) >= limit {
			weak := r.c < safety.HalfHeatC && v.grate.levelAt(r.at, v.plannedLevel) > safety.HalfHeatC
			out = append(out, gap{from: since, to: r.at, endC: r.c, weak: weak})
		}
		since = r.at
	}
	if end.Sub(since) >= limit {
		out = append(out, gap{from: since, to: end})
	}
	return out
}

// reckoned says whether an outage lies in a gap or at its end: its time without heat is counted then.
func (v *Revision) reckoned(u gap) bool {
	return slices.ContainsFunc(v.grate.outages, func(o outage) bool { return !o.from.After(u.to) && !o.to.Before(u.from) })
}

// withoutHeat is for how long a piece may have been without heat in a gap, in words, and the core that
// tells of it. asked is false where neither grate nor core gives reason to ask.
func (v *Revision) withoutHeat(a *liveBatch, u gap) (spent string, core schedule.Entry, asked bool, err error) {
	for i, e := range a.cores {
		if !v.answered(a, i) && e.At.Sub(u.from) >= longUnread-freshWeak && e.At.Before(u.to.Add(freshWeak)) && (e.C < safety.DangerHighC || u.weak && e.C < coolAtHeat) {
			core = e // the newest of it
		}
	}
	if core.At.IsZero() {
		return "", core, false, nil
	}
	if u.weak {
		o, err := v.weakSince(a, u.to)
		if err != nil {
			return "", core, false, err
		}
		w := world{grate: v.grate, readings: a.readings}
		w.grate.outages = slices.Clone(v.grate.outages)
		w.grate.add(o)
		for _, f := range v.judgedIn(a, a.asRead(), w) {
			if f.Code == "fire-out-over" {
				return v.span(f.Counted), core, true, nil
			}
		}
	}
	if instant.Earlier(u.to, core.At).Sub(u.from) < longUnread {
		return "", core, false, nil
	}
	slow, err := v.slowness(a, core)
	return "hours", core, slow >= tooSlow, err
}

// answered says whether it is known, or asked elsewhere, what a reading of a piece was: all but one that
// is taken for the core, or as only another, colder place.
func (v *Revision) answered(a *liveBatch, i int) bool {
	return slices.ContainsFunc(a.signs, func(s surprise.Verdict) bool {
		code := v.codeOf(a, s)
		return s.Index == i && code != "" && code != schedule.ProbeCold
	})
}

// slowness is how many standard deviations of a pace a core is behind such cooks over a fire at its
// level, from what was read of it two hours before, or its put-on.
func (v *Revision) slowness(a *liveBatch, core schedule.Entry) (float64, error) {
	x := *v
	x.grate = grateHistory{d: v.grate.d, levels: v.grate.levels}
	m, j := core.At.Sub(a.on.at).Minutes(), x.journeyOf(a)
	o, err := belief.NewOutlook(context.Background(), j, x.standOf(a), m)
	if err != nil {
		return 0, err
	}
	from := belief.Reading{CoreC: j.Body.StartC}
	for _, r := range a.readings {
		if r.Counts() && r.Minute <= m-watched.Minutes() {
			from = r
		}
	}
	return o.From(from).Slow(m, core.C), nil
}

// weakSince is the stretch of a fire that was read weak at an instant, from the earliest that fits to
// when it was fed, or read hotter.
func (v *Revision) weakSince(a *liveBatch, at time.Time) (outage, error) {
	since, err := surprise.Date(context.Background(), v.sceneOf(a, nil), v.standOf(a), readingsOf(a), at.Sub(a.on.at).Minutes())
	if err != nil {
		return outage{}, err
	}
	o := v.outageAt(a, since)
	o.to = v.until(a)
	for _, e := range v.log {
		switch {
		case !e.At.After(at) || !e.At.Before(o.to):
		case e.Kind == schedule.LogLit, e.Kind == schedule.LogRefuelled, e.Kind == schedule.LogLitCoals, e.Kind == schedule.LogGrate && e.C >= safety.HalfHeatC:
			o.to = e.At
		}
	}
	o.open = !o.to.Before(v.now)
	return o, nil
}
