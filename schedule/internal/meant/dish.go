package meant

import (
	"fmt"
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
	Unused  []string     // words that the plan does nothing with
	Heard   []string     // what a cook has to see of how words were read
}

// Dish is a dish in a cook's words. So many people eat; 0 for what is not known.
func Dish(text string, eaters, line int) Spoken { return dishOf(text, eaters, line, false) }

// dishOf is [Dish]; a slip of the pen in the name of the food may be mended where that is asked.
func dishOf(text string, eaters, line int, slips bool) Spoken {
	if decimalComma.MatchString(text) {
		return Spoken{Unclear: "a decimal is written with a point: 1.5 and not 1,5"}
	}
	h := hearer{eaters: eaters, line: line, slips: slips}
	text = timesPieces.ReplaceAllString(strings.ReplaceAll(text, ": ", ", "), "$1 $2")
	if whole := (hearer{eaters: eaters, line: line}); whole.weighed(text) {
		return whole.Spoken
	}
	text = h.halves(spokenInches.ReplaceAllStringFunc(text, inchesInFigures))
	parts := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(",;()", r) })
	if len(parts) == 0 {
		return Spoken{Unclear: "no food is named"}
	}
	h.Node = strict.NewGroup(line)
	first := cut.Speak(parts[0])
	for _, part := range parts[1:] { // a food that is not known keeps its amounts
		if s := cut.Speak(part); s.Name == "" {
			h.amount(s)
		}
	}
	h.behind, h.said = h.said, cut.Spoken{}
	if h.sandwiches(first) {
		return h.Spoken
	}
	if !h.food(first) {
		if strings.Contains(h.Unclear, "; to plan it as that write ") {
			h.leftAside(h.aside, parts[1:])
		}
		return Spoken{Unclear: h.Unclear, Left: h.Left}
	}
	for _, part := range parts[1:] {
		if part = strings.TrimSpace(part); part != "" {
			h.hear(part)
		}
	}
	h.tooDone()
	if len(parts) == 1 || blocks.MatchString(text) {
		h.poundsOrPieces(text)
	}
	if h.wedges != "" && h.cut.Name == "potatoes" {
		h.Heard = append(h.Heard, strconv.Quote(h.wedges)+": planned as whole potatoes; cut small they are done in a third of the time, so put them on later")
	}
	h.amounts()
	return h.Spoken
}

// timesPieces is a number of pieces with the sign of a product behind it: 4x racks.
var timesPieces = regexp.MustCompile(`^\s*(\d{1,3})\s?[xX×]\s+(\pL)`)

var decimalComma = regexp.MustCompile(`\d,\d`)

// hearer gathers what the parts of a text say of one dish.
type hearer struct {
	Spoken
	cut          cut.Cut
	called       string     // what the cook calls the food
	said         cut.Spoken // amounts from all parts
	eaters, line int
	slips        bool // of the pen, in the name of the food

	behind  cut.Spoken // amounts behind the food
	half    int        // so many halves are said beside the whole pieces; 0 or 1
	halved  bool       // the weight is of half a piece
	sliced  bool       // it is said in which pieces it lies on the grate
	bunches int
	wedges  string   // in which pieces
	aside   []string // words about a food that is not known
}

// food finds out which food is named, after the words about it are taken away.
func (h *hearer) food(s cut.Spoken) bool {
	if food, n := numberOf(s.Name); n > 0 && s.Count == 0 && !s.Part && !knownFood(s.Name) {
		s.Name, s.Count = food, n
	}
	name := h.modified(s.Name)
	if slip, ok := cut.Slip(name); h.slips && ok && !knownFood(name) && !isStyled(name) && allOneCut(name) == "" {
		h.Heard = append(h.Heard, strconv.Quote(name)+" is read as "+slip)
		name = slip
	}
	cuts, _ := cut.Named(name)
	c, unknown := cut.One(name)
	if one, ok := byWeight(cuts, s); ok {
		c, unknown, cuts = one, "", nil
		h.Heard = append(h.Heard, fmt.Sprintf("%s of %s is taken as %s", name, s.Weight, c.InText()))
		name = c.Name
	}
	switch {
	case unknown == "":
		h.cut = c
	case len(cuts) == 2 && cuts[0].Name == "sausage" && cuts[1].Name == "sausage-scalded": // the longer cook of the two
		c, unknown = cuts[0], ""
		h.cut = c
		h.Heard = append(h.Heard, name+" are taken as raw; scalded ones are written sausage-scalded, and are done sooner")
		h.Node = h.Node.With("name", strict.NewText(titled(name), h.line)) // the cook's word stays on the sheet
		name = c.Name
	case len(cuts) == 0 && allOneCut(name) != "":
		c, _ = cut.One(allOneCut(name))
		h.cut, unknown = c, ""
		h.Node = h.Node.With("name", strict.NewText(name, h.line))
		name = c.Name
	case len(cuts) == 0 && outsideNone(name):
		called, ok := h.styled(name)
		if !ok {
			h.Unclear, h.Left, h.aside = unknown, nil, h.Left
			h.nearest(name, s)
			return false
		}
		c, unknown, name = h.cut, "", called
	case len(cuts) == 0:
		h.Unclear, h.Left, h.aside = unknown, nil, h.Left
		h.nearest(name, s)
		return false
	default:
		h.cut, h.Unclear = cuts[0], unknown
	}
	h.called = name
	called := h.cut.Name
	if unknown == "" && !c.OwnName(name) { // the cook's word is what the sheet will call it
		called = name
	}
	h.Node = strict.NewGroup(h.line).With("cut", strict.NewText(called, h.line)).Joined(h.Node)
	h.amount(s)
	return true
}

