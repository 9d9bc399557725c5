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
func (d Day) Value(within, name string, value *strict.Node) strict.Meaning {
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
	return amountAlone(name, value)
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
	{"dishes", "serve", clockOfDish},
}

func instead(value *strict.Node, name, right string) strict.Meaning {
	return strict.Meaning{Sentence: "write " + name + ": " + right, Old: value.Text, New: right}
}

// nobody are words for no quiet hours (common practice, no source).
var nobody = regexp.MustCompile(`(?i)^(none|no|never|nobody|off|nothing|0)$`)

// hours are two times of day: 10pm-6am, 22:00 to 06:00.
var hours = regexp.MustCompile(`(?i)^\D*?(\d{1,2}(?::\d\d)?\s*(?:[ap]\.?m\.?)?)\s*(?:-|–|to|until|till?)\s*(\d{1,2}(?::\d\d)?\s*(?:[ap]\.?m\.?)?)\W*$`)

func quiet(name string, value *strict.Node) strict.Meaning {
	return strict.Meaning{}
}

var (
	airIn  = regexp.MustCompile(`(?i)(-?\d+(?:\.\d+)?)\s*(?:°|degrees?|deg)?\s*([FC]?)\b`)
	windIn = regexp.MustCompile(`(?i)(\d+)\s*(mph|km/h|kmh|m/s)`)
)

// weather takes the wind and the heat of the air from a text, and names the rest.
func weather(name string, value *strict.Node) strict.Meaning {
	group, left := weatherIn(value)
	said := "write " + name + ": " + group.Flow()
	if group.Empty() {
		said = "write the figures of the forecast, such as " + name + ": {air: 50 F, wind: 10 mph}"
	}
	if left != "" {
		said = fmt.Sprintf("%q says no figure that a plan can use; ", left) + said
	}
	return strict.Meaning{Sentence: said}
}

var digits = regexp.MustCompile(`\d+`)

// guests takes how many they are from a text: "about 10 people", "6 adults and 2 children".
func guests(name string, value *strict.Node) strict.Meaning {
	numbers := digits.FindAllString(value.Text, -1)
	if vegetarians.MatchString(value.Text) && len(numbers) > 0 {
		const meatless = "; who eats no meat cannot be said: plan the dishes for them with a count"
		if !strings.Contains(strings.ToLower(value.Text), "meat") { // whether one number is a part of another is not known
			return strict.Meaning{Sentence: "write how many eat in all, as in " + name + ": " + numbers[0] + meatless}
		}
		all := 0
		for _, n := range numbers {
			k, _ := strconv.Atoi(n) // too many digits are no number of people
			all += k
		}
		m := instead(value, name, strconv.Itoa(all))
		m.Sentence += meatless
		return m
	}
	return strict.Meaning{}
}

var vegetarians = regexp.MustCompile(`(?i)\bveg(?:etarian|an|gie)s?\b|\bmeat[- ]eaters?\b`)

// number says what is open about a number of pieces or people that could not be read.
func number(name string, value *strict.Node) strict.Meaning {
	if value.Kind != strict.NodeText {
		return strict.Meaning{}
	}
	s := cut.Speak(plainly(value.Text))
	switch {
	case s.Weight != "" && s.Count == 0 && name == "count":
		return strict.Meaning{Sentence: "write weight: " + s.Weight + " for what one piece weighs; count is how many pieces there are"}
	case s.Part:
		return strict.Meaning{Sentence: "pieces are whole ones; write " + name + ": 1 or more, and the weight of one"}
	case s.Packs:
		return strict.Meaning{Sentence: "how many are in a pack is not said; write how many pieces there are in all"}
	case s.PerHead:
		return strict.Meaning{Sentence: "how many eat is not said; write guests, or how many pieces there are in all"}
	case s.Count > 0 && s.Name != "":
		return strict.Meaning{Sentence: fmt.Sprintf("%s: write %s: %d", notUnderstood(s.Name), name, s.Count)}
	}
	return strict.Meaning{}
}

// clockOfDish is the time of a dish that cannot be read.
func clockOfDish(name string, value *strict.Node) strict.Meaning { return strict.Meaning{} }

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
func amountAlone(name string, value *strict.Node) strict.Meaning {
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
