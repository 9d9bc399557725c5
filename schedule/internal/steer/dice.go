package steer

import "math"

// dice are a splitmix64 generator: small, the same everywhere, and nobody else's.
type dice struct {
	state uint64
	spare float64
	has   bool
}

func (d *dice) next() uint64 {
	d.state += 0x9e3779b97f4a7c15
	z := d.state
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// unit is between 0 and 1, never at either.
func (d *dice) unit() float64 { return (float64(d.next()>>11) + 0.5) / (1 << 53) }

// normal is drawn by the polar method, two at a time.
func (d *dice) normal() float64 {
	if d.has {
		d.has = false
		return d.spare
	}
	for {
		u, v := 2*d.unit()-1, 2*d.unit()-1
		if s := u*u + v*v; s < 1 {
			f := math.Sqrt(-2 * math.Log(s) / s)
			d.spare, d.has = v*f, true
			return u * f
		}
	}
}

// factor is log-normal about 1.
func (d *dice) factor(spread float64) float64 { return math.Exp(spread * d.normal()) }

// Seed makes one of a text, such as a plan's id; 1 of no text.
func Seed(text string) uint64 {
	if text == "" {
		return 1
	}
	h := uint64(14695981039346656037) // FNV-1a
	for i := range len(text) {
		h = (h ^ uint64(text[i])) * 1099511628211
	}
	return h
}
