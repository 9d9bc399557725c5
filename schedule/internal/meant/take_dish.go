package meant

import (
	"regexp"
	"strconv"
	"strings"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
)

// formDish are the fields of a dish.
var formDish = []string{"id", "name", "cut", "weight", "weights", "count", "thickness", "target", "start", "prep", "wrap", "zone", "lies", "level", "layout", "rest", "hold", "finish", "serve", "earliest", "travel", "ready", "assumed", "went_on", "measured"}

// dishGroup is a dish told field by field, in the form's words where they are understood.
func (t *taker) dishGroup(n *strict.Node) []*strict.Node {
	out := strict.NewGroup(n.Line)
	dish, food := t.foodOf(n)
	if food != nil {
		out = food
	} else if text := loneFood(n); text != "" {
		return []*strict.Node{strict.NewText(text, n.Line)}
	}
	for name, value := range dish.Fields() {
		next, ok := t.dishField(out, name, value)
		if !ok {
			next = out.WithAt(name, dish.LineOf(name), value)
		}
		out = next
	}
	out, cutting := t.Cutting(t.allOfIt(t.thawed(t.Tidy(out))))
	if cutting != "" {
		t.say("%s", cutting)
	}
	return []*strict.Node{out}
}

var frozenWord = regexp.MustCompile(`(?i)\bfrozen\b|\bfrom the freezer\b`)

