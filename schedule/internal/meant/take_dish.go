package meant

import (
	"regexp"
	"strconv"
	"strings"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// formDish are the fields of a dish.
var formDish = []string{"id", "name", "cut", "weight", "weights", "count", "thickness", "target", "start", "prep", "wrap", "zone", "lies", "level", "layout", "rest", "hold", "finish", "serve", "earliest", "travel", "ready", "assumed", "went_on", "measured"}

// dishGroup is a dish told field by field, in the form's words where they are understood.
func (t *taker) dishGroup(n *strict.Node) []*strict.Node {
	out := strict.NewGroup(n.Line)
	dish, food := t.foodOf(n)
	if food != nil {
		out = food
	}
	for name, value := range dish.Fields() {
		next, ok := t.dishField(out, name, value)
		if !ok {
			next = out.WithAt(name, dish.LineOf(name), value)
		}
		out = next
	}
	return []*strict.Node{t.Tidy(out)}
}

// foodOf finds which food a dish is of: by the fields that say so, or by a field that is
// called like one. What is left of the group has no such field any more.
func (t *taker) foodOf(n *strict.Node) (rest, food *strict.Node) {
	var said []string
	var fields []string
	for name, value := range n.Fields() {
		if oneOf(plainWord(name), foodFields...) && value.Kind == strict.NodeText && !(plainWord(name) == "kind" && !knownFood(value.Text)) {
			said, fields = append(said, value.Text), append(fields, name)
		}
	}
	if c := n.Get("cut"); c != nil && c.Kind == strict.NodeText && knownFood(c.Text) && n.Get("name") != nil {
		if frozenWord.MatchString(n.Get("name").Text) && n.Get("start") == nil {
			return n.With("start", strict.NewText("frozen", c.Line)), nil
		}
		return n, nil // a dish has a name of its own besides
	}
	for k := range said {
		for _, text := range []string{said[k], strings.Join(said[k:], ", ")} {
			s := Dish(decimalPoint(text), t.Eaters, n.Line)
			if !s.Certain() || len(said) > 1 && text == said[k] && !t.rest(said, k) {
				continue
			}
			rest = n
			for _, f := range fields {
				rest = rest.Without(f)
			}
			for field := range s.Node.Fields() {
				if field != "cut" && rest.Get(field) != nil {
					s.Node = s.Node.Without(field)
				}
			}
			t.tell(s)
			if k == 0 && len(said) > 1 && text == said[k] && !knownFood(said[1]) {
				rest = rest.With("name", strict.NewText(said[1], n.Line))
			}
			return rest, s.Node
		}
	}
	if len(said) > 0 {
		return n, nil
	}
	for name, value := range n.Fields() {
		if s := Dish(name, t.Eaters, n.Line); s.Certain() && !oneOf(strings.ToLower(name), formDish...) && (value.Kind == strict.NodeNumber || value.Kind == strict.NodeText) {
			if s = Dish(asSpoken(name, strict.NewText(decimalPoint(value.Text), value.Line)), t.Eaters, n.Line); s.Certain() {
				t.tell(s)
				return n.Without(name), s.Node
			}
		}
	}
	return n, nil
}

// tell says what a cook has to see of how the words of a dish were read.
func (t *taker) tell(s Spoken) {
	for _, said := range s.Told() {
		t.say("%s", said)
	}
}

// rest says whether the other words for the food of a dish are only a name of it.
func (t *taker) rest(said []string, but int) bool {
	for k, text := range said {
		if k != but && (knownFood(text) || Dish(text, t.Eaters, 0).Node == nil && knownFood(said[but]) && k < but) {
			continue
		}
		if k != but {
			return false
		}
	}
	return true
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
	word := plainWord(field)
	if yes, known := value.Says(); known && oneOf(word, "frozen", "thawed", "defrosted") {
		switch frozen := yes == (word == "frozen"); {
		case frozen && dish.Get("start") == nil:
			return set("start", strict.NewText("frozen", value.Line))
		case !frozen:
			return dish, true
		}
	}
	switch {
	case oneOf(word, "state", "condition", "start", "temp", "from") && value.Kind == strict.NodeText && frozenText.MatchString(value.Text):
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

// target is how done a dish is to be, in words of its own.
func (t *taker) target(dish, value *strict.Node) (*strict.Node, bool) {
	if dish.Get("target") != nil {
		return nil, false
	}
	if c := dish.Get("cut"); c != nil && value.Kind == strict.NodeText {
		if found, unknown := cut.One(c.Text); unknown == "" {
			if word, usual := donenessOf(found, value.Text); usual {
				t.say("%s of %s is as it is usually done", strconv.Quote(value.Text), c.Text)
				return dish, true
			} else if word != "" {
				return dish.With("target", strict.NewText(word, value.Line)), true
			}
		}
	}
	return dish.With("target", value), true
}

var (
	frozenText = regexp.MustCompile(`(?i)^(?:still |start |deep |rock |hard |goes on |on )*(?:frozen|from frozen|from (?:the )?freezer|freezer)(?: solid| hard)?$`)
	thawedText = regexp.MustCompile(`(?i)^(?:fully |completely )?(?:thawed|fresh|chilled|raw|from the fridge|fridge|refrigerated)$`)
	wrapAt     = regexp.MustCompile(`(?i)^(?:in )?((?:butcher |pink )?paper|(?:tin |aluminum )?foil)\s*(?:at|from|@|when)\s*(\d{2,3})\s*°?\s*([FC]?)\b.*$`)
	wrapHeat   = regexp.MustCompile(`(?i)^\s*(?:at|from)?\s*(1\d\d|[67]\d)\s*°?\s*([FC]?)\s*$`)
	restIn     = regexp.MustCompile(`(?i)^(\d+(?:\.\d+)?\s*(?:h|hrs?|hours?|min|minutes?))\s*,?\s*(?:in|in a|in the)\s*(?:an? )?(?:cooler|esky|cool box|insulated box|icebox)$`)
	dishSize   = regexp.MustCompile(`(?i)^\s*\d+(?:\.\d+)?\s*(?:(?:x|by)\s*\d+.*|inch(?:es)?|in|"|cm)\s*$`)
	halfNumber = regexp.MustCompile(`(?i)^\s*(\d+)(?: and a half|\.5| 1/2|½)(?:\s*(?:racks?|slabs?))?\s*$`)
	bunchText  = regexp.MustCompile(`(?i)\bbunch(?:es)?\b`)
)

var perHeadNames = []string{"perperson", "perhead", "eachperson", "perguest", "portion"}

// heatOf says whether a field is a heat, and may be that of the grate or of the meat.
func heatOf(word string) bool {
	return oneOf(word, "temp", "temperature", "heat", "at", "cookat", "cooktemp", "cookingtemp", "gratetemp", "pit", "pittemp", "smokertemp", "grilltemp", "oventemp", "chambertemp", "finishtemp", "internal", "internaltemp", "core", "coretemp", "final", "finaltemp", "targettemp", "doneat", "pull", "pullat", "pulltemp", "tempinternal")
}

// whichHeat tells the heat at the grate from the one inside, where the name or the figure
// leaves no doubt: no grate is held at 203 F, and no meat is done at 225 F.
func (t *taker) whichHeat(word string, value *strict.Node, of string) (field, text string) {
	text = value.Text
	if value.Kind == strict.NodeNumber || digitsOnly.MatchString(strings.TrimSpace(text)) {
		text += " " + heatUnit(of, value.Text)
	}
	at, err := unit.ParseTemperature(text)
	if err != nil {
		return "", ""
	}
	inside := oneOf(word, "finishtemp", "internal", "internaltemp", "core", "coretemp", "final", "finaltemp", "targettemp", "doneat", "pull", "pullat", "pulltemp", "tempinternal")
	outside := oneOf(word, "cookat", "cooktemp", "cookingtemp", "gratetemp", "pit", "pittemp", "smokertemp", "grilltemp", "oventemp", "chambertemp")
	f := at.Fahrenheit()
	switch {
	case inside && f <= 212, !outside && f >= 110 && f <= 208:
		if !inside {
			t.say("%s is read as how hot it is inside when it is done; the heat at the grate would be level: %s", strconv.Quote(word+": "+value.Text), text)
		}
		return "target", text
	case outside && f >= 180, !inside && f >= 215:
		return "level", text
	}
	return "", ""
}

// heatUnit is the unit of a heat that is given without one.
func heatUnit(of, number string) string {
	if of != "" {
		return strings.ToUpper(of)
	}
	if v, err := strconv.ParseFloat(number, 64); err == nil && v <= 105 { // no meat is done at 105 F, and no grate is held there
		return "C"
	}
	return "F"
}

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
