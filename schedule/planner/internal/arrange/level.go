package arrange

import (
	"math"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/spread"
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

// earlyWeight is what it costs to be sure of a hold that ends before the meal, in changes of
// the fire; half that chance costs a quarter, for nobody minds a small one (assumption).
const earlyWeight = 3 * changeCost

// earlyCost is what a way costs for the chance that the batch, put on in time for a slow
// day, is done too early on a fast one to be kept until it is eaten.
func (d *Arranger) earlyCost(b *Batch, w day.Way) int {
	if b.It.Cut.Style != cut.Tough || d.Chill {
		return 0
	}
	for _, same := range b.Ways { // a wrap that waits for the clock is no way to be surer
		if w.Fixed && !same.Fixed && same.LevelC == w.LevelC && same.With == w.With && same.Direct == w.Direct {
			w = same
		}
	}
	longest := 0.0
	for _, o := range d.HoldOptions(b.It, w, b.lot()) {
		longest = math.Max(longest, o.Minutes)
	}
	least := w.Total().Planned + b.It.RestMinutes() + b.It.TravelMinutes() - longest
	over := math.Max(spread.NormalCDF(w.QuantileOf(least))-fastDays, 0)
	return int(earlyWeight * over * over)
}

// usualMinutes is the longest that the ways in the usual place take.
func usualMinutes(ways []day.Way) float64 {
	longest := 0.0
	for _, w := range ways {
		longest = math.Max(longest, w.Total().Planned)
	}
	return longest
}
