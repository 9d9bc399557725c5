package day

import (
	"fmt"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/unit"
)

// bigBirdKg is from where a bird is too long between 40 and 140 F on a gentle fire: 14 lb
// (a limit of this program's own; judgment, no source).
const bigBirdKg = 14 * 0.45359237

// leastLevelC is the coolest grate that the dish may cook on, degC; 0 for any.
func (it *Item) leastLevelC() float64 {
	if it.bigBird() {
		return CommonC - sameLevelK
	}
	return 0
}

// sameLevelK is what a level loses between two scales.
const sameLevelK = 0.1

func (it *Item) bigBird() bool {
	return it.Cut.Poultry && slices.ContainsFunc(it.Lots, func(l Lot) bool { return l.MassKg > bigBirdKg })
}

// CoolBirds are faults of big birds that are asked to cook on a gentle fire: nothing is
// planned so. What such a cook takes may be asked for all the same.
func (d *Day) CoolBirds() []schedule.Fault {
	var out []schedule.Fault
	u := d.Req.Units
	for i := range d.Items {
		it := &d.Items[i]
		if l := it.Dish.Level; l != nil && float64(*l) < it.leastLevelC() {
			out = append(out, schedule.Fault{Path: it.Path("level"), Sentence: fmt.Sprintf(
				"%s is too cool for a bird of more than %s, whose middle stays too long between 40 and 140 °F (4 and 60 °C); ask for %s or more",
				u.Grate(*l), u.Mass(unit.Mass(bigBirdKg)), u.Grate(unit.Temperature(CommonC)))})
		}
	}
	return out
}
