package heat

import (
	"math"
)

// Fire is direct heat: what the two faces of a piece feel.
type Fire struct {
	Hot Surroundings // the face to the fire
	Top Surroundings // the other face
}

const (
	// One coefficient stands for contact with the grate, hot air and radiation of
	// the coals. It was set so that a patty 3/4 in thick is done with the lid on in
	// the published 9 to 10 min and a steak 1 in thick in 10 to 13.5 min; the fire's
	// 500 degF is a choice. Real fires differ by far more than this is wrong.
	fireC, fireWM2K, firePa = 260, 170, 4000

	topWM2K, topEmissivity, topPa = 12, 0.9, 2000
	lidOnC, lidOffC               = 204.4, 148.9 // 400 and 300 degF over the meat
	edgeWM2K                      = 120          // on the edge of the piece, in the shape formula

	slabCells      = 16
	slabStepS      = 5 // s in the slab
	slabIterations = 4

	// MaxDirectS bounds a run over direct heat, three hours in s.
	MaxDirectS = 3 * 3600
)

// DirectFire is a bed of lit coals under the grate, with the lid on or off.
func DirectFire(lidOn bool) Fire {
	f := Fire{
		Hot: Surroundings{AirC: fireC, WallC: fireC, ConvectionWM2K: fireWM2K, VapourPa: firePa, Cover: 1, PressurePa: seaLevelPa},
		Top: Surroundings{AirC: lidOffC, WallC: lidOffC, ConvectionWM2K: topWM2K, Emissivity: topEmissivity, VapourPa: topPa, Cover: 1, PressurePa: seaLevelPa},
	}
	if lidOn {
		f.Top.AirC, f.Top.WallC = lidOnC, lidOnC
	}
	return f
}

// AtAltitude is f under the air pressure of an altitude in m.
func (f Fire) AtAltitude(altitudeM float64) Fire {
	return Fire{Hot: f.Hot.AtAltitude(altitudeM), Top: f.Top.AtAltitude(altitudeM)}
}

// Slab is a piece on direct heat: the full thickness with two unlike faces, the
// lower one first. The zero value is not ready: call Start or StartFrom. A value
// copy is an independent branch.
type Slab struct {
	tempC    [slabCells]float64
	released [slabCells]float64
	sides    [2]side // 0 below, 1 above
	material material
	cellM    float64
	pace     float64 // model seconds in a second: heat comes from the edge as well
	supply   float64 // water that a whole cell can give, kg/m2
	wet      float64
	elapsed  float64
}

// side is one face of a slab.
type side struct {
	face     face
	surfaceC float64
	water    float64 // kg/m2
}

// Start puts b at its start temperature over a fire.
func (s *Slab) Start(b Body, f Fire) {
	b = b.sound()
	s.lay(b, f)
	for i := range slabCells {
		s.tempC[i], s.released[i] = b.StartC, expelled(b.StartC)
	}
	for i := range s.sides {
		s.sides[i].surfaceC, s.sides[i].water = b.StartC, initialWater
	}
}

// StartFrom puts the body of a cook, with the temperatures and surface water it
// has now, over a fire: the sear after a smoke. The elapsed time starts again at 0.
func (s *Slab) StartFrom(b Body, sim *Sim, f Fire) {
	s.lay(b.sound(), f)
	for i := range slabCells {
		depth := math.Abs(float64(2*i+1)/slabCells - 1) // from the middle, 0 to 1
		s.tempC[i] = sim.at(&sim.state.tempC, depth)
		s.released[i] = sim.at(&sim.state.released, depth)
	}
	for i := range s.sides {
		s.sides[i].surfaceC, s.sides[i].water = sim.SurfaceC(), sim.state.water
	}
}

func (s *Slab) lay(b Body, f Fire) {
	small, _, _ := b.sorted()
	thickness := small * b.RadiusScale
	*s = Slab{material: mix(b.Water, b.Protein, b.Fat, b.Ash), cellM: thickness / slabCells, wet: b.WetFactor}
	s.pace = b.Dimensionality(edgeWM2K)
	s.supply = supplyKgKg * b.SupplyFactor * b.Water / leanWater * s.material.densityKgM3 * s.cellM
	s.Change(f)
}

// Change moves the slab over another fire, or puts the lid on or off.
func (s *Slab) Change(f Fire) {
	s.sides[0].face = newFace(f.Hot.bounded(), s.wet)
	s.sides[1].face = newFace(f.Top.bounded(), s.wet)
}

// Flip turns the slab over.
func (s *Slab) Flip() {
	for i, j := 0, slabCells-1; i < j; i, j = i+1, j-1 {
		s.tempC[i], s.tempC[j] = s.tempC[j], s.tempC[i]
		s.released[i], s.released[j] = s.released[j], s.released[i]
	}
	a, b := &s.sides[0], &s.sides[1]
	a.surfaceC, b.surfaceC = b.surfaceC, a.surfaceC
	a.water, b.water = b.water, a.water
}

// ElapsedS is the time on the fire in s.
func (s *Slab) ElapsedS() float64 { return s.elapsed }

// CoreC is the temperature of the middle in degC.
func (s *Slab) CoreC() float64 {
	const m = slabCells / 2
	return (9*(s.tempC[m-1]+s.tempC[m]) - s.tempC[m-2] - s.tempC[m+1]) / 16
}

// TakeSlab is the body after a slab of it was over a fire: the middle plane of the slab
// is the middle, its two faces, which may differ, are averaged. The time over the fire is
// added. The body is left in the surroundings that it was in; change them.
func (s *Sim) TakeSlab(from *Slab) {
	for i := range s.cells {
		depth := (float64(i) + 0.5) / float64(s.cells) // from the middle, 0 to 1
		s.state.tempC[i] = (from.at(&from.tempC, depth) + from.at(&from.tempC, -depth)) / 2
		s.state.released[i] = (from.at(&from.released, depth) + from.at(&from.released, -depth)) / 2
	}
	s.state.surfaceC = (from.sides[0].surfaceC + from.sides[1].surfaceC) / 2
	s.state.water = (from.sides[0].water + from.sides[1].water) / 2
	s.state.drawn = s.state.water - s.state.supplied
	s.elapsed += from.elapsed
	s.Change(s.in)
}

// at reads a profile at a depth from the middle, -1 at the lower face to 1 at the upper.
func (s *Slab) at(profile *[slabCells]float64, depth float64) float64 {
	x := (depth+1)/2*slabCells - 0.5
	i := min(max(int(x), 0), slabCells-2)
	share := clamp(x-float64(i), 0, 1, 0)
	return profile[i] + share*(profile[i+1]-profile[i])
}

// SearedS turns a piece half-way and lies it over a fire for so many seconds.
func (s *Slab) SearedS(seconds float64) {
	s.RunFor(seconds / 2)
	s.Flip()
	s.RunFor(seconds / 2)
}
