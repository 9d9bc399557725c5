package check

import (
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
)

// milestones: they are there, in order, and follow from the stages.
func (c *checker) milestones() {
	for _, b := range c.batches() {
		at := map[schedule.MilestoneKind]schedule.Window{}
		for _, m := range b.Milestones {
			if _, twice := at[m.Kind]; twice {
				c.fault(b.path+".milestones", "%s is there twice", m.Kind)
			}
			at[m.Kind] = m.Window
		}
		for _, kind := range []schedule.MilestoneKind{schedule.MilestoneOn, schedule.MilestoneTakeOff, schedule.MilestoneRested, schedule.MilestoneServe} {
			if _, ok := at[kind]; !ok {
				c.fault(b.path+".milestones", "%s is missing", kind)
			}
		}
		wrapped := slices.ContainsFunc(b.cooking, func(s schedule.Stage) bool { return s.Kind == schedule.StageWrapped })
		if _, ok := at[schedule.MilestoneWrap]; ok != wrapped {
			c.fault(b.path+".milestones", "wrap is there: %t; a stage is wrapped: %t", ok, wrapped)
		}
		c.milestoneOrder(b.path, at)
		c.milestoneMinutes(&b, at)
	}
}

func (c *checker) milestoneOrder(path string, at map[schedule.MilestoneKind]schedule.Window) {
	for _, pair := range [][2]schedule.MilestoneKind{
		{schedule.MilestoneOn, schedule.MilestoneStallBegins}, {schedule.MilestoneStallBegins, schedule.MilestoneStallEnds}, {schedule.MilestoneStallEnds, schedule.MilestoneTakeOff},
		{schedule.MilestoneOn, schedule.MilestoneWrap}, {schedule.MilestoneWrap, schedule.MilestoneTakeOff}, {schedule.MilestoneOn, schedule.MilestoneTakeOff},
		{schedule.MilestoneTakeOff, schedule.MilestonePeak}, {schedule.MilestoneTakeOff, schedule.MilestoneRested},
	} {
		a, hasA := at[pair[0]]
		b, hasB := at[pair[1]]
		if hasA && hasB && (a.Early.After(b.Early) || a.Expected.After(b.Expected) || a.Late.After(b.Late)) {
			c.fault(path+".milestones", "%s (%s, %s, %s) is after %s (%s, %s, %s)", pair[0], told(a.Early), told(a.Expected), told(a.Late),
				pair[1], told(b.Early), told(b.Expected), told(b.Late))
		}
	}
}

// milestoneMinutes: on and serve are the planned instants, take-off is as far from
// the put-on as the stages take, rested a rest later.
func (c *checker) milestoneMinutes(b *batchFacts, at map[schedule.MilestoneKind]schedule.Window) {
	path := b.path + ".milestones"
	if on := at[schedule.MilestoneOn]; !on.Expected.Equal(b.on()) {
		c.fault(path, "on at %s; its first stage begins at %s", told(on.Expected), told(b.on()))
	}
	if serve := at[schedule.MilestoneServe]; !serve.Expected.Equal(b.dish.serve) {
		c.fault(path, "serve at %s; the dish is served at %s", told(serve.Expected), told(b.dish.serve))
	}
	c.afterWrap(b, at)
	off, rested, m := at[schedule.MilestoneTakeOff], at[schedule.MilestoneRested], c.untilOff(b)
	for _, q := range []struct {
		name        string
		off, rested time.Time
		minutes     float64
	}{{"early", off.Early, rested.Early, m.Early}, {"expected", off.Expected, rested.Expected, m.Expected}, {"late", off.Late, rested.Late, m.Late}} {
		if has, want := minutesBetween(b.on(), q.off), q.minutes; math.Abs(has-want) > wholeMinute {
			c.fault(path, "take-off, %s: %.0f min after the put-on; its stages take %.1f", q.name, has, want)
		}
		if has := minutesBetween(q.off, q.rested); math.Abs(has-b.dish.rest) > wholeMinute {
			c.fault(path, "rested, %s: %.0f min after the take-off; the rest takes %.0f", q.name, has, b.dish.rest)
		}
	}
}

