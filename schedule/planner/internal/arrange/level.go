package arrange

import (
	"math"

	"example.com/cookday/schedule/planner/internal/day"
)

// levelCosts adds to the ways of a lot what another place or level than the usual one is
// felt to cost. The heat that all can share is there to save a fire, and is not chosen for
// the time it saves: that is added to its cost. Nor is a hotter grate for a tough cut,
// which is cooked at its usual heat unless the day is too short for it.
func levelCosts(ways []day.Way, rank int, usual float64, tough bool) {
	for i := range ways {
		w := &ways[i]
		w.Cost += rank * day.Unhabitual / 2
		if rank > 0 && !w.Direct && (tough || math.Abs(w.LevelC-day.CommonC) < sameLevelK) {
			if saved := usual - w.Total().Planned; saved > 0 { // also false of what is not known
				w.Cost += int(math.Ceil(saved * burnCost))
			}
		}
	}
}

// usualMinutes is the longest that the ways in the usual place take.
func usualMinutes(ways []day.Way) float64 {
	longest := 0.0
	for _, w := range ways {
		longest = math.Max(longest, w.Total().Planned)
	}
	return longest
}
