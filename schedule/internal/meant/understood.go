package meant

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// Understood is a value in the form's words where it was said in others without doubt; nil
// for every other.
func (d Day) Understood(within, name string, value *strict.Node) *strict.Node {
	if value.Kind != strict.NodeText {
		return nil
	}
	switch groupOf(within) + "." + name {
	case ".guests":
		return guestsIn(value)
	case ".quiet":
		return quietIn(value)
	case ".weather":
		if group, left := weatherIn(value); left == "" && !group.Empty() {
			return group
		}
	case "dishes.count":
		return d.countIn(value)
	case "dishes.weight": // "3-4 lb"; what is of several pieces is looked at with the rest of the dish
		if s := cut.Speak(plainly(value.Text)); alone(s) && s.Count == 0 && s.Weight != "" && !s.Total && !decimalComma.MatchString(value.Text) && !s.Larger {
			return strict.NewText(s.Weight, value.Line)
		}
	case "guests.adults", "guests.children":
		if s := cut.Speak(plainly(value.Text)); alone(s) && s.Count > 0 {
			return strict.NewNumber(s.Count, value.Line)
		}
	}
	return nil
}

// countIn is a number of pieces in words: "3 dozen", "2 racks", "6 per person".
func (d Day) countIn(value *strict.Node) *strict.Node {
	s := cut.Speak(plainly(value.Text))
	if !alone(s) || s.Weight != "" || s.Count == 0 || s.PerHead && d.Eaters == 0 || digitsOnly.MatchString(value.Text) {
		return nil
	}
	if s.PerHead {
		s.Count *= d.Eaters
	}
	return strict.NewNumber(s.Count, value.Line)
}

// plainly is a text without a word such as "about" before it.
func plainly(text string) string {
	return strings.TrimSpace(roughly.ReplaceAllString(strings.TrimSpace(text), ""))
}

// alone says whether a text says how much and nothing more, and says it fully.
func alone(s cut.Spoken) bool { return s.Name == "" && !s.Part && !s.Packs }

// frailPart is what a text says of guests for whom the rules are stricter, and who are among
// those that it counts; needsWords is what a plan knows nothing of.
var (
	frailPart  = regexp.MustCompile(`(?i)[,;(]?\s*\b(?:and |with |incl(?:uding|\.)? |of (?:them|whom) |among them )?(?:one|two|a|an|1|2|my|the|is|are)?\s*(?:is |are )?(?:pregnant(?: (?:woman|lady|guest|friend|wife))?|expecting|bab(?:y|ies)|toddlers?|infants?|newborns?|elderly|frail|sick|ill|grand(?:ma|pa|mother|father|parents))\b\)?`)
	needsWords = regexp.MustCompile(`(?i)\ballerg|\bvegan|\bvegetarian|\bveggies?\b|\bcoeliac|\bceliac|\bhalal\b|\bkosher\b|\bintoleran|\bgluten|\bnuts?\b`)
)

// guestsIn are the guests of a text: "about 10 people", "6 adults and 2 kids", "eight"; nil
// where something else is said beside them.
func guestsIn(value *strict.Node) *strict.Node {
	c, _, ok := new(taker).inText(value.Text)
	if !ok || c.odd {
		return nil
	}
	c.line = value.Line
	return c.node()
}

// bareHours are two hours without a half of the day: of those who sleep the first is of
// the evening, the second of the morning.
var (
	midnight  = regexp.MustCompile(`(?i)\bmidnight\b`)
	bareHours = regexp.MustCompile(`^\D*?\b(8|9|10|11|12|2[0-3])\s*(?:-|–|to|until|till?)\s*([3-9]|1[01])\D*$`)
	untilHour = regexp.MustCompile(`(?i)^\s*(?:until|till?|to)\s+(\d{1,2})\s*(?::(\d\d))?\s*(?:a\.?m\.?)?\s*$`)
)

// quietIn are the quiet hours of a text: "11pm-6am", "we sleep 11 to 6", "none".
func quietIn(value *strict.Node) *strict.Node {
	if nobody.MatchString(value.Text) {
		return strict.NewList(value.Line)
	}
	from, to := "", ""
	value = strict.NewText(midnight.ReplaceAllString(value.Text, "12:00 am"), value.Line)
	if m := bareHours.FindStringSubmatch(value.Text); m != nil {
		hour, _ := strconv.Atoi(m[1]) // by the pattern
		morning, _ := strconv.Atoi(m[2])
		from, to = fmt.Sprintf("%02d:00", (hour+12)%24), fmt.Sprintf("%02d:00", morning)
		switch {
		case hour == 12:
			from = "00:00"
		case hour > 12:
			from = fmt.Sprintf("%02d:00", hour)
		}
	} else if m := untilHour.FindStringSubmatch(value.Text); m != nil { // the night begins when it usually does
		from, to = nightFrom, m[1]+":00"
		if m[2] != "" {
			to = m[1] + ":" + m[2]
		}
	} else if m := hours.FindStringSubmatch(value.Text); m != nil {
		from, to = strings.TrimSpace(m[1]), strings.TrimSpace(m[2])
	} else {
		return nil
	}
	one := strict.NewGroup(value.Line).With("from", strict.NewText(from, value.Line)).With("to", strict.NewText(to, value.Line))
	return strict.NewList(value.Line, one)
}

