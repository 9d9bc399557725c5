package surprise

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
