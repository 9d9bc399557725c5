package unit

import (
	"encoding"
	"math"
	"testing"
)

// Whatever is accepted is a finite number that can be written and read back.
func fuzz[T ~float64](f *testing.F, parse func(string) (T, error), seeds ...string) {
	for _, s := range append(seeds, "", "NaN", "1e400 g", "0x1p-2 lb", "1_0 m", "1,5 kg", "1/0 in", "1 1/2 in", "50 %") {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		v, err := parse(text)
		if err != nil {
			if _, ok := err.(*ParseError); !ok {
				t.Fatalf("%q: error of type %T", text, err)
			}
			return
		}
		if math.IsNaN(float64(v)) || math.IsInf(float64(v), 0) {
			t.Fatalf("%q is read as %v", text, v)
		}
		canonical, err := any(v).(encoding.TextMarshaler).MarshalText()
		if err != nil {
			t.Fatalf("%q is read as %v but not written: %v", text, v, err)
		}
		if again, err := parse(string(canonical)); err != nil || again != v {
			t.Fatalf("%q is read as %v, written %s and read as %v, %v", text, v, canonical, again, err)
		}
	})
}

func FuzzParseTemperature(f *testing.F) { fuzz(f, ParseTemperature, "250 F", "121 °C", "121C") }
func FuzzParseDifference(f *testing.F)  { fuzz(f, ParseDifference, "40 F", "22 K") }
func FuzzParseMass(f *testing.F)        { fuzz(f, ParseMass, "12 lb 6 oz", "5.4 kg", "450 g") }
func FuzzParseLength(f *testing.F)      { fuzz(f, ParseLength, "1 ft 6 in", "38 mm", "600 ft") }
func FuzzParseSpeed(f *testing.F)       { fuzz(f, ParseSpeed, "8 mph", "13 km/h", "3 m/s") }
func FuzzParseFraction(f *testing.F)    { fuzz(f, ParseFraction, "55 %", "0.1%") }

func FuzzParseDuration(f *testing.F) {
	for _, s := range []string{"PT45M", "P1DT2H", "1h30m", "90 min", "PT0.5S", "P1Y", "-PT1M", "1e9h"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		v, err := ParseDuration(text)
		if err != nil {
			return
		}
		canonical, err := Duration(v).MarshalText()
		if err != nil {
			t.Fatalf("%q is read as %v but not written: %v", text, v, err)
		}
		if again, err := ParseDuration(string(canonical)); err != nil || again != v {
			t.Fatalf("%q is read as %v, written %s and read as %v, %v", text, v, canonical, again, err)
		}
	})
}
