// Package unit holds the quantities that a cook day is described with: it parses
// them from text with a unit, converts them, and prints them as a cook would say.
//
// Values are kept in SI units (temperatures in degrees Celsius). Conversions are
// exact by definition:
//
//   - pound 0.45359237 kg, ounce 1/16 of it; inch 25.4 mm, foot 12 in, mile
//     5280 ft: international yard and pound agreement, 1959
//   - degree Fahrenheit 5/9 of a degree Celsius, 32 F = 0 C: NIST Special
//     Publication 811, appendix B (from memory)
//
// MarshalText of every type writes the SI value with all its digits, so that
// UnmarshalText gives back the identical value. The methods of System round.
package unit
