package check

import (
	"fmt"
	"regexp"
	"slices"

	"example.com/cookday/schedule"
)

// inOdds finds words of how likely something is to be ready.
var inOdds = regexp.MustCompile(`(?i)\bodds\b|\d%`)

// odds: a dish that may not be served takes no part in the odds of a revision, unless a measurement
// that is asked for now may clear it; and nothing is said of its own beside that.
func (c *checker) odds() {
	for i := range c.facts.dishes {
		d := &c.facts.dishes[i]
		if id := d.plan.ID; c.condemned(id) && !c.measuredNow(id) && d.plan.Chance > sameChance {
			c.fault(d.path+".chance", "%.3f of what may not be served", d.plan.Chance)
		}
	}
	for i, f := range c.plan.Findings {
		if len(f.Dishes) == 1 && c.condemned(f.Dishes[0]) && !c.measuredNow(f.Dishes[0]) && inOdds.MatchString(f.Text) && f.Code != "served-later" {
			c.fault(fmt.Sprintf("findings[%d]", i), "odds of what may not be served: %q", f.Text)
		}
	}
}

// measuredNow says whether a step of now measures a dish that may not be served before that.
func (c *checker) measuredNow(dish string) bool {
	return slices.ContainsFunc(c.plan.Steps, func(s schedule.Step) bool {
		return s.Decides() && s.Dish == dish && !s.Done && c.plan.RevisedAt != nil && s.At.Equal(*c.plan.RevisedAt)
	})
}

// heldBack says whether a dish may not be served as it is.
func (c *checker) heldBack(dish string) bool { return c.condemned(dish) || c.measuredNow(dish) }
