package heat

import "math"

// step advances by dt seconds on the fire, pace times that in the slab, by the
// backward Euler formula: short and robust, which is enough for minutes.
func (s *Slab) step(dt float64) {
	s.elapsed += dt
	dt *= s.pace
	var r rows
	s.fill(&r, dt)
	gain := [2]float64{2 * r.firstK / s.cellM, 2 * r.lastK / s.cellM}
	water := [2]float64{s.sides[0].water, s.sides[1].water}
	left := s.released
	for range slabIterations {
		var u, drive, q, slope [2]float64
		for j := range s.sides {
			sd := &s.sides[j]
			q[j], slope[j] = sd.face.flux(sd.surfaceC, wetness(sd.water, s.wet, sd.face.cover))
			spread := gain[j] - slope[j]
			u[j] = dt * -slope[j] * gain[j] / spread
			drive[j] = dt * gain[j] * (q[j] - slope[j]*sd.surfaceC) / spread
		}
		s.conduct(&r, u, drive)
		moved := 0.0
		for j := range s.sides {
			moved = max(moved, s.sides[j].settle(gain[j], s.tempC[j*(slabCells-1)], q[j], slope[j]))
		}
		s.soak(dt, &left, water)
		if moved < surfaceToleranceK {
			break
		}
	}
}

// rows are the equations of the cells as far as they do not depend on the surfaces.
type rows struct {
	weight  [slabCells]float64 // on the cell itself
	stored  [slabCells]float64 // what it brings along
	between [slabCells]float64 // on the cell below it

	firstK, lastK float64 // conductivity of the outer two, W/(m K)
}

func (s *Slab) fill(r *rows, dt float64) {
	t := s.tempC[0]
	k := s.material.conductivity.at(t)
	r.firstK = k
	for i := range slabCells {
		mass := s.material.capacity.at(t) * s.cellM
		r.stored[i] = mass * t
		r.weight[i] = mass + r.between[i]
		if i == slabCells-1 {
			break
		}
		t = s.tempC[i+1]
		next := s.material.conductivity.at(t)
		r.between[i+1] = dt * 2 * k * next / (k + next) / s.cellM
		r.weight[i] += r.between[i+1]
		k = next
	}
	r.lastK = k
}

// conduct solves the tridiagonal equations of the cells; the outer two are also
// joined to their surroundings by u and drive.
func (s *Slab) conduct(r *rows, u, drive [2]float64) {
	var offset, slope [slabCells]float64
	const last = slabCells - 1
	m, d := r.weight[0]+u[0], r.stored[0]+drive[0]
	for i := range last {
		shared, carried := r.between[i+1]/m, d/m
		slope[i], offset[i] = shared, carried
		m = r.weight[i+1] - r.between[i+1]*shared
		d = r.stored[i+1] + r.between[i+1]*carried
	}
	t := (d + drive[1]) / (m + u[1])
	s.tempC[last] = t
	for i := last - 1; i >= 0; i-- {
		t = offset[i] + slope[i]*t
		s.tempC[i] = t
	}
}

// settle moves the surface to where the flux q, linearised with its slope, meets
// that from a cell at cellC, and says by how much it moved.
func (sd *side) settle(gain, cellC, q, slope float64) float64 {
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
		s.released[i] = max(left[i], expelled(s.tempC[i]))
		given[i/(slabCells/2)] += s.supply * (s.released[i] - left[i])
	}
	for j := range s.sides {
		sd := &s.sides[j]
		taken := dt * sd.face.demand(sd.surfaceC) * wetnessMost * s.wet * sd.face.cover
		sd.water = balance(1+dt*dripPerS, taken, given[j])
	}
}