// afterWrap: from the wrap to the take-off it takes what the wrapped stage takes,
// as expected. A wrap that waits for the morning makes the take-off wait too.
func (c *checker) afterWrap(b *batchFacts, at map[schedule.MilestoneKind]schedule.Window) {
	wrap, ok := at[schedule.MilestoneWrap]
	last := b.cooking[len(b.cooking)-1]
	if !ok || last.Kind != schedule.StageWrapped || c.plan.Revision > 0 {
		return
	}
	if has := minutesBetween(wrap.Expected, at[schedule.MilestoneTakeOff].Expected); has < last.Minutes.Expected-wholeMinute {
		c.fault(b.path+".milestones", "%.0f min from the wrap at %s to the take-off, as expected; wrapped it takes %.0f", has, told(wrap.Expected), last.Minutes.Expected)
	}
}

// earliest: nothing is done before the instant that the request sets, and no dish
// goes on before its own.
func (c *checker) earliest() {
	if e := c.facts.req.Earliest; e != nil {
		least := c.facts.clockAt(e)
		for i, s := range c.plan.Steps {
			if s.At.Before(least) && !s.Done {
				c.fault(fmt.Sprintf("steps[%d].at", i), "%s at %s, before the earliest instant, %s", s.Kind, told(s.At), told(least))
			}
		}
	}
	for _, b := range c.batches() {
		e := b.dish.ask.Earliest
		if e == nil || c.done(schedule.StepPutOn, b.dish.plan.ID, b.Number, 0) {
			continue
		}
		if least := c.facts.clockAt(e); b.on().Before(least) {
			c.fault(b.path+".stages[0].from", "%s is before the earliest instant of the dish, %s", told(b.on()), told(least))
		}
	}
}

// waitsForMorning are the steps that never fall into quiet hours. What follows a
// take-off is left to chance (the rule quiet-chance), what follows dinner is nobody's
// business.
var waitsForMorning = []schedule.StepKind{
	schedule.StepThaw, schedule.StepSalt, schedule.StepTakeOut, schedule.StepLayFire, schedule.StepLight, schedule.StepSetVents, schedule.StepPutOn, schedule.StepWrap, schedule.StepLook, schedule.StepCheckFire, schedule.StepCheckOven, schedule.StepBeforeSleep, schedule.StepWaking, schedule.StepChangeFire, schedule.StepProbesOut, schedule.StepSear,
}

// justOff says whether a look at an oven is that of whoever took the batch off in the hour
// before it, and put it there, or of who is up now for a meal in the night.
func (c *checker) justOff(look schedule.Step) bool {
	if look.Kind != schedule.StepCheckOven {
		return false
	}
	for _, b := range c.batches() {
		if b.dish.plan.ID == look.Dish && b.Number == look.Batch && look.At.Equal(c.upFor(&b)) {
			return true
		}
	}
	return slices.ContainsFunc(c.plan.Steps, func(s schedule.Step) bool {
		return s.Kind == schedule.StepToOven && s.Dish == look.Dish && s.Batch == look.Batch && !s.At.After(look.At) && look.At.Sub(s.At) <= time.Hour
	})
}

