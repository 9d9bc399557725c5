package main

import (
	"cmp"
	"slices"
	"strings"

	"example.com/cookday/schedule"
)

// kindWords are kinds of line as a cook says them, after the name of a dish; others are said as they are written.
var kindWords = map[string]string{
	string(schedule.LogPulled): "off", string(schedule.LogBoxed): "in the", string(schedule.LogCounter): "on the counter",
	string(schedule.LogChilled): "in the refrigerator", string(schedule.LogRestarted): "back on", string(schedule.LogToOven): "in the oven at",
	string(schedule.LogCore): "inside", string(schedule.LogColdest): "in the coldest place", string(schedule.LogOuter): "under the surface",
	string(schedule.LogDishCancelled): "called off",
}

// inWords is a line that was noted, in a cook's words: the dish by its name, then what was done or read.
func inWords(n schedule.Note, p schedule.Plan) string {
	name := n.Dish
	if k := slices.IndexFunc(p.Dishes, func(d schedule.DishPlan) bool { return d.ID == n.Dish }); k >= 0 {
		name = p.Dishes[k].Name
	}
	words := []string{name, cmp.Or(kindWords[n.Kind], n.Kind), n.Text}
	switch schedule.EntryKind(n.Kind) {
	case schedule.LogCore, schedule.LogColdest, schedule.LogOuter: // 152 °F inside
		words[1], words[2] = words[2], words[1]
	case schedule.LogBoxed:
		if n.Text == "" {
			words[1] = "where it is held"
		}
	}
	return strings.Join(slices.DeleteFunc(words, func(w string) bool { return w == "" }), " ")
}
