package unit

import (
	"encoding"
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// Definitions: international yard and pound agreement 1959 (1 lb = 0.45359237 kg,
// 1 in = 25.4 mm), 1 mile = 5280 ft, and 212 F = 100 C, -40 F = -40 C by the
// definition of the scale. The tolerance is a few units in the last place.
func TestExactConversions(t *testing.T) {
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"1 lb", must(ParseMass("1 lb")), 0.45359237},
		{"1 oz", must(ParseMass("1 oz")), 0.028349523125},
		{"12 lb 8 oz", must(ParseMass("12 lb 8 oz")), 12.5 * 0.45359237},
		{"9 g", must(ParseMass("9 g")), 0.009},
		{"1 in", must(ParseLength("1 in")), 0.0254},
		{"1 ft 6 in", must(ParseLength("1 ft 6 in")), 0.4572},
		{"1 1/2 in", must(ParseLength("1 1/2 in")), 0.0381},
		{"-1 ft 6 in", must(ParseLength("-1 ft 6 in")), -0.4572},
		{"38 mm", must(ParseLength("38 mm")), 0.038},
		{"60 mph", must(ParseSpeed("60 mph")), 26.8224},
		{"36 km/h", must(ParseSpeed("36 km/h")), 10},
		{"212 F", must(ParseTemperature("212 F")), 100},
		{"-40 F", must(ParseTemperature("-40 F")), -40},
		{"32 F", must(ParseTemperature("32F")), 0},
		{"difference of 9 F", must(ParseDifference("9 F")), 5},
		{"55 %", must(ParseFraction("55 %")), 0.55},
		{"12 lb there and back", FromPounds(12).Pounds(), 12},
		{"6 oz there and back", FromOunces(6).Ounces(), 6},
		{"22 in there and back", FromInches(22).Inches(), 22},
		{"5280 ft are a mile", float64(FromFeet(5280)), 1609.344},
		{"5280 ft there and back", FromFeet(5280).Feet(), 5280},
		{"8 mph there and back", FromMPH(8).MPH(), 8},
		{"203 F there and back", FromFahrenheit(203).Fahrenheit(), 203},
		{"40 F of difference there and back", DifferenceFromFahrenheit(40).Fahrenheit(), 40},
	} {
		if math.Abs(c.got-c.want) > 4e-16*math.Abs(c.want) {
			t.Errorf("%s: got %v, want %v", c.name, c.got, c.want)
		}
	}
}

func must[T ~float64](v T, err error) float64 {
	if err != nil {
		panic(err)
	}
	return float64(v)
}

func TestSpellings(t *testing.T) {
	for want, texts := range map[float64][]string{
		121: {"121 C", "121C", "121 °C", "121°c", " 121 ℃ ", "121 deg C", "121 degrees Celsius", "+121 C"},
	} {
		for _, text := range texts {
			if got, err := ParseTemperature(text); err != nil || float64(got) != want {
				t.Errorf("%q: got %v, %v", text, got, err)
			}
		}
	}
	for _, text := range []string{"12lb", "12 LB", "12 lbs", "12 pounds", "12.0 lb", "11 lb 16 oz"} {
		if got, err := ParseMass(text); err != nil || math.Abs(got.Pounds()-12) > 1e-12 {
			t.Errorf("%q: got %v, %v", text, got, err)
		}
	}
}

func TestDurations(t *testing.T) {
	for text, want := range map[string]time.Duration{
		"PT45M": 45 * time.Minute, "PT1H30M": 90 * time.Minute, "P1D": 24 * time.Hour, "P1DT1H": 25 * time.Hour,
		"P2W": 336 * time.Hour, "PT0S": 0, "PT1.5H": 90 * time.Minute, "45m": 45 * time.Minute,
		"1h30m": 90 * time.Minute, "90 min": 90 * time.Minute, "1 hr 30 min": 90 * time.Minute,
		"2 hours": 2 * time.Hour, "1.5h": 90 * time.Minute, "1 day": 24 * time.Hour, "30s": 30 * time.Second,
	} {
		if got, err := ParseDuration(text); err != nil || got != want {
			t.Errorf("%q: got %v, %v; want %v", text, got, err, want)
		}
	}
	for _, text := range []string{
		"", "45", "P", "PT", "P1DT", "P1Y", "P1M", "PT1.5H30M", "PT30M1H", "1,5h", "-45m", "30m1h", "1h1h",
		"0x1h", "1e3m", "NaNm", "99999999999h", "P9999999999W", "45 mm", "1:30",
	} {
		if got, err := ParseDuration(text); err == nil {
			t.Errorf("%q: accepted as %v", text, got)
		}
	}
}

