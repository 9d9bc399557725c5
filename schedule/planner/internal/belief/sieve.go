package belief

import (
	"math"

	"example.com/cookday/schedule"
)

// Reading is one reading of a core, in minutes from the put-on.
type Reading struct {
	Minute, CoreC float64
	Doubt         string // why it is not believed; empty if it is
}

func (r Reading) Counts() bool { return r.Doubt == "" }

// Limits of what a core can do between readings (assumptions).
const (
	nearAirK      = 22 // 40 F: so near the air of the grill no core comes
	nearOutsideK  = 8
	jumpK         = 6   // a probe that is put in anew is off by less
	fallK         = 4   // of a core that is being cooked
	coldFallKMin  = 0.7 // of one that is not
	steepShare    = 1.3 // how much steeper than the path it is on it may rise
	steepKMin     = 0.3 // and how steep in any case: real stalls end faster than modelled ones
	bandSigmas    = 3.0
	rateMinutes   = 90 // over longer gaps only the band counts
	settleAgain   = 3  // readings that agree with each other are believed again
	settleAgainK  = 4
	slowestDoneUp = 15 // K that a forgotten piece may go beyond its target
)

// Sieve finds the readings that contradict the physics of the piece: outside
// everything between the fastest and the slowest path, or a jump.
type Sieve struct {
	Paths      []Path // the fastest first
	Fast, Slow *Path
	ErrorK     func(coreC float64) float64
	AirC       func(minute float64) float64
	OutsideC   float64
	Cooking    func(from, to float64) bool // on a live fire all the time
	TargetC    float64
}

func (s Sieve) Sift(rs []Reading) {
	last, rejected := -1, 0
	for k := range rs {
		r := &rs[k]
		r.Doubt = s.band(k, *r)
		jump := ""
		if r.Doubt == "" && last >= 0 {
			jump = s.jump(rs, last, k)
		}
		switch {
		case r.Doubt != "":
			rejected = 0
		case jump == "":
			last, rejected = k, 0
		default:
			r.Doubt = jump
			if rejected++; rejected > 1 && math.Abs(r.CoreC-rs[k-1].CoreC) > settleAgainK+steepKMin*(r.Minute-rs[k-1].Minute) {
				rejected = 1
			}
			if rejected == settleAgain { // the probe was moved, or this is the true one
				r.Doubt = ""
				last, rejected = k, 0
			}
		}
	}
}

// band compares a reading with the fastest and the slowest path.
func (s Sieve) band(k int, r Reading) string {
	margin := jumpK + bandSigmas*s.ErrorK(r.CoreC)
	high := math.Max(s.Fast.cores[k], math.Min(s.TargetC+slowestDoneUp, s.Fast.cores[k]+slowestDoneUp)) + margin
	switch {
	case r.CoreC > high && r.CoreC > s.AirC(r.Minute)-nearAirK:
		return schedule.ProbeInAir
	case r.CoreC > high:
		return schedule.ProbeHot
	case r.CoreC < s.Slow.cores[k]-margin:
		return s.cold(r)
	}
	return ""
}

func (s Sieve) cold(r Reading) string {
	if r.CoreC < s.OutsideC+nearOutsideK {
		return schedule.ProbeFellOut
	}
	return schedule.ProbeCold
}

// jump compares a reading with the last one that was believed, by the path that
// goes through that one.
func (s Sieve) jump(rs []Reading, last, k int) string {
	before, r := rs[last], rs[k]
	took := r.Minute - before.Minute
	if took > rateMinutes {
		return ""
	}
	fall := fallK + 0.0
	if !s.Cooking(before.Minute, r.Minute) {
		fall += coldFallKMin * took
	}
	on := 0
	for i := range s.Paths {
		if math.Abs(s.Paths[i].cores[last]-before.CoreC) < math.Abs(s.Paths[on].cores[last]-before.CoreC) {
			on = i
		}
	}
	on = max(on-1, 0) // a little faster than that
	rise := jumpK + math.Max(steepShare*(s.Paths[on].cores[k]-s.Paths[on].cores[last]), steepKMin*took)
	switch {
	case r.CoreC > before.CoreC+rise && r.CoreC > s.AirC(r.Minute)-nearAirK:
		return schedule.ProbeInAir
	case r.CoreC > before.CoreC+rise:
		return schedule.ProbeHot
	case r.CoreC < before.CoreC-fall:
		return s.cold(r)
	}
	return ""
}
