package surprise

import (
	"math"

	"example.com/cookday/schedule/planner/internal/belief"
)

// Proofs by a core (judgment): a rise soon after the last proof proves as much again; a
// slow one is asked about where nothing has proven heat for long.
const (
	riseProves  = 90.0  // minutes
	longUnseen  = 120.0 // minutes
	slowUnseen  = 2.0   // standard deviations of the pace: one sound cook in 44 is as slow
	proofHalves = 5
)

// provenBy is until when a reading, warmer than the one before it, proves heat. One soon
// after the last proof, or no slower than many sound cooks, does until itself; any other
// until the last minute before which a dead fire could not have made the core as warm: it
// goes on rising for long after that.
func (s *Scene) provenBy(o *belief.Outlook, f *belief.Foretold, node, r belief.Reading, proven float64) float64 {
	if r.Minute-proven <= riseProves || f.Slow(r.Minute, r.CoreC) < 1 {
		return math.Max(proven, r.Minute)
	}
	dead := func(t float64) bool {
		return r.CoreC <= o.In(s.Without(t, r.Minute), node, r.Minute)+2*math.Hypot(belief.ProbeErrorK, belief.PlaceErrorK)
	}
	from, to := math.Max(proven, node.Minute), r.Minute
	if dead(from) {
		return proven
	}
	for range proofHalves {
		if mid := (from + to) / 2; dead(mid) {
			to = mid
		} else {
			from = mid
		}
	}
	return from
}

// slow says whether a cold reading, long after the last proof of heat, is slower than nearly
// all cooks, and as cold as a dead fire would have it.
func (j *judge) slow(r Reading, from *belief.Foretold, f foretold) bool {
	proven := math.Max(j.scene.provenUntil(r.Minute), j.provenByCore)
	return j.scene.Fire && r.CoreC < f.coreC && r.Minute-proven > longUnseen && from.Slow(r.Minute, r.CoreC) > slowUnseen &&
		j.coldest(belief.Reading{Minute: r.Minute, CoreC: r.CoreC}, f, proven, r.Minute)
}
