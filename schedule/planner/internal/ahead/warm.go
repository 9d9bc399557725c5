package ahead

import (
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/spread"
)

// warmed is what becomes of a dish between two days.
type warmed struct {
	cookedKg                  float64
	portionM                  float64     // the thickest that chills in time
	firstMinutes, coldMinutes float64     // from 135 F to 70 and to 41 F, at the poor end
	oven                      spread.Pace // minutes to the reheating temperature in the oven
}

// reheatOvenC is the oven for warming, 325 F, the lowest setting published for raw
// meat and used for cooked (common practice).
const reheatOvenC = safety.OvenLowC

// reheatSpread: nothing is measured of reheating; the widest of the roasts is taken.
var reheatSpread = spread.Spread{S: 0.25}

// warm computes the two days of a dish.
func warm(r schedule.Request, dish schedule.Dish) warmed {
	var w warmed
	c, _ := cut.Find(dish.Cut)
	for _, l := range day.LotsOf(dish) {
		w.cookedKg += l.MassKg * float64(l.Count) * (1 - c.LossFraction)
	}
	var report safety.CoolingReport
	w.portionM, report = day.ThickestPortion()
	w.firstMinutes, w.coldMinutes = report.FirstMinutes, report.WholeMinutes
	var s heat.Sim
	s.Start(day.Layer(math.Max(w.portionM, day.LeastPortionM), heat.RefrigeratorC), heat.WarmOven(reheatOvenC).AtAltitude(float64(r.Weather.Altitude)))
	if s.RunTo(safety.ReheatMinimum().CoreC, day.LongestCookS) == heat.Reached {
		m := (s.ElapsedS() + safety.ReheatMinimum().HoldSeconds) / 60
		w.oven = spread.Paces(spread.NormalQuantile(r.Confidence), func(z float64) float64 { return m * reheatSpread.Factor(z) })
	}
	return w
}
