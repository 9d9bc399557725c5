package arrange

import (
	"slices"

	"example.com/cookday/schedule/planner/internal/sequence"
)

// The fires of a request: as many as of a day, and two more where a second day has a meal
// of its own. The solver tries every sequence of them, so it is not offered twice as many.
func (d *Arranger) mostPhases() int {
	if d.meals() > 1 {
		return sequence.DefaultPhases + 2
	}
	return sequence.DefaultPhases
}

// meals counts the servings that are half a day or more apart.
func (d *Arranger) meals() int {
	var serves []int
	for i := range d.Items {
		serves = append(serves, d.Items[i].Serve)
	}
	slices.Sort(serves)
	n := 1
	for i := 1; i < len(serves); i++ {
		if serves[i]-serves[i-1] >= halfDay {
			n++
		}
	}
	return n
}

const halfDay = 12 * 60

func everyBatchHasWay(batches []*Batch) bool {
	for _, b := range batches {
		if len(b.Ways) == 0 {
			return false
		}
	}
	return true
}
