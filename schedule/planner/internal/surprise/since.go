package surprise

import (
	"context"
	"math"

	"example.com/cookday/schedule/planner/internal/belief"
)

// Since is when a fire may have died.
type Since struct {
	Mean, Earliest float64 // minutes; the second with 95 %
	To             float64 // until when it was out
	Density        float64 // mean over all instants of how well they fit, per K
	Fits           bool    // some instant does
	Read           bool    // a core tells of it
}

// coreSdK is what a core on a dead fire is off by (assumption).
const coreSdK = 11 / 1.8

// since weighs every instant between two minutes at which the fire may have died, by a
// core and by what the grate showed. from is a node that is known of the piece; proven is
// the last proof of heat; to is until when it was out.
func (s *Scene) since(o *belief.Outlook, from belief.Reading, proven, to float64, core belief.Reading) Since {
	return s.sinceBy(o, from, proven, to, to, core)
}

// sinceBy is the same of a fire that was out by a minute, whatever came after it.
func (s *Scene) sinceBy(o *belief.Outlook, from belief.Reading, proven, by, to float64, core belief.Reading) Since {
	out := Since{To: to}
	step := math.Max(gridStep, (by-proven)/mostSince)
	var at, weight []float64
	sum, n := 0.0, 0
	for t := proven; t < by || n == 0; t += step {
		n++
		w := s.grateFits(t, to)
		if !math.IsNaN(core.CoreC) && w > 1e-12 {
			w *= normal(core.CoreC, o.In(s.Without(t, to), from, core.Minute), coreSdK)
		}
		at, weight = append(at, t), append(weight, w)
		sum += w
	}
	out.Density = sum / float64(n)
	if !(sum > 0) {
		out.Mean, out.Earliest = proven, proven
		return out
	}
	out.Fits = true
	before, found := 0.0, false
	for i, w := range weight {
		out.Mean += at[i] * w / sum
		if before += w / sum; before >= 0.05 && !found {
			out.Earliest, found = at[i], true
		}
	}
	return out
}

// grateFits is how much better the thermometers of the fire fit one that failed at a minute
// than one that burns: that died, or that burned on weakly, at any heat that is none.
func (s *Scene) grateFits(from, to float64) float64 {
	fits := 1.0
	for _, g := range s.Grates {
		if g.Minute <= from || g.Minute > to {
			continue
		}
		fits *= s.failedFits(from, g) / normal(g.C, g.LevelC, aliveSdK)
	}
	return math.Min(fits, 1e6)
}

// weakShare is the share of the fires that fail which burn on weakly, and GlowsK by how much at the
// least such a fire keeps its grate warmer than the air: nearer to it a fire is as good as dead
// (assumptions).
const (
	weakShare = 0.5
	GlowsK    = 60 / 1.8
)

// failedFits is the density of what a thermometer shows of a fire that failed at a minute.
func (s *Scene) failedFits(from float64, g Grate) float64 {
	deadC := s.DeadAirC(from, g.Minute)
	died := normal(g.C, deadC, g.sdK())
	outC := s.OutsideC(g.Minute)
	if !g.weak() || g.C <= deadC {
		return died
	}
	glows := math.Min(math.Max((g.C-outC)/GlowsK, 0), 1)
	share := weakShare * glows * glows
	return (1-share)*died + share/math.Max(g.LevelC-outC, 1)
}

// normal is a density per kelvin, with a floor far out.
func normal(x, mean, sd float64) float64 {
	z := (x - mean) / sd
	return math.Max(math.Exp(-z*z/2)/(sd*math.Sqrt(2*math.Pi)), 1e-30)
}

// Date says since when a fire was out that is known to have been, up to a minute: told to
// be lit again, or found cold. What is known of the piece up to then, and one reading of
// its core that tells of the outage, weigh every instant since heat was last proven and up to
// the first reading of the grate that shows it out.
func Date(ctx context.Context, s *Scene, stand belief.Stand, readings []Reading, to float64) (Since, error) {
	d, err := s.dating(ctx, stand, readings, to)
	if err != nil {
		return Since{}, err
	}
	return d.since(s), nil
}

// DateTold is Date of a fire that somebody told to have gone out at a minute. holds says
// whether what was read allows that: a fire that went out later than its grate and the core
// can have fallen did not.
func DateTold(ctx context.Context, s *Scene, stand belief.Stand, readings []Reading, told, to float64) (since Since, holds bool, err error) {
	d, err := s.dating(ctx, stand, readings, to)
	if err != nil || told <= d.proven {
		return Since{}, true, err
	}
	d.by = math.Min(d.by, told)
	is, best := d.fits(s, told), math.Inf(-1)
	for t := d.proven; t <= told; t += math.Max(gridStep, (told-d.proven)/mostSince) {
		best = math.Max(best, d.fits(s, t))
	}
	if is > best-toldSd*toldSd/2 {
		return Since{}, true, nil
	}
	return d.since(s), false, nil
}

