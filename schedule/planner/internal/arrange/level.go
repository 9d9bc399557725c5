package arrange

import (
	"math"
	"slices"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/planner/internal/day"
)

// levelCosts adds to the ways of a batch what another place or level than the usual one is
// felt to cost. The heat that all can share is there to save a fire, and is not chosen for
// the time it saves: that is added to its cost. Nor is a hotter grate for a tough cut,
// which is cooked at its usual heat unless the day is too short for it.
func levelCosts(b *Batch) {
	ways := slices.Clone(b.Ways)
	if len(ways) == 0 {
		return
	}
	asked := ways[0].Z
	usual := usualMinutes(ways, asked, true)
	if usual == 0 {
		usual = usualMinutes(ways, asked, false)
	}
	for i := range ways {
		w := &ways[i]
		w.Cost += w.Rank * day.Unhabitual / 2
		if w.Rank > 0 && !w.Direct && (b.It.Cut.Style == cut.Tough || math.Abs(w.LevelC-day.CommonC) < sameLevelK) {
			if saved := usual - w.Total().Planned; saved > 0 { // also false of what is not known
				w.Cost += int(math.Ceil(saved * burnCost))
			}
		}
	}
	b.Ways = ways
}

// missWeight is what it costs to miss the meal for sure, done too late or too early to be kept
// until then, in changes of the fire. A tenth of that chance is a hundredth of it: less than
// half a change, and about what another heat than the usual one is felt to cost
// (assumption).
const missWeight = 40 * changeCost

// missCost is what a way costs for the asked chance that it does not have, because nothing
// keeps the batch for as long as its cook may be off.
func (d *Arranger) missCost(b *Batch, w day.Way) int {
	if b.It.Cut.Style != cut.Tough || d.Chill {
		return 0
	}
	sure := w.Sure
	for _, o := range b.Ways { // a wrap that waits for the clock is no way to be surer
		if w.Fixed && !o.Fixed && (o.Z < d.Z) == (w.Z < d.Z) && o.LevelC == w.LevelC && o.With == w.With && o.Direct == w.Direct {
			sure = o.Sure
		}
	}
	miss := math.Max(d.Req.Confidence-b.felt(w, sure), 0)
	return int(missWeight * miss * miss)
}

// Surer is by how much the chance of a batch must grow for its cook, who asked for no heat, to
// be given another than the usual one (assumption: nobody changes a habit for less).
const Surer = 0.2

// felt is how sure a way counts as: another heat than the usual one is no better unless it is
// clearly so.
func (b *Batch) felt(w day.Way, sure float64) float64 {
	if usual := b.UsualSure(); w.Rank > 0 && !w.Direct && sure < usual+Surer {
		return math.Min(sure, usual)
	}
	return sure
}

// UsualSure is the best chance of being in time and kept that the usual heat gives a batch.
func (b *Batch) UsualSure() float64 {
	best := 0.0
	for _, w := range b.Ways {
		if w.Rank == 0 {
			best = math.Max(best, w.Sure)
		}
	}
	return best
}

// LongerAtUsual is by how many minutes the cook would be longer at the usual heat, counted
// with as slow a day as the one that is planned; 0 where no way has the usual heat.
func (p *Placed) LongerAtUsual() float64 {
	longer := 0.0
	for _, w := range p.Ways {
		if w.Rank == 0 {
			longer = math.Max(longer, w.Total().At(p.Way.Z)-p.Way.Total().At(p.Way.Z))
		}
	}
	return longer
}

// usualMinutes is the longest that the ways in the usual place take, of those that count with
// the asked chance or of those that count with less; 0 where there is none.
func usualMinutes(ways []day.Way, asked float64, less bool) float64 {
	longest := 0.0
	for _, w := range ways {
		if w.Rank == ways[0].Rank && (w.Z < asked) == less {
			longest = math.Max(longest, w.Total().Planned)
		}
	}
	return longest
}
