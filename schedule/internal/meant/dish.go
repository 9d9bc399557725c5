package meant

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// Spoken is what a cook's words say of a dish.
type Spoken struct {
	Node    *strict.Node // the dish as the form has it; nil where no food is named
	Unclear string       // what has two meanings or lacks something; empty for nothing
	Left    []string     // words that are not understood
}

// Line is the dish in one line of a request; empty where no food is named.
func (s Spoken) Line() string {
	if s.Node == nil {
		return ""
	}
	return s.Node.Flow()
}

// Certain says whether all of the words were understood, and in one way.
func (s Spoken) Certain() bool { return s.Node != nil && s.Unclear == "" && len(s.Left) == 0 }

// Lead is a sentence that names what is open and ends in the line to write.
func (s Spoken) Lead() string {
	var open []string
	if s.Unclear != "" {
		open = append(open, s.Unclear)
	}
	for _, words := range s.Left {
		open = append(open, notUnderstood(words))
	}
	switch {
	case s.Node == nil:
		return strings.Join(open, "; ")
	case len(open) == 0:
		return "write " + s.Line()
	case strings.HasSuffix(open[len(open)-1], "write which"):
		return strings.Join(open, "; ") + ": " + s.Line()
	}
	return strings.Join(open, "; ") + "; without that it is " + s.Line()
}

var severalWays = regexp.MustCompile(`(?i)\b(?:\d+|half|some|one|two|three|four|the rest)\b.*\b(?:rare|medium|well|done)\b`)

// notUnderstood names words, and says where they belong if that is known.
func notUnderstood(words string) string {
	said := strconv.Quote(words)
	switch {
	case severalWays.MatchString(words):
		return said + ": what differs in how done it is, is two dishes, each with its own count and target"
	case forPeople.MatchString(words):
		return said + " is not understood; how many eat is said once, as guests: " + forPeople.FindStringSubmatch(words)[1]
	case isTemperature(words):
		return said + " may be the heat at the grate, level: 250 F, or how hot it is inside when done, target: 203 F; write which"
	}
	return said + " is not understood; leave it out, or write it behind a #"
}

var forPeople = regexp.MustCompile(`(?i)^for (?:about )?(\d+)(?: people| persons| guests)?$`)

func isTemperature(words string) bool {
	return regexp.MustCompile(`(?i)\b(?:start )?at \d{3}\b`).MatchString(words)
}

// Dish is a dish in a cook's words. So many people eat; 0 for what is not known.
func Dish(text string, eaters, line int) Spoken {
	if decimalComma.MatchString(text) {
		return Spoken{Unclear: "a decimal is written with a point: 1.5 and not 1,5"}
	}
	parts := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(",;()", r) })
	if len(parts) == 0 {
		return Spoken{Unclear: "no food is named"}
	}
	h := hearer{eaters: eaters, line: line}
	h.Node = strict.NewGroup(line)
	if !h.food(cut.Speak(parts[0])) {
		return Spoken{Unclear: h.Unclear, Left: h.Left}
	}
	for _, part := range parts[1:] {
		if part = strings.TrimSpace(part); part != "" {
			h.hear(part)
		}
	}
	h.amounts()
	return h.Spoken
}

var decimalComma = regexp.MustCompile(`\d,\d`)

// hearer gathers what the parts of a text say of one dish.
type hearer struct {
	Spoken
	cut          cut.Cut
	said         cut.Spoken // amounts from all parts
	eaters, line int
}

// food finds out which food is named, after the words about it are taken away.
func (h *hearer) food(s cut.Spoken) bool {
	name := h.modified(s.Name)
	cuts, _ := cut.Named(name)
	c, unknown := cut.One(name)
	switch {
	case unknown == "":
		h.cut = c
	case len(cuts) == 0:
		h.Unclear, h.Left = unknown, nil
		return false
	default:
		h.cut, h.Unclear = cuts[0], unknown
	}
	called := h.cut.Name
	if unknown == "" && !c.OwnName(name) { // the cook's word is what the sheet will call it
		called = name
	}
	h.Node = strict.NewGroup(h.line).With("cut", strict.NewText(called, h.line)).Joined(h.Node)
	h.amount(s)
	return true
}

// amount takes what a part says of how much there is.
func (h *hearer) amount(s cut.Spoken) {
	if s.Count > 0 {
		h.said.Count, h.said.PerHead, h.said.Packs = s.Count, s.PerHead, s.Packs
	}
	if s.Weight != "" {
		h.said.Weight, h.said.Total = s.Weight, s.Total
	}
	if s.Thickness != "" {
		h.said.Thickness = s.Thickness
	}
	h.said.Larger, h.said.Part = h.said.Larger || s.Larger, h.said.Part || s.Part
}

// amounts writes down how much there is. No number is made up: without one the guests are
// fed, or it is asked.
func (h *hearer) amounts() {
	s, small := h.said, h.cut.Quick()
	open := func(sentence string) {
		if h.Unclear == "" {
			h.Unclear = sentence
		}
	}
	switch {
	case s.Part:
		open("pieces are whole ones; write count: 1 or more, or a weight")
		s.Count = 0
	case s.Packs:
		open("how many are in a pack is not said; write how many pieces there are in all, as count")
		s.Count = 0
	case s.PerHead && h.eaters == 0:
		open("how many eat is not said; write guests, or how many pieces there are in all, as count")
		s.Count = 0
	case s.PerHead:
		s.Count *= h.eaters
	}
	if m, err := unit.ParseMass(s.Weight); err == nil {
		switch {
		case s.Total && s.Count > 1:
			s.Weight = Shared(s.Weight, s.Count)
		case s.Count == 0 && small && float64(m) > h.cut.MaxPieceKg: // of all of them
			s.Count, s.Weight = max(int(math.Round(float64(m)/h.cut.UsualKg(h.Node.Get("cut").Text))), 1), ""
		}
	}
	if s.Weight != "" {
		h.set("weight", strict.NewText(s.Weight, h.line))
	}
	if s.Count > 1 || s.Count == 1 && s.Weight == "" {
		h.set("count", strict.NewNumber(s.Count, h.line))
	}
	if s.Thickness != "" {
		h.set("thickness", strict.NewText(s.Thickness, h.line))
	}
	if s.Larger {
		h.set("assumed", strict.NewList(h.line, strict.NewText(larger, h.line)))
	}
}

