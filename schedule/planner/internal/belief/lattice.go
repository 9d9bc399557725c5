package belief

import (
	"context"
	"math"

	"example.com/cookday/schedule/internal/heat"
)

// The lattice of paces: how far the piece may have come, at paces about the usual one.
const (
	latticeReach = 1.6 // of the logarithm of the pace, either way
	latticeSide  = 16  // paces on either side of the usual one
	outlookSide  = 8   // where it is only to find where a piece is on its way
)

// lattice is a piece at a minute, at each pace that may have brought it there. What a
// reading says of the rest is read off it: the lattice does not depend on the reading, so
// that a colder one never leads to less. A pace is followed once somebody asks for it.
type lattice struct {
	c      *Journey
	past   *Journey // by which the paces are followed
	usual  float64  // logarithm of the usual pace
	side   int      // paces on either side of it
	minute float64
	rides  []*ride   // the fastest first; nil as long as nobody asked
	cores  []float64 // at the minute, never higher at a slower pace; NaN likewise
	rests  []float64 // of each; NaN likewise
}

// newLattice is a piece at a minute at all paces.
func newLattice(ctx context.Context, c *Journey, usual, minute float64, side int) (*lattice, error) {
	n := 2*side + 1
	l := &lattice{c: c, past: c, usual: usual, side: side, minute: minute, rides: make([]*ride, n), cores: unknown(n), rests: unknown(n)}
	return l, ctx.Err() // a piece with a long history takes milliseconds
}

func unknown(n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = math.NaN()
	}
	return out
}

// in is the lattice of a piece that goes on through another journey from its minute on.
func (l *lattice) in(c *Journey) *lattice {
	out := *l
	out.c, out.rests = c, unknown(len(l.rests))
	return &out
}

// ride is the piece at the minute at one of the paces.
func (l *lattice) ride(i int) *ride {
	if l.rides[i] == nil {
		r := new(ride)
		r.set(l.past, l.pace(i), true)
		r.through(l.minute, false)
		l.rides[i] = r
	}
	return l.rides[i]
}

// coreC is the core at the minute at one of the paces. Where the core has fallen, several
// paces fit a reading: the one nearest the usual.
func (l *lattice) coreC(i int) float64 {
	if !math.IsNaN(l.cores[i]) {
		return l.cores[i]
	}
	core := l.ride(i).sim.CoreC()
	switch {
	case i > l.side:
		core = math.Min(core, l.coreC(i-1))
	case i < l.side:
		core = math.Max(core, l.coreC(i+1))
	}
	l.cores[i] = core
	return core
}

func (l *lattice) pace(i int) float64 { return l.usual + l.step()*float64(i-l.side) }

func (l *lattice) step() float64 { return latticeReach / float64(l.side) }

// between is where a core lies on the lattice: after which pace, and which share of the
// way to the next one; ok is false where it lies beyond it, on the side that at tells.
func (l *lattice) between(coreC float64) (at int, share float64, ok bool) {
	i := l.side
	for i+1 < len(l.cores)-1 && l.coreC(i+1) > coreC {
		i++
	}
	for i > 0 && l.coreC(i) < coreC {
		i--
	}
	high, low := l.coreC(i), l.coreC(i+1)
	switch {
	case coreC > high:
		return 0, 0, false
	case coreC < low:
		return len(l.cores) - 1, 0, false
	case high == low:
		return i, 0, true
	}
	return i, (high - coreC) / (high - low), true
}

// rest is what the piece still takes from the minute at the usual pace, read off the
// lattice at a core below its target, minutes. Slower paces never have less left.
func (l *lattice) rest(coreC float64) float64 {
	at, share, ok := l.between(coreC)
	switch {
	case !ok && at == 0:
		return math.Min(l.restOf(0, coreC), l.bound(0, 1))
	case !ok:
		return l.slower(at, coreC)
	}
	slow := l.fromUsual(at + 1)
	fast := l.fromUsual(at)
	if target := l.c.TargetC; l.c.TenderS == 0 && l.coreC(at) >= target {
		if l.coreC(at+1) >= target {
			return 0
		}
		// Between here and the target lies the end of it.
		fast, share = math.Min(l.lastBit(slow, l.coreC(at+1)), slow), (target-coreC)/(target-l.coreC(at+1))
	}
	return fast + share*(slow-fast)
}

