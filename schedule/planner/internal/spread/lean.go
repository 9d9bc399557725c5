package spread

import "math"

// BetweenCooks is how far the cooks of one grill and one cook lie from the model's, all of them alike: the spread of the
// logarithm of their minutes (assumption: a third of the variance of a brisket's own scatter, 0.21. It is what is alike
// each time, the place of the probe, the trim, a thermometer that reads high; that the pieces themselves differ is not).
const BetweenCooks = 0.12

// Lean is what is known of that: by how much the logarithm of the minutes lies off the model's, and how unsure that is.
type Lean struct{ Mean, SD float64 }

// Unknown is the lean of somebody of whom no cook is known.
func Unknown() Lean { return Lean{SD: BetweenCooks} }

const (
	leanWanders = 0.02 // from one cook to the next (assumption)
	oddCook     = 2    // standard deviations from which a cook counts no more than if it were so far off
)

// After is the lean after one more cook, which came off by so much of the logarithm; sd is how far a single cook of a
// known pace may be off. It is shrunk: one cook moves it by less than half, and none by more than an odd one may.
func (l Lean) After(off, sd float64) Lean {
	l.SD = math.Min(math.Hypot(l.SD, leanWanders), BetweenCooks)
	most := oddCook * math.Hypot(l.SD, sd)
	share := l.SD * l.SD / (l.SD*l.SD + sd*sd)
	return Lean{
		Mean: l.Mean + share*math.Min(math.Max(off-l.Mean, -most), most),
		SD:   l.SD * math.Sqrt(1-share),
	}
}

// Left is a scatter of cooks whose pace is as unsure as that.
func (l Lean) Left(sd float64) float64 {
	left := math.Min(l.SD, BetweenCooks)
	return math.Sqrt(math.Max(sd*sd-BetweenCooks*BetweenCooks+left*left, sd*sd/4))
}
