package surprise

import (
	"math"

	"example.com/cookday/schedule/planner/internal/belief"
)

// Two places of one piece, and a piece that is done too soon.

// fastSd is by how many standard deviations a reading may be warmer than foretold and still
// finish a piece whose inside may be dangerous (judgment).
const fastSd = 2.0

// finishes says of a plain reading whether it alone would finish a piece whose inside may be
// dangerous, and is warmer than nearly any such piece is by then: that wants another one.
func (j *judge) finishes(r Reading, f foretold) bool {
	least := j.scene.LeastC
	return least > 0 && !r.Pushed && r.CoreC >= least && f.coreC < least && r.CoreC-f.coreC > fastSd*f.sdK
}

// leaps says of a plain reading whether it alone would finish a piece that hardly any of its kind is as
// warm as by then, or that rose far faster since it was read than it should: beside a bone or in the air
// a probe shows that, and what is taken off by it is raw.
func (j *judge) leaps(r Reading, f foretold) bool {
	done := j.scene.DoneC
	if done == 0 || r.Pushed || r.CoreC < done-sameK || f.coreC > done {
		return false
	}
	soon := f.from.Minute > 0 && r.Minute-f.from.Minute <= leapMinutes
	rose, foretold := r.CoreC-f.from.CoreC, f.coreC-f.from.CoreC
	past := r.CoreC >= done+leapK && rose > pastRoseK && rose > foretold+leapK
	return r.CoreC-f.coreC > fastSd*f.sdK || soon && (past || f.coreC < done-leapK && rose > leapFaster*foretold+2*belief.ProbeErrorK)
}

// What a leap is (judgment): within so long after a reading, so far short of the target by what was
// foretold and so many times as fast; or as far past it, after so much of a rise.
const (
	leapMinutes = 150.0
	leapK       = 10 / 1.8
	leapFaster  = 1.5
	pastRoseK   = 30 / 1.8
)

// sameK is within what a core is at its target.
const sameK = 1 / 1.8

// leapAgain says whether the reading before one leapt to the target, and this one shows the same soon
// after it: that is no chance.
func (j *judge) leapAgain(k int) bool {
	n := len(j.verdicts)
	if k == 0 || n == 0 || !j.verdicts[n-1].Leap || j.verdicts[n-1].Index != k-1 {
		return false
	}
	r, w := j.readings[k], j.readings[k-1]
	return r.Minute > w.Minute && r.Minute-w.Minute <= settles && math.Abs(r.CoreC-w.CoreC) <= ordinarySd*math.Hypot(belief.ProbeErrorK, belief.PlaceErrorK)
}

// bothTaken takes a reading for the core, and the one before it that leapt to the same.
func (j *judge) bothTaken(k int, from *belief.Foretold, f foretold) {
	j.verdicts = j.verdicts[:len(j.verdicts)-1]
	j.taken[k-1], j.doubts[k-1] = true, ""
	j.take(k, from, f)
}

// frozen says whether a reading is of ice: in the first hours, and colder than the piece went on.
func (j *judge) frozen(r Reading) bool {
	return r.CoreC >= frozenFromC && r.CoreC <= frozenToC && r.Minute <= frozenMinutes && j.scene.Journey.Body.StartC > frozenToC+nearIceK
}

// nearIceK is how much warmer than ice a piece must have gone on to be told from it.
const nearIceK = 2.0

// colderPlace says whether a reading that was just left out as of another place, or is of a
// probe pushed through, is colder than one shortly before it, of a piece of which the coldest
// place counts: one whose inside may be dangerous, or that the warmer one alone would finish.
func (j *judge) colderPlace(warm, k int) bool {
	n := len(j.verdicts)
	ends := j.scene.DoneC > 0 && j.readings[warm].CoreC >= j.scene.DoneC && j.readings[k].CoreC < j.scene.DoneC
	if j.scene.LeastC == 0 && !ends || n == 0 || j.verdicts[n-1].Index != k || !j.verdicts[n-1].Cold || !j.taken[warm] {
		return false
	}
	main := j.verdicts[n-1].Main()
	r, w := j.readings[k], j.readings[warm]
	other := !j.taken[k] && (main == Place || main == Dish) || r.Pushed && main == Pace
	return other && r.Minute-w.Minute <= settles && r.CoreC < w.CoreC
}
