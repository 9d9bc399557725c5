package draft

import (
	"slices"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/unit"
)

const nightText = "So large a piece may have to go on the evening before. May its fire burn through the night with nobody watching it? Answer no, and the day is planned without it if that can be done"

// A large piece takes about this much of the day before it is served at an early hour
// (assumptions, no source): then the night is worth a question.
const earlyMealHour = 16

var largePiece = unit.FromPounds(5)

// longNight says whether a cook may take the night: a large tough piece for an early meal.
func (i *Interview) longNight() bool {
	return i.quiet != noQuiet && i.serve.Hour() < earlyMealHour && slices.ContainsFunc(i.dishes, func(d dish) bool {
		m, err := unit.ParseMass(d.mass)
		if err != nil {
			m = unit.Mass(d.cut.Typical)
		}
		return d.cut.Style == cut.Tough && !d.cut.Ribs() && m >= largePiece
	})
}
