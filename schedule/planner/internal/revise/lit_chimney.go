package revise

import (
	"slices"
	"time"

	"example.com/cookday/schedule/unit"
)

// A fire that was read this hot shortly before and after something was lit never went out: what was lit is the chimney of coals
// that feeds it (judgment; a chimney alone takes half of that time).
var burnsAllAlong = unit.FToC(250)

const burnsBetween = 45 * time.Minute

// onlyRelit are the lightings that tell of a fire which had been out, of those with a fire before them.
func onlyRelit(lit []time.Time, grates []grateReading) []time.Time {
	return slices.DeleteFunc(lit, func(at time.Time) bool {
		before, after := -1, -1
		for i, r := range grates {
			if !r.at.After(at) {
				before = i
			} else if after < 0 {
				after = i
			}
		}
		return before >= 0 && after >= 0 && min(grates[before].c, grates[after].c) >= burnsAllAlong && grates[after].at.Sub(grates[before].at) <= burnsBetween
	})
}
