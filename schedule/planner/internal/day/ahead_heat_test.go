package day

import (
	"testing"

	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/safety"
)

// The thickest portion chills within both stages (fda_3_501_14: 135 to 70 F in 2 h,
// to 41 F in 6 h) at the poor end; the next size on a cook's grid does not.
func TestThickestPortionIsTheLargestThatChills(t *testing.T) {
	thickness, report := ThickestPortion()
	t.Logf("%.0f mm: 70 F after %.0f min, 41 F after %.0f min", thickness*1000, report.FirstMinutes, report.WholeMinutes)
	if thickness < LeastPortionM || report.FirstMinutes > 120 || report.WholeMinutes > 360 {
		t.Errorf("%.0f mm: %+v", thickness*1000, report)
	}
	next, err := safety.JudgeCooling(chill(thickness+portionGridM, PoorEnd))
	if err != nil || next.Kind != safety.CoolingOutside {
		t.Errorf("%.0f mm: %v, %v", (thickness+portionGridM)*1000, next.Kind, err)
	}
}

// Smaller portions never chill slower, and never warm slower.
func TestSmallerPortionsChillAndWarmFaster(t *testing.T) {
	chilled, hot := 0.0, 0.0
	for mm := 10.0; mm <= 80; mm += 5 {
		samples := chill(mm/1000, PoorEnd)
		if m := samples[len(samples)-1].Minute; m < chilled {
			t.Errorf("%g mm is cold after %.0f min, thinner after %.0f", mm, m, chilled)
		} else {
			chilled = m
		}
		var s heat.Sim
		s.Start(Layer(mm/1000, heat.RefrigeratorC), heat.WarmOven(safety.OvenLowC))
		s.RunTo(safety.ReheatMinimum().CoreC, LongestCookS)
		if m := s.ElapsedS(); m < hot {
			t.Errorf("%g mm is hot after %.0f s, thinner after %.0f", mm, m, hot)
		} else {
			hot = m
		}
	}
}
