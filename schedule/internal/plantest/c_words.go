package plantest

import (
	"slices"
	"time"

	"example.com/cookday/schedule"
)

const (
	// Oven170 is a kitchen oven that holds at 170 F.
	Oven170 = "oven: {hold: 170 F}\n"
	// Sleep is an everyday night.
	Sleep = "quiet: [{from: \"23:00\", to: \"05:30\"}]\n"
)

// StepsOf are all steps of a kind and dish.
func StepsOf(p schedule.Plan, kind schedule.StepKind, dish string) []schedule.Step {
	return slices.DeleteFunc(Steps(p, kind), func(s schedule.Step) bool { return s.Dish != dish })
}

// Median is the middle of figures in any order.
func Median(x []float64) float64 {
	s := slices.Sorted(slices.Values(x))
	n := len(s)
	return (s[(n-1)/2] + s[n/2]) / 2
}

// FirstAt is the instant of the first step of a kind and dish, zero where there is none.
func FirstAt(p schedule.Plan, kind schedule.StepKind, dish string) time.Time {
	for _, s := range StepsOf(p, kind, dish) {
		return s.At
	}
	return time.Time{}
}
