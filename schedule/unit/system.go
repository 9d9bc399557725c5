package unit

import (
	"fmt"
	"math"
	"time"
)

// System says in which units a text speaks. The zero value speaks metric.
type System string

// The two systems of units.
const (
	US     System = "us"
	Metric System = "metric"
)

// ParseSystem accepts "us" and "metric". The error is a *ParseError.
func ParseSystem(text string) (System, error) {
	switch s := System(text); s {
	case US, Metric:
		return s, nil
	}
	return "", &ParseError{Quantity: "system of units", Text: text, Want: "is us or metric"}
}

// MarshalText writes the name of the system.
func (s System) MarshalText() ([]byte, error) { return []byte(s), nil }

// UnmarshalText is ParseSystem.
func (s *System) UnmarshalText(b []byte) error { return set(s, b, ParseSystem) }

// Core prints a temperature inside meat in whole degrees: "203 °F", "95 °C".
func (s System) Core(t Temperature) string { return s.degrees(t, 1) }

// Grate prints a grate or oven temperature to the nearest 5 degrees, which is finer
// than anybody can hold a fire: "250 °F", "120 °C".
func (s System) Grate(t Temperature) string { return s.degrees(t, 5) }

func (s System) degrees(t Temperature, step float64) string {
	if s == US {
		return number1(round(t.Fahrenheit(), step)) + " °F"
	}
	return number1(round(float64(t), step)) + " °C"
}

// Difference prints a temperature difference in whole degrees: "40 °F", "22 °C".
func (s System) Difference(d Difference) string {
	if s == US {
		return number1(round(d.Fahrenheit(), 1)) + " °F"
	}
	return number1(round(float64(d), 1)) + " °C"
}

// Mass prints to a tenth of a pound or kilogram, small masses to half an ounce or 5 g, and
// less than two ounces or 50 g to a tenth or a gram: "12 lb", "4.5 lb", "6 oz", "0.7 oz", "170 g".
func (s System) Mass(m Mass) string {
	if s == US {
		if oz := m.Ounces(); oz < 2 {
			return number1(oz) + " oz"
		}
		if oz := round(m.Ounces(), 0.5); oz < ouncesPerPound {
			return number1(oz) + " oz"
		}
		return number1(m.Pounds()) + " lb"
	}
	if g := float64(m) * 1000; g < 50 {
		return number1(round(g, 1)) + " g"
	}
	if g := round(float64(m)*1000, 5); g < 1000 {
		return number1(g) + " g"
	}
	return number1(float64(m)) + " kg"
}

// MassToBuy prints what is bought by the bag, never less: whole pounds or half kilograms.
func (s System) MassToBuy(m Mass) string {
	const slack = 1e-6 // a whole number of pounds is not a whole number of kilograms
	if s == US {
		return number1(math.Ceil(m.Pounds()-slack)) + " lb"
	}
	return number1(math.Ceil(float64(m)*2-slack)/2) + " kg"
}

// Length prints to a quarter of an inch and in feet from 10 ft up; in metric to the
// millimetre below 10 cm, the centimetre below 1 m, a tenth of a metre below 10 m.
func (s System) Length(l Length) string {
	size := math.Abs(float64(l))
	switch {
	case s == US && size >= 10*metresPerFoot:
		return number1(round(l.Feet(), 1)) + " ft"
	case s == US:
		return decimal(round(l.Inches(), 0.25)) + " in"
	case size < 0.0995:
		return number1(round(float64(l)*1000, 1)) + " mm"
	case size < 0.995:
		return number1(round(float64(l)*100, 1)) + " cm"
	case size < 9.95:
		return number1(float64(l)) + " m"
	}
	return number1(round(float64(l), 1)) + " m"
}

// Speed prints whole miles or kilometres an hour: "8 mph", "13 km/h".
func (s System) Speed(v Speed) string {
	if s == US {
		return number1(round(v.MPH(), 1)) + " mph"
	}
	return number1(round(float64(v)*3.6, 1)) + " km/h"
}

// About prints a duration no finer than it can be foreseen: quarter hours above two
// hours, 5 minutes above 30 minutes, else minutes: "9 hr 45 min", "20 min".
func (s System) About(d time.Duration) string {
	step := time.Minute
	switch {
	case d > 2*time.Hour:
		step = 15 * time.Minute
	case d > 30*time.Minute:
		step = 5 * time.Minute
	}
	minutes := int(d.Round(step).Minutes())
	hours, rest := minutes/60, minutes%60
	switch {
	case hours == 0:
		return fmt.Sprintf("%d min", rest)
	case rest == 0:
		return fmt.Sprintf("%d hr", hours)
	}
	return fmt.Sprintf("%d hr %d min", hours, rest)
}

// round rounds to a multiple of step; adding 0 turns -0 into 0.
func round(v, step float64) float64 { return math.Round(v/step)*step + 0 }

// number1 prints with at most one decimal.
func number1(v float64) string { return decimal(math.Round(v*10)/10 + 0) }
