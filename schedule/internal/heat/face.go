package heat

import "math"

// face is a surface in its surroundings, prepared for the integrator.
type face struct {
	airC, wallC float64
	wallK       float64
	convection  float64 // W/(m2 K)
	grey        float64 // emissivity times the Stefan-Boltzmann constant
	coverM2KW   float64
	cover       float64 // on wetness
	wetFactor   float64
	vapourPa    float64
	boilC       float64
	transfer    float64 // evaporation of a fully wet surface, kg/(m2 s Pa)
	low, high   float64 // degC between which a surface of a thin body would settle

	lastC, lastPa, lastPaK float64 // the last answer of saturation
}

const (
	// Lewis relation: ratio of molar masses over heat capacity of air and the
	// Lewis number to the power 2/3 (from memory).
	molarRatio, airHeatJKgK, lewisPower = 0.622, 1010, 0.9

	boilingWM2K = 400 // any large value: holds a surface near the boiling point
)

func newFace(in Surroundings, wetFactor float64) face {
	f := face{
		airC: in.AirC, wallC: in.WallC, wallK: in.WallC + kelvinOffset,
		convection: in.ConvectionWM2K,
		grey:       in.Emissivity * stefanBoltzmann,
		coverM2KW:  in.CoverM2KW,
		cover:      in.Cover,
		wetFactor:  wetFactor,
		vapourPa:   in.VapourPa,
		boilC:      saturatedC(in.PressurePa),
		transfer:   molarRatio * in.ConvectionWM2K / (airHeatJKgK * lewisPower * in.PressurePa),
	}
	f.low, f.high = f.limits()
	return f
}

// flux is the heat in W/m2 that enters a surface of a given temperature and
// wetness, and its slope in W/(m2 K). Where vapour condenses, all of the
// uncovered surface takes part.
func (f *face) flux(surfaceC, wet float64) (q, slope float64) {
	ts := surfaceC + kelvinOffset
	squares, sum := f.wallK*f.wallK+ts*ts, f.wallK+ts
	radiation := f.grey * squares * sum
	radiationSlope := f.grey * (2*ts*sum + squares)
	toWall := f.wallC - surfaceC
	dry := f.convection*(f.airC-surfaceC) + radiation*toWall
	pass := 1 / (1 + (f.convection+radiation)*f.coverM2KW)
	q = pass * dry
	slope = pass*(radiationSlope*toWall-f.convection-radiation) -
		pass*pass*f.coverM2KW*radiationSlope*dry
	if f.cover > 0 {
		p, pSlope := f.saturation(surfaceC)
		excess := p - f.vapourPa
		if excess < 0 {
			wet = f.cover
		}
		latent := latentJKg(surfaceC)
		q -= wet * f.transfer * latent * excess
		slope -= wet * f.transfer * (latent*pSlope - latentSlope*excess)
	}
	if surfaceC > f.boilC {
		q -= boilingWM2K * (surfaceC - f.boilC)
		slope -= boilingWM2K
	}
	return q, slope
}

// demand is the evaporation in kg/(m2 s) of a fully wet surface; negative where
// vapour condenses.
func (f *face) demand(surfaceC float64) float64 {
	if f.cover == 0 {
		return 0
	}
	p, _ := f.saturation(surfaceC)
	return f.transfer * (p - f.vapourPa)
}

// saturation is that of water at the surface. Flux and demand are asked in turn at
// one temperature, and its exponential is what they cost most.
func (f *face) saturation(surfaceC float64) (pressurePa, slopePaK float64) {
	if surfaceC != f.lastC || f.lastPa == 0 {
		f.lastPa, f.lastPaK = saturation(surfaceC)
		f.lastC = surfaceC
	}
	return f.lastPa, f.lastPaK
}

// limits are the temperatures in degC between which the surface must settle.
func (f *face) limits() (low, high float64) {
	low, high = math.Min(f.airC, f.wallC), math.Max(f.airC, f.wallC)
	if f.cover > 0 {
		dew := saturatedC(math.Max(f.vapourPa, 1))
		low, high = math.Min(low, dew), math.Max(high, dew)
	}
	if high > f.boilC {
		low = math.Min(low, f.boilC)
	}
	return low, high
}

const (
	// Newton's method squares its error, which is about 1e-4 K after a move of
	// surfaceToleranceK.
	surfaceToleranceK = 0.03
	surfaceIterations = 20 // three or four as a rule
)

// link is a surface joined by a conductance in W/(m2 K) to a cell whose
// temperature answers m T = d + dt q to the flux q into it.
type link struct{ conductance, m, d, dt float64 }

// solve finds surface and cell temperature by Newton's method, starting at a
// guess of the surface temperature, and the flux between them. The iteration
// stays between the guess, the cell and the surroundings: the flux bends sharply
// at the dew point and the boiling point.
func (l link) solve(f *face, surfaceC, wet float64) (newSurfaceC, cellC, q float64) {
	still := l.d / l.m // the cell without any flux
	low, high := min(f.low, still, surfaceC), max(f.high, still, surfaceC)
	for range surfaceIterations {
		flux, slope := f.flux(surfaceC, wet)
		// With the flux linearised in the surface temperature, the cell sees a
		// conductance u to an effective temperature; u times that temperature is
		// written so that a slope of zero does no harm.
		spread := l.conductance - slope
		u := -slope * l.conductance / spread
		drive := l.conductance * (flux - slope*surfaceC) / spread
		cellC = (l.d + l.dt*drive) / (l.m + l.dt*u)
		next := (l.conductance*cellC + flux - slope*surfaceC) / spread
		next = min(max(next, low), high)
		moved := next - surfaceC
		surfaceC = next
		if math.Abs(moved) < surfaceToleranceK {
			break
		}
	}
	return surfaceC, cellC, l.conductance * (surfaceC - cellC)
}
