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
	out := Since{To: to}
	step := math.Max(gridStep, (to-proven)/mostSince)
	var at, weight []float64
	sum, n := 0.0, 0
	for t := proven; t < to || n == 0; t += step {
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

// grateFits is how much better the thermometers of the fire fit one that died at a minute
// than one that burns.
func (s *Scene) grateFits(from, to float64) float64 {
	fits := 1.0
	for _, g := range s.Grates {
		if g.Minute <= from || g.Minute > to {
			continue
		}
		fits *= normal(g.C, s.DeadAirC(from, g.Minute), g.sdK()) / normal(g.C, g.LevelC, aliveSdK)
	}
	return math.Min(fits, 1e6)
}

// normal is a density per kelvin, with a floor far out.
func normal(x, mean, sd float64) float64 {
	z := (x - mean) / sd
	return math.Max(math.Exp(-z*z/2)/(sd*math.Sqrt(2*math.Pi)), 1e-30)
}

// Date says since when a fire was out that is known to have been, up to a minute: told to
// be lit again, or found cold. What is known of the piece up to then, and one reading of
// its core that tells of the outage, weigh every instant since heat was last proven.
func Date(ctx context.Context, s *Scene, stand belief.Stand, readings []Reading, to float64) (Since, error) {
	proven := s.provenUntil(to - 1)
	tells := belief.Reading{Minute: to, CoreC: math.NaN()}
	last := to
	if n := len(readings); n > 0 {
		last = math.Max(last, readings[n-1].Minute)
	}
	o, err := belief.NewOutlook(ctx, s.Journey, stand, last)
	if err != nil {
		return Since{}, err
	}
	node := belief.Reading{CoreC: s.Journey.Body.StartC}
	from := o.From(node)
	for _, r := range readings {
		core, sd := from.At(r.Minute, r.CoreC)
		switch {
		case r.Minute <= to && math.Abs(r.CoreC-core) <= ordinarySd*sd && r.CoreC > node.CoreC:
			next := belief.Reading{Minute: r.Minute, CoreC: r.CoreC}
			if r.CoreC > core-2*sd {
				proven = s.provenBy(o, from, node, next, proven)
			}
			node = next
			from = o.From(node)
		case r.Minute > proven && (r.Minute <= to || math.IsNaN(tells.CoreC)) && r.Minute <= to+tellsMinutes:
			tells = belief.Reading{Minute: r.Minute, CoreC: r.CoreC}
		}
	}
	if cold := s.foundCold(to); cold < proven { // whatever its core: it was out by then
		proven = math.Max(cold-gridStep, 0)
	}
	out := s.since(o, node, proven, to, tells)
	out.Read = !math.IsNaN(tells.CoreC) || node.Minute > to-tellsMinutes
	return out, nil
}

// foundCold is the first minute up to another at which a thermometer shows that the fire is
// out, with none that proves heat after it; +Inf for none.
func (s *Scene) foundCold(to float64) float64 {
	cold := math.Inf(1)
	for _, g := range s.Grates {
		switch {
		case g.Minute > to:
		case g.proves():
			cold = math.Inf(1)
		case g.C < g.LevelC-deadK:
			cold = math.Min(cold, g.Minute)
		}
	}
	return cold
}

// deadK is how far below its level a grate is on no fire (as of the outages that are seen).
const deadK = 60

// tellsMinutes is how soon after a relighting a core still tells of the outage.
const tellsMinutes = 60.0
