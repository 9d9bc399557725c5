package belief

import "math"

// huber is half the square near nothing and straight beyond: its density is log-concave,
// which keeps every quantile of a product monotone in what is told.
func huber(z float64) float64 {
	const bend = 1.5 // the usual choice, not fitted
	if z = math.Abs(z); z > bend {
		return bend * (z - bend/2)
	}
	return z * z / 2
}

// side is a scale with two sides: what is off downwards counts by fast, upwards by slow.
type side struct{ fast, slow float64 }

func (s side) cost(off float64) float64 {
	if off > 0 {
		return huber(off / s.slow)
	}
	return huber(off / s.fast)
}