// shiftK is how far apart the cores are that a piece colder than at the slowest pace is
// followed from.
const shiftK = 10.0

// slower is the rest of a piece that is colder than at the slowest pace: read off a few
// cores below it, which never have less left either. A profile that is moved as a whole
// may itself give a minute less a degree colder.
func (l *lattice) slower(at int, coreC float64) float64 {
	from, rest := l.coreC(at), l.bound(l.side, at)
	for {
		next := math.Max(l.restOf(at, from-shiftK), rest)
		if coreC >= from-shiftK {
			return rest + (from-coreC)/shiftK*(next-rest)
		}
		from, rest = from-shiftK, next
	}
}

// fromUsual is the rest at a point, held to those between it and the usual pace.
func (l *lattice) fromUsual(i int) float64 {
	if i >= l.side {
		return l.bound(l.side, i)
	}
	return l.bound(i, l.side)
}

// bound is the least rest of some points towards the fast side of the usual pace, and the
// greatest towards the slow one.
func (l *lattice) bound(from, to int) float64 {
	if from < l.side {
		least := math.Inf(1)
		for i := from; i <= to; i++ {
			least = math.Min(least, l.own(i))
		}
		return least
	}
	most := 0.0
	for i := from; i <= to; i++ {
		most = math.Max(most, l.own(i))
	}
	return most
}

// own is the rest of a point at its own core.
func (l *lattice) own(i int) float64 {
	if math.IsNaN(l.rests[i]) {
		l.rests[i] = l.restOf(i, l.coreC(i))
	}
	return l.rests[i]
}

// restOf is the rest of a point of the lattice that reads a core, with the floor of a probe.
func (l *lattice) restOf(i int, coreC float64) float64 {
	r := l.from(i, coreC)
	rest := r.finish() - l.minute
	return l.floored(math.Max(rest, 0), coreC)
}

// from is a point of the lattice as it goes on at the usual pace, at a core that may not
// be its own.
func (l *lattice) from(i int, coreC float64) ride {
	r := *l.ride(i)
	r.c = l.c
	if off := coreC - r.sim.CoreC(); math.Abs(off) > 1e-9 {
		r.sim.Shift(off)
	}
	r.curve = heat.Curve{}
	r.goesOnAt(l.usual)
	return r
}

// probeWorthK is what a probe can tell of the target: 4 F (fitted 3.9 to 5.0 on home
// logs; places of one piece are reported 10 and 15 F apart).
const probeWorthK = 4 / 1.8

// lastBit is how long the last degrees take that a probe cannot tell from the target,
// at the mean rate from a core to there; at most an hour.
func (l *lattice) lastBit(rest, coreC float64) float64 {
	return math.Min(60, probeWorthK*rest/math.Max(l.c.TargetC-coreC, 1e-3))
}

func (l *lattice) floored(rest, coreC float64) float64 {
	if l.c.TenderS > 0 || coreC >= l.c.TargetC {
		return rest
	}
	return math.Hypot(rest, l.lastBit(rest, coreC))
}

// coreAt is the core at an earlier minute at a point of the lattice.
func (l *lattice) coreAt(i int, minute float64) float64 {
	r := l.ride(i)
	return Sample(r.curve, l.c.Body.StartC, r.sim.CoreC(), minute/math.Exp(l.pace(i))*60)
}

// anchored is the piece that has a core at a minute up to that of the lattice, and goes on
// from there at the usual pace; pace is the one that brought it there.
func (l *lattice) anchored(minute, coreC float64, keeps bool) (r ride, pace float64) {
	core := func(i int) float64 { return l.coreAt(i, minute) }
	i, high := l.side, core(l.side)
	step := 1
	if coreC > high {
		step = -1
	}
	for {
		k := i + step
		if k < 0 || k >= len(l.rides) {
			pace = l.pace(i)
			break
		}
		next := core(k)
		if (next-coreC)*float64(step) <= 0 {
			share := 0.0
			if next != high {
				share = (high - coreC) / (high - next)
			}
			pace = l.pace(i) + share*float64(step)*l.step()
			break
		}
		i, high = k, next
	}
	r.set(l.c, pace, keeps)
	r.through(minute, false)
	if off := coreC - r.sim.CoreC(); math.Abs(off) > 1e-9 {
		r.sim.Shift(off) // the lattice's grain, or beyond its ends
	}
	r.goesOnAt(l.usual)
	return r, pace
}
