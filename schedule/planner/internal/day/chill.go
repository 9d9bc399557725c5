package day

import (
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
)

// Everything is cut and chilled by chillHour of the day before, or earlier where
// quiet hours would leave less than the published two hours to look after it.
const (
	chillHour  = 20
	chillLeast = 12
)

func ChillAt(r schedule.Request, loc *time.Location) time.Time {
	y, m, n := r.Serve.Date.Date()
	d := Day{Req: r, Loc: loc, End: time.Date(y, m, n, r.Serve.Time.Hours(), r.Serve.Time.Minutes(), 0, 0, loc)}
	latest := time.Date(y, m, n-1, chillHour, 0, 0, 0, loc)
	for at := latest; at.Hour() >= chillLeast; at = at.Add(-2 * instant.Quarter) {
		if len(d.Untended(at, at.Add(ChillWatch))) == 0 {
			return at
		}
	}
	return latest
}

const (
	ParcelCut = "cooked-meat"
	ParcelKg  = 1.0 // what a pair of tongs turns over
)

// Chilling: covered portions in one layer, in a shallow pan in the refrigerator.
// Still air and radiation take what they take of a wall in a room (from memory);
// the poor end has a quarter less.
const (
	chillAirC       = 3.3 // 38 F, a refrigerator that keeps 40 F (assumption)
	chillConvection = 5.0 // W/(m2 K)
	chillEmissivity = 0.9
	panWidthM       = 0.20 // of the layer (assumption): wide against its thickness
	panLengthM      = 0.30
	LeastPortionM   = 0.010
	mostPortionM    = 0.080
	portionGridM    = 0.005 // as a cook measures
	chillRunS       = 24 * 3600
)

// ChillWatch is how long somebody looks after what chills: the first stage.
const ChillWatch = time.Duration(safety.CoolingFirstMinutes) * time.Minute

// refrigerator is what surrounds covered food in it.
func refrigerator(e end) heat.Surroundings {
	s := heat.Surroundings{AirC: chillAirC, WallC: chillAirC, ConvectionWM2K: chillConvection, Emissivity: chillEmissivity}
	if e == PoorEnd {
		s.ConvectionWM2K, s.Emissivity = s.ConvectionWM2K/poorShare, s.Emissivity/poorShare
	}
	return s
}

// Layer is cooked meat in one layer.
func Layer(thicknessM, startC float64) heat.Body {
	c, _ := cut.Find(ParcelCut)
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
	s.Start(Layer(thicknessM, safety.DangerHighC), refrigerator(e))
	samples := []safety.Sample{{Minute: 0, C: s.CoreC()}}
	for s.ElapsedS() < chillRunS && s.CoreC() > safety.CoolingEndC {
		s.RunFor(300)
		samples = append(samples, safety.Sample{Minute: s.ElapsedS() / 60, C: s.CoreC()})
	}
	return samples
}

// ThickestPortion is the thickest layer, on a cook's grid, that chills within both
// published stages at the poor end, and its report; 0 if none does.
func ThickestPortion() (float64, safety.CoolingReport) {
	for t := mostPortionM; t >= LeastPortionM-1e-9; t -= portionGridM {
		r, err := safety.JudgeCooling(chill(t, PoorEnd))
		if err == nil && r.Kind == safety.CoolingWithin {
			return t, r
		}
	}
	return 0, safety.CoolingReport{}
}
