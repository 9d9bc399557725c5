package schedule

import "math"

// reading is one reading of a core, in minutes from the put-on.
type reading struct {
	minute, coreC float64
	doubt         string // why it is not believed; empty if it is
}

func (r reading) counts() bool { return r.doubt == "" }

// Why a reading is not believed.
const (
	probeInAir   = "probe-in-air"   // it shows the air of the grill, or the grate
	probeFellOut = "probe-fell-out" // it shows the air outside
	probeHot     = "probe-hot"      // warmer than the meat can be by now
	probeCold    = "probe-cold"     // colder than it can have become
)

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

// sieve finds the readings that contradict the physics of the piece: outside
// everything between the fastest and the slowest path, or a jump.
type sieve struct {
	paths      []path // the fastest first
	fast, slow *path
	errorK     func(coreC float64) float64
	airC       func(minute float64) float64
	outsideC   float64
	cooking    func(from, to float64) bool // on a live fire all the time
	targetC    float64
}

func (s sieve) sift(rs []reading) {
	last, rejected := -1, 0
	for k := range rs {
		r := &rs[k]
		r.doubt = s.band(k, *r)
		jump := ""
		if r.doubt == "" && last >= 0 {
			jump = s.jump(rs, last, k)
		}
		switch {
		case r.doubt != "":
			rejected = 0
		case jump == "":
			last, rejected = k, 0
		default:
			r.doubt = jump
			if rejected++; rejected > 1 && math.Abs(r.coreC-rs[k-1].coreC) > settleAgainK+steepKMin*(r.minute-rs[k-1].minute) {
				rejected = 1
			}
			if rejected == settleAgain { // the probe was moved, or this is the true one
				r.doubt = ""
				last, rejected = k, 0
			}
		}
	}
}

// band compares a reading with the fastest and the slowest path.
func (s sieve) band(k int, r reading) string {
	margin := jumpK + bandSigmas*s.errorK(r.coreC)
	high := math.Max(s.fast.cores[k], math.Min(s.targetC+slowestDoneUp, s.fast.cores[k]+slowestDoneUp)) + margin
	switch {
	case r.coreC > high && r.coreC > s.airC(r.minute)-nearAirK:
		return probeInAir
	case r.coreC > high:
		return probeHot
	case r.coreC < s.slow.cores[k]-margin:
		return s.cold(r)
	}
	return ""
}

func (s sieve) cold(r reading) string {
	if r.coreC < s.outsideC+nearOutsideK {
		return probeFellOut
	}
	return probeCold
}

// jump compares a reading with the last one that was believed, by the path that
// goes through that one.
func (s sieve) jump(rs []reading, last, k int) string {
	before, r := rs[last], rs[k]
	took := r.minute - before.minute
	if took > rateMinutes {
		return ""
	}
	fall := fallK + 0.0
	if !s.cooking(before.minute, r.minute) {
		fall += coldFallKMin * took
	}
	on := 0
	for i := range s.paths {
		if math.Abs(s.paths[i].cores[last]-before.coreC) < math.Abs(s.paths[on].cores[last]-before.coreC) {
			on = i
		}
	}
	on = max(on-1, 0) // a little faster than that
	rise := jumpK + math.Max(steepShare*(s.paths[on].cores[k]-s.paths[on].cores[last]), steepKMin*took)
	switch {
	case r.coreC > before.coreC+rise && r.coreC > s.airC(r.minute)-nearAirK:
		return probeInAir
	case r.coreC > before.coreC+rise:
		return probeHot
	case r.coreC < before.coreC-fall:
		return s.cold(r)
	}
	return ""
}
