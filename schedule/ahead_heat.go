package schedule

import (
	"fmt"
	"math"
	"time"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/unit"
)

// warmed is what becomes of a dish between two days.
type warmed struct {
	cookedKg                  float64
	portionM                  float64 // the thickest that chills in time
	firstMinutes, coldMinutes float64 // from 135 F to 70 and to 41 F, at the poor end
	oven                      pace    // minutes to the reheating temperature in the oven
}

// Chilling: covered portions in one layer, in a shallow pan in the refrigerator.
// Still air and radiation take what they take of a wall in a room (from memory);
// the poor end has a quarter less.
const (
	chillAirC       = 3.3 // 38 F, a refrigerator that keeps 40 F (assumption)
	chillConvection = 5.0 // W/(m2 K)
	chillEmissivity = 0.9
	panWidthM       = 0.20 // of the layer (assumption): wide against its thickness
	panLengthM      = 0.30
	leastPortionM   = 0.010
	mostPortionM    = 0.080
	portionGridM    = 0.005 // as a cook measures
	chillRunS       = 24 * 3600
)

// chillWatch is how long somebody looks after what chills: the first stage.
const chillWatch = time.Duration(safety.CoolingFirstMinutes) * time.Minute

// refrigerator is what surrounds covered food in it.
func refrigerator(e end) heat.Surroundings {
	s := heat.Surroundings{AirC: chillAirC, WallC: chillAirC, ConvectionWM2K: chillConvection, Emissivity: chillEmissivity}
	if e == poorEnd {
		s.ConvectionWM2K, s.Emissivity = s.ConvectionWM2K/poorShare, s.Emissivity/poorShare
	}
	return s
}

// layer is cooked meat in one layer.
func layer(thicknessM, startC float64) heat.Body {
	c, _ := cut.Find(parcelCut)
	k := c.Composition
	return heat.Body{
		ThicknessM: thicknessM, WidthM: panWidthM, LengthM: panLengthM, RadiusScale: 1,
		Water: k.Water, Protein: k.Protein, Fat: k.Fat, Ash: k.Ash, SupplyFactor: c.SupplyFactor, StartC: startC,
	}
}

// chill follows the middle of a layer from the model's warmest start, 140 F, until
// it is cold. The published clock begins at 135 F.
func chill(thicknessM float64, e end) []safety.Sample {
	var s heat.Sim
	s.Start(layer(thicknessM, safety.DangerHighC), refrigerator(e))
	samples := []safety.Sample{{Minute: 0, C: s.CoreC()}}
	for s.ElapsedS() < chillRunS && s.CoreC() > safety.CoolingEndC {
		s.RunFor(300)
		samples = append(samples, safety.Sample{Minute: s.ElapsedS() / 60, C: s.CoreC()})
	}
	return samples
}

// thickestPortion is the thickest layer, on a cook's grid, that chills within both
// published stages at the poor end, and its report; 0 if none does.
func thickestPortion() (float64, safety.CoolingReport) {
	for t := mostPortionM; t >= leastPortionM-1e-9; t -= portionGridM {
		r, err := safety.JudgeCooling(chill(t, poorEnd))
		if err == nil && r.Kind == safety.CoolingWithin {
			return t, r
		}
	}
	return 0, safety.CoolingReport{}
}

// reheatOvenC is the oven for warming, 325 F, the lowest setting published for raw
// meat and used for cooked (common practice).
const reheatOvenC = safety.OvenLowC

// reheatSpread: nothing is measured of reheating; the widest of the roasts is taken.
var reheatSpread = spread{S: 0.25}

// warm computes the two days of a dish.
func warm(r Request, dish Dish) warmed {
	var w warmed
	c, _ := cut.Find(dish.Cut)
	for _, l := range lotsOf(dish) {
		w.cookedKg += l.massKg * float64(l.count) * (1 - c.LossFraction)
	}
	var report safety.CoolingReport
	w.portionM, report = thickestPortion()
	w.firstMinutes, w.coldMinutes = report.FirstMinutes, report.WholeMinutes
	var s heat.Sim
	s.Start(layer(math.Max(w.portionM, leastPortionM), heat.RefrigeratorC), heat.WarmOven(reheatOvenC).AtAltitude(float64(r.Weather.Altitude)))
	if s.RunTo(safety.ReheatMinimum().CoreC, longestCookS) == heat.Reached {
		m := (s.ElapsedS() + safety.ReheatMinimum().HoldSeconds) / 60
		w.oven = paces(normalQuantile(r.Confidence), func(z float64) float64 { return m * reheatSpread.factor(z) })
	}
	return w
}

// portionText says how thick a dish may be cut to chill in time.
func (d *day) portionText(name string) string {
	t, _ := thickestPortion()
	return fmt.Sprintf("Slice or pull %s, no piece thicker than %s.", name, d.req.Units.Length(unit.Length(t)))
}
