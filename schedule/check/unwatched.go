package check

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/unit"
)

// burntNights are the nights through which a fire of this day burns.
func (c *checker) burntNights() []schedule.Interval {
	return slices.DeleteFunc(slices.Clone(c.facts.nights), func(q schedule.Interval) bool {
		return !slices.ContainsFunc(c.plan.Phases, func(ph schedule.Phase) bool { return burnsIn(ph, q) })
	})
}

func burnsIn(ph schedule.Phase, q schedule.Interval) bool {
	return ph.SetupFrom.Before(q.To) && ph.To.After(q.From)
}

// unwatched: a fire that burns while people sleep is low, in calm air, seen to before they
// sleep and looked at first when they wake, and its vents are left alone before that.
func (c *checker) unwatched() {
	if c.plan.Revision > 0 {
		return // what was done of it is done
	}
	for _, q := range c.burntNights() {
		if wind := c.windIn(q); wind >= safety.UnwatchedWindMS {
			c.fault("phases", "a fire burns from %s while people sleep, in wind of %.1f m/s", told(q.From), wind)
		}
		woken := false
		for i, ph := range c.plan.Phases {
			if !burnsIn(ph, q) {
				continue
			}
			if ph.LevelC > safety.UnwatchedMostC {
				c.fault(fmt.Sprintf("phases[%d].level_c", i), "%.0f degC is too hot for a fire that nobody watches", ph.LevelC)
			}
			woken = woken || ph.To.After(q.To)
		}
		c.beforeSleep(q)
		if woken {
			c.waking(q)
		}
		c.stillVents(q)
	}
}

func (c *checker) beforeSleep(q schedule.Interval) {
	seen := ""
	for _, s := range c.plan.Steps {
		if s.Kind == schedule.StepBeforeSleep && !s.At.After(q.From) && q.From.Sub(s.At) <= safety.VentsStillMinutes*time.Minute {
			seen += s.Text
		}
	}
	for _, want := range safety.SleepChecks() {
		if !strings.Contains(seen, want.Sentence) && !strings.Contains(seen, unit.System(c.plan.Units).Own(want.Sentence)) {
			c.fault("steps", "before the night at %s nobody is told %q (%s)", told(q.From), want.Sentence, want.Code)
		}
	}
}

// waking: the first thing that anybody does after the night is to look.
func (c *checker) waking(q schedule.Interval) {
	if now := c.plan.RevisedAt; now != nil && now.After(q.To) && slices.ContainsFunc(c.plan.Steps, func(s schedule.Step) bool {
		return s.Kind == schedule.StepWaking && (s.At.Equal(q.To) || s.At.Equal(*now))
	}) {
		return // it was to be done, and is, or is due
	}
	for _, s := range c.plan.Steps {
		if !s.Attended || s.At.Before(q.To) || s.Kind == schedule.StepCheckOven && s.At.Equal(q.To) {
			continue // what waited in the oven is looked at in the same minute
		}
		if s.Kind != schedule.StepWaking || !s.At.Equal(q.To) || !strings.HasPrefix(s.Text, safety.WakingCheck) {
			break
		}
		return
	}
	c.fault("steps", "at %s nobody reads the grate first, then the core", told(q.To))
}

// What changes what a fire gets of air, in a small way or so that its grate takes long to come
// back.
var (
	ventSteps  = []schedule.StepKind{schedule.StepSetVents, schedule.StepCheckFire}
	upsetSteps = []schedule.StepKind{schedule.StepLight, schedule.StepRefuel, schedule.StepChangeFire, schedule.StepFireReady}
)

func (c *checker) stillVents(q schedule.Interval) {
	for i, s := range c.plan.Steps {
		still := slices.Contains(ventSteps, s.Kind) || s.Kind == schedule.StepPutOn && c.liesAt(s, q.From)
		if still && s.At.Before(q.From) && q.From.Sub(s.At) < safety.VentsStillMinutes*time.Minute {
			c.fault(fmt.Sprintf("steps[%d].at", i), "%s at %s, less than %d min before people sleep beside the fire", s.Kind, told(s.At), safety.VentsStillMinutes)
		}
		if slices.Contains(upsetSteps, s.Kind) && s.At.Before(q.From) && q.From.Sub(s.At) < safety.SettleMinutes*time.Minute-time.Minute {
			c.fault(fmt.Sprintf("steps[%d].at", i), "%s at %s; a fire that nobody watches settles for %d min before people sleep", s.Kind, told(s.At), safety.SettleMinutes)
		}
	}
}

// liesAt says whether what a step puts on is on the grate at an instant.
func (c *checker) liesAt(s schedule.Step, at time.Time) bool {
	return slices.ContainsFunc(c.batches(), func(b batchFacts) bool {
		return b.dish.plan.ID == s.Dish && b.Number == s.Batch && slices.ContainsFunc(b.cooking, func(st schedule.Stage) bool {
			return st.Zone != "" && !st.From.After(at) && st.To.After(at)
		})
	})
}

// windIn is the strongest wind of a night in the request's forecast, m/s.
func (c *checker) windIn(q schedule.Interval) float64 {
	w := c.facts.req.Weather
	now, most := float64(w.Wind), 0.0
	from := q.From
	for _, h := range w.Hours { // in the order of their instants
		if h.Wind == nil {
			continue
		}
		at := c.facts.clockAt(&h.From)
		if at.After(from) {
			most = max(most, now)
		}
		if !at.Before(q.To) {
			return max(most, 0)
		}
		now = float64(*h.Wind)
	}
	return max(most, now)
}
