package schedule

import (
	"slices"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/unit"
)

// leastSear is how hot the place over the coals of a described grill must get for a sear
// that nobody asked for.
var leastSear = unit.FromFahrenheit(550)

// FinishOf is how a dish ends: as it asks, else as its cut usually does, where the grill
// has coals for that and the dish is cooked in no way of its own. Empty for no sear.
func (r Request) FinishOf(d Dish) string {
	switch d.Finish {
	case FinishNone:
		return ""
	case "":
	default:
		return d.Finish
	}
	c, ok := cut.Find(d.Cut)
	if !ok || c.Finish == "" || d.Zone != "" || d.Level != nil || d.Wrap != nil || d.Ready != "" {
		return ""
	}
	if r.Grill.Kind == GrillOther && !slices.ContainsFunc(r.Grill.Zones, func(z GrillZone) bool { return z.Direct && z.Max >= leastSear }) {
		return ""
	}
	return c.Finish
}