// dishField takes one field of a dish into it; false where that is not certain.
func (t *taker) dishField(dish *strict.Node, name string, value *strict.Node) (*strict.Node, bool) {
	field, of := unitOfName(name)
	low := strings.ToLower(name)
	if oneOf(low, formDish...) {
		field, of = low, ""
	}
	set := func(field string, v *strict.Node) (*strict.Node, bool) {
		if dish.Get(field) != nil {
			return nil, false
		}
		return dish.With(field, v), true
	}
	if value.Kind == strict.NodeText {
		value = strict.NewText(decimalPoint(value.Text), value.Line)
	}
	word := strings.ReplaceAll(plainWord(field), "temperature", "temp")
	if yes, known := value.Says(); known && oneOf(word, "frozen", "thawed", "defrosted") {
		switch frozen := yes == (word == "frozen"); {
		case frozen && dish.Get("start") == nil:
			return set("start", strict.NewText("frozen", value.Line))
		case !frozen:
			return dish, true
		}
	}
	switch {
	case oneOf(word, "method", "how", "cookedhow", "cookmethod") && value.Kind == strict.NodeText && dish.Get("cut") != nil:
		if s := Dish(dish.Get("cut").Text+", "+value.Text, t.Eaters, value.Line); s.Certain() && len(s.Unused) == 0 && !s.Node.Without("cut").Empty() {
			return dish.Joined(s.Node.Without("cut")), true
		}
	case oneOf(word, "boneless", "bonein", "bone", "deboned") && dish.Get("cut") != nil:
		if next := t.boneOf(dish, word, value); next != nil {
			return next, true
		}
	case oneOf(word, "style", "texture") && value.Kind == strict.NodeText && dish.Get("cut") != nil:
		if c, unknown := cut.One(dish.Get("cut").Text); unknown == "" {
			if done, usual := donenessOf(c, value.Text); done != "" || usual {
				if dish.Get("target") != nil { // how hot it is inside is said too
					return dish, true
				}
				return t.target(dish, value)
			}
		}
	case oneOf(word, startNames...) && (value.Kind == strict.NodeNumber || value.Kind == strict.NodeText):
		if text := startHeat(value.Text, of); text != "" {
			return set("start", strict.NewText(text, value.Line))
		}
	case oneOf(word, "state", "condition", "start", "startstate", "initialstate", "temp", "from") && value.Kind == strict.NodeText && frozenText.MatchString(value.Text):
		return set("start", strict.NewText("frozen", value.Line))
	case low == "id" && value.Kind == strict.NodeNumber:
		return set("id", strict.NewText(value.Text, value.Line))
	case oneOf(word, "wrap", "wrapat", "wraptemp") && wrapHeat.MatchString(value.Text):
		m := wrapHeat.FindStringSubmatch(value.Text)
		t.say("%s is read as: in foil from %s %s on", strconv.Quote(inWords(name, value)), m[1], heatUnit(m[2], m[1]))
		return set("wrap", strict.NewGroup(value.Line).With("with", strict.NewText("foil", value.Line)).With("from", strict.NewText(m[1]+" "+heatUnit(m[2], m[1]), value.Line)))
	case oneOf(word, "state", "condition", "start", "startstate", "initialstate") && value.Kind == strict.NodeText && thawedText.MatchString(value.Text):
		return dish, true
	case oneOf(word, "serve", "time", "when", "at", "eat", "ready", "readyat", "readyby", "servetime", "serveat", "eatat", "eattime") && value.Kind == strict.NodeText && value.Text != "day-before":
		if at := t.mealAt(value.Text, value.Line); at != nil {
			return set("serve", at)
		}
	case oneOf(word, "wrap", "foil", "wrapped") && value.Kind == strict.NodeText && wrapAt.MatchString(value.Text):
		m := wrapAt.FindStringSubmatch(value.Text)
		with := map[bool]string{true: "paper", false: "foil"}[strings.Contains(strings.ToLower(m[1]), "paper")]
		return set("wrap", strict.NewGroup(value.Line).With("with", strict.NewText(with, value.Line)).With("from", strict.NewText(m[2]+" "+heatUnit(m[3], m[2]), value.Line)))
	case oneOf(word, "rest", "resting", "resttime") && value.Kind == strict.NodeText && restIn.MatchString(value.Text):
		m := restIn.FindStringSubmatch(value.Text)
		if d, ok := set("rest", strict.NewText(m[1], value.Line)); ok && dish.Get("hold") == nil {
			return d.With("hold", strict.NewList(value.Line, strict.NewText("insulated-box", value.Line))), true
		}
	case oneOf(word, perHeadNames...) && (value.Kind == strict.NodeText || value.Kind == strict.NodeNumber):
		if c := dish.Get("cut"); c != nil && dish.Get("weight") == nil && dish.Get("count") == nil {
			if s := Dish(c.Text+", "+value.Text+" per person", t.Eaters, value.Line); s.Certain() {
				t.tell(s)
				return dish.Joined(s.Node.Without("cut")), true
			}
		}
	case oneOf(word, "weighteach", "eachweight", "weightofeach", "pieceweight", "weightperpiece") && value.Kind == strict.NodeText:
		return set("weight", value)
	case oneOf(word, "pan", "size", "tray", "diameter") && value.Kind == strict.NodeText && dishSize.MatchString(value.Text):
		t.unused(inWords(name, value))
		return dish, true
	case oneOf(word, "racks", "slabs", "count", "pieces") && value.Kind == strict.NodeText && halfNumber.MatchString(value.Text):
		if c := dish.Get("cut"); c != nil {
			if s := Dish(halfNumber.FindStringSubmatch(value.Text)[1]+" 1/2 racks of "+c.Text, t.Eaters, value.Line); s.Certain() {
				t.tell(s)
				return dish.Joined(s.Node.Without("cut")), true
			}
		}
	case heatOf(word) && (value.Kind == strict.NodeNumber || value.Kind == strict.NodeText):
		if field, text := t.whichHeat(word, value, of); field != "" {
			return set(field, strict.NewText(text, value.Line))
		}
	case oneOf(word, "bunch", "bunches") || oneOf(word, "quantity", "qty", "amount", "count") && value.Kind == strict.NodeText && bunchText.MatchString(value.Text):
		n := value.Text
		if value.Kind == strict.NodeNumber {
			n += " bunches"
		}
		if c := dish.Get("cut"); c != nil {
			if s := Dish(c.Text+", "+n, t.Eaters, value.Line); s.Certain() {
				t.tell(s)
				return dish.Joined(s.Node.Without("cut")), true
			}
		}
	}
	if oneOf(low, formDish...) {
		return t.ofForm(dish, low, value, set)
	}
	if of != "" && value.Kind == strict.NodeNumber {
		value = strict.NewText(value.Text+" "+of, value.Line)
		if oneOf(field, formDish...) { // rest_min: 60
			return t.ofForm(dish, field, value, set)
		}
	}
	if c := dish.Get("cut"); c != nil && of == "" && oneOf(word, "amount", "quantity", "qty", "howmuch") && dish.Get("weight") == nil && dish.Get("count") == nil {
		if s := Dish(asSpoken(c.Text, value), t.Eaters, value.Line); s.Certain() && s.Node.Get("cut") != nil { // as on a line: of wings 5 lb are all of them
			t.tell(s)
			return dish.With("cut", s.Node.Get("cut")).Joined(s.Node.Without("cut")), true
		}
	}
	if oneOf(word, "weight", "mass") && value.Kind == strict.NodeText {
		return set("weight", value)
	}
	g, ok := guessOf("dishes", field)
	if !ok {
		return nil, false
	}
	if g.right == "" {
		if strings.HasPrefix(g.why, "the plan does nothing") {
			t.unused(inWords(name, value))
			return dish, true
		}
		return nil, false
	}
	m := t.Field("dishes[0]", field, value)
	if m.As == "" || m.Read == nil {
		if truth, known := value.Says(); known && g.why == "" {
			right, text, _ := strings.Cut(g.right, ": ")
			if !truth {
				return dish, true
			}
			return set(right, fromFlow(text, value.Line))
		}
		return nil, false
	}
	if m.As == "cut" {
		return nil, false
	}
	if of != "" {
		m.Read = value
	}
	if m.As == "target" {
		return t.target(dish, m.Read)
	}
	return set(m.As, m.Read)
}

