package assemble

import (
	"fmt"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/planner/internal/arrange"
)

// Itinerary collects the steps of a plan.
type Itinerary struct {
	D     *Assembler
	Plan  *schedule.Plan
	A     arrange.Arrangement
	All   []*arrange.Placed
	Steps []schedule.Step
	Count map[string]int // steps so far of a dish, batch and kind
}

// Steps lists what to do and to expect, by instant.
func (d *Assembler) Steps(p *schedule.Plan, a arrange.Arrangement, all []*arrange.Placed) []schedule.Step {
	it := &Itinerary{D: d, Plan: p, A: a, All: all, Count: map[string]int{}}
	it.fires()
	for i := range d.Items {
		it.before(&d.Items[i], batchesOf(&d.Items[i], all))
	}
	for _, b := range all {
		it.cook(b)
		it.Wait(b)
	}
	it.servings()
	it.nights(all)
	plans.SortSteps(it.Steps)
	return it.Steps
}

// add files a step with its id. Steps of a kind are numbered within dish and
// batch in the order they are added.
func (it *Itinerary) add(s schedule.Step) {
	key := stepSort(s)
	it.Count[key]++
	group := s.Batch
	if s.Dish == "" {
		group = s.Phase
	}
	s.ID = plans.StepID(it.Plan.ID, s.Dish, group, s.Kind, it.Count[key])
	if s.Window == (schedule.Window{}) {
		s.Window = plans.FixedWindow(s.At)
	}
	it.Steps = append(it.Steps, s)
}

// addAs adds a step with an ordinal of its own, so that it moves the ids of no others of its sort.
func (it *Itinerary) addAs(s schedule.Step, ordinal int) {
	key := stepSort(s)
	was := it.Count[key]
	it.Count[key] = ordinal - 1
	it.add(s)
	it.Count[key] = was
}

// addSecond adds a step that has the id of the second of its sort even where there
// is no first one: a sheet without a first look may have one later.
func (it *Itinerary) addSecond(s schedule.Step) {
	it.Count[stepSort(s)] = max(it.Count[stepSort(s)], 1)
	it.add(s)
}

// stepSort is what the ids of steps count within.
func stepSort(s schedule.Step) string {
	return fmt.Sprintf("%s/%d/%d/%s", s.Dish, s.Batch, s.Phase, s.Kind)
}
