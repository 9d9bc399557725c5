package belief

import (
	"context"
	"math"

	"example.com/cookday/schedule/planner/internal/spread"
	"example.com/cookday/schedule/unit"
)

// What a reading of the core is off by. Two degrees Fahrenheit are the probe's (common
// practice, no source), four the place in the middle of one piece (home cooks who
// measured twice report 10 and 15 F). Between 135 and 175 F the model itself is off by
// eight: its plateau is a ramp, real ones are flatter (from a university demonstration
// of the stall, where it ends 8 F high after 6 h).
const (
	ProbeErrorK = 2 / 1.8
	PlaceErrorK = 4 / 1.8
	stallErrorK = 8 / 1.8
	// stallErrorMinutes is how long the model takes to be off by that much (assumption).
	stallErrorMinutes = 120
	stallEdgeK        = 6 // the model's error fades over so much on either side (assumption)
)

var StallLowC, StallHighC = unit.FToC(135), unit.FToC(175)

// The two clocks. Clock A runs from the newest reading at the usual pace, clock B over a
// whole cook that is not over. Fitted on home logs (clock_fit_test.go says what came
// out), rounded.
const (
	// The pace that brought a piece to its reading does not foretell the pace after it
	// (slope -0.27 bare, -0.66 wrapped, where one that carries over has +1), so none is
	// carried.
	biasBare, biasWrapped     = -0.4, 0.0 // of the logarithm of what clock A says
	spreadBare, spreadWrapped = 0.55, 0.65
	fastShare                 = 1.3 // of that on the fast side: the end of a cook is the cook's to call, and it is called early
	nearSpread                = 0.8 // more on the fast side, where a probe cannot tell the core from its target
	wholeShare                = 1.4 // of the spread of a first plan
	// Pieces that were not measured: what they may lag behind the one that was.
	unmeasuredShare, unmeasuredLeast = 0.3, 0.1
)

// Stand says which piece a belief is about, besides its journey.
type Stand struct {
	Spread spread.Spread // of a whole cook, before any reading
	Stalls bool          // the cut has a stall
	Pieces int           // of which one was measured
}

// Belief is what is believed of the rest of one piece's cook.
type Belief struct {
	Stand
	Journey *Journey
	Nodes   []Reading // what is taken from its readings
	Rest    Rest
	Worse   Rest    // no sooner than Rest: with all else that may be; nil where nothing else may
	Whole   float64 // minutes of the whole cook at the usual pace, in what surrounded it
	Creep   Creep

	zs, weight []float64 // of the grate's error, as shared

	covered   bool
	lateLeast float64 // minutes from now of the late edge, at the least

	GrateS float64 // what is left of the spread of the grate's error, in its own

	usual   *lattice // at the newest node; nil without one
	clockA  clock
	clockA0 clock     // of the node before, as long as the newest is colder than it foretold
	slope   float64   // of the logarithm of either clock for a cooler grate
	pace    float64   // that brought it to the newest node
	way     ride      // from there to its end, with its curve
	wayEnds float64   // the minute of that end
	lag     float64   // of its pace there, where it is as foretold
	fromS   float64   // the model's seconds at the newest node, on the way
	toReads []float64 // what has to be added to the curve at each node
}

// clock is clock A of a node.
type clock struct {
	minute float64 // of the node
	rest   float64 // from there, minutes; 0 is done
	spread side
	base   side // of it, whatever is read
	bias   float64
}

// New follows a journey and its readings, of which those that count are taken.
func New(ctx context.Context, c *Journey, s Stand, readings []Reading) (*Belief, error) {
	b := &Belief{Stand: s, Journey: c}
	var whole ride
	whole.set(c, s.Spread.Median, true)
	b.Whole = whole.finish()
	b.Nodes = Nodes(readings, b.Whole)
	if n := len(b.Nodes); n > 0 {
		var err error
		if b.usual, err = newLattice(ctx, c, s.Spread.Median, b.Nodes[n-1].Minute, latticeSide); err != nil {
			return nil, err
		}
	}
	b.foresee(&whole)
	return b, nil
}

// foresee works out the clocks, and the way to the end.
func (b *Belief) foresee(whole *ride) {
	b.slope = b.Spread.Grate
	if b.Journey.Indoors {
		b.slope = 0
	}
	b.clockA, b.clockA0, b.Creep, b.fromS, b.lag = clock{}, clock{}, Creep{}, 0, 0
	n := len(b.Nodes)
	if n == 0 {
		b.way, b.wayEnds, b.pace = *whole, b.Whole, b.Spread.Median
		return
	}
	last := b.Nodes[n-1]
	b.clockA = b.clockOf(last)
	b.way, b.pace = b.usual.anchored(last.Minute, last.CoreC, true)
	b.fromS = b.way.atS
	b.Creep = b.creeping()
	b.clockA.rest *= math.Sqrt(b.Creep.Slower)
	b.clockA.spread = b.surprised(b.clockA.spread)
	b.toReads = b.misses()
	if b.clockA.rest == 0 {
		b.wayEnds = last.Minute
		return
	}
	b.wayEnds = b.way.finish()
	b.clockA.bias = b.biasAt(last.CoreC, last.Minute, &b.way, b.wayEnds)
	b.lag = b.lagOf(b.wayEnds-last.Minute, b.clockA.bias)
	if n > 1 {
		b.clockA0 = b.without(b.Nodes[n-2], last)
	}
}

