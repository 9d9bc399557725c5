package unit

import "strings"

// Temperature is in degrees Celsius.
type Temperature float64

// Difference is a difference of two temperatures in kelvin.
type Difference float64

const temperatureUnits = "F or C"

// celsius holds the limits: absolute zero, and well above any charcoal fire.
var celsius = quantity{name: "temperature", list: temperatureUnits, si: "C", min: -273.15, max: 2000}

var difference = quantity{
	name: "temperature difference", list: "F, C or K", si: "K", min: -2000, max: 2000,
	units: map[string]scale{"k": {1, 1}, "c": {1, 1}, "f": {5, 9}},
}

// FromFahrenheit converts degrees Fahrenheit.
func FromFahrenheit(f float64) Temperature { return Temperature((f - 32) * 5 / 9) }

// FToC is degrees Celsius of degrees Fahrenheit: figures of the trade stay as it says them.
func FToC(f float64) float64 { return float64(FromFahrenheit(f)) }

// Fahrenheit returns t in degrees Fahrenheit.
func (t Temperature) Fahrenheit() float64 { return float64(t)*9/5 + 32 }

// DifferenceFromFahrenheit converts a difference of f degrees Fahrenheit.
func DifferenceFromFahrenheit(f float64) Difference { return Difference(f * 5 / 9) }

// Fahrenheit returns d in degrees Fahrenheit.
func (d Difference) Fahrenheit() float64 { return float64(d) * 9 / 5 }

// bareDegrees drops the marks that may stand before the letter of a scale.
var bareDegrees = strings.NewReplacer(
	"℃", "C", "℉", "F", "°", "", "º", "",
	"degrees", "", "Degrees", "", "deg", "", "Deg", "",
	"Celsius", "C", "celsius", "C", "Fahrenheit", "F", "fahrenheit", "F", "Kelvin", "K", "kelvin", "K",
)

// ParseTemperature reads "250 F", "121 °C", "121 C" or "250F". The error is a *ParseError.
func ParseTemperature(text string) (Temperature, error) {
	n, rest, err := scan(bareDegrees.Replace(text), text, celsius.name, celsius.list)
	if err != nil {
		return 0, err
	}
	t := Temperature(n.value)
	switch {
	case rest != "" || n.unit != "c" && n.unit != "f":
		return 0, celsius.fail(text, "needs a unit: "+celsius.list)
	case n.unit == "f":
		t = FromFahrenheit(n.value)
	}
	return t, celsius.check(float64(t), text)
}

// ParseDifference reads "40 F" (22.2 K), "22 C" or "22 K". The error is a *ParseError.
func ParseDifference(text string) (Difference, error) {
	v, err := difference.parse(bareDegrees.Replace(text))
	if e, ok := err.(*ParseError); ok {
		e.Text = text
	}
	return Difference(v), err
}

// MarshalText writes degrees Celsius in full: "121.11111111111111 C".
func (t Temperature) MarshalText() ([]byte, error) { return celsius.marshal(float64(t)) }

// UnmarshalText is ParseTemperature.
func (t *Temperature) UnmarshalText(b []byte) error { return set(t, b, ParseTemperature) }

// MarshalText writes kelvin in full.
func (d Difference) MarshalText() ([]byte, error) { return difference.marshal(float64(d)) }

// UnmarshalText is ParseDifference.
func (d *Difference) UnmarshalText(b []byte) error { return set(d, b, ParseDifference) }

// set changes *v only when the text is good.
func set[T any](v *T, b []byte, parse func(string) (T, error)) error {
	got, err := parse(string(b))
	if err != nil {
		return err
	}
	*v = got
	return nil
}
