package unit

import "strings"

// Mass is in kilograms.
type Mass float64

// Length is in metres.
type Length float64

// Speed is in metres a second.
type Speed float64

// Exact by definition: international yard and pound agreement, 1959.
const (
	kgPerPound     = 0.45359237
	metresPerInch  = 0.0254
	metresPerFoot  = 0.3048
	metresPerMile  = 1609.344
	ouncesPerPound = 16
)

var (
	mass = quantity{
		name: "weight", list: "lb, oz, kg or g", si: "kg", min: 0, max: 10_000, pair: [2]string{"lb", "oz"},
		units: spell(map[string]scale{
			"kg kilo kilos kilogram kilograms": {1, 1},
			"g gram grams":                     {1, 1000},
			"lb lbs pound pounds #":            {kgPerPound, 1},
			"oz ounce ounces":                  {kgPerPound, ouncesPerPound},
		}),
	}
	length = quantity{
		// From below the Dead Sea to beyond the air: heights and steaks share a type.
		name: "length", list: "in, ft, mm, cm or m", si: "m", min: -1000, max: 100_000, pair: [2]string{"ft", "in"},
		units: spell(map[string]scale{
			"m metre metres meter meters":           {1, 1},
			"cm centimetre centimetres centimeters": {1, 100},
			"mm millimetre millimetres millimeters": {1, 1000},
			"in inch inches \"":                     {metresPerInch, 1},
			"ft foot feet '":                        {metresPerFoot, 1},
		}),
	}
	speed = quantity{
		name: "speed", list: "mph, km/h or m/s", si: "m/s", min: 0, max: 200,
		units: spell(map[string]scale{
			"m/s":          {1, 1},
			"km/h kmh kph": {1, 3.6},
			"mph mi/h":     {metresPerMile, 3600},
			"kn kt knots":  {1852, 3600}, // international nautical mile, 1929: 1852 m
		}),
	}
)

// spell gives every spelling of a unit its own entry.
func spell(byWords map[string]scale) map[string]scale {
	units := map[string]scale{}
	for words, s := range byWords {
		for _, word := range strings.Fields(words) {
			units[word] = s
		}
	}
	return units
}

// FromPounds converts avoirdupois pounds.
func FromPounds(lb float64) Mass { return Mass(lb * kgPerPound) }

// FromOunces converts avoirdupois ounces.
func FromOunces(oz float64) Mass { return Mass(oz * kgPerPound / ouncesPerPound) }

// Pounds returns m in avoirdupois pounds.
func (m Mass) Pounds() float64 { return float64(m) / kgPerPound }

// Ounces returns m in avoirdupois ounces.
func (m Mass) Ounces() float64 { return float64(m) / kgPerPound * ouncesPerPound }

// FromInches converts inches.
func FromInches(in float64) Length { return Length(in * metresPerInch) }

// FromFeet converts feet.
func FromFeet(ft float64) Length { return Length(ft * metresPerFoot) }

// Inches returns l in inches.
func (l Length) Inches() float64 { return float64(l) / metresPerInch }

// Feet returns l in feet.
func (l Length) Feet() float64 { return float64(l) / metresPerFoot }

// FromMPH converts miles an hour.
func FromMPH(mph float64) Speed { return Speed(mph * metresPerMile / 3600) }

// MPH returns s in miles an hour.
func (s Speed) MPH() float64 { return float64(s) * 3600 / metresPerMile }

// ParseMass reads "12 lb", "6 oz", "12 lb 6 oz", "5.4 kg" or "450 g". The error is a *ParseError.
func ParseMass(text string) (Mass, error) {
	v, err := mass.parse(text)
	return Mass(v), err
}

// ParseLength reads "1.5 in", "1 1/2 in", "38 mm", "56 cm", "600 ft" or "183 m". The error is a *ParseError.
func ParseLength(text string) (Length, error) {
	v, err := length.parse(text)
	return Length(v), err
}

// ParseSpeed reads "8 mph", "13 km/h" or "3.6 m/s". The error is a *ParseError.
func ParseSpeed(text string) (Speed, error) {
	v, err := speed.parse(text)
	return Speed(v), err
}

// MarshalText writes kilograms in full.
func (m Mass) MarshalText() ([]byte, error) { return mass.marshal(float64(m)) }

// UnmarshalText is ParseMass.
func (m *Mass) UnmarshalText(b []byte) error { return set(m, b, ParseMass) }

// MarshalText writes metres in full.
func (l Length) MarshalText() ([]byte, error) { return length.marshal(float64(l)) }

// UnmarshalText is ParseLength.
func (l *Length) UnmarshalText(b []byte) error { return set(l, b, ParseLength) }

// MarshalText writes metres a second in full.
func (s Speed) MarshalText() ([]byte, error) { return speed.marshal(float64(s)) }

// UnmarshalText is ParseSpeed.
func (s *Speed) UnmarshalText(b []byte) error { return set(s, b, ParseSpeed) }
