package spread

import (
	"math"
)

// ZTenth is the standard normal quantile of 0.9; windows run from -zTenth to zTenth.
const ZTenth = 1.2815515655446004

// pieceShare is the spread between pieces of one dish, as a share of the dish's
// own spread. An assumption.
const pieceShare = 0.3

// GrateErrorK is the standard deviation of the grate temperature that all
// dishes share. An assumption.
const GrateErrorK = 6.0

// Spread describes a factor on predicted minutes by its quantiles: exp(Median + S z)
// up to the median, exp(Median + (S + Late) z) above it. Grate is the part of S that
// comes from the shared error of the grate.
type Spread struct {
	Median float64 // of the logarithm
	S      float64 // standard deviation of the logarithm below the median, all causes
	Late   float64 // what is added to it above the median, >= 0: slow days go further than fast ones
	Grate  float64 // change of the logarithm a standard deviation of the grate error makes, >= 0
}

// Factor is the factor at the standard normal quantile z.
func (s Spread) Factor(z float64) float64 {
	if z > 0 {
		return math.Exp(s.Median + (s.S+s.Late)*z)
	}
	return math.Exp(s.Median + s.S*z)
}

// Own is the standard deviation of the dish's own factor: what the shared part
// leaves. A little is always left, for no two pieces are alike.
func (s Spread) Own() float64 {
	return math.Sqrt(math.Max(s.S*s.S-s.Grate*s.Grate, pieceShare*pieceShare*s.S*s.S))
}

// OwnSlow is Own of the slow side.
func (s Spread) OwnSlow() float64 { return s.slowSide().Own() }

// slowSide is a spread as wide on both sides as s is above its median.
func (s Spread) slowSide() Spread {
	s.S, s.Late = s.S+s.Late, 0
	return s
}

// Told is the spread once the shared error of the grate is known to be near mean, with sd
// left of it, both in its standard deviations.
func (s Spread) Told(mean, sd float64) Spread {
	t := Spread{Median: s.Median + s.Grate*mean, Grate: s.Grate * sd}
	t.S = math.Hypot(s.Own(), t.Grate)
	t.Late = math.Max(math.Hypot(s.OwnSlow(), t.Grate)-t.S, 0)
	return t
}

// Z is the standard normal quantile at which the logarithm of the factor is x.
func (s Spread) Z(x float64) float64 {
	if x > s.Median {
		return (x - s.Median) / (s.S + s.Late)
	}
	return (x - s.Median) / s.S
}

// SlowestOf is the spread of the slowest of n like pieces: the expected
// greatest of n normal values (Blom's approximation, 1958, from memory) times
// the spread between pieces.
func (s Spread) SlowestOf(n int) Spread {
	if n > 1 {
		s.Median += pieceShare * s.S * NormalQuantile((float64(n)-0.375)/(float64(n)+0.25))
	}
	return s
}

// BetweenPieces is by how much, of the logarithm, the slowest of n like pieces takes longer than
// one of them: its median, and the standard deviation between two pieces.
func (s Spread) BetweenPieces(n int) (median, sd float64) {
	return s.SlowestOf(n).Median - s.Median, pieceShare * s.S
}

// NormalCDF is the standard normal distribution.
func NormalCDF(z float64) float64 { return 0.5 * math.Erfc(-z/math.Sqrt2) }

// NormalQuantile is its inverse for p in (0, 1).
func NormalQuantile(p float64) float64 { return -math.Sqrt2 * math.Erfcinv(2*p) }

// Readiness is one dish's margin: it is ready in time if its standard normal
// factor stays below Z.
type Readiness struct {
	Z float64
	Spread
	Over float64 // probability that it is ready so early that it does not keep until then
}

// Chance is the probability that the dish is ready in time and keeps.
func (r Readiness) Chance() float64 { return math.Max(NormalCDF(r.Z)-r.Over, 0) }

// keeps is the share of Chance in being in time.
func (r Readiness) keeps() float64 {
	if r.Over == 0 {
		return 1
	}
	return r.Chance() / NormalCDF(r.Z)
}

// ChanceOfAll is the probability that all are ready in time. Given the grate
// error the dishes are independent, so it is one integral over that error
// (Simpson's rule, 64 intervals over 5 standard deviations either way).
func ChanceOfAll(rs []Readiness) float64 {
	const n, reach = 64, 5.0
	h := 2 * reach / n
	sum := 0.0
	for i := 0; i <= n; i++ {
		g := -reach + float64(i)*h
		w := 2.0
		switch {
		case i == 0 || i == n:
			w = 1
		case i%2 == 1:
			w = 4
		}
		sum += w * math.Exp(-g*g/2) * chanceGiven(rs, g)
	}
	p := math.Min(1, sum*h/3/math.Sqrt(2*math.Pi))
	for _, r := range rs { // each fails alone
		p *= r.keeps()
	}
	return p
}

// chanceGiven is the same for a known grate error, in standard deviations of a
// cooler (slower) grate.
func chanceGiven(rs []Readiness, g float64) float64 {
	p := 1.0
	for _, r := range rs {
		if r.S > 0 {
			p *= NormalCDF((r.Z*r.S - r.Grate*g) / r.Own())
		}
	}
	return p
}
