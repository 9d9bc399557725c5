package unit

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode"
)

// ParseError says what is wrong with the text of a quantity.
type ParseError struct {
	Quantity string // "mass", "temperature", ...
	Text     string // the text as it was given
	Want     string // what would be right, as the rest of a sentence: "needs a unit: lb, oz, kg or g"
}

// Error returns one sentence, for instance "12: a weight needs a unit: lb, oz, kg or g, such as 12 lb".
func (e *ParseError) Error() string {
	return fmt.Sprintf("%s: a %s %s", shown(e.Text), e.Quantity, e.Want)
}

// shown makes foreign text fit for a message of one line.
func shown(text string) string {
	const most = 40 // characters; enough to recognise the field, short enough for a terminal line
	if runes := []rune(text); len(runes) > most {
		text = string(runes[:most]) + "..."
	}
	plain := strings.TrimSpace(text) != "" && strings.IndexFunc(text, func(r rune) bool {
		return !unicode.IsPrint(r) || r == unicode.ReplacementChar
	}) < 0
	if plain {
		return text
	}
	return strconv.Quote(text)
}

// scale converts a number of some unit to SI: value*mul/div. Two factors, because
// 9 g is 9/1000 kg to the last digit, but 9*0.001 is not.
type scale struct{ mul, div float64 }

// quantity describes a measure whose units are proportional to each other.
type quantity struct {
	name     string
	units    map[string]scale // by lower-case spelling
	list     string           // units to offer in messages
	si       string           // unit of the canonical text
	min, max float64          // SI; what can be meant at all
	pair     [2]string        // units that may follow each other: "12 lb 6 oz"
}

func (q *quantity) fail(text, want string) error {
	return &ParseError{Quantity: q.name, Text: text, Want: want}
}

func (q *quantity) check(v float64, text string) error {
	if v >= q.min && v <= q.max { // false for NaN
		return nil
	}
	return q.fail(text, fmt.Sprintf("must lie between %s and %s", q.text(q.min), q.text(q.max)))
}

func (q *quantity) text(v float64) string { return decimal(v) + " " + q.si }

// marshal writes the canonical text, or fails where parse would refuse it.
func (q *quantity) marshal(v float64) ([]byte, error) {
	text := q.text(v)
	return []byte(text), q.check(v, text)
}

// parse reads one number with a unit, or two where the quantity has a pair.
func (q *quantity) parse(text string) (float64, error) {
	first, rest, err := q.one(inDigits(text), text)
	if err != nil {
		return 0, err
	}
	v := first.si(q)
	if rest != "" {
		second, end, err := q.one(rest, text)
		if err != nil {
			return 0, err
		}
		same := func(word, unit string) bool { return unit != "" && q.units[word] == q.units[unit] }
		if end != "" || second.signed || !same(first.unit, q.pair[0]) || !same(second.unit, q.pair[1]) {
			return 0, q.fail(text, "is one number with a unit: "+q.list)
		}
		if first.value < 0 {
			v -= second.si(q)
		} else {
			v += second.si(q)
		}
	}
	return v, q.check(v, text)
}

// fractions are those that have a sign of their own.
var fractions = strings.NewReplacer("½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅓", " 1/3", "⅔", " 2/3")

// inDigits writes out the fractions of a text: 10½ is 10 1/2.
func inDigits(text string) string { return fractions.Replace(text) }

// one reads the number and unit at the head of s; whole is for the message.
func (q *quantity) one(s, whole string) (number, string, error) {
	n, rest, err := scan(s, whole, q.name, q.list)
	if err != nil {
		return n, "", err
	}
	if _, ok := q.units[n.unit]; !ok {
		return n, "", q.fail(whole, needsUnit(n, q.list))
	}
	return n, rest, nil
}

// needsUnit says that a unit is missing, and shows it with one.
func needsUnit(n number, list string) string {
	if n.unit != "" || n.digits == "" {
		return "needs a unit: " + list
	}
	first, _, _ := strings.Cut(strings.ReplaceAll(list, " or", ","), ",")
	return fmt.Sprintf("needs a unit: %s, such as %s %s", list, n.digits, first)
}

type number struct {
	value  float64
	unit   string // lower case, "" if there was none
	digits string // the decimal as written with its sign, "" for a vulgar fraction
	signed bool
}

func (n number) si(q *quantity) float64 {
	s := q.units[n.unit]
	return n.value * s.mul / s.div
}

// A plain decimal ("12", "1.5", ".5") or a vulgar fraction ("3/4", "1 1/2"), then
// a word. No exponents, hexadecimals, underscores, NaN or infinities: nobody
// writes a shopping list with them.
var head = regexp.MustCompile(`^\s*([+-]?)(?:(?:(\d{1,6})\s+)?(\d{1,4})/(\d{1,4})|(\d+(?:\.\d+)?|\.\d+))\s*([^\d\s+\-.,_][^\d+\-.,_]*)?`)

// longest text of a quantity in bytes: the smallest float64 has about 330 digits.
const longest = 400

func scan(s, whole, name, list string) (number, string, error) {
	fail := func(want string) (number, string, error) {
		return number{}, "", &ParseError{Quantity: name, Text: whole, Want: want}
	}
	m := head.FindStringSubmatch(s)
	switch {
	case len(whole) > longest:
		return fail("is one number with a unit: " + list)
	case strings.Contains(whole, ","):
		return fail("is written with a decimal point, not a comma: 1.5 and not 1,5")
	case m == nil:
		return fail("is a plain number with a unit: " + list)
	}
	v, err := amount(m[2], m[3], m[4], m[5])
	if err != nil {
		return fail("is a plain number with a unit: " + list)
	}
	if m[1] == "-" {
		v = -v
	}
	unit := strings.ToLower(strings.TrimSpace(m[6]))
	n := number{value: v, unit: unit, signed: m[1] != ""}
	if m[5] != "" {
		n.digits = m[1] + m[5]
	}
	return n, s[len(m[0]):], nil
}

// amount makes a number of its digits: whole and over/under, or a decimal.
func amount(whole, over, under, dec string) (float64, error) {
	if dec != "" {
		return strconv.ParseFloat(dec, 64)
	}
	if whole == "" {
		whole = "0"
	}
	var part [3]int
	for i, digits := range []string{whole, over, under} {
		n, err := strconv.Atoi(digits)
		if err != nil {
			return 0, err
		}
		part[i] = n
	}
	if part[2] == 0 {
		return 0, strconv.ErrRange
	}
	return float64(part[0]) + float64(part[1])/float64(part[2]), nil
}

// decimal writes v with all the digits it needs and no exponent.
func decimal(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