// toldSd is by how many standard deviations what was read must speak against the minute at
// which somebody says that a fire went out (judgment).
const toldSd = 3.0

// dating is what an outage is dated by: a node of the piece, the last proof of heat, the
// minute by which the fire was out, that up to which it was, and a core that tells of it.
type dating struct {
	o              *belief.Outlook
	node, tells    belief.Reading
	proven, by, to float64
}

func (s *Scene) dating(ctx context.Context, stand belief.Stand, readings []Reading, to float64) (*dating, error) {
	d := &dating{proven: s.provenUntil(to - 1), tells: belief.Reading{Minute: to, CoreC: math.NaN()}, node: belief.Reading{CoreC: s.Journey.Body.StartC}, to: to}
	last := to
	if n := len(readings); n > 0 {
		last = math.Max(last, readings[n-1].Minute)
	}
	var err error
	if d.o, err = belief.NewOutlook(ctx, s.Journey, stand, last); err != nil {
		return nil, err
	}
	cold, latest := s.foundCold(to)
	from := d.o.From(d.node)
	for _, r := range readings {
		core, sd := from.At(r.Minute, r.CoreC)
		switch {
		case r.Minute <= math.Min(to, latest) && math.Abs(r.CoreC-core) <= ordinarySd*sd && r.CoreC > d.node.CoreC:
			next := belief.Reading{Minute: r.Minute, CoreC: r.CoreC}
			if r.CoreC > core-2*sd {
				d.proven = s.provenBy(d.o, from, d.node, next, d.proven)
			}
			d.node = next
			from = d.o.From(d.node)
		case r.Minute > d.proven && (r.Minute <= to || math.IsNaN(d.tells.CoreC)) && r.Minute <= to+tellsMinutes:
			d.tells = belief.Reading{Minute: r.Minute, CoreC: r.CoreC}
		}
	}
	if cold < d.proven { // whatever its core: it was out by then
		d.proven = math.Max(cold-gridStep, 0)
	}
	d.by = math.Min(to, math.Max(cold, d.proven))
	return d, nil
}

func (d *dating) since(s *Scene) Since {
	out := s.sinceBy(d.o, d.node, d.proven, d.by, d.to, d.tells)
	out.Read = !math.IsNaN(d.tells.CoreC) || d.node.Minute > d.to-tellsMinutes
	return out
}

// fits is the logarithm of how well all that was read fits a fire that went out at a minute.
func (d *dating) fits(s *Scene, at float64) float64 {
	sum := 0.0
	for _, g := range s.Grates {
		switch {
		case g.Minute <= d.proven || g.Minute > d.to:
		case g.Minute <= at:
			sum += math.Log(normal(g.C, g.LevelC, aliveSdK))
		default:
			sum += math.Log(s.failedFits(at, g))
		}
	}
	if !math.IsNaN(d.tells.CoreC) {
		sum += math.Log(normal(d.tells.CoreC, d.o.In(s.Without(at, d.to), d.node, d.tells.Minute), coreSdK))
	}
	return sum
}

// foundCold is the first minute up to another at which a thermometer shows that the fire is
// out, with none that proves heat after it, and the latest at which it can have gone out to be
// as cold by then; +Inf for none.
func (s *Scene) foundCold(to float64) (cold, latest float64) {
	cold, latest = math.Inf(1), math.Inf(1)
	for _, g := range s.Grates {
		switch {
		case g.Minute > to:
		case g.proves():
			cold, latest = math.Inf(1), math.Inf(1)
		case g.Minute >= latest:
		case g.C < g.LevelC-deadK, g.weak():
			latest = g.Minute
			for latest > 0 && s.DeadAirC(latest, g.Minute) > g.C+ordinarySd*g.sdK() {
				latest = math.Max(latest-coolsStep, 0)
			}
			if g.C < g.LevelC-deadK {
				cold = math.Min(cold, g.Minute)
			}
		}
	}
	return cold, latest
}

// coolsStep is how finely a grate that cools is dated back, minutes.
const coolsStep = 5.0

// deadK is how far below its level a grate is on no fire (as of the outages that are seen).
const deadK = 60

// tellsMinutes is how soon after a relighting a core still tells of the outage.
const tellsMinutes = 60.0
