package check

import (
	"fmt"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/unit"
)

// leaves is when the plan has a batch carried from its fire into the kitchen oven.
func (c *checker) leaves(b *batchFacts) (at time.Time, ordered bool) {
	for _, s := range c.plan.Steps {
		if !s.Done && s.Kind == schedule.StepIndoors && s.Dish == b.dish.plan.ID && s.Batch == b.Number {
			return s.At, true
		}
	}
	return at, false
}

// burnsAt is the number of the phase that burns at an instant; 0 for none.
func (c *checker) burnsAt(at time.Time) int {
	n := 0
	for _, ph := range c.plan.Phases {
		if !ph.From.After(at) {
			n = ph.Number
		}
	}
	return n
}

// orders: what is ordered is what the rest of the plan is made of. A batch that is carried
// into the oven cooks there, at the heat that is told, and no fire is kept for it.
func (c *checker) orders() {
	for _, b := range c.batches() {
		if _, ordered := c.leaves(&b); !ordered || c.condemned(b.dish.plan.ID) {
			continue
		}
		for k, s := range b.cooking {
			if k == len(b.cooking)-1 && s.Place != schedule.PlaceOven {
				c.fault(fmt.Sprintf("%s.stages[%d]", b.path, k), "is planned in the %s until %s; a step carries it into the oven before", s.Place, told(s.To))
			}
		}
	}
	for i, s := range c.plan.Steps {
		if s.Kind == schedule.StepIndoors && !s.Done && s.GrateC < ovenCooksC-0.1 {
			c.fault(fmt.Sprintf("steps[%d]", i), "an oven at %.0f degC does not go on cooking what comes from a grate", s.GrateC)
		}
	}
}

// ovenCooksC is the least of an oven that goes on with meat from a hot grate, 250 F (common
// practice, no source).
var ovenCooksC = unit.FToC(250)

// stormMS is a wind in which nobody lights or feeds a fire, 20 mph (judgment).
const stormMS = 20 * 0.44704

// storm: in a wind that carries embers no coals are lit, added or shifted, and no vent is
// opened for the sake of the heat.
func (c *checker) storm() {
	if c.loggedWindMS() < stormMS {
		return
	}
	for i, s := range c.plan.Steps {
		feeds := s.Kind == schedule.StepLight || s.Kind == schedule.StepRefuel || s.Kind == schedule.StepChangeFire
		waits := strings.HasPrefix(s.Text, "Leave this out") || strings.Contains(strings.ToLower(s.Text), "only once the wind is under") || strings.HasPrefix(s.Text, "No coals are left")
		switch {
		case s.Done:
		case feeds && !waits:
			c.fault(fmt.Sprintf("steps[%d].text", i), "%s in a wind of %.0f m/s, and it does not wait for the wind: %q", s.Kind, c.loggedWindMS(), s.Text)
		case s.Kind == schedule.StepSetVents && opensVent(s.Text):
			c.fault(fmt.Sprintf("steps[%d].text", i), "opens a vent in a wind of %.0f m/s: %q", c.loggedWindMS(), s.Text)
		}
	}
	for i, r := range c.plan.Remedies {
		if opensVent(r.Text) {
			c.fault(fmt.Sprintf("remedies[%d].text", i), "opens a vent in a wind of %.0f m/s: %q", c.loggedWindMS(), r.Text)
		}
	}
}

// opensVent says whether a text has a vent opened further than it stands.
func opensVent(text string) bool {
	return strings.Contains(text, "pen the top vent from") || strings.Contains(text, "pen the bottom vent from")
}

// loggedWindMS is the wind as it was logged last, m/s.
func (c *checker) loggedWindMS() float64 {
	wind := 0.0
	for _, e := range c.plan.Log {
		if e.Kind != schedule.LogWind {
			continue
		}
		if w, err := unit.ParseSpeed(e.Value); err == nil {
			wind = float64(w)
		}
	}
	return wind
}