func TestRefusals(t *testing.T) {
	parsers := map[string]func(string) error{
		"mass":     func(s string) error { _, err := ParseMass(s); return err },
		"length":   func(s string) error { _, err := ParseLength(s); return err },
		"speed":    func(s string) error { _, err := ParseSpeed(s); return err },
		"degrees":  func(s string) error { _, err := ParseTemperature(s); return err },
		"k":        func(s string) error { _, err := ParseDifference(s); return err },
		"fraction": func(s string) error { _, err := ParseFraction(s); return err },
	}
	units := map[string]string{"mass": "kg", "length": "m", "speed": "m/s", "degrees": "C", "k": "K", "fraction": "%"}
	for name, parse := range parsers {
		if err := parse("1 " + units[name]); err != nil {
			t.Fatalf("%s: the unit of this test is refused: %v", name, err)
		}
		for _, bad := range []string{
			"", " ", "1", "NaN", "Inf", "-Inf", "0x1p4", "1e3", "1e999", "1_000", "1,5", "1.5.2", "1 1", "1/0", "--1", "1-",
			"١", strings.Repeat("9", 401), strings.Repeat("9", 30), "-99999",
		} {
			text := bad + " " + units[name]
			if bad == "1" {
				text = bad // a number without a unit
			}
			err := parse(text)
			var typed *ParseError
			if !errors.As(err, &typed) || typed.Text != text {
				t.Errorf("%s %q: got error %v", name, text, err)
			}
		}
		for _, tail := range []string{" x", " 2 " + units[name], ";", "\x00"} {
			if parse("1 "+units[name]+tail) == nil {
				t.Errorf("%s: %q after the unit is accepted", name, tail)
			}
		}
	}
	for _, text := range []string{"6 oz 12 lb", "12 lb -6 oz", "1 kg 5 g", "1 lb 2 oz 3 oz"} {
		if m, err := ParseMass(text); err == nil {
			t.Errorf("%q is accepted as %v", text, m)
		}
	}
}

func TestMessages(t *testing.T) {
	_, noUnit := ParseMass("12")
	_, comma := ParseMass("1,5 kg")
	_, cold := ParseTemperature("-300 C")
	_, nasty := ParseLength("\x1b[31m" + strings.Repeat("x", 100))
	for want, err := range map[string]error{
		"12: a weight needs a unit: lb, oz, kg or g, such as 12 lb":                                                 noUnit,
		"1,5 kg: a weight is written with a decimal point, not a comma: 1.5 and not 1,5":                            comma,
		"-300 C: a temperature must lie between -273.15 C and 2000 C":                                               cold,
		`"\x1b[31m` + strings.Repeat("x", 35) + `...": a length is a plain number with a unit: in, ft, mm, cm or m`: nasty,
	} {
		if err == nil || err.Error() != want {
			t.Errorf("got  %v\nwant %s", err, want)
		}
	}
}

func TestTextRoundTrips(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := func(min, max float64) float64 { return rapid.Float64Range(min, max).Draw(t, "value") }
		back(t, Temperature(in(-273.15, 2000)), new(Temperature))
		back(t, Difference(in(-2000, 2000)), new(Difference))
		back(t, Mass(in(0, 10_000)), new(Mass))
		back(t, Length(in(-1000, 100_000)), new(Length))
		back(t, Speed(in(0, 200)), new(Speed))
		back(t, Fraction(in(0, 1)), new(Fraction))
		back(t, Duration(rapid.Int64Range(0, math.MaxInt64).Draw(t, "duration")), new(Duration))
	})
	if text, err := FromFahrenheit(250).MarshalText(); string(text) != "121.11111111111111 C" || err != nil {
		t.Errorf("250 F is written %s, %v", text, err)
	}
	if text, err := Duration(26 * time.Hour).MarshalText(); string(text) != "PT26H" || err != nil {
		t.Errorf("26 h is written %s, %v", text, err)
	}
	for _, v := range []encoding.TextMarshaler{Mass(math.NaN()), Length(math.Inf(1)), Fraction(1.1), Duration(-1)} {
		if text, err := v.MarshalText(); err == nil {
			t.Errorf("%v is written as %s", v, text)
		}
	}
}

// back writes v, reads it into w and compares bit by bit.
func back[T comparable](t *rapid.T, v T, w *T) {
	text, err := any(v).(encoding.TextMarshaler).MarshalText()
	if err != nil {
		t.Fatalf("%v: %v", v, err)
	}
	if err := any(w).(encoding.TextUnmarshaler).UnmarshalText(text); err != nil || *w != v {
		t.Fatalf("%v is written %s and read %v, %v", v, text, *w, err)
	}
}

func TestUnmarshalKeepsTheOldValue(t *testing.T) {
	m := Mass(3)
	if m.UnmarshalText([]byte("12")) == nil || m != 3 {
		t.Errorf("mass is %v after a bad text", m)
	}
}

func TestConversionsAreMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.Float64Range(-100, 1000).Draw(t, "F")
		g := f + rapid.Float64Range(1e-6, 100).Draw(t, "more")
		if FromFahrenheit(f) >= FromFahrenheit(g) || FromPounds(f) >= FromPounds(g) {
			t.Fatalf("%v and %v change places", f, g)
		}
	})
}

// Fractions may have a sign of their own, and a pound is written # in shops.
func TestSignsOfShoppingLists(t *testing.T) {
	for text, want := range map[string]float64{"½ lb": 0.5, "10½ lb": 10.5, "12#": 12, "2 ¾ pounds": 2.75, "1⅓lb": 4.0 / 3} {
		got, err := ParseMass(text)
		if err != nil || math.Abs(float64(got)/kgPerPound-want) > 1e-9 { // of floats
			t.Errorf("%s: %v, %v; want %v lb", text, got, err, want)
		}
	}
	for _, text := range []string{"½", "#", "½½ lb", "1/2½ lb"} {
		if got, err := ParseMass(text); err == nil {
			t.Errorf("%s: %v", text, got)
		}
	}
}
