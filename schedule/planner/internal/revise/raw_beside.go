package revise

import (
	"fmt"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/say"
)

// Figures of raw meat beside what cooks (judgment).
const (
	besideTold = 15 * time.Minute // for so long after it went on it is told of: then its outside is hot
	besideLead = 30 * time.Minute // what went on so much sooner is partly cooked
)

// noteRawBeside says, as it goes on, of raw meat whose inside may be dangerous that what cooks on the
// same fire already is kept from its juices. It moves no time of that.
func (v *Revision) noteRawBeside(a *liveBatch, add func(schedule.Finding)) {
	if !a.on.logged || !a.inner() || a.leastC() == 0 || v.now.Sub(a.on.at) > besideTold || !v.isOverFire(a) {
		return
	}
	var names []string
	for _, b := range v.batches {
		name := b.batch.It.Dish.Name
		if b.where == cooking && !b.condemned && v.isOverFire(b) && b.batch.It.Dish.ID != a.batch.It.Dish.ID && a.on.at.Sub(b.on.at) >= besideLead && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	if len(names) == 0 {
		return
	}
	add(about(a, schedule.RawBeside, fmt.Sprintf("%s: raw beside %s. Keep it on its own part of the grate, not above and not touching. Its own tongs and brush; then wash your hands. What its juices fell on stays in the heat until it reads %s there.",
		a.batch.It.Dish.Name, say.Listed(names, "and"), v.day.Core(a.leastC()))))
}
