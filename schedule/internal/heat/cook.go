package heat

import "math"

// MaxStages is how many stages one recipe may have.
const MaxStages = 12

// Stage is a stretch in one kind of surroundings. It ends once the core has
// risen to UntilCoreC and AtLeastS has passed, or else when AtMostS has passed;
// a zero value is no condition. A stage without conditions runs to the target.
type Stage struct {
	In         Surroundings
	UntilCoreC float64 // degC
	AtLeastS   float64 // s from the beginning of the stage
	AtMostS    float64 // s from the beginning of the stage
}

// Recipe is a cook in stages. It is over when the core reaches TargetC in
// whatever stage, when the last stage ends, or when LimitS has passed.
type Recipe struct {
	Stages  []Stage // at most MaxStages; more are left out
	TargetC float64 // degC; 0 for none
	LimitS  float64 // s from the beginning; 0 means MaxRunS
}

// End is how a stage ended.
type End struct {
	AtS      float64 // s since Start
	CoreC    float64 // degC
	SurfaceC float64 // degC
}

// Result tells what happened, in s since Start.
type Result struct {
	Status  Status // of the target, or TimedOut where there was none
	TargetS float64
	Ends    [MaxStages]End
	Done    int // stages ended, the last one included
	Stall   Stall
	Stalled bool
}

// Point is one sample of a curve.
type Point struct {
	AtS                     float64 // s since Start
	CoreC, OuterC, SurfaceC float64 // degC
	AirC                    float64 // degC
}

// Curve collects samples EveryS apart, at multiples of it. Give Points enough
// capacity and nothing is allocated.
type Curve struct {
	EveryS float64 // s; 0 or less samples nothing
	Points []Point
}

// Cook takes the body from where it is through a recipe and leaves it at the
// end. The surroundings change only where a stage's differ from the present
// ones, so that a branch of a running cook goes on undisturbed. Where nothing but
// a core temperature can end a stage and the surroundings cannot bring the core
// there, the cook stops before it with NeverArrives. The curve may be nil.
func (s *Sim) Cook(r Recipe, curve *Curve) Result {
	result := Result{Status: TimedOut}
	target := math.Inf(1)
	if r.TargetC > 0 {
		target = r.TargetC
	}
	limit := r.LimitS
	if !(limit > 0) {
		limit = MaxRunS
	}
	end := s.elapsed + math.Min(limit, MaxRunS)
	stages := r.Stages[:min(len(r.Stages), MaxStages)]
	curve.begin(s)
	for i := range stages {
		if stages[i].In.bounded() != s.in {
			s.Change(stages[i].In)
		}
		if s.hopeless(stages[i], target) {
			result.Status = NeverArrives
			break
		}
		reached := s.runStage(stages[i], target, end, curve)
		result.Ends[i] = End{AtS: s.elapsed, CoreC: s.CoreC(), SurfaceC: s.SurfaceC()}
		result.Done = i + 1
		if reached {
			result.Status, result.TargetS = Reached, s.elapsed
			break
		}
		if s.elapsed >= end {
			break
		}
	}
	result.Stall, result.Stalled = s.Stall()
	return result
}

// hopeless says that a stage waits for a core temperature that cannot come.
func (s *Sim) hopeless(stage Stage, target float64) bool {
	aim := target
	if stage.UntilCoreC > 0 {
		aim = math.Min(aim, stage.UntilCoreC)
	}
	timed := stage.AtMostS > 0 || stage.UntilCoreC <= 0 && stage.AtLeastS > 0
	return !timed && !math.IsInf(aim, 1) && s.CoreC() < aim && !s.Arrives(aim)
}

// runStage runs one stage, at most to end, and says whether the core came to the
// target of the whole cook.
func (s *Sim) runStage(stage Stage, target, end float64, curve *Curve) bool {
	start := s.elapsed
	if stage.AtMostS > 0 {
		end = math.Min(end, start+stage.AtMostS)
	}
	earliest := math.Min(start+clamp(stage.AtLeastS, 0, MaxRunS, 0), end)
	for {
		core := s.CoreC()
		if core >= target {
			return true
		}
		warm := stage.UntilCoreC <= 0 || core >= stage.UntilCoreC
		conditioned := stage.UntilCoreC > 0 || stage.AtLeastS > 0
		if conditioned && warm && s.elapsed >= earliest || s.elapsed >= end {
			return false
		}
		until, aim := end, target
		switch {
		case s.elapsed < earliest:
			until = earliest
		case !warm:
			aim = math.Min(aim, stage.UntilCoreC)
		}
		s.next(until, aim)
		curve.take(s)
	}
}

// begin adds the very first sample, at the start of the body.
func (c *Curve) begin(s *Sim) {
	if c != nil && c.EveryS > 0 && s.elapsed == 0 {
		c.Points = append(c.Points, Point{
			CoreC: s.CoreC(), OuterC: s.OuterC(), SurfaceC: s.SurfaceC(), AirC: s.face.airC,
		})
	}
}

// take adds the samples that fall into the step just made.
func (c *Curve) take(s *Sim) {
	if c == nil || !(c.EveryS > 0) || s.lastS <= 0 {
		return
	}
	from := s.elapsed - s.lastS
	for i := math.Floor(from/c.EveryS) + 1; i*c.EveryS <= s.elapsed; i++ {
		share := (i*c.EveryS - from) / s.lastS
		mix := func(x, y float64) float64 { return x + share*(y-x) }
		n := s.cells - 1
		c.Points = append(c.Points, Point{
			AtS:      i * c.EveryS,
			CoreC:    mix(s.coreOf(&s.before), s.CoreC()),
			OuterC:   mix(s.before.tempC[n], s.state.tempC[n]),
			SurfaceC: mix(s.before.surfaceC, s.state.surfaceC),
			AirC:     s.face.airC,
		})
	}
}
