package check

import (
	"fmt"
	"regexp"
)

// inOdds finds words of how likely something is to be ready.
var inOdds = regexp.MustCompile(`(?i)\bodds\b|\d%`)

// odds: a dish that may not be served takes no part in the odds of a revision, unless a measurement
// that is asked for now may clear it; and nothing is said of its own beside that.
func (c *checker) odds() {
	for i := range c.facts.dishes {
		d := &c.facts.dishes[i]
		if id := d.plan.ID; c.condemned(id) && !c.plan.MeasuredNow(id) && d.plan.Chance > sameChance {
			c.fault(d.path+".chance", "%.3f of what may not be served", d.plan.Chance)
		}
	}
	for i, f := range c.plan.Findings {
		if len(f.Dishes) == 1 && c.condemned(f.Dishes[0]) && !c.plan.MeasuredNow(f.Dishes[0]) && inOdds.MatchString(f.Text) && f.Code != "served-later" {
			c.fault(fmt.Sprintf("findings[%d]", i), "odds of what may not be served: %q", f.Text)
		}
	}
}

// heldBack says whether a dish may not be served as it is.
func (c *checker) heldBack(dish string) bool { return c.condemned(dish) || c.plan.MeasuredNow(dish) }
