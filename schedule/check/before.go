package check

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
)

// atOnce is how long after a thaw in cold water a piece is on the fire at the latest: it
// is trimmed and seasoned, and the fire may wait for a change.
const atOnce = 2 * time.Hour

// thaw: a frozen piece thaws for the published time. In cold water that begins and ends
// while somebody is up, for the water is changed every 30 min, and it is cooked at once.
func (c *checker) thaw() {
	for i, s := range c.plan.Steps {
		d := c.dishOf(s.Dish)
		if s.Kind != schedule.StepThaw || s.Done || d == nil {
			continue
		}
		path, on := fmt.Sprintf("steps[%d].at", i), time.Time{}
		for _, b := range d.plan.Batches {
			if first := b.Stages[0].From; on.IsZero() || first.Before(on) {
				on = first
			}
		}
		kg := float64(d.ask.Weight)
		for _, w := range d.ask.Weights {
			kg = max(kg, float64(w))
		}
		water, slow := safety.ThawInColdWater(kg), safety.ThawInRefrigerator(d.category, kg)
		hours := func(t safety.Thaw) time.Time { return s.At.Add(instant.Minutes(t.MostHours * 60)) }
		if at, ok := c.laidToThaw(s); ok && !strings.Contains(s.Text, water.Sentence) {
			water = safety.FinishInColdWater(d.category, kg, s.At.Sub(at).Hours())
		}
		switch {
		case strings.Contains(s.Text, safety.ThawPart):
			if !slices.ContainsFunc(c.plan.Steps, func(t schedule.Step) bool { return t.Kind == s.Kind && t.Dish == s.Dish && t.At.After(s.At) }) {
				c.fault(path, "it is to be finished in cold water, and no step says so")
			}
		case strings.Contains(s.Text, slow.Sentence):
			if hours(slow).After(on) {
				c.fault(path, "in the refrigerator from %s it is not thawed by %s", told(s.At), told(on))
			}
		case !strings.Contains(s.Text, water.Sentence):
			c.fault(path, "it says neither the refrigerator nor the cold water as published: %s", s.Text)
		case hours(water).After(on) || on.Sub(hours(water)) > atOnce:
			c.fault(path, "in cold water until %s, and on the fire at %s: it is cooked at once, thawed", told(hours(water)), told(on))
		case c.asleepWithin(s.At, hours(water)):
			c.fault(path, "in cold water from %s to %s, and somebody sleeps then", told(s.At), told(hours(water)))
		}
	}
}

// laidToThaw is when the piece of a step was laid into the refrigerator for a part of its thaw.
func (c *checker) laidToThaw(s schedule.Step) (time.Time, bool) {
	for _, t := range c.plan.Steps {
		if t.Kind == s.Kind && t.Dish == s.Dish && t.At.Before(s.At) && strings.Contains(t.Text, safety.ThawPart) {
			return t.At, true
		}
	}
	return time.Time{}, false
}

func (c *checker) dishOf(id string) *dishFacts {
	for i := range c.facts.dishes {
		if c.facts.dishes[i].plan.ID == id {
			return &c.facts.dishes[i]
		}
	}
	return nil
}

// asleepWithin says whether quiet hours touch a stretch.
func (c *checker) asleepWithin(from, to time.Time) bool {
	for _, q := range c.facts.quiet {
		if q.From.Before(to) && q.To.After(from) {
			return true
		}
	}
	return false
}

// sleepsAfter says whether a day before that is under way, and runs late, has its food
// chilled before anybody sleeps: it says so.
func sleepsAfter(before *schedule.Plan) bool {
	return before != nil && before.Revision > 0 && slices.ContainsFunc(before.Steps, func(s schedule.Step) bool {
		return strings.Contains(s.Text, "chill first, sleep after")
	})
}

// chilling: what is cooked ahead is cut within two hours of its take-off, and chilled and
// looked after while somebody is up, wherever the day has two hours for that.
func (c *checker) chilling() {
	a := c.plan.Ahead
	if a == nil {
		return
	}
	watch := time.Duration(safety.CoolingFirstMinutes) * time.Minute
	if c.asleepWithin(a.ChillAt, a.ChillAt.Add(watch)) && c.freeToChill(a.ChillAt, watch) && !sleepsAfter(a.Plan) {
		c.fault("ahead.chill_at", "somebody sleeps within %v of %s", watch, told(a.ChillAt))
	}
	before := c.plan
	if a.Plan != nil {
		before = a.Plan
	}
	c.chilledInTime(before)
	off := map[string]time.Time{}
	for _, s := range before.Steps {
		key := fmt.Sprintf("%s/%d", s.Dish, s.Batch)
		switch s.Kind {
		case schedule.StepTakeOff:
			off[key] = s.At
		case schedule.StepSlice:
			if at, known := off[key]; known && s.At.Before(a.ChillAt.Add(time.Minute)) && s.At.Sub(at) > watch {
				c.fault("ahead", "%s is cut up at %s, more than 2 hr after it came off at %s", s.Dish, told(s.At), told(at))
			}
		}
	}
}

// chilledInTime: what is cooked ahead goes into the refrigerator by a step of its own, and no
// later after its take-off than food may stand in the air of that day.
func (c *checker) chilledInTime(before *schedule.Plan) {
	type load struct {
		dish  string
		batch int
	}
	in, most := map[load]schedule.Step{}, instant.Minutes(safety.OutLimit(c.airC()))
	for _, s := range before.Steps {
		if s.Kind == schedule.StepChill {
			in[load{s.Dish, s.Batch}] = s
		}
	}
	for _, s := range before.Steps {
		if s.Kind != schedule.StepTakeOff || s.At.After(c.plan.Ahead.ChillAt) || c.condemned(s.Dish) {
			continue
		}
		chill, has := in[load{s.Dish, s.Batch}]
		switch {
		case !has:
			c.fault("ahead", "%s comes off at %s, and no step chills it", s.Dish, told(s.At))
		case !chill.Done && before.Revision == 0 && chill.At.Sub(s.At) > most+time.Minute:
			c.fault("ahead", "%s goes into the refrigerator at %s, more than %v after it came off at %s", s.Dish, told(chill.At), most, told(s.At))
		}
	}
}

// freeToChill says whether, between noon and the evening of that day, there is an hour to
// chill at with two to look after it.
func (c *checker) freeToChill(chill time.Time, watch time.Duration) bool {
	y, m, d := chill.Date()
	for half := 24; half <= 40; half++ {
		at := time.Date(y, m, d, half/2, half%2*30, 0, 0, chill.Location())
		if !c.asleepWithin(at.Add(-5*time.Minute), at.Add(watch+5*time.Minute)) {
			return true
		}
	}
	return false
}
