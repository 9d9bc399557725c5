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

const oneWeight = `(?:\d+\s+\d+/\d+|\d+/\d+|\d*\.?\d+)\s*(?:lbs?|pounds?|kg|kilos?|g|grams?|oz|ounces?|#)?\.?`

// severalWeights is a food whose pieces are weighed one by one: "3 pork butts 8, 8 and 6.5 lb".
var severalWeights = regexp.MustCompile(`(?i)^(.*?\pL)[\s,:(]+(` + oneWeight + `(?:\s*(?:,|&|\+|and|,\s*and)\s*` + oneWeight + `)+)\s*\)?$`)

var (
	betweenWeights = regexp.MustCompile(`(?i)\s*(?:,\s*and\b|,|&|\+|\band\b)\s*`)
	weightUnit     = regexp.MustCompile(`(?i)(?:lbs?|pounds?|kg|kilos?|g|grams?|oz|ounces?|#)\.?$`)
)

// weighed takes pieces that are weighed one by one. So many weights are so many pieces.
func (h *hearer) weighed(text string) bool {
	if at := strings.LastIndex(strings.ToLower(text), " for "); at > 0 && unusedText.MatchString(text[at+1:]) {
		h.Unused, text = append(h.Unused, text[at+1:]), text[:at]
	}
	m := severalWeights.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil {
		return false
	}
	texts := betweenWeights.Split(m[2], -1)
	last := strings.TrimSpace(weightUnit.FindString(texts[len(texts)-1]))
	if len(texts) < 2 || last == "" {
		return false
	}
	first := cut.Speak(m[1])
	if first.Weight != "" || first.PerHead || first.Total {
		return false
	}
	weights, bare := strict.NewList(h.line), false
	for _, one := range texts {
		if weightUnit.FindString(one) == "" {
			one, bare = one+" "+last, true
		}
		one = strings.Replace(strings.TrimSpace(one), "#", " lb", 1)
		if kg, err := unit.ParseMass(one); err != nil || kg <= 0 {
			return false
		}
		weights.Items = append(weights.Items, strict.NewText(one, h.line))
	}
	count := first.Count
	if joined := strings.ContainsAny(m[2], "&+") || strings.Contains(strings.ToLower(m[2]), "and"); bare && count != len(texts) && (!joined || count == 0 && strings.Contains(m[2], ",")) {
		return false // a number without a unit may be one of pieces
	}
	first.Count = 0
	h.Node = strict.NewGroup(h.line)
	if !h.food(first) || h.Unclear != "" {
		return false
	}
	h.set("weights", weights)
	if count > 0 && count != len(texts) {
		h.Unclear = fmt.Sprintf("%d pieces and %d weights: write a weight for each", count, len(texts))
	}
	return true
}

// madeOf is a dish that is made of meat at the table: its number is none of the meat's pieces.
var madeOf = regexp.MustCompile(`(?i)^(.*\pL)\s+(sandwich(?:es)?|sarnies|butties|wraps?|tacos?|burritos?|fajitas?|quesadillas?|pitas?|tostadas?|nachos|bowls?)$`)

// sandwiches says what is open where sandwiches are counted: what the meat weighs.
func (h *hearer) sandwiches(s cut.Spoken) bool {
	name := s.Name
	if food, n := numberOf(name); n > 0 && s.Count == 0 {
		name, s.Count = food, n
	}
	m := madeOf.FindStringSubmatch(name)
	if m == nil || s.Count == 0 || s.Weight != "" || knownFood(name) {
		return false
	}
	food := m[1]
	if c, unknown := cut.One(food); unknown == "" {
		h.cut = c
	} else if c, ok := Nearest(food); ok {
		h.cut, food = c, c.Name
	} else {
		return false
	}
	h.called = food
	h.Node = strict.NewGroup(h.line).With("cut", strict.NewText(food, h.line)).With("name", strict.NewText(titled(name), h.line))
	h.Unclear = fmt.Sprintf("%d %s are no number of pieces of %s; write what the meat weighs in all as weight, or leave the number out: then there is enough for the guests", s.Count, m[2], food)
	return true
}

// numberBehind is a number behind a large piece of meat that may be pounds or pieces.
var numberBehind = regexp.MustCompile(`(?i)^\s*\pL[\pL' -]*[^s\s\d]\s+(\d{1,3})\s*$`)

// slicesOfBlock are cut of a usual block of halloumi, half a pound (common practice, no source).
const slicesOfBlock = 4

var blocks = regexp.MustCompile(`(?i)\bblocks?\b`)

// poundsOrPieces asks what a number behind a large piece of meat is of: "brisket 10".
func (h *hearer) poundsOrPieces(text string) {
	if blocks.MatchString(text) && h.cut.Name == "halloumi" && h.said.Count > 0 && h.said.Weight == "" {
		h.said.Count *= slicesOfBlock
		h.Heard = append(h.Heard, fmt.Sprintf("a block of halloumi is taken as %d slices; write count: for so many slices", slicesOfBlock))
	}
	if blocks.MatchString(text) && h.cut.Name == "tofu" && h.Unclear == "" {
		h.Unclear = "a block is cut into slabs; write how many slabs there are in all, as count"
		h.said.Count = 0
	}
	m := numberBehind.FindStringSubmatch(text)
	if m == nil || strings.Contains(strings.ToLower(text), " for ") || h.Unclear != "" || h.cut.Ribs() || h.cut.UsualKg(h.Node.Get("cut").Text) < 1.5 {
		return
	}
	if n, err := strconv.Atoi(m[1]); err == nil && n >= 4 {
		h.said.Count, h.said.Weight = 0, m[1]+" lb"
		h.Unclear = fmt.Sprintf("%d may be %d lb or count: %d; write which", n, n, n)
	}
}

// leftAside adds to an error which words its line leaves out, so that nobody copies it without
// having seen that.
func (h *hearer) leftAside(left, parts []string) {
	for _, part := range parts {
		if part = strings.TrimSpace(part); part != "" && cut.Speak(part).Name != "" {
			left = append(left, part)
		}
	}
	for _, words := range left {
		if !strings.Contains(h.Unclear, strconv.Quote(words)) {
			h.Unclear += "; that leaves " + strconv.Quote(words) + " aside"
			if rareWords.MatchString(words) {
				h.Unclear += ", for the plan does not know how such a food is done so"
			}
		}
	}
}