// ofForm takes a field that a dish has, with its value in the form's words.
func (t *taker) ofForm(dish *strict.Node, field string, value *strict.Node, set func(string, *strict.Node) (*strict.Node, bool)) (*strict.Node, bool) {
	switch {
	case field == "target":
		return t.target(dish, value)
	case field == "weight" && value.Kind == strict.NodeText, field == "count" && value.Kind == strict.NodeText:
		if s := cut.Speak(plainly(value.Text)); s.PerHead || s.Part {
			if c := dish.Get("cut"); c != nil {
				if d := Dish(c.Text+", "+value.Text, t.Eaters, value.Line); d.Certain() {
					t.tell(d)
					return dish.Joined(d.Node.Without("cut")), true
				}
			}
		}
	}
	return set(field, value)
}

var (
	startNames = []string{"initialtemp", "starttemp", "startingtemp", "fridgetemp", "tempatstart", "startcoretemp"}
	frozenText = regexp.MustCompile(`(?i)^(?:still |straight |right |start |deep |rock |hard |goes on |on )*(?:frozen|from frozen|from (?:the )?freezer|freezer)(?: solid| hard)?$`)
	thawedText = regexp.MustCompile(`(?i)^(?:fully |completely )?(?:thawed|fresh|chilled|raw|from the fridge|fridge|refrigerated)$`)
	wrapAt     = regexp.MustCompile(`(?i)^(?:in )?((?:butcher |pink )?paper|(?:tin |aluminum )?foil)\s*(?:at|from|@|when)\s*(\d{2,3})\s*°?\s*([FC]?)\b.*$`)
	wrapHeat   = regexp.MustCompile(`(?i)^\s*(?:at|from)?\s*(1\d\d|[67]\d)\s*°?\s*([FC]?)\s*$`)
	restIn     = regexp.MustCompile(`(?i)^(\d+(?:\.\d+)?\s*(?:h|hrs?|hours?|min|minutes?))\s*,?\s*(?:in|in a|in the)\s*(?:an? )?(?:cooler|esky|cool box|insulated box|icebox)$`)
	dishSize   = regexp.MustCompile(`(?i)^\s*\d+(?:\.\d+)?\s*(?:(?:x|by)\s*\d+.*|inch(?:es)?|in|"|cm)\s*$`)
	halfNumber = regexp.MustCompile(`(?i)^\s*(\d+)(?: and a half|\.5| 1/2|½)(?:\s*(?:racks?|slabs?))?\s*$`)
	bunchText  = regexp.MustCompile(`(?i)\bbunch(?:es)?\b`)
)

var perHeadNames = []string{"perperson", "perhead", "eachperson", "perguest", "portion"}

// fromFlow is the value of an example line: a word, or a list of one.
func fromFlow(text string, line int) *strict.Node {
	if item, ok := strings.CutPrefix(text, "["); ok {
		return strict.NewList(line, strict.NewText(strings.TrimSuffix(item, "]"), line))
	}
	return strict.NewText(text, line)
}

var commaDecimal = regexp.MustCompile(`(\d),(\d{1,2})(\s*(?:kilos?|kilograms?|kg|lbs?|pounds?|oz|cm|inch(?:es)?|in|l)\b)`)

// decimalPoint writes 2,5 kg as 2.5 kg.
func decimalPoint(text string) string { return commaDecimal.ReplaceAllString(text, "$1.$2$3") }
