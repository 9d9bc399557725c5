package belief

import (
	"context"
	"math"
	"slices"
)

// Weigh works out the likelihood of readings at each pace of the whole cook. The
// readings are in order and are those the paths were asked for.
//
// The mean pace y up to a share u of the cook is the pace of the whole cook and a
// drift of variance paceDrift^2 own^2 (1/u - 1), and given y at one reading, what
// is before it depends on nothing that comes after: y is a Brownian motion in 1/u.
// So the likelihood is carried from reading to reading: blurred by the drift
// between them, times what the next one says, and at last blurred to u = 1.
func (b *Belief) Weigh(ctx context.Context, readings []Reading) error {
	b.like, b.sofar, b.Drift = ones(len(b.xs)), ones(len(b.xs)), 0
	var says [][]float64
	var at []float64
	before := math.Inf(-1)
	for k, r := range readings {
		if err := ctx.Err(); err != nil { // thousands of readings take a tenth of a second
			return err
		}
		if r.Counts() {
			worth := math.Min(1, (r.Minute-before)/independentMinutes)
			before = r.Minute
			says, at = append(says, b.says(k, r, worth)), append(at, math.Max(r.Minute, 1))
		}
	}
	if len(says) == 0 {
		return nil
	}
	pace := b.spread.Median
	for range 2 { // how far along the cook is depends on its pace
		if err := ctx.Err(); err != nil {
			return err
		}
		b.carry(says, at, pace)
		pace = b.mode()
	}
	return nil
}

func ones(n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = 1
	}
	return out
}

// says is the likelihood of one reading at each pace up to it.
func (b *Belief) says(k int, r Reading, worth float64) []float64 {
	out := make([]float64, len(b.xs))
	s := b.ErrorK(r.CoreC)
	for i, x := range b.xs {
		z := (r.CoreC - b.coreAt(x, k)) / s
		out[i] = (1-outlierShare)*math.Exp(-z*z/2)/(s*math.Sqrt(2*math.Pi)) + outlierShare/outlierRangeK
		if worth < 1 {
			out[i] = math.Exp(worth * math.Log(out[i]))
		}
	}
	return out
}

// carry takes the likelihood through the readings to the end of a cook of a pace.
func (b *Belief) carry(says [][]float64, at []float64, pace float64) {
	whole := math.Max(b.Whole*math.Exp(pace)+b.Lost, at[len(at)-1]/mostPast)
	step := b.xs[1] - b.xs[0]
	own := paceDrift * b.spread.Own()
	like, due := slices.Clone(says[0]), 0.0
	for k := 1; k < len(says); k++ {
		due += own * own * whole * (1/at[k-1] - 1/at[k])
		if due > step*step/9 {
			like, due = blurred(like, math.Sqrt(due)/step), 0
		}
		most := 0.0
		for i, says := range says[k] {
			like[i] *= says
			most = max(most, like[i])
		}
		for i := range like {
			like[i] /= most
		}
	}
	b.Drift = own*own*(whole/at[len(at)-1]-1) + due
	b.sofar = like
	b.like = blurred(like, math.Hypot(math.Sqrt(b.Drift), b.Place)/step)
}

// mode is the likeliest pace up to the last reading.
func (b *Belief) mode() float64 {
	best, at := -1.0, b.spread.Median
	s := b.spread.S*b.spread.S + b.Drift
	for i, x := range b.xs {
		z := x - b.spread.Median
		if w := b.sofar[i] * math.Exp(-z*z/(2*s)); w > best {
			best, at = w, x
		}
	}
	return at
}

// blurred is a likelihood under a normal error of so many steps. Beyond the ends
// of the grid it is what it is there.
func blurred(like []float64, steps float64) []float64 {
	if steps < 0.1 {
		return like
	}
	reach := int(math.Ceil(3.5 * steps))
	kernel, sum := make([]float64, reach+1), 0.0
	for j := range kernel {
		z := float64(j) / steps
		kernel[j] = math.Exp(-z * z / 2)
		sum += kernel[j]
	}
	sum = 2*sum - kernel[0]
	out := make([]float64, len(like))
	last := len(like) - 1
	for i := range out {
		total := kernel[0] * like[i]
		for j := 1; j <= reach; j++ {
			total += kernel[j] * (like[max(i-j, 0)] + like[min(i+j, last)])
		}
		out[i] = total / sum
	}
	return out
}
