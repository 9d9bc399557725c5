package revise

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/surprise"
)

// asks says whether a finding asks for a measurement before anything of the piece is
// eaten: its danger is one of two explanations that are still to be told apart.
func (a *liveBatch) asks(f schedule.Finding) bool {
	if f.Code == schedule.ReadingOpen || f.Code == schedule.WentOnWarm || f.Code == unwatchedHeat && a.unwatched {
		return true
	}
	return a.suspect && slices.ContainsFunc(a.verdict, func(w safety.Finding) bool { return w.Code == f.Code })
}

// unreadDoubt is the chance that a piece is past saving whose fire was found cold, and whose
// core nobody read since (judgment).
const unreadDoubt = 0.9

// doubt is the chance that an open reading means what must not be eaten.
func (a *liveBatch) doubt() float64 {
	most := 0.0
	if a.unread || a.unwatched {
		most = unreadDoubt
	}
	for _, s := range a.signs {
		if s.Settled {
			continue
		}
		if s.Open() && a.suspect {
			most = math.Max(most, s.Chance(surprise.Fire))
		}
		if s.Chance(surprise.Warm) >= surprise.AskFrom {
			most = math.Max(most, s.Chance(surprise.Warm))
		}
	}
	return most
}

// unsearedDoubt is the chance that a piece which came off for its sear, and of which nothing was logged
// since, was not seared (judgment).
const unsearedDoubt = 0.5

// fit is the share of a piece's chance that it may be eaten at all.
func (a *liveBatch) fit() float64 {
	switch {
	case a.condemned:
		return 0
	case a.suspect:
		return 1 - math.Max(a.doubt(), a.undone)
	}
	if a.adrift && a.searTaken {
		return (1 - a.undone) * (1 - unsearedDoubt)
	}
	if a.adrift {
		return (1 - a.undone) * (1 - unplacedDoubt)
	}
	return 1 - a.undone
}

// unsure takes what must not be eaten, or may not, out of the chances of a plan.
func (v *Revision) unsure(p *schedule.Plan, l remainder, found []schedule.Finding) {
	for i := range p.Dishes {
		d := &p.Dishes[i]
		if v.allServed([]string{d.ID}) { // in time or not, it was eaten
			d.Chance = 1
			for k := range d.Batches {
				d.Batches[k].Chance = 1
			}
		}
		for k := range d.Batches {
			if a := l.of(d.ID, d.Batches[k].Number); a != nil && a.fit() < 1 {
				d.Batches[k].Chance = plans.Round3(d.Batches[k].Chance * a.fit())
				d.Chance = math.Min(d.Chance, d.Batches[k].Chance)
			}
		}
	}
	p.Chance.All = plans.Round3(p.Chance.All * l.fit())
	v.ofTheRest(p, found)
}

// ofTheRest makes the chance of a plan that of what may be served, where something of it must
// not be, or not before it was measured: of dishes that have nothing in common. Where all is in danger, it is of what may be
// served once it is measured.
func (v *Revision) ofTheRest(p *schedule.Plan, found []schedule.Finding) {
	fine, measured := 1.0, 1.0
	thrown, left, unsure := false, false, false
	for _, d := range p.Dishes {
		danger := v.unfitAhead(d.ID) || slices.ContainsFunc(v.batches, func(a *liveBatch) bool { return a.batch.It.Dish.ID == d.ID && a.measuredFirst() }) || slices.ContainsFunc(found, func(f schedule.Finding) bool {
			return f.Severity == schedule.Danger && slices.Contains(f.Dishes, d.ID)
		})
		thrown, left, unsure = thrown || danger, left || !danger, unsure || danger && d.Chance > 0
		for _, b := range d.Batches {
			switch {
			case !danger:
				fine *= b.Chance
			case d.Chance > 0:
				measured *= b.Chance
			}
		}
	}
	switch {
	case thrown && left:
		p.Chance.All = plans.Round3(fine)
	case thrown && unsure:
		p.Chance.All = plans.Round3(measured)
	case thrown:
		p.Chance.All = 0
	}
}

// fit is the chance that what has odds may be eaten; 0 where nothing has.
func (l remainder) fit() float64 {
	out, left := 1.0, false
	for _, a := range l.bound {
		if l.counts(a) {
			out, left = math.Min(out, a.fit()), true
		}
	}
	if !left {
		return 0
	}
	return out
}

// counts says whether a piece takes part in the odds: what is thrown away does not, and what is not served
// before it was measured does only where all else is out too.
func (l remainder) counts(a *liveBatch) bool {
	if slices.ContainsFunc(l.bound, func(o *liveBatch) bool { return !o.condemned && !o.measuredFirst() }) {
		return !a.condemned && !a.measuredFirst()
	}
	return !a.condemned
}

