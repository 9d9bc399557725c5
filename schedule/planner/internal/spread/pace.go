package spread

import (
	"math"

	"example.com/cookday/schedule"
)

func (p Pace) Times(f float64) Pace {
	return Pace{p.Early * f, p.Expected * f, p.Late * f, p.Planned * f}
}

// Pace is one length of time, minutes, at four quantiles: the 10th, 50th and
// 90th percentile and the asked chance, which is what the plan counts with.
type Pace struct{ Early, Expected, Late, Planned float64 }

// Paces applies f to the four standard normal quantiles; z is that of the
// asked chance.
func Paces(z float64, f func(z float64) float64) Pace {
	return Pace{Early: f(-ZTenth), Expected: f(0), Late: f(ZTenth), Planned: f(z)}
}

// Same is a pace that is the same however it goes.
func Same(minutes float64) Pace {
	return Pace{Early: minutes, Expected: minutes, Late: minutes, Planned: minutes}
}

func (p Pace) Plus(q Pace) Pace {
	return Pace{p.Early + q.Early, p.Expected + q.Expected, p.Late + q.Late, p.Planned + q.Planned}
}

func (p Pace) Minutes() schedule.Minutes {
	return schedule.Minutes{Early: p.Early, Expected: p.Expected, Late: p.Late}
}

// At is the pace at the standard normal quantile z: a straight line in the
// logarithm through early, expected and late, which it is exactly but for wraps
// that wait for a clock.
func (p Pace) At(z float64) float64 {
	from, to := p.Expected, p.Late
	if z < 0 {
		from, to = p.Expected, p.Early
	}
	if from <= 0 || to <= 0 {
		return from
	}
	return from * math.Exp(math.Log(to/from)*math.Abs(z)/ZTenth)
}

// QuantileOf is the inverse of at: the standard normal quantile at which it takes
// so many minutes.
func (p Pace) QuantileOf(minutes float64) float64 {
	s := p.Scaled()
	return s.QuantileOf(minutes)
}

// ScaledPace is a pace of which much is asked: the slopes of its logarithm below and
// above the median are worked out.
type ScaledPace struct {
	Pace
	below, above float64
}

func (p Pace) Scaled() ScaledPace {
	return ScaledPace{Pace: p, below: p.slope(p.Early), above: p.slope(p.Late)}
}

func (p Pace) slope(to float64) float64 { return math.Abs(math.Log(to/p.Expected)) / ZTenth }

func (p *ScaledPace) QuantileOf(minutes float64) float64 {
	slope, sign := p.above, 1.0
	if minutes < p.Expected {
		slope, sign = p.below, -1
	}
	switch {
	case minutes <= 0:
		return math.Inf(-1)
	case !(slope > 0):
		return sign * math.Inf(1)
	}
	return sign * math.Abs(math.Log(minutes/p.Expected)) / slope
}
