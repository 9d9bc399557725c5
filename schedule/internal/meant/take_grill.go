package meant

import (
	"regexp"
	"strconv"
	"strings"

	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

var (
	numberedGrill = regexp.MustCompile(`(?i)^(?:(?:grill|smoker|bbq|barbecue|cooker|kettle) ?(\d)|(first|second|other|2nd|third) (?:grill|smoker|bbq|barbecue|cooker))$`)
	wordInches    = regexp.MustCompile(`(?i)\b(eighteen|twenty[ -]?(?:two|six)|twenty|thirty[ -]?six)(?:[ -]?(and a half))?\b`)
	grillNoise    = regexp.MustCompile(`(?i)[,;]?\s*\b(?:minion method|minion|indirect|direct)\b`)
)

// severalGrills is a number of grills of one kind.
var severalGrills = regexp.MustCompile(`(?i)^\s*(?:2|two|3|three)\s+(kettle|grill|smoker|bullet|drum)s\b`)

var (
	layoutSaid = regexp.MustCompile(`(?i)[,;]?\s*\b(?:with (?:the |a )?|using (?:the |a )?)?(?:(snake|fuse)|(two[- ]zone|2[- ]zone))\b(?:\s+(?:method|fire|setup|layout))?`)
	fiftyFive  = regexp.MustCompile(`(?i)\b55[\s-]*(?:us )?(?:gallons?|gal)\b`)
	drumWord   = regexp.MustCompile(`(?i)\bdrum\b`)
	acrossSaid = regexp.MustCompile(`(?i)\d\s*-?\s*(?:in\b|inch|"|”|cm\b|mm\b)`)
	roundGrill = regexp.MustCompile(`(?i)\bround\b(\s+(?:charcoal |coal |bbq |barbecue )?(?:grill|bbq|barbecue|barbie)?)`)
	namesKind  = regexp.MustCompile(`(?i)\b(?:kettle|box|upright|barrel|drum|bullet|vertical|offset|kamado|ceramic|egg|gas|propane|pellet|electric|smoker|kugelgrill|no lid|without (?:a )?lid)\b`)
)

var inchWords = map[string]string{"eighteen": "18", "twenty": "20", "twentytwo": "22", "twentysix": "26", "thirtysix": "36"}

// grillField takes a grill under another name, of several the first, and what its fuel and
// size are in fields of their own; false for another field.
func (t *taker) grillField(name string, line int, value *strict.Node) bool {
	word := plainWord(name)
	m := numberedGrill.FindStringSubmatch(name)
	g, ok := guessOf("", name)
	switch {
	case m != nil, strings.ToLower(name) == "grill" && value.Kind == strict.NodeList, oneOf(word, "grills", "cookers", "smokers", "barbecues", "bbqs"),
		oneOf(word, "fire", "cooking", "on", "cookon", "cookingon", "with") && value.Kind == strict.NodeText && grillWithin.MatchString(value.Text) && len(strings.Fields(value.Text)) < 5:
		if value.Kind == strict.NodeList {
			if len(value.Items) == 0 {
				return false
			}
			for _, item := range value.Items[1:] {
				t.secondGrill(inWords("", item))
			}
			value = value.Items[0]
		}
		if value.Kind == strict.NodeObject && value.Get("type") != nil && value.Get("kind") == nil { // {type: offset smoker}
			value = strict.NewText(kindFirst(value), value.Line)
		}
		if t.out.Get("grill") != nil {
			t.secondGrill(strings.TrimPrefix(inWords("", value), ": "))
			return true
		}
		t.keep("grill", line, t.grill(value))
	case ok && strings.HasPrefix(g.right, "grill: kettle") && t.out.Get("grill") == nil && value.Kind != strict.NodeList && !saysTime.MatchString(value.Text) && !isMass(value.Text):
		if word == "kettle" && value.Kind == strict.NodeText {
			value = strict.NewText("kettle "+value.Text, value.Line)
		}
		t.keep("grill", line, t.grill(value))
	case oneOf(word, "fuel", "charcoal", "coals") && value.Kind == strict.NodeText && fuelText.MatchString(value.Text):
		t.loose = append(t.loose, loose{fuelOfGrill, line, value})
	default:
		return false
	}
	return true
}

// isMass says whether a text is what something weighs: of no grill.
func isMass(text string) bool {
	_, err := unit.ParseMass(text)
	return err == nil
}

// fuelOfGrill marks a field at the top that says what the grill burns.
const fuelOfGrill = "fuel of the grill"

// fuel writes down what the grill burns.
func (t *taker) fuel(f loose) {
	word := "briquettes"
	if strings.Contains(strings.ToLower(f.value.Text), "lump") {
		word = "lump"
	}
	switch grill := t.out.Get("grill"); {
	case grill == nil:
		t.out = t.out.WithAt("fuel", f.line, f.value)
	case grill.Kind == strict.NodeText && word == "lump" && !strings.Contains(grill.Text, "lump"):
		t.out = t.out.With("grill", strict.NewText(grill.Text+" lump", grill.Line))
	case grill.Kind == strict.NodeObject && grill.Get("fuel") == nil:
		t.out = t.out.With("grill", grill.With("fuel", strict.NewText(word, f.line)))
	}
}

var fuelText = regexp.MustCompile(`(?i)^\s*(?:lump|briquett?es|briquets)(?: charcoal| coal)?\s*$`)

func (t *taker) secondGrill(said string) {
	t.say("one charcoal grill is planned: %s is not", strconv.Quote(strings.TrimPrefix(said, ": ")))
}

// grill is what a cook says of a grill, in words that its line has.
func (t *taker) grill(value *strict.Node) *strict.Node {
	if value.Kind == strict.NodeObject {
		return t.grillGroup(value)
	}
	if value.Kind != strict.NodeText {
		return value
	}
	text := wordInches.ReplaceAllStringFunc(value.Text, func(s string) string {
		half := ""
		if strings.HasSuffix(strings.ToLower(s), "half") {
			half, s = ".5", wordInches.FindStringSubmatch(s)[1]
		}
		return inchWords[joints.Replace(strings.ToLower(s))] + half
	})
	if m := severalGrills.FindStringSubmatch(text); m != nil {
		t.secondGrill("a second of " + value.Text)
		text = m[1] + text[len(m[0]):]
	}
	if m := layoutSaid.FindStringSubmatch(text); m != nil && t.out.Get("layout") == nil {
		layout := "ring"
		if m[2] != "" {
			layout = "two-zone"
		}
		t.say("%s is read as layout: %s", strconv.Quote(strings.Trim(m[0], " ,;")), layout)
		t.out = t.out.WithAt("layout", value.Line, strict.NewText(layout, value.Line))
		text = strings.Replace(text, m[0], "", 1)
	}
	if fiftyFive.MatchString(text) && drumWord.MatchString(text) && !strings.Contains(text, "inch") && !acrossSaid.MatchString(fiftyFive.ReplaceAllString(text, "")) {
		t.say("%s is taken as 22.5 in across, as such drums are made; write what its grate measures if it is another", strconv.Quote(strings.TrimSpace(value.Text)))
		text = fiftyFive.ReplaceAllString(text, "22.5 in")
	}
	if roundGrill.MatchString(text) && acrossSaid.MatchString(text) && !namesKind.MatchString(text) {
		t.say("%s is taken as a kettle: a round grill with its lid", strconv.Quote(strings.TrimSpace(value.Text)))
		text = roundGrill.ReplaceAllString(text, "kettle $1")
	}
	if said := grillNoise.FindString(text); said != "" {
		t.unused(strings.Trim(said, " ,;"))
		text = grillNoise.ReplaceAllString(text, "")
	}
	if text == value.Text {
		return value
	}
	return strict.NewText(strings.TrimSpace(text), value.Line)
}

// grillGroup is a grill told field by field.
func (t *taker) grillGroup(group *strict.Node) *strict.Node {
	out, unit := strict.NewGroup(group.Line), ""
	for name, value := range group.Fields() {
		if oneOf(plainWord(name), "unit", "units") && value.Kind == strict.NodeText {
			unit = value.Text
		}
	}
	for name, value := range group.Fields() {
		line := group.LineOf(name)
		field, of := unitOfName(name)
		low := strings.ToLower(name)
		if oneOf(plainWord(name), "grill", "smoker", "cooker", "bbq", "barbecue") && group.Get("kind") == nil && out.Get("kind") == nil {
			name, field, low = "kind", "kind", "kind"
		}
		if oneOf(field, "size", "across", "dia") && !strings.Contains(inWords("", group), "box") && out.Get("diameter") == nil && group.Get("diameter") == nil {
			name, field, low = "diameter", "diameter", "diameter"
		}
		switch {
		case oneOf(plainWord(name), "unit", "units") && unit != "":
			continue
		case oneOf(low, "kind", "diameter", "width", "depth", "fuel", "gauge_offset", "water_pan", "raised", "levels", "own"), low == "zones" && value.Kind == strict.NodeList:
			field = low
		case oneOf(plainWord(name), "have", "with", "extras", "accessories", "comes", "also") && value.Kind == strict.NodeText && !digits.MatchString(value.Text), low == "zones":
			t.unused(inWords(name, value))
			continue
		default:
			m := t.Field("grill", field, value)
			if m.As == "" && oneOf(field, "diameter", "width", "depth") {
				m.As = field
			}
			if m.As == "" || out.Get(m.As) != nil || group.Get(m.As) != nil {
				out = out.WithAt(name, line, value)
				continue
			}
			if field = m.As; m.Read != nil && of == "" {
				value = m.Read
			}
		}
		if of == "" {
			of = unit
		}
		if value.Kind == strict.NodeNumber && of != "" && oneOf(field, "diameter", "width", "depth") {
			value = strict.NewText(value.Text+" "+of, value.Line)
		}
		if field == "kind" && value.Kind == strict.NodeText {
			value = strict.NewText(kindNoise.ReplaceAllString(strings.ToLower(value.Text), ""), value.Line)
		}
		out = out.WithAt(field, line, value)
	}
	if kind := out.Get("kind"); kind != nil && kind.Kind == strict.NodeText && digits.MatchString(kind.Text) && out.Get("diameter") == nil && out.Get("width") == nil && out.Without("kind").Empty() {
		return group.Get(firstField(group)) // a line in words under a name of its own
	}
	if size := out.Get("diameter"); size != nil && size.Kind == strict.NodeNumber {
		if of := likelyUnit(size.Text); of != "" {
			t.say("the grill is taken as %s %s across", size.Text, of)
			return out.With("diameter", strict.NewText(size.Text+" "+of, size.Line))
		}
	}
	return out
}

// firstField is the name of the first field of a group.
func firstField(group *strict.Node) string {
	for name := range group.Fields() {
		return name
	}
	return ""
}

var kindNoise = regexp.MustCompile(`\b(?:charcoal|round|grill|bbq|barbecue|classic|standard|big|small)\b\s*|\s+(?:grill|bbq|barbecue)$`)

// likelyUnit is the unit that the size of a round grate can only have: none is 57 inches
// across, and none 22 cm (assumptions); empty where it may be either.
func likelyUnit(number string) string {
	switch v, err := strconv.ParseFloat(number, 64); {
	case err != nil || v <= 0:
		return ""
	case v <= 30:
		return "in"
	case v >= 45:
		return "cm"
	}
	return ""
}

// kindFirst is a grill told field by field under the name of its type, as a text.
func kindFirst(group *strict.Node) string {
	text := group.Get("type").Text
	for name, value := range group.Fields() {
		if name != "type" {
			text += ", " + value.Text + " " + name
		}
	}
	return text
}
