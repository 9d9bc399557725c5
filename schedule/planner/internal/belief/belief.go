package belief

import (
	"context"
	"math"

	"example.com/cookday/schedule/planner/internal/spread"
	"example.com/cookday/schedule/unit"
)

// What a reading of the core is off by. Two degrees Fahrenheit are the probe's
// and its place (common practice, no source). Between 135 and 175 F the model
// itself is off by eight: its plateau is a ramp, real ones are flatter (from a
// university demonstration of the stall, where it ends 8 F high after 6 h).
const (
	ProbeErrorK = 2 / 1.8
	stallErrorK = 8 / 1.8
	stallEdgeK  = 6 // the model's error fades over so much on either side (assumption)
)

var StallLowC, StallHighC = unit.FToC(135), unit.FToC(175)

// Assumptions on what many readings are worth.
const (
	// independentMinutes: the model's error and the probe's place last. Readings
	// closer than this tell in part the same thing, and count in part.
	independentMinutes = 60
	// outlierShare of the readings that no detector has found out are wrong all the
	// same, by anything up to outlierRangeK.
	outlierShare  = 0.02
	outlierRangeK = 80
	// paceDrift is what comes anew along the cook instead of staying with the piece
	// from its first minute (wind, a hand on the vents, a stall that is not the
	// model's): a sixth of the variance of the dish's own factor, so 0.4 of its
	// standard deviation.
	paceDrift = 0.4
	// mostPast is how much of a cook that is not over may count as past.
	mostPast = 0.97
	// placeErrorK: two places in the middle of one piece are not equally hot (home
	// cooks who measured twice report 10 and 15 F), so it comes off when the place
	// that is measured then is done.
	PlaceErrorK     = 4 / 1.8
	MostPlaceSpread = 0.1
)

// The grids: paths that are simulated, points of the logarithm of the pace, and
// points of the grate's error in standard deviations.
const (
	pathCount  = 25
	paceCount  = 161
	pathReach  = 3.6 // standard deviations
	grateCount = 15
	grateReach = 3.0
)

// Belief is what is believed of the pace of one piece: weights over the
// logarithm of its pace, and the model's path at each.
type Belief struct {
	spread spread.Spread // before any reading
	Stalls bool          // the cut has a stall
	ratio  float64
	Paths  []Path
	xs     []float64
	chance []float64 // of each x; adds up to 1
	past   []float64 // the same of the pace up to the last reading
	like   []float64 // likelihood of the readings at each pace of the whole cook
	sofar  []float64 // and at each pace up to the last reading
	Drift  float64   // variance of that pace about the pace of the whole cook

	Whole float64 // minutes of the cook at the model's own pace, as first planned
	Lost  float64 // minutes without heat so far
	Place float64 // what the place of the probe does to the take-off, in the logarithm

	grate  float64 // mean and standard deviation of the grate's error, in
	GrateS float64 // its standard deviations; positive is cooler
}

// NewBelief follows a course at all paces that may be.
func NewBelief(ctx context.Context, c *Journey, s spread.Spread, stalls bool) (*Belief, error) {
	b := &Belief{spread: s, Stalls: stalls, ratio: 1}
	fastest, slowest := s.Median-s.S*pathReach, s.Median+(s.S+s.Late)*pathReach
	for i := range pathCount {
		if err := ctx.Err(); err != nil { // a path with many readings takes milliseconds
			return nil, err
		}
		b.Paths = append(b.Paths, c.run(fastest+(slowest-fastest)*float64(i)/(pathCount-1)))
	}
	low, high := b.Paths[0].Lnf, b.Paths[pathCount-1].Lnf
	for i := range paceCount {
		b.xs = append(b.xs, low+(high-low)*float64(i)/(paceCount-1))
	}
	return b, nil
}

// Again is the belief in another future; what the readings said stays.
func (b *Belief) Again(c *Journey) *Belief {
	out := *b
	out.Paths = make([]Path, len(b.Paths))
	for i, p := range b.Paths {
		out.Paths[i] = p.again(c)
	}
	return &out
}

// Between reads a figure of the paths at x, linear in the logarithm of the pace.
func (b *Belief) Between(x float64, of func(*Path) float64) float64 {
	low, high := b.Paths[0].Lnf, b.Paths[len(b.Paths)-1].Lnf
	i := (x - low) / (high - low) * float64(len(b.Paths)-1)
	k := min(max(int(i), 0), len(b.Paths)-2)
	share := math.Min(math.Max(i-float64(k), 0), 1)
	a, c := of(&b.Paths[k]), of(&b.Paths[k+1])
	if math.IsInf(c, 1) && share > 0 || math.IsInf(a, 1) {
		return math.Inf(1)
	}
	return a + share*(c-a)
}

// coreAt is the core at the k-th reading at the pace exp(x).
func (b *Belief) coreAt(x float64, k int) float64 {
	i := (x - b.Paths[0].Lnf) / (b.Paths[1].Lnf - b.Paths[0].Lnf)
	j := min(max(int(i), 0), len(b.Paths)-2)
	low, high := b.Paths[j].cores[k], b.Paths[j+1].cores[k]
	return low + (i-float64(j))*(high-low)
}

// Done and wrap are the minutes from the put-on at the pace exp(x).
func (b *Belief) Done(x float64) float64 {
	return math.Exp(b.Between(x, func(p *Path) float64 { return math.Log(p.Done) }))
}

func (b *Belief) Wrap(x float64) float64 {
	return b.Between(x, func(p *Path) float64 {
		if math.IsNaN(p.wrap) {
			return p.Done
		}
		return p.wrap
	})
}

// ErrorK is the standard deviation of a reading against the model.
func (b *Belief) ErrorK(coreC float64) float64 {
	if !b.Stalls {
		return ProbeErrorK
	}
	out := math.Max(math.Max(StallLowC-coreC, coreC-StallHighC), 0)
	return math.Hypot(ProbeErrorK, stallErrorK*math.Max(1-out/stallEdgeK, 0))
}

// Quantile is the logarithm of the pace of the whole cook that is not exceeded
// with a probability; paceSoFar the same of the pace up to the last reading.
func (b *Belief) Quantile(probability float64) float64 { return b.quantileOf(b.chance, probability) }

func (b *Belief) PaceSoFar(probability float64) float64 {
	return b.quantileOf(b.past, probability)
}

func (b *Belief) quantileOf(chance []float64, probability float64) float64 {
	sum := 0.0
	for i, c := range chance {
		if sum+c >= probability {
			step := b.xs[1] - b.xs[0]
			return b.xs[i] + step*((probability-sum)/c-0.5)
		}
		sum += c
	}
	return b.xs[len(b.xs)-1]
}