// allOneCut is the food that each of several is planned as: zucchini and peppers are
// vegetables. Empty where they are not.
func allOneCut(name string) (one string) {
	foods := betweenDishes.Split(name, -1)
	for _, food := range foods {
		c, unknown := cut.One(strings.TrimSpace(food))
		if unknown != "" || len(foods) < 2 || one != "" && one != c.Name {
			return ""
		}
		one = c.Name
	}
	return one
}

func (h *hearer) set(field string, value *strict.Node) { h.Node = h.Node.With(field, value) }

func (h *hearer) setText(field, text string) { h.set(field, strict.NewText(text, h.line)) }

// knownFood says whether exactly that is what some food goes by.
func knownFood(name string) bool {
	cuts, outside := cut.Named(name)
	return len(cuts)+len(outside) > 0
}

func oneOf(word string, words ...string) bool { return slices.Contains(words, word) }

// spokenInches are inches with a part of one in words: "an inch and a half thick".
var spokenInches = regexp.MustCompile(`(?i)\b(?:(an?|one|two|\d) )?inch(?:es)? and a (half|quarter)\b|\b(one|two|\d) and a (half|quarter) inch(?:es)?\b`)

func inchesInFigures(said string) string {
	m := spokenInches.FindStringSubmatch(said)
	whole := map[string]string{"": "1", "a": "1", "an": "1", "one": "1", "two": "2"}
	n := strings.ToLower(m[1] + m[3])
	if figure, ok := whole[n]; ok {
		n = figure
	}
	return n + map[string]string{"half": ".5 inch", "quarter": ".25 inch"}[strings.ToLower(m[2]+m[4])]
}

// byWeight is the one of several cuts of a name that can weigh so much.
func byWeight(cuts []cut.Cut, s cut.Spoken) (one cut.Cut, ok bool) {
	kg, err := unit.ParseMass(s.Weight)
	if err != nil || len(cuts) < 2 || s.PerHead || s.Total || s.Count > 1 {
		return cut.Cut{}, false
	}
	found := 0
	for _, c := range cuts {
		if c.Food != cuts[0].Food {
			return cut.Cut{}, false
		}
		if float64(kg) >= c.MinPieceKg && float64(kg) <= c.MaxPieceKg {
			one, found = c, found+1
		}
	}
	return one, found == 1
}

// nearest adds the line that would be right for a food that is not in the catalogue: the one
// that is nearest to it, with the cook's amounts and the cook's word for it.
func (h *hearer) nearest(name string, s cut.Spoken) {
	if food, n := numberOf(name); n > 0 && s.Count == 0 {
		name, s.Count = food, n
	}
	c, ok := Nearest(name)
	if !ok {
		return
	}
	g := hearer{eaters: h.eaters, line: h.line, cut: c}
	g.Node = strict.NewGroup(h.line).With("cut", strict.NewText(c.Name, h.line)).With("name", strict.NewText(name, h.line))
	g.amount(h.behind)
	g.amount(s)
	g.amounts()
	if g.Unclear == "" {
		h.Unclear += "; to plan it as that write " + g.Line()
	}
}

// Nearest is the food that one which is not in the catalogue can be planned as: the nearest by
// the catalogue, else the one food that its name has in it, as a sausage of venison is one.
func Nearest(name string) (cut.Cut, bool) {
	_, outside := cut.Named(name)
	if len(outside) == 1 && len(outside[0].Nearest) > 0 {
		c, ok := cut.Find(outside[0].Nearest[0])
		return c, ok && !outside[0].Far
	}
	words := strings.Fields(name)
	for k := len(words) - 1; k > 0; k-- { // the longest part counts; the kind of food stands at the end
		for at, part := range []string{strings.Join(words[len(words)-k:], " "), strings.Join(words[:k], " ")} {
			if rest := strings.Join(words[:len(words)-k], " "); at == 0 && foodWords.MatchString(rest) { // a burger of salmon is none of beef
				continue
			}
			if cuts, out := cut.Named(part); len(out) == 1 && len(cuts) == 0 && len(out[0].Nearest) > 0 {
				c, ok := cut.Find(out[0].Nearest[0])
				return c, ok && !out[0].Far
			}
			if c, unknown := cut.One(part); unknown == "" {
				return c, true
			}
			if one, ok := sausages(part); ok {
				return one, true
			}
		}
	}
	return cut.Cut{}, false
}

// sausages is the longer cook of the two kinds of a sausage.
func sausages(name string) (cut.Cut, bool) {
	cuts, _ := cut.Named(name)
	if len(cuts) == 2 && cuts[0].Name == "sausage" && cuts[1].Name == "sausage-scalded" {
		return cuts[0], true
	}
	return cut.Cut{}, false
}