// clockOf is clock A of the newest node.
func (b *Belief) clockOf(r Reading) clock {
	out := clock{minute: r.Minute}
	sd := spreadBare
	if b.Journey.Wrapped <= r.Minute { // never for NaN
		sd = spreadWrapped
	}
	if b.Pieces > 1 {
		sd = math.Hypot(sd, unmeasuredShare*b.Spread.S+unmeasuredLeast)
	}
	out.spread = side{fastShare * sd, sd}
	out.base = out.spread
	if b.Journey.TenderS == 0 && r.CoreC >= b.Journey.TargetC {
		return out
	}
	out.rest = math.Min(b.usual.rest(r.CoreC), LongestAhead)
	if b.Journey.TenderS == 0 { // as near as that, it may be done any minute
		near := math.Min(1, probeWorthK/(b.Journey.TargetC-r.CoreC))
		out.spread.fast = math.Hypot(fastShare*sd, nearSpread*near)
	}
	return out
}

// biasAt is by how much, of the logarithm, clock A says too little at a core, which a piece
// passes at a minute on its way to an end: only the bare part of what is left is corrected.
func (b *Belief) biasAt(coreC, minute float64, way *ride, ends float64) float64 {
	bare := ends - minute
	if bare <= 0 {
		return 0
	}
	for _, wraps := range []float64{b.Journey.Wrapped, way.wrap} {
		if wraps < minute+bare {
			bare = math.Max(wraps-minute, 0)
		}
	}
	share := bare / (ends - minute)
	return math.Log1p(share*math.Expm1(biasBare*b.through(coreC)) + (1-share)*math.Expm1(biasWrapped))
}

// lagOf is by how much, of the logarithm of a pace, a piece as foretold seems slow where
// clock A says so much too little of what is left: it came there so much later.
func (b *Belief) lagOf(left, bias float64) float64 {
	const most = 0.5
	came, corrected := b.Whole-left, b.Whole-left*math.Exp(bias)
	switch {
	case bias == 0:
		return 0
	case came <= corrected*math.Exp(-most): // also where it never comes there in time
		return most
	}
	return math.Log(corrected / came)
}

// through is how far a core is on its way through the stall: what clock A says too much
// of lies there and behind it. It grows with the core, so that a colder reading never
// takes from what is left.
func (b *Belief) through(coreC float64) float64 {
	return math.Min(math.Max((coreC-StallLowC)/(StallHighC-StallLowC), 0), 1)
}

// without is clock A of the node before the newest one, if that is colder than it
// foretold: a colder reading never makes a piece sooner than no reading.
func (b *Belief) without(before, last Reading) clock {
	r, _ := b.usual.anchored(before.Minute, before.CoreC, false)
	at := r
	at.through(last.Minute, false)
	if last.CoreC >= at.sim.CoreC() {
		return clock{}
	}
	out := b.clockA
	out.minute, out.spread = before.Minute, b.clockA.base
	ends := r.finish()
	out.rest = b.usual.floored(ends-before.Minute, before.CoreC)
	out.bias = b.biasAt(before.CoreC, before.Minute, &r, ends)
	return out
}

// seenS is the standard deviation of the logarithm of paces up to a reading (seen on
// home logs 0.12 to 0.40).
const seenS, seenStallS = 0.25, 0.35

// Surprise is how far a piece is from the usual pace, in standard deviations; positive
// is slow.
func (b *Belief) Surprise() float64 {
	if len(b.Nodes) == 0 {
		return 0
	}
	return (b.pace - b.Spread.Median) / seenStallS
}

// surprised widens the side of a surprise, and only that one.
func (b *Belief) surprised(s side) side {
	const usual, steep, most = 2.5, 0.2, 1.0
	wider := func(sd, y float64) float64 {
		return math.Max(sd, math.Min(sd*(1+steep*math.Max(y-usual, 0)), most))
	}
	y := b.Surprise()
	s.slow, s.fast = wider(s.slow, y), wider(s.fast, -y)
	if b.Creep.Slower > 1 {
		wide := creepSpread * math.Log(b.Creep.Slower)
		s.slow, s.fast = math.Hypot(s.slow, wide), math.Hypot(s.fast, wide)
	}
	return s
}

// Again is the belief in another future; what the readings said of the past stays.
func (b *Belief) Again(c *Journey) *Belief {
	out := *b
	out.Journey = c
	var whole ride
	whole.set(c, b.Spread.Median, true)
	out.Whole = whole.finish()
	if b.usual != nil {
		out.usual = b.usual.in(c)
	}
	out.foresee(&whole)
	if out.zs != nil {
		out.Rest = out.product(out.zs, out.weight)
	}
	return &out
}

// Quantile is the minute from the put-on by which the piece is done with a probability.
func (b *Belief) Quantile(probability float64) float64 {
	rest := b.Rest.Quantile(probability)
	if probability > 0.5 && b.covered {
		rest = math.Max(rest, b.Worse.Quantile(probability))
	}
	if probability >= 0.9 {
		rest = math.Max(rest, b.lateLeast)
	}
	return b.Journey.Now + rest
}

// chance is the probability that the piece is done within some minutes from now.
func (b *Belief) chance(minutes float64) float64 {
	out := b.Rest.Chance(minutes)
	if b.covered {
		out = math.Min(out, b.Worse.Chance(minutes))
	}
	if b.Creep.On() {
		out = math.Min(out, CreepChance)
	}
	return out
}

// Z is the standard normal quantile of the chance that it is done by a minute.
func (b *Belief) Z(minute float64) float64 {
	const most = 8.0
	chance := b.chance(minute - b.Journey.Now)
	if chance > 0.5 { // as exact on this side
		return math.Min(-spread.NormalQuantile(math.Max(1-chance, 1e-15)), most)
	}
	return math.Max(spread.NormalQuantile(math.Max(chance, 1e-15)), -most)
}
