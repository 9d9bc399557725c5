package revise

import (
	"context"
	"fmt"
	"math"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/assemble"
)

// Whatever becomes of the rest of a day: what is on the fire, or off it, has its clocks, its limits and its orders. Where no
// hour has room for what is to go on beside it, that is left out, and said.

// withoutWaiting solves the day of what is on or off alone; ok is false where there is nothing, or nothing is left out.
func (v *Revision) withoutWaiting(ctx context.Context, asked *assemble.Assembler) (l remainder, ok bool, err error) {
	on := func(id string) bool {
		return slices.ContainsFunc(v.batches, func(a *liveBatch) bool { return a.batch.It.Dish.ID == id && a.where != waiting })
	}
	r := plans.CopyRequest(asked.Req)
	r.Dishes = slices.DeleteFunc(r.Dishes, func(d schedule.Dish) bool { return !on(d.ID) })
	if len(r.Dishes) == 0 {
		return l, false, nil
	}
	for _, a := range v.batches {
		if name := a.batch.It.Dish.Name; a.where == waiting && !slices.Contains(v.leftOut, name) {
			v.leftOut = append(v.leftOut, name)
		}
	}
	v.batches = slices.DeleteFunc(v.batches, func(a *liveBatch) bool { return a.where == waiting })
	if err := v.resolve(r); err != nil {
		return l, false, err
	}
	v.rebind()
	asked = v.day
	likely, least := min(v.delay(false), longestWait), v.leastDelay()
	for _, later := range []int{0, likely, max(likely, least)} {
		if later < least {
			continue
		}
		v.attempt = attempt{later: later, halfway: true, all: true, aside: true, alone: true}
		if err := v.serveLater(asked, later); err != nil {
			return l, false, err
		}
		if l, ok, err = v.try(ctx); err != nil || ok {
			return l, ok, err
		}
	}
	return l, false, nil
}

// leastDelay is by how many minutes serving must move to lie ahead of now while something is on the fire, and to have what is
// off rested, however late that came off.
func (v *Revision) leastDelay() int {
	most := 0.0
	for _, a := range v.batches {
		ready := a.off.at.Add(instant.Minutes(a.batch.It.RestMinutes()))
		switch {
		case a.served.set || a.where == waiting || a.condemned && a.where == cooking:
			continue
		case a.where == cooking:
			ready = v.soonestReady(a)
		}
		most = math.Max(most, ready.Sub(v.serve(a)).Minutes())
	}
	return int(math.Ceil(most/delayStep)) * delayStep
}

// noteLeftOut names what is left out of the day.
func (v *Revision) noteLeftOut(add func(schedule.Finding)) {
	if len(v.leftOut) == 0 {
		return
	}
	add(schedule.NewFinding("stands-in-the-way", "", fmt.Sprintf("Left out of this plan: %s. No hour of this day is left for it beside what is on. Make a new plan for it, or log it cancelled.", say.Listed(v.leftOut, "and"))))
}
