package sequence

import (
	"fmt"
	"slices"
)

// limit keeps all sums far from overflow: no instant, length or cost rate may
// exceed it (about 19 years in minutes).
const limit = 10_000_000

// phaseLimit bounds MaxPhases, since the sequences of fires are all tried.
const phaseLimit = 8

// ProblemError says which field of a Problem is malformed.
type ProblemError struct {
	Field string // for example chains[2].tasks[0].modes[1].area
	Value int
	Want  string
}

// Error names the field, its value and what would be right.
func (e *ProblemError) Error() string {
	return fmt.Sprintf("%s: %d, want %s", e.Field, e.Value, e.Want)
}

// checker keeps the first fault it meets. Words are put together only where
// there is one: a check is part of each Solve.
type checker struct{ err *ProblemError }

func (c *checker) fault(value int, want, field string, at ...any) {
	if c.err == nil {
		c.err = &ProblemError{fmt.Sprintf(field, at...), value, want}
	}
}

// What is asked of most fields.
const (
	wantNatural = "0 to 10000000" // limit
	wantHands   = "minutes, 0 or more, or Unattended (-1)"
	wantNoLimit = "or more, or negative for no limit"
)

func natural(v int) bool { return v >= 0 && v <= limit }

func handsOrNone(v int) bool { return v >= Unattended && v <= limit }

// badSpan is the first span that ends before it begins, -1 for none.
func badSpan(spans []Span) int {
	return slices.IndexFunc(spans, func(s Span) bool { return s.From > s.To })
}

func wantTo(s Span) string { return fmt.Sprintf("From (%d) or more", s.From) }

func check(p *Problem) error {
	var c checker
	c.fires(p)
	if p.MaxPhases < 0 || p.MaxPhases > phaseLimit {
		c.fault(p.MaxPhases, fmt.Sprintf("0 to %d", phaseLimit), "max phases")
	}
	for _, f := range []struct {
		name  string
		value int
	}{{"change cost", p.ChangeCost}, {"further cost", p.FurtherCost}, {"few changes", p.FewChanges}, {"burn cost", p.BurnCost}, {"idle most", p.IdleMost}, {"earliest", p.Earliest}, {"budget", p.Budget}, {"below", p.Below}} {
		if !natural(f.value) {
			c.fault(f.value, wantNatural, "%s", f.name)
		}
	}
	if !handsOrNone(p.LightHands) {
		c.fault(p.LightHands, wantHands, "light hands")
	}
	if !handsOrNone(p.ChangeHands) {
		c.fault(p.ChangeHands, wantHands, "change hands")
	}
	if i := badSpan(p.Quiet); i >= 0 {
		c.fault(p.Quiet[i].To, wantTo(p.Quiet[i]), "quiet[%d].to", i)
	}
	for i := range p.Chains {
		c.chain(p, i)
	}
	c.groups(p)
	if c.err != nil {
		return c.err
	}
	return nil
}

func (c *checker) fires(p *Problem) {
	for f := range p.Fires {
		c.fire(&p.Fires[f], f)
	}
	for z, v := range p.Ovens {
		if !natural(v) {
			c.fault(v, wantNatural, "ovens[%d]", z)
		}
	}
	n := len(p.Fires)
	if n > 0 && len(p.Change) != n {
		c.fault(len(p.Change), fmt.Sprintf("%d rows, one for each fire", n), "change")
	}
	for f, row := range p.Change {
		if len(row) != n {
			c.fault(len(row), fmt.Sprintf("%d entries, one for each fire", n), "change[%d]", f)
		}
		for g, v := range row {
			if v > limit {
				c.fault(v, fmt.Sprintf("at most %d, or negative for impossible", limit), "change[%d][%d]", f, g)
			}
		}
	}
	c.changeCosts(p.ChangeCosts, n)
}

// changeCosts are none at all, or one for each pair of fires.
func (c *checker) changeCosts(costs [][]int, n int) {
	if costs != nil && len(costs) != n {
		c.fault(len(costs), fmt.Sprintf("%d rows, one for each fire", n), "change costs")
	}
	for f, row := range costs {
		if len(row) != n {
			c.fault(len(row), fmt.Sprintf("%d entries, one for each fire", n), "change costs[%d]", f)
		}
		for g, v := range row {
			if !natural(v) {
				c.fault(v, wantNatural, "change costs[%d][%d]", f, g)
			}
		}
	}
}

func (c *checker) fire(fire *Fire, f int) {
	if !natural(fire.Setup) {
		c.fault(fire.Setup, wantNatural, "fires[%d].setup", f)
	}
	for z, v := range fire.Zones {
		if !natural(v) {
			c.fault(v, wantNatural, "fires[%d].zones[%d]", f, z)
		}
	}
	if i := badSpan(fire.LightClosed); i >= 0 {
		c.fault(fire.LightClosed[i].To, wantTo(fire.LightClosed[i]), "fires[%d].light closed[%d].to", f, i)
	}
	if i := badSpan(fire.ChangeClosed); i >= 0 {
		c.fault(fire.ChangeClosed[i].To, wantTo(fire.ChangeClosed[i]), "fires[%d].change closed[%d].to", f, i)
	}
}

// groups requires that the chains of one group are identical.
func (c *checker) groups(p *Problem) {
	for i := range p.Chains {
		g := p.Chains[i].Group
		if g <= 0 {
			continue
		}
		for k := range i {
			if p.Chains[k].Group == g {
				if !alike(&p.Chains[k], &p.Chains[i]) {
					c.fault(g, "identical chains in one group", "chains[%d].group", i)
				}
				break
			}
		}
	}
}
