package surprise

import (
	"example.com/cookday/schedule/planner/internal/belief"
	"example.com/cookday/schedule/unit"
)

// Between these a bare core stands still, for hours (common practice, no source).
var stallFromC, stallToC = unit.FToC(145), unit.FToC(170)

// stalls says whether a reading, colder than foretold, is of a bare piece in its stall: it has
// not fallen, no dead fire explains it, and nothing says but the model that it should be through.
func (j *judge) stalls(r Reading, f foretold, v Verdict) bool {
	bare := !(j.scene.Journey.Wrapped <= r.Minute) // also of NaN
	return j.outlook.Stalls && bare && v.Cold && r.CoreC >= stallFromC && r.CoreC <= stallToC &&
		r.CoreC >= f.from.CoreC-belief.ProbeErrorK && v.Chance(Fire) < AliveFrom && v.Chance(Unit) < AskFrom
}
