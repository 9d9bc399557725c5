package heat

import "math"

// Status says how a run ended.
type Status int

const (
	Reached      Status = iota // the asked temperature
	TimedOut                   // the asked time passed first
	NeverArrives               // the surroundings cannot bring the core there
)

func (s Status) String() string {
	switch s {
	case Reached:
		return "reached"
	case TimedOut:
		return "timed out"
	default:
		return "never arrives"
	}
}

const (
	maxCells = 32

	// MaxRunS bounds every single run, ten days in s.
	MaxRunS = 10 * 24 * 3600

	// ArrivalMarginK is how far the asymptote of the core must lie above a target for a
	// run to be worth its time: it only spares endless runs.
	ArrivalMarginK = 0.2
)

// Precision chooses cells and step control.
type Precision struct {
	Cells      int     // 4 to 32
	ToleranceK float64 // error a step may make, K
	MaxStepS   float64 // s
}

// Standard is within 0.1 % of the converged time in the mean and 0.3 % at worst,
// Coarse within 0.2 % and 0.6 % and a quarter faster.
var (
	Standard = Precision{Cells: 16, ToleranceK: 0.4, MaxStepS: 900}
	Coarse   = Precision{Cells: 8, ToleranceK: 1.2, MaxStepS: 900}
)

// Sim is one body on its way through changing surroundings. The zero value is
// not ready: call Start. A value copy is an independent branch.
type Sim struct {
	grid
	in      Surroundings
	face    face
	stall   stallWatch
	core    trend
	state   state
	before  state // one step earlier, for the two-step formula and interpolation
	elapsed float64
	stepS   float64 // length of the step to come
	lastS   float64 // length of the step just made
	fresh   bool    // no history yet: the next step is backward Euler
	steps   int     // since the surroundings last changed

	precision Precision
}

// state is everything that one step changes.
type state struct {
	tempC    [maxCells]float64
	released [maxCells]float64 // share of the expellable water that has left each cell
	surfaceC float64
	water    float64 // free water on the surface, kg/m2
	supplied float64 // water supplied to the surface so far, kg/m2
	drawn    float64 // water - supplied: what evaporation and dripping have taken, negative
	vapour   float64 // evaporated so far, kg/m2
	dripped  float64 // dripped so far, kg/m2
	flow     float64 // evaporation now, kg/(m2 s)
	heatJM2  float64 // conducted in so far, J/m2
}

// Start puts b, at its start temperature throughout, into its first
// surroundings, which also fix the shape for the rest of the cook. It panics if b does
// not pass its Check; surroundings outside the ranges of theirs, which may come from
// readings, are moved to the nearest limit.
func (s *Sim) Start(b Body, in Surroundings) { s.StartWith(b, in, Standard) }

// StartWith is Start with another precision.
func (s *Sim) StartWith(b Body, in Surroundings, p Precision) {
	b, in = b.sound(), in.bounded()
	p.Cells = min(max(p.Cells, 4), maxCells)
	p.ToleranceK = clamp(p.ToleranceK, 1e-3, 5, Standard.ToleranceK)
	p.MaxStepS = clamp(p.MaxStepS, minStepS, 900, Standard.MaxStepS)
	*s = Sim{precision: p}
	s.grid.lay(b, in, p.Cells)
	share := expelled(b.StartC)
	for i := range p.Cells {
		s.state.tempC[i] = b.StartC
		s.state.released[i] = share
	}
	s.state.surfaceC = b.StartC
	s.state.water = initialWater
	s.state.drawn = initialWater
	s.Change(in)
}

// Change moves the body into new surroundings. Temperatures and surface water
// stay as they are; the integrator starts again.
func (s *Sim) Change(in Surroundings) {
	s.in = in.bounded()
	s.face = newFace(s.in, s.wetFactor)
	s.fresh = true
	s.core = trend{}
	s.stepS = firstStepS
	s.lastS = 0
	s.steps = 0
	s.settleSurface()
	s.before = s.state
}

// RunFor advances by a time in s, at most MaxRunS.
func (s *Sim) RunFor(seconds float64) {
	end := s.elapsed + clamp(seconds, 0, MaxRunS, 0)
	for s.elapsed < end {
		s.next(end, math.Inf(1))
	}
}

