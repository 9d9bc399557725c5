package belief

import (
	"context"
	"math"
)

// Outlook foretells readings: of a piece that was known at one minute, the core at a
// later one.
type Outlook struct {
	Stand
	l *lattice
}

// NewOutlook follows a journey up to a minute.
func NewOutlook(ctx context.Context, c *Journey, s Stand, until float64) (*Outlook, error) {
	l, err := newLattice(ctx, c, s.Spread.Median, until, outlookSide)
	return &Outlook{Stand: s, l: l}, err
}

// Foretold is the core from a node on.
type Foretold struct {
	o     *Outlook
	from  Reading
	way   ride
	wayS  float64 // where the node lies on its curve
	paceS float64
}

// The spread of a pace, of its logarithm, up to a first reading and after one.
const paceFromPutOn, paceFromReading = 0.4, 0.5

// From is what is to come after a node; minute 0 is the put-on, whatever its core.
func (o *Outlook) From(node Reading) *Foretold {
	f := &Foretold{o: o, from: node, paceS: paceFromReading}
	if node.Minute <= 0 {
		f.paceS = paceFromPutOn
		f.way.set(o.l.c, o.l.usual, true)
	} else {
		f.way, _ = o.l.anchored(node.Minute, node.CoreC, true)
	}
	f.wayS = f.way.atS
	f.way.through(node.Minute+(o.l.minute-node.Minute)*math.Exp(f.paceS)+1, false)
	return f
}

// At is the median of the core at a minute, and its standard deviation with that of a
// reading, on the side on which what was read lies: how hot a fast piece may be by then
// says nothing of how cold a slow one is.
func (f *Foretold) At(minute, readC float64) (coreC, sdK float64) {
	at := func(took float64) float64 {
		return Sample(f.way.curve, f.o.l.c.Body.StartC, f.way.sim.CoreC(), f.wayS+took/f.way.f*60)
	}
	took := math.Max(minute-f.from.Minute, 0)
	coreC = at(took)
	other := at(took * math.Exp(f.paceS))
	if readC < coreC {
		other = at(took * math.Exp(-f.paceS))
	}
	return coreC, math.Hypot(f.o.errorK(coreC, took), math.Abs(other-coreC))
}

// Slow is by how many standard deviations of the pace a piece must be slow to be no warmer
// than a core at a minute, less what a reading of it may be off; 0 if it is not.
func (f *Foretold) Slow(minute, coreC float64) float64 {
	const step, most = 0.25, 6.0
	took := math.Max(minute-f.from.Minute, 0)
	for z := 0.0; z < most; z += step {
		c := Sample(f.way.curve, f.o.l.c.Body.StartC, f.way.sim.CoreC(), f.wayS+took*math.Exp(-z*f.paceS)/f.way.f*60)
		if c <= coreC+f.o.errorK(c, took) {
			return z
		}
	}
	return most
}

// piecesErrorK is what one piece of several is off by: home cooks who measured two of a
// kind report differences of 10 to 20 F.
const piecesErrorK = 10 / 1.8

// errorK is the standard deviation of a reading against the model, some minutes after the
// node that it is foretold from: the model's own error in the stall grows between the two.
func (s Stand) errorK(coreC, took float64) float64 {
	own := math.Hypot(ProbeErrorK, PlaceErrorK)
	if s.Pieces > 1 {
		own = math.Hypot(own, piecesErrorK)
	}
	if !s.Stalls {
		return own
	}
	out := math.Max(math.Max(StallLowC-coreC, coreC-StallHighC), 0)
	return math.Hypot(own, stallErrorK*math.Max(1-out/stallEdgeK, 0)*math.Min(took/stallErrorMinutes, 1))
}

// In is the core at a minute of the piece of a node that goes on through another journey:
// one in which, say, the fire was out. The two agree up to the node.
func (o *Outlook) In(c *Journey, node Reading, minute float64) float64 {
	var r ride
	if node.Minute <= 0 {
		r.set(c, o.l.usual, false)
	} else {
		r, _ = o.l.anchored(node.Minute, node.CoreC, false)
		r.c = c
	}
	r.through(minute, false)
	return r.sim.CoreC()
}
