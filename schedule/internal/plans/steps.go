package plans

import (
	"slices"
	"sort"
	"time"

	"example.com/cookday/schedule"
)

// SortSteps orders steps by instant, and those of one instant by rank.
func SortSteps(steps []schedule.Step) {
	sort.SliceStable(steps, func(i, j int) bool {
		a, b := steps[i], steps[j]
		if !a.At.Equal(b.At) {
			return a.At.Before(b.At)
		}
		return RankOf(a.Kind) < RankOf(b.Kind)
	})
}

// stepRank orders steps of one instant: what ends comes before what begins.
var stepRank = map[schedule.StepKind]int{
	schedule.StepCheckOven: -2, // before anything else
	schedule.StepWaking:    -1, schedule.StepFireReady: 1, schedule.StepIndoors: -1, schedule.StepSetVents: 2, schedule.StepTakeOff: 3, schedule.StepChangeFire: 4, schedule.StepPutOn: 5, schedule.StepWrap: 6, schedule.StepSear: 6, schedule.StepRest: 7,
	schedule.StepBox: 8, schedule.StepToOven: 8, schedule.StepHold: 8, schedule.StepSlice: 9, schedule.StepChill: 10, schedule.StepServe: 11, schedule.StepCloseDown: 12,
}

// RankOf is where a step of a kind stands among steps of one instant.
func RankOf(kind schedule.StepKind) int { return stepRank[kind] }

// putAway are the kinds of step that put a piece where it waits to be cut up.
var putAway = map[schedule.StepKind]bool{schedule.StepBox: true, schedule.StepToOven: true, schedule.StepHold: true}

// WithoutLateHolds leaves out what puts a piece away, and is still to be done, as it is cut up
// or later: what comes off that near to its meal rests until then.
func WithoutLateHolds(steps []schedule.Step) []schedule.Step {
	type load struct {
		dish  string
		batch int
	}
	cut := map[load]time.Time{}
	for _, s := range steps {
		if s.Kind == schedule.StepSlice {
			cut[load{s.Dish, s.Batch}] = s.At
		}
	}
	return slices.DeleteFunc(steps, func(s schedule.Step) bool {
		at, cuts := cut[load{s.Dish, s.Batch}]
		return cuts && !s.Done && putAway[s.Kind] && !s.At.Before(at)
	})
}
