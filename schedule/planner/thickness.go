package planner

import (
	"fmt"
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/unit"
)

// Pieces of one cut and weight are thicker or thinner than the usual one by so much, one
// piece in three by more (assumption).
const thicknessShare = 0.15

// thicknessFinding says what a measured thickness would settle, where it decides: roasts
// that are cut to any shape, chuck, and what is thick among steaks and chops. usual is the
// expected minutes of the piece as it is taken to be.
func thicknessFinding(d *assemble.Assembler, q schedule.Inquiry, s day.Spot, usual float64) []schedule.Finding {
	it := &d.Items[0]
	usualM, _, _ := it.Cut.Dimensions(it.Lots[0].MassKg, 0)
	if q.Dish.Thickness > 0 || !thicknessDecides(it, usualM) {
		return nil
	}
	at := func(share float64) float64 {
		like := *it
		like.Dish.Thickness = unit.Length(usualM * share)
		ways := outlookWays(d.Day, &like, s)
		if len(ways) == 0 {
			return math.NaN()
		}
		return ways[0].Total().Expected
	}
	thin, thick := at(1-thicknessShare), at(1+thicknessShare)
	if math.IsNaN(thin+thick) || thick-thin < 0.1*usual {
		return nil
	}
	size := func(m float64) string { return d.Req.Units.Length(unit.Length(m)) }
	return []schedule.Finding{day.Finding("measure-thickness", "thickness", it, fmt.Sprintf(
		"Measure how thick it is: these times take it to be %s. At %s it would be done about %s sooner, at %s about %s later.",
		size(usualM), size(usualM*(1-thicknessShare)), d.About(usual-thin), size(usualM*(1+thicknessShare)), d.About(thick-usual)))}
}

func thicknessDecides(it *day.Item, thicknessM float64) bool {
	switch {
	case it.Cut.Spread == "chuck":
		return true
	case it.Cut.Style == cut.Small:
		return thicknessM >= day.ThickM-1e-4 && !it.Cut.Poultry
	}
	return it.Cut.Style == cut.Roast
}
