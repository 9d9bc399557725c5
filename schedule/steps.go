package schedule

import (
	"fmt"
	"sort"
)

// itinerary collects the steps of a plan.
type itinerary struct {
	d     *day
	plan  *Plan
	a     arrangement
	steps []Step
	count map[string]int // steps so far of a dish, batch and kind
}

// steps lists what to do and to expect, by instant.
func (d *day) steps(p *Plan, a arrangement, all []*placed) []Step {
	it := &itinerary{d: d, plan: p, a: a, count: map[string]int{}}
	it.fires()
	for i := range d.items {
		it.before(&d.items[i], batchesOf(&d.items[i], all))
	}
	for _, b := range all {
		it.cook(b)
		it.wait(b)
	}
	it.servings()
	sortSteps(it.steps)
	return it.steps
}

// sortSteps orders steps by instant, and those of one instant by rank.
func sortSteps(steps []Step) {
	sort.SliceStable(steps, func(i, j int) bool {
		a, b := steps[i], steps[j]
		if !a.At.Equal(b.At) {
			return a.At.Before(b.At)
		}
		return stepRank[a.Kind] < stepRank[b.Kind]
	})
}

// stepRank orders steps of one instant: what ends comes before what begins.
var stepRank = map[string]int{
	StepFireReady: 1, StepSetVents: 2, StepTakeOff: 3, StepChangeFire: 4, StepPutOn: 5, StepWrap: 6, StepSear: 6, StepRest: 7,
	StepBox: 8, StepToOven: 8, StepHold: 8, StepSlice: 9, StepServe: 10, StepCloseDown: 11,
}

// add files a step with its id. Steps of a kind are numbered within dish and
// batch in the order they are added.
func (it *itinerary) add(s Step) {
	key := s.sort()
	it.count[key]++
	group := s.Batch
	if s.Dish == "" {
		group = s.Phase
	}
	s.ID = stepID(it.plan.ID, s.Dish, group, s.Kind, it.count[key])
	if s.Window == (Window{}) {
		s.Window = fixedWindow(s.At)
	}
	it.steps = append(it.steps, s)
}

// addSecond adds a step that has the id of the second of its sort even where there
// is no first one: a sheet without a first look may have one later.
func (it *itinerary) addSecond(s Step) {
	it.count[s.sort()] = max(it.count[s.sort()], 1)
	it.add(s)
}

// sort is what the ids of steps count within.
func (s Step) sort() string { return fmt.Sprintf("%s/%d/%d/%s", s.Dish, s.Batch, s.Phase, s.Kind) }
