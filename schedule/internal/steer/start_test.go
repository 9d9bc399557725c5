package steer

import (
	"testing"

	"pgregory.net/rapid"

	"example.com/cookday/schedule/internal/fire"
)

func startOf(levelF float64) Start {
	return Start{Grill: simKettle(), Layout: fire.Banked, Weather: fire.Weather{AirC: 21}, LevelC: toC(levelF)}
}

// Start marks of the grill of practice: a quarter and a quarter for 250 F (common practice, no source), more for more.
func TestStartVents(t *testing.T) {
	for _, f := range []float64{225, 250, 275, 300, 325} {
		v, r := startOf(f).Vents()
		t.Logf("%.0f F: top %s, bottom %s, %.0f (%.0f to %.0f) F", f, fire.MarkWords(v.Top), fire.MarkWords(v.Bottom), toF(r.Middle), toF(r.Low), toF(r.High))
		if f == 250 && v != (Vents{0.25, 0.25}) {
			t.Errorf("250 F: %+v", v)
		}
	}
}

// Never under safety's marks, never aimed above the level where it can be helped; a hotter level, colder air and more wind
// never want less air.
func TestStartVentsAreMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := startOf(rapid.Float64Range(200, 340).Draw(t, "level"))
		s.Layout = rapid.SampledFrom([]fire.Layout{fire.Banked, fire.Ring}).Draw(t, "layout")
		s.Grill.DiameterM = rapid.SampledFrom([]float64{0.36, 0.47, 0.57, 0.67}).Draw(t, "across")
		s.Weather.AirC = rapid.Float64Range(-10, 38).Draw(t, "air")
		s.SteerBottom = rapid.Bool().Draw(t, "bottom")
		v, _ := s.Vents()
		levels := s.levels()
		if v.Top < leastTop || v.Bottom < 1./16 || s.SteerBottom && v.Top < leastTopWhere && v != (Vents{leastTop, 1. / 16}) {
			t.Fatalf("%+v", v)
		}
		more := s
		switch rapid.IntRange(0, 1).Draw(t, "what") {
		case 0:
			more.LevelC += 15
		case 1:
			more.Weather.AirC -= 15
		}
		w, _ := more.Vents()
		if levels(w) < levels(v)-bandK/2 {
			t.Fatalf("%+v, then %+v", v, w)
		}
	})
}
