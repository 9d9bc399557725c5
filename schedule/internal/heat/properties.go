package heat

// quadratic is a property of temperature, a + b T + c T^2 with T in degC.
type quadratic struct{ a, b, c float64 }

func (q quadratic) at(tempC float64) float64 { return q.a + tempC*(q.b+tempC*q.c) }

func (q quadratic) plus(share float64, o quadratic) quadratic {
	return quadratic{q.a + share*o.a, q.b + share*o.b, q.c + share*o.c}
}

// component holds what one part of a food contributes: conductivity in
// W/(m K), specific heat in J/(kg K), density in kg/m3.
type component struct{ conductivity, heat, density quadratic }

// Choi and Okos 1986, as printed in the ASHRAE Refrigeration handbook; valid
// from -40 to 150 degC (specific heat of water from 0 degC).
var (
	water = component{
		quadratic{0.57109, 1.7625e-3, -6.7036e-6},
		quadratic{4176.2, -0.090864, 5.4731e-3},
		quadratic{997.18, 3.1439e-3, -3.7574e-3},
	}
	protein = component{
		quadratic{0.17881, 1.1958e-3, -2.7178e-6},
		quadratic{2008.2, 1.2089, -1.3129e-3},
		quadratic{1329.9, -0.5184, 0},
	}
	fat = component{
		quadratic{0.18071, -2.7604e-4, -1.7749e-7},
		quadratic{1984.2, 1.4733, -4.8008e-3},
		quadratic{925.59, -0.41757, 0},
	}
	ash = component{
		quadratic{0.32962, 1.4011e-3, -2.9069e-6},
		quadratic{1092.6, 1.8896, -3.6817e-3},
		quadratic{2423.8, -0.28063, 0},
	}
)

const (
	// mixingC is the temperature at which volumes are taken; the density stays
	// constant from there on, so that a body keeps its size and its mass.
	mixingC = 40

	// conductivityFactor brings the parallel mixing rule, an upper bound, to the
	// diffusivities measured for beef: round 1.33e-7, chuck 1.23e-7 m2/s at 40 to
	// 65 degC (ASHRAE Refrigeration).
	conductivityFactor = 0.93
)

// material is what conduction needs to know of a mixture.
type material struct {
	conductivity quadratic // W/(m K)
	capacity     quadratic // rho c, J/(m3 K)
	densityKgM3  float64
}

// mix makes the material of a composition given as mass shares, which are
// scaled to a sum of one.
func mix(waterShare, proteinShare, fatShare, ashShare float64) material {
	shares := [4]float64{waterShare, proteinShare, fatShare, ashShare}
	parts := [4]component{water, protein, fat, ash}
	sum := waterShare + proteinShare + fatShare + ashShare
	var volume float64
	for i := range shares {
		shares[i] /= sum
		volume += shares[i] / parts[i].density.at(mixingC)
	}
	m := material{densityKgM3: 1 / volume}
	for i, p := range parts {
		byVolume := shares[i] / p.density.at(mixingC) / volume
		m.conductivity = m.conductivity.plus(conductivityFactor*byVolume, p.conductivity)
		m.capacity = m.capacity.plus(m.densityKgM3*shares[i], p.heat)
	}
	return m
}
