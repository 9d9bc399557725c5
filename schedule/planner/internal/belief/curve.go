package belief

import (
	"example.com/cookday/schedule/internal/heat"
)

// sample reads a curve that has its first point at its start, at an instant in s;
// beyond its last point it is endC.
func Sample(c heat.Curve, startC, endC, atS float64) float64 {
	i := atS / c.EveryS
	k := int(i)
	at := func(k int) float64 {
		switch {
		case k < 0:
			return startC
		case k >= len(c.Points):
			return endC
		}
		return c.Points[k].CoreC
	}
	return at(k) + (i-float64(k))*(at(k+1)-at(k))
}
