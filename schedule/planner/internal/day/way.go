package day

import (
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/planner/internal/belief"
	"example.com/cookday/schedule/planner/internal/spread"
)

// JourneyEndsAs sets where a cook on the grate ends: before the sear, when it has been
// tender-hot for long enough, or at its target.
func JourneyEndsAs(c *belief.Journey, w Way, kind cut.Cut) {
	switch {
	case w.Sear:
		c.TargetC = w.WrapC
	case w.tenderS > 0:
		c.TargetC, c.TenderS = kind.TenderAboveC, w.tenderS
	default:
		c.TargetC = w.PullC
	}
}

// Way is one way of cooking a lot: where, how hot, under what, and how long.
type Way struct {
	Kind   schedule.StageKind // of the first stage: bare or sear
	Rank   int                // of its place and level among those of the dish, from 0
	Direct bool
	LevelC float64 // of the fire for an indirect way; of the air over the coals for a direct one
	AirC   float64 // what the model is given for that level, of an indirect way
	Creeps bool    // a little cooler it would take far longer
	Band   string
	With   string // what the second stage is wrapped in
	WrapC  float64
	Fixed  bool        // the wrap is by the clock: it waits
	InOven spread.Pace // minutes of the second stage if it is in the kitchen oven; zero: not offered
	Sear   bool        // the second stage is over the hot coals

	First, Second spread.Pace // minutes; second is zero without a second stage
	Spread        spread.Spread
	Z             float64 // the standard normal quantile that the plan counts with
	Slack         float64 // minutes of the reserve of a slow day that come after a sear, not before it
	Sure          float64 // chance, at that quantile, that it is in time and kept until it is eaten
	Flips         int
	PullC         float64   // core at take-off
	tenderS       float64   // how long it must be tender-hot, at the model's own pace; 0: the core decides
	Cost          int       // in the solver's units, over the cut's habit
	State         *heat.Sim // at take-off, at the model's own pace; nil where the model follows nothing
	ModelWrap     float64   // minutes to the wrap and to take-off at the model's own pace
	ModelDone     float64

	Believed *belief.Belief // of a piece that is on the grate in a revision
	Others   bool           // it was read done, and others of its dish were not
}

func (w Way) Total() spread.Pace { return w.First.Plus(w.Second) }

// CountedAt is the way as it is planned where the plan counts with another standard normal
// quantile of it.
func (w Way) CountedAt(z float64) Way {
	total := w.Total().At(z)
	w.Z, w.First.Planned = z, total
	if w.Stages() > 1 {
		w.First.Planned = w.First.At(z)
		w.Second.Planned = math.Max(total-w.First.Planned, 1)
	}
	if w.InOven.Planned > 0 {
		w.InOven.Planned = w.InOven.At(z)
	}
	return w
}

// When is what the model shows at an instant in s, in minutes from the put-on at a
// standard normal quantile of the pace: before the wrap with the first stage, which
// may wait for a clock, and after it with the second.
func (w Way) When(modelS float64) func(z float64) float64 {
	at := modelS / 60
	return func(z float64) float64 {
		f := w.Spread.Factor(z)
		if w.Stages() == 1 || at <= w.ModelWrap {
			return math.Min(at*f, w.First.At(z))
		}
		return math.Min(w.First.At(z)+(at-w.ModelWrap)*f, w.Total().At(z))
	}
}

func (w Way) Stages() int {
	if w.Second.Planned > 0 {
		return 2
	}
	return 1
}

// QuantileOf is that of the whole cook.
func (w Way) QuantileOf(minutes float64) float64 {
	if w.Believed != nil && !w.Sear && !w.Others && w.Spread.S > 0 {
		return w.Believed.Z(minutes)
	}
	return w.Total().QuantileOf(minutes)
}

// DoneC is the core that a dish is done at, degC: what it is taken off at, but for a sear,
// which brings it there at rest.
func (w Way) DoneC(it *Item) float64 {
	if w.Sear {
		return it.TargetC
	}
	return w.PullC
}