// RunUntil advances to an elapsed time in s, at most MaxRunS from now.
func (s *Sim) RunUntil(elapsedS float64) {
	end := math.Min(elapsedS, s.elapsed+MaxRunS)
	for s.elapsed < end {
		s.next(end, math.Inf(1))
	}
}

// RunToward makes the steps on the way to an elapsed time in s that are the same on
// the way to any later one; RunUntil makes the rest.
func (s *Sim) RunToward(elapsedS float64) {
	end := math.Min(elapsedS, s.elapsed+MaxRunS)
	for s.elapsed < end && 2*s.stepS <= end-s.elapsed {
		s.next(end, math.Inf(1))
	}
}

// RunTo advances until the core has risen to a temperature in degC, or for
// at most maxSeconds. It returns NeverArrives, without running, when the target
// is not at least ArrivalMarginK below what the surroundings can bring the core to.
func (s *Sim) RunTo(coreC, maxSeconds float64) Status {
	if s.CoreC() >= coreC {
		return Reached
	}
	if !s.Arrives(coreC) {
		return NeverArrives
	}
	return s.RunWithin(coreC, maxSeconds)
}

// RunWithin advances until the core has risen to a temperature in degC, or for
// maxSeconds, however little the surroundings can bring the core to.
func (s *Sim) RunWithin(coreC, maxSeconds float64) Status {
	if s.CoreC() >= coreC {
		return Reached
	}
	return s.runWithin(coreC, s.elapsed+clamp(maxSeconds, 0, MaxRunS, 0))
}

// runWithin advances to a core temperature that it has not yet, or to an elapsed time.
func (s *Sim) runWithin(coreC, end float64) Status {
	for s.elapsed < end {
		if s.next(end, coreC) {
			return Reached
		}
	}
	return TimedOut
}

// Arrives says whether the core can be brought to a temperature in degC here.
func (s *Sim) Arrives(coreC float64) bool { return coreC <= s.AsymptoteC()-ArrivalMarginK }

// next makes one step, not beyond end, and says whether the core has risen to
// the target; if so the state is interpolated to be exactly there.
func (s *Sim) next(end, targetC float64) bool {
	dt := s.stepS
	core := s.CoreC()
	if s.core.steps > 0 && s.steps <= patientSteps {
		soon := 1.02*s.core.until(targetC-core, s.lastS/2) + 1
		dt = min(dt, max(soon, minStepS))
	}
	remaining := end - s.elapsed
	switch {
	case dt >= remaining:
		dt = remaining
	case 2*dt > remaining:
		dt = remaining / 2
	}
	s.step(dt)
	if s.elapsed > end-1e-6 {
		s.elapsed = end
	}
	after := s.CoreC()
	s.core.follow(core, after, s.lastS, s.elapsed)
	reached := after >= targetC
	if reached && after > core {
		// All temperatures are mixed so that the core is exactly at the target; the
		// time to it follows the bend of the core's path.
		took := s.core.until(targetC-core, -s.lastS/2)
		late := s.lastS - clamp(took, 0, s.lastS, s.lastS)
		s.backTo((targetC-core)/(after-core), late)
	}
	s.stall.watch(s)
	return reached
}

// backTo moves the state back to a share of the step just made, and the time by
// late seconds.
func (s *Sim) backTo(share, late float64) {
	share = clamp(share, 0, 1, 1)
	a, b := &s.before, &s.state
	mix := func(x, y float64) float64 { return x + share*(y-x) }
	for i := range s.cells {
		b.tempC[i] = mix(a.tempC[i], b.tempC[i])
		b.released[i] = mix(a.released[i], b.released[i])
	}
	b.surfaceC = mix(a.surfaceC, b.surfaceC)
	b.water = mix(a.water, b.water)
	b.supplied = mix(a.supplied, b.supplied)
	b.drawn = b.water - b.supplied
	b.vapour = mix(a.vapour, b.vapour)
	b.dripped = mix(a.dripped, b.dripped)
	b.flow = mix(a.flow, b.flow)
	b.heatJM2 = mix(a.heatJM2, b.heatJM2)
	s.elapsed -= late
	s.lastS -= late
	if s.lastS < minStepS {
		s.fresh = true
		s.stepS = firstStepS
	}
}
