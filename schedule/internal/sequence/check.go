package sequence

import "fmt"

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

// checker keeps the first fault it meets.
type checker struct{ err *ProblemError }

func (c *checker) require(ok bool, value int, want, field string, at ...any) {
	if !ok && c.err == nil {
		c.err = &ProblemError{fmt.Sprintf(field, at...), value, want}
	}
}

func (c *checker) natural(v int, field string, at ...any) {
	c.require(v >= 0 && v <= limit, v, fmt.Sprintf("0 to %d", limit), field, at...)
}

func (c *checker) hands(v int, field string, at ...any) {
	c.require(v >= Unattended && v <= limit, v, "minutes, 0 or more, or Unattended (-1)", field, at...)
}

func (c *checker) spans(spans []Span, field string) {
	for i, s := range spans {
		c.require(s.From <= s.To, s.To, fmt.Sprintf("From (%d) or more", s.From), "%s[%d].to", field, i)
	}
}

func check(p *Problem) error {
	var c checker
	c.fires(p)
	c.require(p.MaxPhases >= 0 && p.MaxPhases <= phaseLimit, p.MaxPhases, fmt.Sprintf("0 to %d", phaseLimit), "max phases")
	c.natural(p.ChangeCost, "change cost")
	c.natural(p.BurnCost, "burn cost")
	c.natural(p.Earliest, "earliest")
	c.natural(p.Budget, "budget")
	c.hands(p.LightHands, "light hands")
	c.hands(p.ChangeHands, "change hands")
	c.spans(p.Quiet, "quiet")
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
	for f, fire := range p.Fires {
		c.natural(fire.Setup, "fires[%d].setup", f)
		for z, v := range fire.Zones {
			c.natural(v, "fires[%d].zones[%d]", f, z)
		}
		c.spans(fire.LightClosed, fmt.Sprintf("fires[%d].light closed", f))
		c.spans(fire.ChangeClosed, fmt.Sprintf("fires[%d].change closed", f))
	}
	for z, v := range p.Ovens {
		c.natural(v, "ovens[%d]", z)
	}
	n := len(p.Fires)
	c.require(n == 0 || len(p.Change) == n, len(p.Change), fmt.Sprintf("%d rows, one for each fire", n), "change")
	for f, row := range p.Change {
		c.require(len(row) == n, len(row), fmt.Sprintf("%d entries, one for each fire", n), "change[%d]", f)
		for g, v := range row {
			c.require(v <= limit, v, fmt.Sprintf("at most %d, or negative for impossible", limit), "change[%d][%d]", f, g)
		}
	}
}

func (c *checker) chain(p *Problem, i int) {
	ch := &p.Chains[i]
	c.natural(ch.Serve, "chains[%d].serve", i)
	c.natural(ch.HoldCost, "chains[%d].hold cost", i)
	c.natural(ch.Group, "chains[%d].group", i)
	c.require(len(ch.Tasks) > 0, 0, "at least one task", "chains[%d].tasks", i)
	for j := range ch.Tasks {
		t := &ch.Tasks[j]
		last := j == len(ch.Tasks)-1
		if !last {
			c.natural(t.LagMin, "chains[%d].tasks[%d].lag min", i, j)
			c.require(t.LagMax < 0 || t.LagMax >= t.LagMin, t.LagMax, "lag min or more, or negative for no limit", "chains[%d].tasks[%d].lag max", i, j)
		}
		c.hands(t.StartHands, "chains[%d].tasks[%d].start hands", i, j)
		c.hands(t.EndHands, "chains[%d].tasks[%d].end hands", i, j)
		c.require(len(t.Modes) > 0, 0, "at least one mode", "chains[%d].tasks[%d].modes", i, j)
		before := 1
		if j > 0 {
			before = len(ch.Tasks[j-1].Modes)
		}
		for m := range t.Modes {
			c.mode(p, &t.Modes[m], before, last, fmt.Sprintf("chains[%d].tasks[%d].modes[%d]", i, j, m))
		}
	}
}

func (c *checker) mode(p *Problem, m *Mode, before int, last bool, field string) {
	c.natural(m.Area, "%s.area", field)
	c.natural(m.Cost, "%s.cost", field)
	c.require(len(m.Minutes) == before, len(m.Minutes), fmt.Sprintf("%d entries, one for each mode before", before), "%s.minutes", field)
	for k, v := range m.Minutes {
		c.natural(v, "%s.minutes[%d]", field, k)
	}
	c.spans(m.Closed, field+".closed")
	if last {
		c.natural(m.Gap.Min, "%s.gap.min", field)
		c.natural(m.Gap.Ideal, "%s.gap.ideal", field)
		c.require(m.Gap.Max < 0 || m.Gap.Max >= m.Gap.Min, m.Gap.Max, "min or more, or negative for no limit", "%s.gap.max", field)
	}
	c.require(len(m.Places) > 0, 0, "at least one place", "%s.places", field)
	seen := make(map[int]bool, len(m.Places)) // looked up only, never ranged over
	for k, pl := range m.Places {
		zones := p.Ovens
		if pl.Fire != OvenFire {
			if pl.Fire < 0 || pl.Fire >= len(p.Fires) {
				c.require(false, pl.Fire, fmt.Sprintf("a fire, 0 to %d, or OvenFire (-1)", len(p.Fires)-1), "%s.places[%d].fire", field, k)
				continue
			}
			zones = p.Fires[pl.Fire].Zones
		} else {
			c.require(len(m.Places) == 1, len(m.Places), "a single place, since it is in the oven", "%s.places", field)
		}
		c.require(pl.Zone >= 0 && pl.Zone < len(zones), pl.Zone, fmt.Sprintf("a zone, 0 to %d", len(zones)-1), "%s.places[%d].zone", field, k)
		c.require(!seen[pl.Fire], pl.Fire, "one zone a fire", "%s.places[%d].fire", field, k)
		seen[pl.Fire] = true
	}
}

// groups requires that the chains of one group are identical.
func (c *checker) groups(p *Problem) {
	first := make(map[int]int) // looked up only, never ranged over
	for i := range p.Chains {
		g := p.Chains[i].Group
		if g <= 0 {
			continue
		}
		k, ok := first[g]
		if !ok {
			first[g] = i
			continue
		}
		c.require(alike(&p.Chains[k], &p.Chains[i]), g, "identical chains in one group", "chains[%d].group", i)
	}
}
