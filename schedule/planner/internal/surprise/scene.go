package surprise

import (
	"math"
	"slices"
	"sort"

	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/belief"
)

// Grate is what a thermometer said of the air beside the meat.
type Grate struct {
	Minute, C, LevelC float64
	Gauge             bool // worked out from the gauge in the lid
}

// How near its level a grate must be to prove heat, and how far a reading of it is off
// (the first is the specification's, the others are assumptions).
const (
	provesK   = 40 / 1.8
	grateSdK  = 15 / 1.8
	gaugeSdK  = 30 / 1.8
	aliveSdK  = 25 / 1.8
	gridStep  = 15.0 // minutes
	mostSince = 48   // points of a grid
)

func (g Grate) sdK() float64 {
	if g.Gauge {
		return gaugeSdK
	}
	return grateSdK
}

// proves says whether it shows that the fire burned.
func (g Grate) proves() bool { return g.C > g.LevelC-provesK }

// weak says whether it shows a fire that gives hardly any heat, of one that was meant to.
func (g Grate) weak() bool { return g.C < safety.HalfHeatC && g.LevelC > safety.HalfHeatC }

// Scene is what is known of the fire and of the world around a piece, in minutes from
// its put-on.
type Scene struct {
	Journey  *belief.Journey
	Without  func(from, to float64) *belief.Journey // the same with the fire out in between; to may be now
	AirC     func(minute float64) float64           // beside the meat, as it is taken to have been
	DeadAirC func(from, minute float64) float64     // beside the meat, if the fire died at from
	OutsideC func(minute float64) float64           // the air outside
	Grates   []Grate                                // in order
	Lit      []float64                              // told relightings of a fire that nobody told to be out
	Known    []Span                                 // outages that are taken for granted
	Dead     []Span                                 // those of them in which the fire is known to have been out
	Others   []Other                                // pieces that might have been read instead
	Now      float64
	Fire     bool         // it is a fire that cooks it, which may die
	Accepted map[int]bool // readings that what is known of the fire explains
	LeastC   float64      // what the coldest place of a piece must show whose inside may be dangerous; 0 for others
	DoneC    float64      // what it comes off at; 0 for none

	proven *proofs // as asked for
}

// Span is a stretch of minutes.
type Span struct{ From, To float64 }

// Other is another piece of the day.
type Other struct {
	Name   string
	CoreAt func(minute, readC float64) (coreC, sdK float64, ok bool)
}

// proofs are the minutes at which a thermometer, or a told lighting, showed that the fire
// burned; those of outages that are known to have ended are proofs of what was before.
type proofs struct{ seen, ended []float64 }

func (s *Scene) proofs() *proofs {
	if s.proven != nil {
		return s.proven
	}
	p := &proofs{seen: append([]float64(nil), s.Lit...)}
	for _, g := range s.Grates {
		if g.proves() {
			p.seen = append(p.seen, g.Minute)
		}
	}
	for _, k := range s.Known {
		p.ended = append(p.ended, k.To)
	}
	slices.Sort(p.seen)
	slices.Sort(p.ended)
	s.proven = p
	return p
}

// provenUntil is the last minute up to another at which a thermometer, or a told lighting,
// showed that the fire burned.
func (s *Scene) provenUntil(minute float64) float64 {
	last := 0.0
	for _, all := range [2][]float64{s.proofs().seen, s.proofs().ended} {
		if i := after(all, minute); i > 0 {
			last = math.Max(last, all[i-1])
		}
	}
	return last
}

// provenAfter is the first minute after another at which a thermometer, or a told lighting,
// showed that the fire burned; +Inf for none.
func (s *Scene) provenAfter(minute float64) float64 {
	if seen := s.proofs().seen; after(seen, minute) < len(seen) {
		return seen[after(seen, minute)]
	}
	return math.Inf(1)
}

// after is the place of the first of some minutes, in order, that lies after another.
func after(all []float64, minute float64) int {
	return sort.Search(len(all), func(i int) bool { return all[i] > minute })
}

// relitWithin says whether somebody told of lighting the fire within some minutes.
func (s *Scene) relitWithin(from, to float64) bool {
	for _, at := range s.Lit {
		if at > from && at <= to {
			return true
		}
	}
	return false
}
