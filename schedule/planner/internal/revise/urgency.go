package revise

import (
	"cmp"
	"slices"

	"example.com/cookday/schedule"
)

// urgency is the place of findings of one severity: what needs hands now, then what
// becomes of dinner, then what to know. What is not named asks for a look at the food and
// comes between the fire and the clock.
var urgency = map[string]int{
	"unsound": -5, slowOver: -6, slowThrough: -6, unwatchedHeat: -5, "fire-out": -4, schedule.CoolOven: -5, schedule.StandsOpen: -4, schedule.NoFuel: -3, schedule.ReadingOpen: -4, schedule.WentOnWarm: -4, "fire-died": -3, schedule.PastTarget: -3, schedule.OffUndone: -4,
	"served-later": -2, schedule.NeverDone: -2,
	"grate-off-level": -1, "grate-doubted": -1, "grate-drifts": -1, "core-falling": -1,
	schedule.Late: 1, schedule.MayBeLate: 1, "less-sure": 1, "stands-in-the-way": 1,
	schedule.CodeHoldShort: 2, schedule.Early: 2, "no-word": 2,
	"other-model": 3, "gauge-offset": 3,
}

// byUrgency puts the gravest findings first, and of these what needs hands soonest. A
// text that is there already is not said twice.
func byUrgency(all []schedule.Finding) []schedule.Finding {
	grave := map[schedule.Severity]int{schedule.Danger: 0, schedule.Warning: 1, schedule.Info: 2}
	var out []schedule.Finding
	for _, f := range all {
		if !slices.ContainsFunc(out, func(o schedule.Finding) bool { return o.Code == f.Code && o.Text == f.Text }) {
			out = append(out, f)
		}
	}
	slices.SortStableFunc(out, func(a, b schedule.Finding) int {
		return cmp.Or(cmp.Compare(grave[a.Severity], grave[b.Severity]), cmp.Compare(urgency[a.Code], urgency[b.Code]))
	})
	return out
}
