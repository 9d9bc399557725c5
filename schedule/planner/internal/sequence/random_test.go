package sequence

import "math/rand/v2"

// features of small random problems; each can be on or off.
type features struct {
	phases, oven, ride, lags, hold, quiet, hands, closed, gapByMode, unattended, groups, serve, idle bool
}

// featureSets are the sets the twin goes through, each by name.
var featureSets = []struct {
	name string
	features
}{
	{"room, lags and modes", features{}},
	{"greatest lags", features{lags: true}},
	{"greatest gap", features{hold: true, serve: true}},
	{"quiet hours", features{quiet: true, hold: true}},
	{"hands", features{hands: true, hold: true}},
	{"closed hours", features{closed: true, lags: true, hold: true}},
	{"unattended", features{quiet: true, hands: true, unattended: true, lags: true}},
	{"gap by mode", features{gapByMode: true, hold: true, oven: true}},
	{"phases", features{phases: true, serve: true}},
	{"phases and riding", features{phases: true, ride: true, hold: true}},
	{"phases, lags, quiet", features{phases: true, ride: true, lags: true, quiet: true, oven: true}},
	{"phases, hands", features{phases: true, hands: true, hold: true, serve: true}},
	{"phases, closed hours", features{phases: true, closed: true, hold: true, ride: true}},
	{"identical batches", features{phases: true, groups: true, hands: true, hold: true, lags: true}},
	{"everything but phases", features{false, true, true, true, true, true, true, true, true, true, true, true, true}},
	{"everything", features{true, true, true, true, true, true, true, true, true, true, true, true, true}},
	{"no fire for nothing", features{phases: true, idle: true, quiet: true, ride: true, hold: true, serve: true}},
	{"no fire for nothing, closed hours", features{phases: true, idle: true, closed: true, lags: true, oven: true}},
}

type dice struct{ *rand.Rand }

func newDice(seed uint64) dice { return dice{rand.New(rand.NewPCG(seed, 1))} }

// from returns a number from a to b, both included.
func (r dice) from(a, b int) int { return a + r.IntN(b-a+1) }

// in says yes once in n times.
func (r dice) in(n int) bool { return r.IntN(n) == 0 }

// smallProblem makes a problem of 2 to most chains of 1 or 2 tasks within a
// horizon of minutes. All its numbers are arbitrary: they only have to make
// room, fires, hands and clocks scarce.
func smallProblem(r dice, f features, most, horizon int) *Problem {
	p := &Problem{Earliest: horizon, MaxPhases: 1, ChangeCost: r.from(0, 4), BurnCost: r.from(0, 2), Budget: 2_000_000}
	fires := 1
	if f.phases {
		fires = r.from(2, 3)
		p.MaxPhases = r.from(2, 3)
	}
	for range fires {
		p.Fires = append(p.Fires, Fire{Setup: r.from(0, 2), Zones: []int{r.from(1, 3), r.from(1, 3)}})
		row := make([]int, fires)
		for g := range row {
			row[g] = r.from(0, 2)
			if r.in(8) {
				row[g] = -1
			}
		}
		p.Change = append(p.Change, row)
	}
	if f.oven {
		p.Ovens = []int{r.from(1, 3)}
	}
	if f.quiet {
		for range r.from(1, 2) {
			a := r.from(0, horizon-2)
			p.Quiet = append(p.Quiet, Span{a, a + r.from(1, 4)})
		}
	}
	if f.hands {
		p.LightHands, p.ChangeHands = r.from(0, 2), r.from(0, 2)
	}
	if f.unattended && r.in(3) {
		p.ChangeHands = Unattended
	}
	for range r.from(2, most) {
		p.Chains = append(p.Chains, smallChain(r, f, p))
	}
	if f.groups {
		p.Chains = append(p.Chains, p.Chains[0])
		p.Chains[0].Group, p.Chains[len(p.Chains)-1].Group = 1, 1
	}
	if f.idle {
		p.IdleMost = r.from(0, 3)
		p.FurtherCost, p.FewChanges = r.from(0, 3), r.from(0, 1)
		for range p.Fires {
			row := make([]int, len(p.Fires))
			for g := range row {
				row[g] = r.from(0, 4)
			}
			p.ChangeCosts = append(p.ChangeCosts, row)
		}
	}
	if f.closed {
		for i := range p.Fires {
			p.Fires[i].LightClosed, p.Fires[i].ChangeClosed = closedHours(r, horizon), closedHours(r, horizon)
		}
	}
	return p
}

// closedHours are none, or two spans out of order within a horizon.
func closedHours(r dice, horizon int) []Span {
	if r.in(2) {
		return nil
	}
	a := r.from(0, horizon)
	return []Span{{a, a + r.from(1, 5)}, {a - 3, a - r.from(0, 2)}}
}

func smallChain(r dice, f features, p *Problem) Chain {
	c := Chain{HoldCost: r.from(0, 3)}
	if f.serve {
		c.Serve = max(0, r.from(-3, 4))
	}
	modes := 1
	for j := range r.from(1, 2) {
		t := Task{LagMin: max(0, r.from(-2, 2)), LagMax: NoLimit}
		if f.lags && r.in(2) {
			t.LagMax = t.LagMin + r.from(0, 2)
		}
		if f.hands {
			t.StartHands = r.from(0, 2)
			t.EndHands = max(0, r.from(-2, 1))
		}
		if f.unattended {
			if r.in(3) {
				t.StartHands = Unattended
			}
			if r.in(3) {
				t.EndHands = Unattended
			}
		}
		before := modes
		modes = r.from(1, 2)
		base := Gap{Min: r.from(0, 2), Max: NoLimit}
		for range modes {
			t.Modes = append(t.Modes, smallMode(r, f, p, before, base))
		}
		if j == 0 {
			t.Modes[0].Minutes[0] = max(1, t.Modes[0].Minutes[0])
		}
		c.Tasks = append(c.Tasks, t)
	}
	return c
}

func smallMode(r dice, f features, p *Problem, before int, gap Gap) Mode {
	m := Mode{Area: r.from(0, 2), Cost: max(0, r.from(-3, 3)), Gap: gap}
	for range before {
		v := r.from(1, 4)
		if r.in(8) {
			v = 0
		}
		m.Minutes = append(m.Minutes, v)
	}
	switch {
	case f.oven && r.in(3):
		m.Places = []Place{{OvenFire, 0}}
	case f.ride && r.in(2):
		for k := range p.Fires {
			m.Places = append(m.Places, Place{k, r.from(0, 1)})
		}
	default:
		m.Places = []Place{{r.from(0, len(p.Fires)-1), r.from(0, 1)}}
	}
	if f.gapByMode {
		m.Gap.Min = r.from(0, 2)
	}
	m.Gap.Ideal = m.Gap.Min + r.from(0, 2)
	if f.hold && r.in(2) {
		m.Gap.Max = m.Gap.Min + r.from(0, 6)
	}
	if f.closed {
		m.Closed = closedHours(r, p.Earliest)
	}
	return m
}
