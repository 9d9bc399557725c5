package sequence

import "fmt"

// modeAt is the place of a mode in the problem, for the words of a fault.
type modeAt struct{ chain, task, mode int }

func (a modeAt) String() string {
	return fmt.Sprintf("chains[%d].tasks[%d].modes[%d]", a.chain, a.task, a.mode)
}

func (c *checker) chain(p *Problem, i int) {
	ch := &p.Chains[i]
	if !natural(ch.Serve) {
		c.fault(ch.Serve, wantNatural, "chains[%d].serve", i)
	}
	if !natural(ch.HoldCost) {
		c.fault(ch.HoldCost, wantNatural, "chains[%d].hold cost", i)
	}
	if !natural(ch.Group) {
		c.fault(ch.Group, wantNatural, "chains[%d].group", i)
	}
	if len(ch.Tasks) == 0 {
		c.fault(0, "at least one task", "chains[%d].tasks", i)
	}
	before := 1
	for j := range ch.Tasks {
		c.task(p, i, j, before)
		before = len(ch.Tasks[j].Modes)
	}
}

// task checks a task after one with so many modes.
func (c *checker) task(p *Problem, i, j, before int) {
	t := &p.Chains[i].Tasks[j]
	last := j == len(p.Chains[i].Tasks)-1
	if !last && !natural(t.LagMin) {
		c.fault(t.LagMin, wantNatural, "chains[%d].tasks[%d].lag min", i, j)
	}
	if !last && t.LagMax >= 0 && t.LagMax < t.LagMin {
		c.fault(t.LagMax, "lag min "+wantNoLimit, "chains[%d].tasks[%d].lag max", i, j)
	}
	if !handsOrNone(t.StartHands) {
		c.fault(t.StartHands, wantHands, "chains[%d].tasks[%d].start hands", i, j)
	}
	if !handsOrNone(t.EndHands) {
		c.fault(t.EndHands, wantHands, "chains[%d].tasks[%d].end hands", i, j)
	}
	if len(t.Modes) == 0 {
		c.fault(0, "at least one mode", "chains[%d].tasks[%d].modes", i, j)
	}
	for m := range t.Modes {
		c.mode(&t.Modes[m], before, last, modeAt{i, j, m})
		c.places(p, t.Modes[m].Places, modeAt{i, j, m})
	}
}

func (c *checker) mode(m *Mode, before int, last bool, at modeAt) {
	if !natural(m.Area) {
		c.fault(m.Area, wantNatural, "%s.area", at)
	}
	if !natural(m.Cost) {
		c.fault(m.Cost, wantNatural, "%s.cost", at)
	}
	if len(m.Minutes) != before {
		c.fault(len(m.Minutes), fmt.Sprintf("%d entries, one for each mode before", before), "%s.minutes", at)
	}
	for k, v := range m.Minutes {
		if !natural(v) {
			c.fault(v, wantNatural, "%s.minutes[%d]", at, k)
		}
	}
	if i := badSpan(m.Closed); i >= 0 {
		c.fault(m.Closed[i].To, wantTo(m.Closed[i]), "%s.closed[%d].to", at, i)
	}
	if !last {
		return
	}
	if !natural(m.Gap.Min) {
		c.fault(m.Gap.Min, wantNatural, "%s.gap.min", at)
	}
	if !natural(m.Gap.Ideal) {
		c.fault(m.Gap.Ideal, wantNatural, "%s.gap.ideal", at)
	}
	if m.Gap.Max >= 0 && m.Gap.Max < m.Gap.Min {
		c.fault(m.Gap.Max, "min "+wantNoLimit, "%s.gap.max", at)
	}
}

// places wants zones that exist: one of the oven, or at most one a fire.
func (c *checker) places(p *Problem, places []Place, at modeAt) {
	if len(places) == 0 {
		c.fault(0, "at least one place", "%s.places", at)
	}
	for k, pl := range places {
		zones := p.Ovens
		switch {
		case pl.Fire == OvenFire && len(places) != 1:
			c.fault(len(places), "a single place, since it is in the oven", "%s.places", at)
		case pl.Fire == OvenFire:
		case pl.Fire < 0 || pl.Fire >= len(p.Fires):
			c.fault(pl.Fire, fmt.Sprintf("a fire, 0 to %d, or OvenFire (-1)", len(p.Fires)-1), "%s.places[%d].fire", at, k)
			continue
		default:
			zones = p.Fires[pl.Fire].Zones
		}
		if pl.Zone < 0 || pl.Zone >= len(zones) {
			c.fault(pl.Zone, fmt.Sprintf("a zone, 0 to %d", len(zones)-1), "%s.places[%d].zone", at, k)
		}
		for _, o := range places[:k] {
			if o.Fire == pl.Fire {
				c.fault(pl.Fire, "one zone a fire", "%s.places[%d].fire", at, k)
			}
		}
	}
}
