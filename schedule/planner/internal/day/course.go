package day

import (
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/unit"
)

// end says which end of what is not known a hold is computed for.
type end bool

const (
	ExpectedEnd end = false
	// PoorEnd loses a quarter more heat than expected under a tent or on a counter
	// (assumption), and in a box what one box in ten loses.
	PoorEnd end = true
)

const (
	poorShare = 1.25
)

// course is a hold as stretches of like surroundings; the last one has no end.
type course []stretch

type stretch struct {
	minutes float64
	in      heat.Surroundings
}

// untilOuterBelow follows a piece and returns the minutes until its outer layer
// falls to a temperature, at most longestHoldS. The piece may be left before that.
func (c course) untilOuterBelow(s *heat.Sim, limitC float64) float64 {
	return c.untilOuterBelowPast(s, limitC, &heat.Passing{Passed: true})
}

// untilOuterBelowPast is the same, and notes when a higher temperature was passed, unless the piece is
// shut in where it stays warmer.
func (c course) untilOuterBelowPast(s *heat.Sim, limitC float64, past *heat.Passing) float64 {
	start := s.ElapsedS()
	for i, part := range c {
		seconds := part.minutes * 60
		if i == len(c)-1 {
			seconds = longestHoldS
		}
		s.Change(part.in)
		if i == len(c)-1 && part.in.Cover == 0 && math.Min(part.in.AirC, s.OuterC()) > limitC {
			return longestHoldS / 60 // shut in where it is warmer than that it never falls so low
		}
		left := longestHoldS - (s.ElapsedS() - start)
		if s.RunUntilOuterBelowPast(limitC, math.Min(seconds, left), past) == heat.Reached {
			break
		}
	}
	if !past.Passed { // it never fell so low
		past.AtS, past.Passed = s.ElapsedS(), true
	}
	return (s.ElapsedS() - start) / 60
}

// follower goes along a course with a piece, to ever later instants.
type follower struct {
	course course
	piece  heat.Sim // at the beginning of the first part, or on its way through it
	begun  bool     // the piece is in that part
	sinceS float64  // when it came there
	passed []float64
}

func Follow(s *heat.Sim, c course) *follower { return &follower{course: c, piece: *s} }

// After is the piece some minutes from the beginning of the course, not fewer than
// the last time it was asked.
func (f *follower) After(minutes float64) heat.Sim {
	for _, m := range f.passed {
		minutes -= m
	}
	for minutes > 0 && len(f.course) > 0 {
		part, last := f.course[0], len(f.course) == 1
		if !f.begun {
			f.piece.Change(part.in)
			f.begun, f.sinceS = true, f.piece.ElapsedS()
		}
		if last || minutes < part.minutes {
			end := f.sinceS + minutes*60
			f.piece.RunToward(end)
			piece := f.piece
			piece.RunUntil(end)
			return piece
		}
		f.piece.RunUntil(f.sinceS + part.minutes*60)
		minutes -= part.minutes
		f.passed, f.course, f.begun = append(f.passed, part.minutes), f.course[1:], false
	}
	return f.piece
}

// Course is what surrounds a waiting piece, from the take-off on.
func (d *Day) Course(w Way, h Waiting, e end) course {
	air := d.indoorsC()
	open := lossy(heat.Tented(air), e)
	var c course
	if h.Vent > 0 {
		c = course{{h.Vent, Standing(w, air, e)}}
	}
	switch h.Method {
	case schedule.HoldBox:
		return append(c, stretch{0, heat.Boxed(air, d.boxWM2K(h.Pieces, e))})
	case schedule.HoldOven:
		if h.Boxed > 0 {
			c = append(c, stretch{h.Boxed, heat.Boxed(air, d.boxWM2K(h.Pieces, e))})
		}
		oven := h.OvenC
		if e == PoorEnd {
			oven -= safety.OvenSwingK
		}
		return append(c, stretch{0, heat.WarmOven(oven)})
	case schedule.HoldGrill:
		return dying(w.LevelC, d.Night.AirC, e)
	case schedule.HoldCounter:
		return course{{0, lossy(heat.Counter(air), e)}}
	}
	return course{{0, open}}
}

// Standing is a piece on the counter before it is shut in: its wrapping loosened and
// left on, for bare and wet it would chill at once; a bare one under a tent.
func Standing(w Way, airC float64, e end) heat.Surroundings {
	if w.With != "" {
		return lossy(heat.Counter(airC).InFoil(), e)
	}
	return lossy(heat.Tented(airC), e)
}

// lossy is s at an end of what is not known.
func lossy(s heat.Surroundings, e end) heat.Surroundings {
	if e == PoorEnd {
		s.ConvectionWM2K, s.Emissivity = s.ConvectionWM2K*poorShare, math.Min(s.Emissivity*poorShare, 1)
	}
	return s
}

// boxWM2K is the coefficient of a box with several pieces: they share its walls. A
// box that is just large enough has walls as the two thirds power of what is in it,
// so each piece loses as the power of minus one third (assumption).
func (d *Day) boxWM2K(pieces int, e end) float64 {
	u := d.boxOfOne() * math.Pow(math.Max(float64(pieces), 1), -1.0/3)
	if e == PoorEnd {
		u *= boxPoorShare
	}
	return u
}

// The air over a fire whose vents are all but shut falls to dyingC and stays there
// for dyingHours, or, at the poor end, goes out (assumptions).
var dyingC = unit.FToC(150)

const (
	dyingHours  = 2
	dyingStep   = 15 // minutes of one air temperature
	dyingSteps  = 16 // until the air hardly changes
	dyingStepsE = dyingHours * 60 / dyingStep
)

// dying is the grate after the last cook, the piece wrapped on it.
func dying(levelC, airC float64, e end) course {
	var c course
	from, toC, since := levelC, dyingC, 0
	for i := range dyingSteps {
		if i == dyingStepsE && e == ExpectedEnd || i == 0 && e == PoorEnd {
			from, toC, since = fire.WarmUp(float64(i-since)*dyingStep, from, toC), airC, i
		}
		c = append(c, stretch{dyingStep, heat.WarmOven(fire.WarmUp((float64(i-since)+0.5)*dyingStep, from, toC))})
	}
	return append(c, stretch{0, lossy(heat.Tented(airC), e)})
}

// A tough piece stands open before it is shut in, until it stops cooking: its heat
// has evened out to about ventToC, which is what a closed box then settles at. It
// stands at least ventLeast, and never so long that its outer layer comes near the
// line (common practice, no source; the minutes are the model's).
var (
	VentToC    = unit.FToC(170)
	VentOuterC = unit.FToC(150)
)

const (
	VentLeast = 15
	VentMost  = 75
)

// leastVent is the least minutes open before a box or an oven.
func leastVent(it *Item, method string) float64 {
	if it.Cut.Style == cut.Tough && (method == schedule.HoldBox || method == schedule.HoldOven) {
		return VentLeast
	}
	return 0
}
