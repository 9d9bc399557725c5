package day

import (
	"example.com/cookday/schedule"
)

// menu is what a plan says of its dishes before any of them is placed.
func (d *Day) Menu() []schedule.DishPlan {
	var all []schedule.DishPlan
	for _, it := range d.Items {
		all = append(all, schedule.DishPlan{
			ID: it.Dish.ID, Name: it.Dish.Name, Cut: it.Cut.Name, Count: it.Dish.Count, ServeAt: d.At(float64(it.Serve)),
			TargetC: it.TargetC, Doneness: it.Doneness, MinimumC: it.Verdict.Minimum.CoreC, Batches: []schedule.Batch{},
		})
	}
	return all
}