// measuredFirst says whether a piece is not served before it was measured: one that was is past that.
func (a *liveBatch) measuredFirst() bool { return a.suspect && !a.condemned && !a.served.set }

// suspects are the dishes that are measured before anything else is done with them.
func suspects(l remainder) (ids, names []string) {
	for _, a := range l.bound {
		if a.suspect && !a.condemned && !slices.Contains(ids, a.batch.It.Dish.ID) {
			ids, names = append(ids, a.batch.It.Dish.ID), append(names, a.batch.It.Dish.Name)
		}
	}
	return ids, names
}

// fireAsked is the outage on which it hangs whether a suspect piece may be eaten, where its coldest
// place was read since: another reading of it tells nothing more.
func (v *Revision) fireAsked(a *liveBatch) (o outage, ok bool) {
	n := len(a.cores)
	all := v.grate.outages
	if a.dire != nil {
		all = a.dire.grate.outages
	}
	if !a.suspect || a.sound == nil || n == 0 || a.cores[n-1].Kind != schedule.LogColdest || len(all) == 0 {
		return o, false
	}
	o = all[len(all)-1]
	for _, s := range a.signs { // up to the reading that asks it
		if at := a.on.at.Add(instant.Minutes(a.readings[s.Index].Minute)); !s.Settled && at.After(o.since()) {
			o.to = instant.Earlier(o.to, at.Truncate(time.Minute))
		}
	}
	return o, a.cores[n-1].At.After(o.to) && a.cores[n-1].C >= a.leastC()-sameC
}

// measureMinutes are hands: the fire looked at, a probe pushed through (assumption).
const measureMinutes = 5

// measureFirst puts the measurement first that clears a dish or condemns it, and leaves no
// step that brings it to the table before that is known. Its fire is kept up.
func (v *Revision) measureFirst(p *schedule.Plan, steps []schedule.Step, l remainder) []schedule.Step {
	ids, names := suspects(l)
	out := steps[:0]
	for _, s := range steps {
		at := slices.Index(ids, s.Dish)
		switch {
		case !s.Done && s.Kind == schedule.StepWaking && slices.ContainsFunc(l.bound, func(a *liveBatch) bool { return a.unwatched }):
			continue // the same is asked, with why
		case s.Done || at < 0:
		case slices.Contains(afterTheHeat, s.Kind), slices.Contains(onlyExpected, s.Kind):
			continue
		case s.Kind == schedule.StepTakeOff, s.Kind == schedule.StepWrap:
			s.Text = fmt.Sprintf("Only if %s was measured and may be eaten: %s", names[at], say.Lower(strings.TrimPrefix(s.Text, names[at]+": ")))
		}
		out = append(out, s)
	}
	rebuilds := ""
	if _, dead := v.grate.dead(); dead {
		rebuilds = "; if it is out, rebuild it with lit coals"
	}
	for i, id := range ids {
		for _, a := range l.bound {
			if a.batch.It.Dish.ID != id || !a.suspect || a.condemned {
				continue
			}
			s := schedule.Step{
				ID: plans.StepID(p.ID, id, a.batch.Number, schedule.StepLook, 0), At: v.now, Window: plans.FixedWindow(v.now), Kind: schedule.StepLook,
				Dish: id, Batch: a.batch.Number, Attended: true, Minutes: measureMinutes, Why: schedule.WhyMayBeOver,
				Text: fmt.Sprintf("Measure %s now: push the probe through the whole of it and log the coldest place (coldest). Look at the fire and read the grate%s. Do not serve it before that is known.", names[i], rebuilds),
			}
			if o, ok := v.fireAsked(a); ok {
				s.Text = fmt.Sprintf("Did the fire under %s burn from %s to %s? Log what the grate showed then (grate, with its time). Do not serve it before that is known; if nobody knows, it is not eaten.", names[i], v.clock(o.since()), v.clock(o.to))
			}
			if a.unwatched {
				s.Text = fmt.Sprintf("Read the grate under %s and look at the coals; then push the probe through the whole of it, and log both (grate, coldest). Do not serve it before it is known that it had heat all along; if nobody knows, it is not eaten.", names[i])
			}
			if a.unshown() {
				s.Why = schedule.WhyNotShown
				s.Text = fmt.Sprintf("Measure %s before anybody eats: push the probe through the whole of it, and log the coldest place (coldest). It needs %s everywhere.", names[i], v.day.Core(a.leastC()))
			}
			out = append(out, s)
		}
	}
	return out
}
