package heat

import "math"

const (
	firstStepS = 20 // after every change of surroundings
	minStepS   = 2
	mostGrowth = 1.6
	leastShare = 0.4

	// patientSteps is how many steps in the same surroundings may be short. Ten
	// times what any real cook takes; after them steps have full length, which the
	// implicit formula stands, so that no input can make a run long.
	patientSteps = 2000
	longStepS    = 900

	waterIterations  = 3
	wetnessTolerance = 0.01
)

// advance holds the coefficients of the two-step backward formula
// c0 T1 - c1 T0 + c2 Tprev = dt f(T1), with om the ratio of step lengths.
type advance struct{ dt, om, c0, c1, c2 float64 }

func (s *Sim) advanceBy(dt float64) advance {
	if s.fresh || dt > 3*s.lastS {
		return advance{dt: dt, c0: 1, c1: 1}
	}
	om := dt / s.lastS
	return advance{dt: dt, om: om, c0: (1 + 2*om) / (1 + om), c1: 1 + om, c2: om * om / (1 + om)}
}

// step advances the state by dt seconds and chooses the length of the next step.
func (s *Sim) step(dt float64) {
	a := s.advanceBy(dt)
	old, prev := s.state, &s.before
	var e eliminated
	l := s.eliminate(a, &e)
	leaving := 1 - math.Exp(-dt/seepS)

	st := &s.state
	guess := max(old.water+a.om*(old.water-prev.water), 0)
	predictedC := old.surfaceC + a.om*(old.surfaceC-prev.surfaceC)
	surfaceC, q, demand := predictedC, 0.0, 0.0
	wet := wetness(guess, s.wetFactor, s.face.cover)
	for range waterIterations {
		n := s.cells - 1
		surfaceC, st.tempC[n], q = l.solve(&s.face, surfaceC, wet)
		s.substitute(&e)
		s.release(leaving, &old)
		demand = s.face.demand(surfaceC)
		s.evaporate(a, &old, demand)
		now := wetness(st.water, s.wetFactor, s.face.cover)
		same := math.Abs(now-wet) <= wetnessTolerance*wet
		wet = now
		if same {
			break
		}
	}
	st.surfaceC = surfaceC
	st.heatJM2 += dt * q
	s.account(dt, &old, wet*max(demand, 0))

	wrong, first := s.stepError(a, &old, predictedC), s.fresh
	s.before = old
	s.fresh = false
	s.lastS = dt
	s.elapsed += dt
	s.steps++
	s.stepS = s.nextStep(dt, wrong, first)
}

// eliminated holds what forward elimination leaves: cell i is at
// offset[i] + slope[i] times the temperature of cell i+1.
type eliminated struct{ offset, slope [maxCells]float64 }

// eliminate sets up the conduction equations, does the forward elimination and
// leaves the row of the outermost cell, joined to the surface.
func (s *Sim) eliminate(a advance, e *eliminated) link {
	n := s.cells
	now, prev := s.state.tempC[:n], s.before.tempC[:n]
	volume, area := s.volume[:n], s.area[:n]
	offset, slope := e.offset[:n], e.slope[:n]
	inner, carried := 0.0, 0.0 // dt times the conductance to the cell within; its solved part
	shared := 0.0              // share of the inner cell's temperature that follows this cell's
	t := now[0] + a.om*(now[0]-prev[0])
	k := s.material.conductivity.at(t)
	for i := 0; ; i++ {
		mass := s.material.capacity.at(t) * volume[i]
		m := mass*a.c0 + inner*(1-shared)
		d := mass*(a.c1*now[i]-a.c2*prev[i]) + inner*carried
		if i == n-1 {
			return link{conductance: 2 * k / s.cellM, m: m, d: d, dt: a.dt}
		}
		t = now[i+1] + a.om*(now[i+1]-prev[i+1])
		kOut := s.material.conductivity.at(t)
		outer := a.dt * 2 * k * kOut / (k + kOut) * area[i] / s.cellM
		m += outer
		shared = outer / m
		carried = d / m
		offset[i], slope[i] = carried, shared
		inner, k = outer, kOut
	}
}

// substitute finds all temperatures from that of the outermost cell.
func (s *Sim) substitute(e *eliminated) {
	n := s.cells
	now, offset, slope := s.state.tempC[:n], e.offset[:n], e.slope[:n]
	t := now[n-1]
	for i := n - 2; i >= 0; i-- {
		t = offset[i] + slope[i]*t
		now[i] = t
	}
}

// release lets a share of the water that heat has set free since the step began
// seep to the surface; what has left a cell does not come back.
func (s *Sim) release(leaving float64, old *state) {
	n := s.cells
	before, now := old.tempC[:n], s.state.tempC[:n]
	had, has := old.released[:n], s.state.released[:n]
	cells := s.volume[:n]
	var volume float64
	for i := range n {
		more := expelled((before[i]+now[i])/2) - had[i]
		if more > 0 {
			has[i] = had[i] + more*leaving
			volume += cells[i] * more * leaving
		}
	}
	s.state.supplied = old.supplied + s.supplyKgM3*volume
}

// evaporate finds the water left on the surface. The two-step formula acts on
// what was drawn from the surface, so that the supply is counted exactly. Where
// vapour condenses the demand is negative and adds to the water.
func (s *Sim) evaporate(a advance, old *state, demand float64) {
	st := &s.state
	keep := a.c0 + a.dt*dripPerS
	taken := a.dt * demand * wetnessMost * s.wetFactor * s.face.cover
	st.water = balance(keep, taken, a.c0*st.supplied+a.c1*old.drawn-a.c2*s.before.drawn)
	st.drawn = st.water - st.supplied
}

// account adds up what left the surface during the step.
func (s *Sim) account(dt float64, old *state, flow float64) {
	st := &s.state
	st.flow = flow
	st.vapour += dt * (old.flow + flow) / 2
	st.dripped += dt * dripPerS * (old.water + st.water) / 2
}

// stepError compares the new temperatures with their linear extrapolation. The
// inside counts more than the surface, because a time is read off the core.
func (s *Sim) stepError(a advance, old *state, predictedSurfaceC float64) float64 {
	off := func(i int) float64 {
		return math.Abs(s.state.tempC[i] - old.tempC[i] - a.om*(old.tempC[i]-s.before.tempC[i]))
	}
	return max(math.Abs(s.state.surfaceC-predictedSurfaceC), 3*off(0), 2*off(s.cells/2))
}

// nextStep chooses the length of the step to come in s. No step is made again.
func (s *Sim) nextStep(dt, wrong float64, first bool) float64 {
	if s.steps > patientSteps {
		return longStepS
	}
	if first {
		return math.Min(dt, s.precision.MaxStepS)
	}
	grow := mostGrowth
	if wrong > 0 {
		grow = min(max(math.Sqrt(s.precision.ToleranceK/wrong), leastShare), mostGrowth)
	}
	return min(max(dt*grow, minStepS), s.precision.MaxStepS)
}

// settleSurface brings the surface into balance with the outermost cell and the
// surroundings, as after a sudden change of the latter.
func (s *Sim) settleSurface() {
	st := &s.state
	cellC := st.tempC[s.cells-1]
	wet := wetness(st.water, s.wetFactor, s.face.cover)
	k := s.material.conductivity.at(cellC)
	l := link{conductance: 2 * k / s.cellM, m: 1, d: cellC}
	st.surfaceC, _, _ = l.solve(&s.face, st.surfaceC, wet)
	st.flow = wet * math.Max(s.face.demand(st.surfaceC), 0)
}