// larger is what a request says where the larger of two amounts was taken.
const larger = "larger"

func (h *hearer) set(field string, value *strict.Node) { h.Node = h.Node.With(field, value) }

func (h *hearer) setText(field, text string) { h.set(field, strict.NewText(text, h.line)) }

var weightText = regexp.MustCompile(`^\s*(\d+\s+\d+/\d+|\d+/\d+|\d*\.?\d+)\s*-?\s*([A-Za-z]+)`)

// Shared is a weight shared among pieces, in its own unit.
func Shared(weight string, pieces int) string {
	m := weightText.FindStringSubmatch(weight)
	all, err := unit.ParseMass(weight)
	if m == nil || err != nil {
		return weight
	}
	one, err := unit.ParseMass("1 " + m[2])
	if err != nil {
		return weight
	}
	each := math.Round(float64(all)/float64(one)/float64(pieces)*1000) / 1000 // a thousandth of a pound is nothing
	return strconv.FormatFloat(each, 'f', -1, 64) + " " + m[2]
}

// betweenDishes are the words between two dishes of one text.
var betweenDishes = regexp.MustCompile(`\s*(?:[,;&+\n]|\band\b|\bplus\b)\s*`)

// Dishes are several dishes in a cook's words: a text, a list of them, or foods with what
// is said of each. The last says whether all of it was understood, and in one way.
func Dishes(n *strict.Node, eaters int) (list *strict.Node, open string, certain bool) {
	list = strict.NewList(n.Line)
	certain = true
	for _, item := range itemsOf(n, eaters) {
		if item.Node == nil {
			return nil, item.Lead(), false
		}
		if !item.Certain() {
			certain = false
			open += "; " + strings.TrimPrefix(Spoken{Unclear: item.Unclear, Left: item.Left}.Lead(), "; ")
		}
		list.Items = append(list.Items, item.Node)
	}
	if len(list.Items) == 0 {
		return nil, "", false
	}
	return list, open, certain
}

// itemsOf are the dishes of a text, of a list, or of foods with what is said of each.
func itemsOf(n *strict.Node, eaters int) (items []Spoken) {
	switch n.Kind {
	case strict.NodeText:
		whole := Dish(n.Text, eaters, n.Line)
		if whole.Certain() || len(betweenDishes.Split(n.Text, -1)) < 2 {
			return []Spoken{whole}
		}
		for _, text := range betweenDishes.Split(n.Text, -1) {
			one := Dish(text, eaters, n.Line)
			if one.Node == nil { // then it is no list of dishes
				return []Spoken{whole}
			}
			items = append(items, one)
		}
	case strict.NodeList:
		for _, item := range n.Items {
			if item.Kind == strict.NodeText {
				items = append(items, Dish(item.Text, eaters, item.Line))
			} else {
				items = append(items, Spoken{})
			}
		}
	case strict.NodeObject:
		for name, value := range n.Fields() {
			items = append(items, named(name, value, eaters))
		}
	}
	return items
}

// named is a dish whose food is the name of a field: "ribs: 2 racks", "turkey: {weight: 14 lb}".
func named(name string, value *strict.Node, eaters int) Spoken {
	if value.Kind == strict.NodeObject {
		s := Dish(name, eaters, value.Line)
		if s.Node != nil {
			s.Node = s.Node.Joined(value)
		}
		return s
	}
	return Dish(asSpoken(name, value), eaters, value.Line)
}

// asSpoken is a food and what stands behind it as one text.
func asSpoken(name string, value *strict.Node) string {
	switch value.Kind {
	case strict.NodeText:
		return name + ", " + value.Text
	case strict.NodeNumber:
		if c, unknown := cut.One(name); unknown == "" && c.Style == cut.Tough && !c.Ribs() {
			return name + ", " + value.Text + " lb"
		}
		return name + ", " + value.Text
	}
	return name
}

// meantDish is the meaning of a field that is called like a food: "ribs: 2 racks".
func meantDish(group, name string, value *strict.Node) strict.Meaning {
	if cuts, outside := cut.Named(name); len(cuts)+len(outside) == 0 {
		return strict.Meaning{}
	}
	s := named(name, value, 0)
	if s.Node == nil {
		return strict.Meaning{Sentence: s.Lead()}
	}
	if group == "" {
		in := s
		in.Node = nil
		return strict.Meaning{Sentence: leadTo(in.Lead(), "dishes: ["+s.Line()+"]"), Instead: []string{"dishes"}}
	}
	return strict.Meaning{Sentence: s.Lead(), Instead: []string{"cut", "weight", "count"}}
}

// leadTo is a sentence that ends in the line to write.
func leadTo(open, line string) string {
	switch {
	case open == "":
		return "write " + line
	case strings.HasSuffix(open, "write which"):
		return open + ": " + line
	}
	return open + "; without that it is " + line
}

// knownFood says whether exactly that is what some food goes by.
func knownFood(name string) bool {
	cuts, outside := cut.Named(name)
	return len(cuts)+len(outside) > 0
}

func oneOf(word string, words ...string) bool { return slices.Contains(words, word) }
