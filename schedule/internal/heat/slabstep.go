package heat

import "math"

// step advances by dt seconds on the fire, pace times that in the slab, by the
// backward Euler formula: short and robust, which is enough for minutes.
func (s *Slab) step(dt float64) {
	s.elapsed += dt
	dt *= s.pace
	old := s.tempC
	var k, mass, between [slabCells]float64
	for i := range slabCells {
		k[i] = s.material.conductivity.at(old[i])
		mass[i] = s.material.capacity.at(old[i]) * s.cellM
		if i > 0 {
			between[i] = dt * 2 * k[i-1] * k[i] / (k[i-1] + k[i]) / s.cellM
		}
	}
	gain := [2]float64{2 * k[0] / s.cellM, 2 * k[slabCells-1] / s.cellM}
	water := [2]float64{s.sides[0].water, s.sides[1].water}
	left := s.released
	for range slabIterations {
		var u, drive [2]float64
		for j := range s.sides {
			sd := &s.sides[j]
			q, slope := sd.face.flux(sd.surfaceC, wetness(sd.water, s.wet, sd.face.cover))
			spread := gain[j] - slope
			u[j] = dt * -slope * gain[j] / spread
			drive[j] = dt * gain[j] * (q - slope*sd.surfaceC) / spread
		}
		s.conduct(&old, &mass, &between, u, drive)
		moved := 0.0
		for j := range s.sides {
			moved = math.Max(moved, s.sides[j].settle(gain[j], s.tempC[j*(slabCells-1)], s.wet))
		}
		s.soak(dt, &left, water)
		if moved < surfaceToleranceK {
			break
		}
	}
}

// conduct solves the tridiagonal equations of the cells; the outer two are also
// joined to their surroundings by u and drive.
func (s *Slab) conduct(old, mass, between *[slabCells]float64, u, drive [2]float64) {
	var offset, slope [slabCells]float64
	const last = slabCells - 1
	for i := range slabCells {
		m, d := mass[i]+between[i], mass[i]*old[i]
		if i < last {
			m += between[i+1]
		}
		if i == 0 {
			m, d = m+u[0], d+drive[0]
		} else {
			m, d = m-between[i]*slope[i-1], d+between[i]*offset[i-1]
		}
		if i == last {
			m, d = m+u[1], d+drive[1]
		} else {
			slope[i] = between[i+1] / m
		}
		offset[i] = d / m
	}
	s.tempC[last] = offset[last]
	for i := last - 1; i >= 0; i-- {
		s.tempC[i] = offset[i] + slope[i]*s.tempC[i+1]
	}
}

// settle moves the surface to where the linearised flux meets that from a cell
// at cellC, and says by how much it moved.
func (sd *side) settle(gain, cellC, wetFactor float64) float64 {
	q, slope := sd.face.flux(sd.surfaceC, wetness(sd.water, wetFactor, sd.face.cover))
	next := (gain*cellC + q - slope*sd.surfaceC) / (gain - slope)
	moved := math.Abs(next - sd.surfaceC)
	sd.surfaceC = next
	return moved
}

// soak lets each half of the slab give its water to the nearer face, at once, and
// the faces evaporate.
func (s *Slab) soak(dt float64, left *[slabCells]float64, before [2]float64) {
	given := before
	for i := range slabCells {
		s.released[i] = math.Max(left[i], expelled(s.tempC[i]))
		given[i/(slabCells/2)] += s.supply * (s.released[i] - left[i])
	}
	for j := range s.sides {
		sd := &s.sides[j]
		taken := dt * sd.face.demand(sd.surfaceC) * wetnessMost * s.wet * sd.face.cover
		sd.water = balance(1+dt*dripPerS, taken, given[j])
	}
}
