package check

import (
	"fmt"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"github.com/google/uuid"
)

// past: in a revised plan what is done lies before now and the rest does not; what
// was put on went on when the log says so, and when its first stage begins.
func (c *checker) past() {
	now := c.plan.RevisedAt
	if c.plan.Revision == 0 || now == nil {
		return
	}
	for i, s := range c.plan.Steps {
		path := fmt.Sprintf("steps[%d]", i)
		switch {
		case s.Done && s.At.After(*now):
			c.fault(path+".done", "%s at %s is done, after now, %s", s.Kind, told(s.At), told(*now))
		case !s.Done && s.At.Before(*now):
			c.fault(path+".done", "%s at %s is to be done, before now, %s", s.Kind, told(s.At), told(*now))
		}
	}
	for _, b := range c.batches() {
		for i, s := range c.plan.Steps {
			if s.Kind != schedule.StepPutOn || s.Dish != b.dish.plan.ID || s.Batch != b.Number {
				continue
			}
			if !s.At.Equal(b.on()) {
				c.fault(b.path+".stages[0].from", "%s; it is put on at %s", told(b.on()), told(s.At))
			}
			if s.Done {
				c.putOnAsLogged(fmt.Sprintf("steps[%d]", i), s)
			}
		}
	}
}

func (c *checker) putOnAsLogged(path string, s schedule.Step) {
	var logged []time.Time
	for _, e := range c.plan.Log {
		if e.Kind == schedule.LogOn && e.Dish == s.Dish {
			logged = append(logged, e.At)
		}
	}
	if len(logged) > 0 && !slices.ContainsFunc(logged, s.At.Equal) {
		c.fault(path+".at", "%s was put on at %s; the log has %s", s.Dish, told(s.At), told(logged[0]))
	}
}

// stepSpace is the name space of the ids of steps.
var stepSpace = uuid.MustParse("6d2f3a0e-6f0b-5a37-9d2c-0d3c9b1f7a55")

// mostAlike is how many steps of one kind a batch or phase has at the most.
const mostAlike = 200

// stable says whether the id of a step follows from the plan, the dish, its batch or
// phase and the kind, and so stays the same through revisions.
func (c *checker) stable(s schedule.Step) bool {
	group := s.Batch
	if s.Dish == "" {
		group = s.Phase
	}
	names := []string{fmt.Sprintf("%s/%d", s.Dish, group), s.Dish + "/0"}
	if a := c.plan.Ahead; a != nil {
		for _, d := range a.Dishes { // what is warmed for the table
			names = append(names, "warm/"+d.Dish+"/0")
		}
		if a.Plan != nil && slices.ContainsFunc(a.Plan.Steps, func(o schedule.Step) bool { return o.ID == s.ID }) {
			return true // it is that plan's
		}
	}
	for _, name := range names {
		for ordinal := range mostAlike {
			if uuid.NewSHA1(stepSpace, fmt.Appendf(nil, "%s/%s/%s/%d", c.plan.ID, name, s.Kind, ordinal)).String() == s.ID {
				return true
			}
		}
	}
	return false
}
