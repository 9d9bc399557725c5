package revise

import (
	"math"
	"testing"
	"time"

	"example.com/cookday/schedule/unit"
)

// A grate that was read 35 °F low, twenty minutes after cold meat went on, comes back within the
// two hours that the sheet gives it: dinner was moved by hours for it. It comes back by the same
// path whenever it is asked for, and a colder reading is never warmer later.
func TestAGrateComesBackFromColdFood(t *testing.T) {
	on := time.Date(2026, 12, 5, 6, 50, 0, 0, time.UTC)
	level := func(time.Time) float64 { return unit.FToC(275) }
	read := func(f float64, after time.Duration) *grateHistory {
		return &grateHistory{cold: []time.Time{on}, readings: []grateReading{{at: on.Add(after), c: unit.FToC(f)}}}
	}
	for _, c := range []struct {
		f          float64
		after, at  time.Duration
		low, highF float64
	}{
		{240, 20 * time.Minute, 20 * time.Minute, 240, 240},
		{240, 20 * time.Minute, 75 * time.Minute, 250, 262},
		{240, 20 * time.Minute, 3 * time.Hour, 275, 275},
		{225, 20 * time.Minute, 3 * time.Hour, 265, 265},  // 40 °F are all that cold food takes
		{240, 115 * time.Minute, 3 * time.Hour, 240, 243}, // by then it takes next to nothing
		{240, 3 * time.Hour, 5 * time.Hour, 240, 240},     // and then nothing
		{290, 20 * time.Minute, 3 * time.Hour, 290, 290},  // it is too hot
		{190, 20 * time.Minute, 3 * time.Hour, 190, 190},  // too little heat stands until it is read again
	} {
		h := read(c.f, c.after)
		got := fahrenheit(h.ahead(on.Add(c.at), level))
		if got < c.low-0.1 || got > c.highF+0.1 {
			t.Errorf("%.0f °F after %v: %.0f °F after %v, want %.0f to %.0f", c.f, c.after, got, c.at, c.low, c.highF)
		}
		course := h.recovers(on.Add(c.after), level)
		if rises := len(course) > 0; rises && math.Abs(course[len(course)-1].c-h.ahead(on.Add(2*time.Hour), level)) > 0.1 {
			t.Errorf("%.0f °F after %v: it ends at %.0f °F", c.f, c.after, fahrenheit(course[len(course)-1].c))
		}
	}
	for f := 201.0; f < 275; f++ {
		for _, after := range []time.Duration{10 * time.Minute, time.Hour, 100 * time.Minute} {
			if a, b := read(f, after), read(f+1, after); a.ahead(on.Add(2*time.Hour), level) > b.ahead(on.Add(2*time.Hour), level) {
				t.Fatalf("%.0f °F after %v comes back warmer than %.0f °F", f, after, f+1)
			}
		}
	}
}

// What was read of one fire says nothing of another that was laid hours later: chickens over hot
// coals were three hours late by a reading of the low fire of the morning.
func TestANewFireStartsAtItsOwnLevel(t *testing.T) {
	at := func(h, m int) time.Time { return time.Date(2026, 12, 5, h, m, 0, 0, time.UTC) }
	h := &grateHistory{readings: []grateReading{{at: at(7, 10), c: unit.FToC(240)}}, begins: []time.Time{at(15, 35)}}
	level := func(f float64) func(time.Time) float64 { return func(time.Time) float64 { return unit.FToC(f) } }
	if got := fahrenheit(h.airAt(at(16, 11), level(375))); math.Abs(got-375) > 0.1 {
		t.Errorf("the new fire is at %.0f °F by a reading of the old one, want 375", got)
	}
	if got := fahrenheit(h.airAt(at(12, 0), level(275))); math.Abs(got-240) > 0.1 {
		t.Errorf("the old fire is at %.0f °F, want 240 as it was read", got)
	}
	h.readings = append(h.readings, grateReading{at: at(16, 5), c: unit.FToC(360)})
	if got := fahrenheit(h.airAt(at(16, 30), level(375))); math.Abs(got-360) > 0.1 {
		t.Errorf("the new fire is at %.0f °F, want 360 as it was read", got)
	}
	h.readings[0].at = at(14, 0)
	if got := fahrenheit(h.airAt(at(15, 50), level(375))); math.Abs(got-375) > 0.1 {
		t.Errorf("between two fires the grate is at %.0f °F, want the level of the new one", got)
	}
}

func fahrenheit(c float64) float64 { return c*1.8 + 32 }