// quiet: nobody tends anything in quiet hours, and the plan lists those that touch it.
func (c *checker) quiet() {
	for i, s := range c.plan.Steps {
		if q, in := c.facts.quietAt(s.At); in && !s.Done && !c.isUp(s.At) && slices.Contains(waitsForMorning, s.Kind) && !c.justOff(s) {
			c.fault(fmt.Sprintf("steps[%d].at", i), "%s at %s, in quiet hours from %s to %s", s.Kind, told(s.At), told(q.From), told(q.To))
		}
	}
	for _, a := range c.reserved() {
		if q, in := c.facts.quietAt(a.at); in && !c.isUp(a.at) {
			c.fault(a.path, "%s at %s, in quiet hours from %s to %s", a.kind, told(a.at), told(q.From), told(q.To))
		}
	}
	if len(c.plan.Steps) == 0 {
		return
	}
	first := c.plan.Steps[0].At
	for _, q := range c.facts.quiet {
		touches := q.To.After(first) && q.From.Before(c.plan.ServeAt)
		q = schedule.Interval{From: instant.Later(q.From, first), To: instant.Earlier(q.To, c.plan.ServeAt)} // of merged ones some may lie outside
		if touches && !c.listedInParts(q) {
			c.fault("quiet", "%s to %s is missing", told(q.From), told(q.To))
		}
	}
}

// upFor is how long somebody who asks how the day stands in quiet hours is up, at least
// (assumption).
const upFor = 30 * time.Minute

// isUp says whether an instant follows so soon on the one of a revision in quiet hours
// that whoever asked for it is up.
func (c *checker) isUp(t time.Time) bool {
	now := c.plan.RevisedAt
	if c.plan.Revision == 0 || now == nil {
		return false
	}
	_, quiet := c.facts.quietAt(*now)
	return quiet && !t.After(now.Add(upFor))
}

// listedInParts says whether intervals that overlap in the request, and were
// merged here, are all listed.
func (c *checker) listedInParts(q schedule.Interval) bool {
	at := q.From
	for range c.plan.Quiet {
		for _, o := range c.plan.Quiet {
			if !o.From.After(at) && o.To.After(at) {
				at = o.To
			}
		}
	}
	return !at.Before(q.To)
}

// act is an attended start as the plan reserves hands for it.
type act struct {
	path    string
	kind    schedule.StepKind
	at      time.Time
	minutes float64
}

// reserved are the attended starts still to come: lighting, changes of fire, every
// put-on, wrap and sear, at the planned instants.
func (c *checker) reserved() []act {
	var all []act
	for i, ph := range c.plan.Phases {
		kind := phaseMadeBy(ph)
		if !c.done(kind, "", 0, ph.Number) {
			all = append(all, act{fmt.Sprintf("phases[%d].setup_from", i), kind, ph.SetupFrom, c.handsOf(kind, "", 0, ph.Number)})
		}
	}
	for _, b := range c.batches() {
		for k, s := range b.cooking {
			kind := map[schedule.StageKind]schedule.StepKind{schedule.StageWrapped: schedule.StepWrap, schedule.StageSear: schedule.StepSear}[s.Kind]
			if k == 0 {
				kind = schedule.StepPutOn
			}
			if kind != "" && !c.done(kind, b.dish.plan.ID, b.Number, 0) {
				all = append(all, act{fmt.Sprintf("%s.stages[%d].from", b.path, k), kind, s.From, c.handsOf(kind, b.dish.plan.ID, b.Number, 0)})
			}
		}
	}
	return all
}

// handsOf is how many minutes of hands the plan's own step of an act states.
func (c *checker) handsOf(kind schedule.StepKind, dish string, batch, phase int) float64 {
	for _, s := range c.plan.Steps {
		if s.Kind == kind && s.Dish == dish && s.Batch == batch && (dish != "" || s.Phase == phase) {
			return s.Minutes
		}
	}
	return 0
}

// hands: there is one pair of them.
func (c *checker) hands() {
	all := c.reserved()
	slices.SortStableFunc(all, func(a, b act) int { return a.at.Compare(b.at) })
	for i := 1; i < len(all); i++ {
		a, b := all[i-1], all[i]
		if gap := minutesBetween(a.at, b.at); gap < a.minutes-1e-6 {
			c.fault(b.path, "%s at %s, %.0f min after %s (%s) begins, which takes %.0f", b.kind, told(b.at), gap, a.kind, a.path, a.minutes)
		}
	}
}
