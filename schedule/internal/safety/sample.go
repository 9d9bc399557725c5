package safety

import (
	"fmt"
	"math"
)

// Sample is one point of a temperature history: a simulated step or a reading.
// Between samples the temperature is taken to change evenly.
type Sample struct {
	Minute float64 // from any origin
	C      float64 // degC
}

// checkSamples refuses a history that cannot be integrated.
func checkSamples(samples []Sample) error {
	for i, s := range samples {
		switch {
		case math.IsNaN(s.Minute) || math.IsInf(s.Minute, 0):
			return fmt.Errorf("sample %d: minute is %v, must be a finite number", i, s.Minute)
		case math.IsNaN(s.C) || s.C < -273.15 || math.IsInf(s.C, 0):
			return fmt.Errorf("sample %d: temperature is %v degC, must be a finite number above -273.15", i, s.C)
		case i > 0 && s.Minute < samples[i-1].Minute:
			return fmt.Errorf("sample %d: minute %v is before the one of the sample ahead of it, %v; sort by time",
				i, s.Minute, samples[i-1].Minute)
		}
	}
	return nil
}

// shareBetween is the share of a segment from a to b degC that lies in [lo, hi].
func shareBetween(a, b, lo, hi float64) float64 {
	if a > b {
		a, b = b, a
	}
	if a == b {
		if a >= lo && a <= hi {
			return 1
		}
		return 0
	}
	return math.Max(0, math.Min(b, hi)-math.Max(a, lo)) / (b - a)
}

// crossing is the minute at which the segment a-b passes levelC.
func crossing(a, b Sample, levelC float64) float64 {
	if a.C == b.C {
		return b.Minute
	}
	return a.Minute + (b.Minute-a.Minute)*(levelC-a.C)/(b.C-a.C)
}

// lastFall is the minute at which the history last passes levelC downward, from at or
// above it to below; false if it never does.
func lastFall(samples []Sample, levelC float64) (float64, bool) {
	for i := len(samples) - 1; i > 0; i-- {
		if samples[i-1].C >= levelC && samples[i].C < levelC {
			return crossing(samples[i-1], samples[i], levelC), true
		}
	}
	return 0, false
}

// settledAt is the first minute from which the history stays at levelC or below to
// its end; false if it ends above.
func settledAt(samples []Sample, levelC float64) (float64, bool) {
	n := len(samples)
	if n == 0 || samples[n-1].C > levelC {
		return 0, false
	}
	for i := n - 1; i > 0; i-- {
		if samples[i-1].C > levelC {
			return crossing(samples[i-1], samples[i], levelC), true
		}
	}
	return samples[0].Minute, true
}

// stretch is the part of a history between two minutes, with its ends interpolated
// where samples lie on both sides of them.
func stretch(samples []Sample, from, to float64) []Sample {
	var out []Sample
	for i, s := range samples {
		if i > 0 {
			a := samples[i-1]
			for _, edge := range [2]float64{from, to} {
				if a.Minute < edge && edge < s.Minute {
					share := (edge - a.Minute) / (s.Minute - a.Minute)
					out = append(out, Sample{edge, a.C + share*(s.C-a.C)})
				}
			}
		}
		if s.Minute >= from && s.Minute <= to {
			out = append(out, s)
		}
	}
	return out
}
