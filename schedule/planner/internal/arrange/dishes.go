package arrange

import (
	"math"
)

// takeOff is when the batch is done, in minutes from the put-on. A sear begins
// when it is planned, or when the slow side is late.
func (p *Placed) TakeOff(z float64) float64 {
	if p.Way.Sear && p.Stages() == 2 {
		return math.Max(p.Way.First.At(z), p.On-p.Wrap) + p.Way.Second.At(z)
	}
	return p.Way.Total().At(z)
}
