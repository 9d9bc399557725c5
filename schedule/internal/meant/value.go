package meant

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
)

// Value says what a value was likely meant to be that its field could not take.
func Value(within, name string, value *strict.Node) strict.Meaning {
	if value.Kind != strict.NodeText && value.Kind != strict.NodeNumber {
		return strict.Meaning{}
	}
	group := groupOf(within)
	for _, r := range values {
		if r.in == group && r.field == name {
			return r.read(name, value)
		}
	}
	if group == "" { // there is no amount at the top
		return strict.Meaning{}
	}
	return alone(name, value)
}

// values are the fields whose values are often of another kind.
var values = []struct {
	in, field string
	read      func(name string, value *strict.Node) strict.Meaning
}{
	{"", "quiet", quiet},
	{"", "weather", weather},
	{"", "guests", guests},
	{"guests", "adults", number},
	{"guests", "children", number},
	{"dishes", "count", number},
	{"dishes", "finish", finish},
	{"dishes", "start", start},
}

func instead(value *strict.Node, name, right string) strict.Meaning {
	return strict.Meaning{Sentence: "write " + name + ": " + right, Old: value.Text, New: right}
}

// nobody are words for no quiet hours (common practice, no source).
var nobody = regexp.MustCompile(`(?i)^(none|no|never|nobody|off|nothing|0)$`)

// hours are two times of day: 10pm-6am, 22:00 to 06:00.
var hours = regexp.MustCompile(`(?i)^\D*?(\d{1,2}(?::\d\d)?\s*(?:[ap]\.?m\.?)?)\s*(?:-|–|to|until|till)\s*(\d{1,2}(?::\d\d)?\s*(?:[ap]\.?m\.?)?)\W*$`)

func quiet(name string, value *strict.Node) strict.Meaning {
	if nobody.MatchString(value.Text) {
		return strict.Meaning{Sentence: "write quiet: [], if nobody sleeps; leave it out for 23:00 to 05:00", Old: value.Text, New: "[]"}
	}
	if m := hours.FindStringSubmatch(value.Text); m != nil {
		return instead(value, name, fmt.Sprintf("[{from: %q, to: %q}]", strings.TrimSpace(m[1]), strings.TrimSpace(m[2])))
	}
	return strict.Meaning{}
}

var (
	airIn  = regexp.MustCompile(`(?i)(-?\d+(?:\.\d+)?)\s*(?:°|degrees?|deg)?\s*([FC]?)\b`)
	windIn = regexp.MustCompile(`(?i)(\d+)\s*(mph|km/h|kmh|m/s)`)
)

// weather takes the wind and the heat of the air from a text.
func weather(name string, value *strict.Node) strict.Meaning {
	var fields []string
	text := value.Text
	wind := windIn.FindStringSubmatch(text)
	if wind != nil {
		text = strings.Replace(text, wind[0], "", 1)
	}
	if m := airIn.FindStringSubmatch(text); m != nil {
		of := "F"
		if m[2] != "" {
			of = strings.ToUpper(m[2])
		}
		fields = append(fields, "air: "+m[1]+" "+of)
	}
	if wind != nil {
		fields = append(fields, "wind: "+wind[1]+" "+wind[2])
	}
	if len(fields) == 0 {
		return strict.Meaning{}
	}
	return strict.Meaning{Sentence: "write " + name + ": {" + strings.Join(fields, ", ") + "}"}
}

var (
	digits   = regexp.MustCompile(`\d+`)
	grownUps = regexp.MustCompile(`(?i)(\d+)\s*(?:adults?|grown-?ups?)`)
	children = regexp.MustCompile(`(?i)(\d+)\s*(?:kids?|child(?:ren)?)`)
)

// guests takes how many they are from a text: "about 10 people", "6 adults and 2 kids".
func guests(name string, value *strict.Node) strict.Meaning {
	large, small := grownUps.FindStringSubmatch(value.Text), children.FindStringSubmatch(value.Text)
	switch {
	case large != nil && small != nil:
		return instead(value, name, "{adults: "+large[1]+", children: "+small[1]+"}")
	case small != nil || len(digits.FindAllString(value.Text, 2)) > 1:
		return strict.Meaning{}
	}
	return number(name, value)
}

// number takes a count from a text: "2 racks", "about 10 people", "eight".
func number(name string, value *strict.Node) strict.Meaning {
	text := strings.TrimSpace(roughly.ReplaceAllString(value.Text, ""))
	n := cut.Speak(text + " pieces").Count
	right := strconv.Itoa(n)
	if value.Kind != strict.NodeText || n == 0 || value.Text == right { // that lacks nothing but its quotes
		return strict.Meaning{}
	}
	return instead(value, name, right)
}

var roughly = regexp.MustCompile(`(?i)^\s*(?:about|around|approximately|approx\.?|roughly|maybe|up to|~|ca\.?)\s*`)

func finish(_ string, value *strict.Node) strict.Meaning {
	if !value.LikeNumber() {
		return strict.Meaning{}
	}
	text := value.Text
	if value.Kind == strict.NodeNumber {
		text += " F"
	}
	return strict.Meaning{Sentence: "write target: " + text + "; finish is for a sear at the end", Old: "finish: " + value.Text, New: "target: " + text}
}

var clockText = regexp.MustCompile(`(?i)^\s*(\d{1,2}:\d\d|\d{1,2}\s*[ap]\.?m\.?)`)

func start(_ string, value *strict.Node) strict.Meaning {
	if !clockText.MatchString(value.Text) {
		return strict.Meaning{}
	}
	return strict.Meaning{Sentence: "start is how cold the food is, such as 38 F or frozen; the plan works out when it goes on: leave it out"}
}

// oneAmount is an amount with its unit, and words around it.
var oneAmount = regexp.MustCompile(`(?i)\d+(?:[.,]\d+)?\s*(?:lbs?|pounds?|oz|ounces?|kg|kilos?|grams?|g|inch(?:es)?|in|cm|mm|°?\s*[FC])\b`)

// alone takes the amount from words around it: "4 lbs each", "7 lb, bone-in".
func alone(name string, value *strict.Node) strict.Meaning {
	found := oneAmount.FindAllString(value.Text, 2)
	if len(found) == 1 && strings.Contains(value.Text, "-"+found[0]) { // below zero
		return strict.Meaning{}
	}
	if value.Kind != strict.NodeText || len(found) != 1 || found[0] == strings.TrimSpace(value.Text) || !isQuantity(found[0]) {
		return strict.Meaning{}
	}
	m := instead(value, name, found[0])
	m.Sentence += ", without more words"
	return m
}