var (
	rainIn    = regexp.MustCompile(`(?i)\b(?:rain(?:y|ing)?|showers|wet)\b`)
	dryIn     = regexp.MustCompile(`(?i)\b(?:no rain|dry|calm|no wind|clear|sunny|sun|outside|air|wind|winds|and|with|degrees|deg|about|around|of)\b|[,;.&°]`)
	bareWind  = regexp.MustCompile(`(?i)\bwinds?\s+(?:of |about |around )?(\d+)\b(?:\s*(?:-|to)\s*\d+)?\s*$`)
	inCelsius = regexp.MustCompile(`\d\s*°?\s*C\b`)
	northern  = regexp.MustCompile(`(?i)[FC]`)
)

// weatherIn takes the wind, the rain and the heat of the air from a text; left is what says
// no figure. A heat without a unit is one in F where in C nobody could cook.
func weatherIn(value *strict.Node) (group *strict.Node, left string) {
	text := value.Text
	group = strict.NewGroup(value.Line)
	set := func(field, said string) { group = group.With(field, strict.NewText(said, value.Line)) }
	wind := windIn.FindStringSubmatch(text)
	if wind != nil {
		text = strings.Replace(text, wind[0], "", 1)
	} else if m := bareWind.FindStringSubmatch(text); m != nil {
		wind = []string{m[0], m[1], "mph"}
		if inCelsius.MatchString(text) {
			wind[2] = "km/h"
		}
		text = strings.Replace(text, m[0], "", 1)
	}
	if m := airIn.FindStringSubmatch(text); m != nil {
		of := "F"
		if northern.MatchString(m[2]) {
			of = strings.ToUpper(m[2])
		}
		if degrees, err := strconv.ParseFloat(m[1], 64); err == nil && (m[2] != "" || degrees > 45) {
			text = strings.Replace(text, m[0], "", 1)
		}
		set("air", m[1]+" "+of)
	}
	if wind != nil {
		set("wind", wind[1]+" "+wind[2])
	}
	text = dryIn.ReplaceAllString(text, " ")
	if at := rainIn.FindString(text); at != "" {
		group = group.With("rain", strict.NewTruth(true, value.Line))
		text = rainIn.ReplaceAllString(text, " ")
	}
	return group, strings.Join(strings.Fields(text), " ")
}

var pieceWord = regexp.MustCompile(`(?i)\b(?:racks?|slabs?|pieces?|pcs|ears?|links?|birds?|patties)\b`)

// Tidy is a dish with its amounts in the form's words, where they are said without doubt:
// "3 racks" is a count, "16 lb total" is shared among the pieces.
func (d Day) Tidy(dish *strict.Node) *strict.Node {
	dish = tidyCut(dish, d.Eaters)
	if n := dish.Get("weight"); n != nil && n.Kind == strict.NodeText && !decimalComma.MatchString(n.Text) {
		dish = d.tidyWeight(dish, n)
	}
	if n := dish.Get("count"); n != nil && n.Kind == strict.NodeText {
		if count := d.countIn(n); count != nil {
			dish = takenLarger(dish.With("count", count), cut.Speak(plainly(n.Text)))
		}
	}
	if n := dish.Get("thickness"); n != nil && n.Kind == strict.NodeText {
		if s := cut.Speak(n.Text); alone(s) && s.Thickness != "" && s.Count == 0 {
			dish = dish.With("thickness", strict.NewText(s.Thickness, n.Line))
		}
	}
	if n := dish.Get("start"); n != nil && n.Kind == strict.NodeText && oneOf(strings.ToLower(n.Text), "fresh", "thawed", "fridge", "refrigerator", "from the fridge", "cold", "chilled") {
		dish = dish.Without("start")
	}
	return dish
}

var digitsOnly = regexp.MustCompile(`^\d+$`) // a number in quotes is told so

func takenLarger(dish *strict.Node, s cut.Spoken) *strict.Node {
	if !s.Larger || dish.Get("assumed") != nil {
		return dish
	}
	return dish.With("assumed", strict.NewList(dish.Line, strict.NewText(larger, dish.Line)))
}

// tidyCut takes an amount out of the name of a dish, if nothing else says how much it is.
func tidyCut(dish *strict.Node, eaters int) *strict.Node {
	n := dish.Get("cut")
	if n == nil || n.Kind != strict.NodeText || knownFood(n.Text) {
		return dish
	}
	s := Dish(n.Text, eaters, n.Line)
	if !s.Certain() {
		return dish
	}
	for name := range s.Node.Fields() {
		if name != "cut" && dish.Get(name) != nil {
			return dish
		}
	}
	return dish.Joined(s.Node)
}

func (d Day) tidyWeight(dish, n *strict.Node) *strict.Node {
	s := cut.Speak(plainly(n.Text))
	_, bad := unit.ParseMass(s.Weight)
	count := s.Count
	if given := dish.Get("count"); given != nil {
		if g := cut.Speak(plainly(given.Text)); alone(g) && g.Weight == "" {
			count = g.Count
		}
	}
	switch {
	case !alone(s) || s.PerHead:
	case s.Weight == "" && s.Count > 0 && pieceWord.MatchString(n.Text) && dish.Get("count") == nil:
		return takenLarger(dish.Without("weight").With("count", strict.NewNumber(s.Count, n.Line)), s)
	case s.Weight == "" || bad != nil:
	case s.Total && count > 1:
		s.Weight = Shared(s.Weight, count)
		fallthrough
	default:
		dish = takenLarger(dish.With("weight", strict.NewText(s.Weight, n.Line)), s)
		if s.Count > 1 && dish.Get("count") == nil { // 2 x 4 lb
			dish = dish.With("count", strict.NewNumber(s.Count, n.Line))
		}
	}
	return dish
}
