package unit

import (
	"strconv"
	"strings"
)

// Fraction is a share between 0 and 1.
type Fraction float64

var fraction = quantity{name: "percentage", list: "%", si: "%", min: 0, max: 100}

// ParseFraction reads "55 %" as 0.55. The error is a *ParseError.
func ParseFraction(text string) (Fraction, error) {
	n, rest, err := scan(text, text, fraction.name, fraction.list)
	if err != nil {
		return 0, err
	}
	if rest != "" || n.unit != "%" && n.unit != "percent" {
		return 0, fraction.fail(text, "needs a unit: "+fraction.list)
	}
	if err := fraction.check(n.value, text); err != nil {
		return 0, err
	}
	if n.digits == "" { // a vulgar fraction: "1/2 %"
		return Fraction(n.value / 100), nil
	}
	// Moving the point in the text is exact; dividing by 100 would lose the last digit
	// of some fractions, which could then not be written and read back.
	v, _ := strconv.ParseFloat(n.digits+"e-2", 64) // n.digits was a number already
	return Fraction(v), nil
}

// MarshalText writes the percentage in full: "55 %".
func (f Fraction) MarshalText() ([]byte, error) {
	if err := fraction.check(float64(f)*100, decimal(float64(f)*100)+" %"); err != nil {
		return nil, err
	}
	whole, part, _ := strings.Cut(decimal(float64(f)), ".")
	part += strings.Repeat("0", max(0, 2-len(part)))
	text := strings.TrimLeft(whole+part[:2], "0")
	if text == "" {
		text = "0"
	}
	if rest := part[2:]; rest != "" {
		text += "." + rest
	}
	return []byte(text + " %"), nil
}

// UnmarshalText is ParseFraction.
func (f *Fraction) UnmarshalText(b []byte) error { return set(f, b, ParseFraction) }
