package meant

import (
	"regexp"
	"strconv"
	"strings"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// modified is a name without the words about the dish, which are taken down. A name that
// some food goes by stays whole.
func (h *hearer) modified(name string) string {
	for range 4 { // more words about one dish are no name
		if name == "" || knownFood(name) {
			return name
		}
		words := strings.Fields(name)
		shorter := ""
		for k := 1; k < len(words) && k < 4 && shorter == ""; k++ { // how done it is stands behind the food
			if back, front := strings.Join(words[len(words)-k:], " "), strings.Join(words[:len(words)-k], " "); knownFood(front) && h.doneness(front, back) {
				shorter = front
			}
		}
		for k := 1; k < len(words) && k < 4 && shorter == ""; k++ {
			head, tail := strings.Join(words[:k], " "), strings.Join(words[k:], " ")
			back, front := strings.Join(words[len(words)-k:], " "), strings.Join(words[:len(words)-k], " ")
			switch {
			case h.word(head), animalOf(head, tail):
				shorter = tail
			case h.bone(front, back), h.word(back), knownFood(front) && h.doneness(front, back):
				shorter = front
			case (knownFood(front) || isStyled(front)) && rareWords.MatchString(back): // which this food is not cooked to
				h.Left = append(h.Left, back)
				shorter = front
			}
		}
		if shorter == "" {
			if food := h.behindFood(words); food != "" {
				return food
			}
			return h.bound(name)
		}
		name = shorter
	}
	return name
}

// behindFood is the food that a text begins with, where all that stands behind it is said of
// it: "pork butt bone in for pulling". Empty where a word of it is not understood.
func (h *hearer) behindFood(words []string) string {
	before := *h
	for k := len(words) - 1; k > 0; k-- {
		if food := strings.Join(words[:k], " "); knownFood(food) && h.allSaid(food, words[k:]) {
			return food
		}
		*h = before
	}
	return ""
}

// allSaid takes words about a food one thing after the other; false where one is not understood.
func (h *hearer) allSaid(food string, words []string) bool {
	if len(words) == 0 {
		return true
	}
	before := *h
	for k := min(len(words), 4); k > 0; k-- {
		said := strings.Join(words[:k], " ")
		if (h.bone(food, said) || h.word(said) || h.doneness(food, said) || h.forAll(said)) && h.allSaid(food, words[k:]) {
			return true
		}
		*h = before
	}
	return false
}

var boneWords = regexp.MustCompile(`(?i)^(?:bone[- ]in|on the bone|with (?:the )?bone|boneless|boned|mit Knochen|ohne Knochen)$`)

// bone takes a word for the bone behind a food: it is another cut of it, or makes no
// difference that a plan has a figure for.
func (h *hearer) bone(food, word string) bool {
	c, unknown := cut.One(food)
	if unknown != "" || !boneWords.MatchString(word) {
		return false
	}
	for _, called := range []string{word + " " + food, food + " " + word} {
		if _, unknown := cut.One(called); unknown == "" {
			return false
		}
	}
	h.Heard = append(h.Heard, c.InText()+" is one cut here, with its bone or without")
	return true
}

var boundBy = regexp.MustCompile(`(?i)\s+(for|with|from|on|in|to|at|per|or)\s+`)

// bound is a name without what stands behind a word such as "for", which is left over.
func (h *hearer) bound(name string) string {
	var at []int
	for _, joint := range boundBy.FindAllStringIndex(name, -1) { // the longest food counts: corn on the cob with butter
		if knownFood(name[:joint[0]]) {
			at = joint
		}
	}
	if at == nil {
		return name
	}
	said := strings.TrimSpace(name[at[0]:])
	if words, n := numberOf(said); n > 0 && !forPeople.MatchString(said) { // brats in beer 6
		said, h.behind.Count, h.said.Count = words, n, n
	}
	if !h.doneness(name[:at[0]], said) && !h.word(said) && !h.forAll(said) {
		h.hear(said)
	}
	return name[:at[0]]
}

// hear takes one more thing that is said of a dish, behind a comma or in brackets.
func (h *hearer) hear(part string) {
	part = strings.TrimSpace(strings.TrimPrefix(part, "and "))
	if h.doneness("", part) || strings.EqualFold(part, "whole") && h.another(part) || h.word(part) {
		return
	}
	if m := ofThem.FindStringSubmatch(part); m != nil && h.said.Count == 0 {
		h.said.Count = cut.Speak(m[1]).Count
		return
	}
	if m := wrapSaid.FindStringSubmatch(part); m != nil {
		with := "foil"
		if strings.Contains(strings.ToLower(m[1]), "paper") {
			with = "paper"
		}
		from := m[2] + " " + heatUnit(m[3], m[2])
		h.set("wrap", strict.NewGroup(h.line).With("with", strict.NewText(with, h.line)).With("from", strict.NewText(from, h.line)))
		h.Heard = append(h.Heard, strconv.Quote(part)+" is read as: in "+with+" from "+from+" on")
		return
	}
	if m := heatSaid.FindStringSubmatch(part); m != nil && h.Node.Get("target") == nil {
		of := m[2] + m[4]
		text := m[1] + m[3] + " " + heatUnit(of, m[1]+m[3])
		if t, err := unit.ParseTemperature(text); err == nil && t.Fahrenheit() >= 110 && t.Fahrenheit() <= 212 {
			h.setText("target", text)
			return
		}
	}
	if h.cut.Name != "" && h.bone(h.Node.Get("cut").Text, part) {
		return
	}
	if t, err := unit.ParseTemperature(part); err == nil && t > 0 {
		h.setText("target", part)
		return
	}
	s := cut.Speak(part)
	if strings.EqualFold(s.Name, "whole") && outsideOnly("whole "+h.Node.Get("cut").Text) {
		_, h.Unclear = cut.One("whole " + h.Node.Get("cut").Text)
		return
	}
	amount := s.Count > 0 || s.Weight != "" || s.Thickness != ""
	rest := strings.TrimSpace(s.Name)
	if s.Count > 0 && h.said.Count > 0 && rest != "" && knownFood(rest) { // another dish, with its own number
		h.Left = append(h.Left, part)
		return
	}
	if amount && rest != "" {
		rest = strings.TrimSpace(pieceLead.ReplaceAllString(rest, ""))
	}
	if amount && rest != "" { // "16 bone in", "4 well done" is more than an amount
		if piecesAlone.MatchString(rest) || h.cut.OwnName(rest) || h.another(rest) || h.word(rest) {
			rest = ""
		}
	}
	switch {
	case s.Part || amount && rest == "":
		h.amount(s)
	case h.another(part):
	default:
		h.Left = append(h.Left, part)
	}
}

var ofThem = regexp.MustCompile(`(?i)^(\d{1,3}|two|three|four|five|six|eight|ten|twelve) of them$`)

// pieceLead are words for pieces before what they are of: 3 racks St Louis.
var pieceLead = regexp.MustCompile(`(?i)^(?:racks?|slabs?|pieces?|sides?|whole)\s+(?:of\s+)?`)

// piecesAlone are words that only say what is counted.
var piecesAlone = regexp.MustCompile(`(?i)^(?:links?|patties|patty|birds?|pcs|nos?|units?)$`)

// another takes words that make another cut of the dish's: bone-in, boneless, butterflied.
func (h *hearer) another(words string) bool {
	if h.cut.Name == "" {
		return false
	}
	name := h.Node.Get("cut").Text
	for _, called := range []string{words + " " + name, name + " " + words, words + " " + h.called, h.called + " " + words} {
		if c, unknown := cut.One(called); unknown == "" {
			h.cut, h.Unclear = c, ""
			h.Node = h.Node.With("cut", strict.NewText(c.Name, h.line))
			if !c.OwnName(called) {
				h.Node = h.Node.With("cut", strict.NewText(called, h.line))
			}
			return true
		}
	}
	return false
}

// outsideOnly says whether a name is one of foods that the catalogue does not have.
func outsideOnly(name string) bool {
	cuts, outside := cut.Named(name)
	return len(cuts) == 0 && len(outside) > 0
}

// animalOf says whether a word only names the animal that a food is of: beef rump cap.
func animalOf(word, food string) bool {
	c, unknown := cut.One(food)
	return unknown == "" && strings.EqualFold(word, c.Food) && oneOf(c.Food, "beef", "pork", "lamb")
}

// heatSaid is how hot a dish is to be inside: "pull at 203", "58 °C inside".
var heatSaid = regexp.MustCompile(`(?i)^(?:(?:pull(?:ed)?|done|take (?:it |them )?(?:off|to)|taken (?:off|to)|bring (?:it |them )?to|finish(?:ed)?|off|cook(?:ed)? to|to|internal(?: temp(?:erature)?)?(?: of)?|core(?: temp(?:erature)?)?(?: of)?|kern(?:temperatur)?|inside)[\s:]*(?:at|to|@)?\s*(\d{2,3})\s*(?:°|degrees|deg)?\s*([FC]?)(?:ahrenheit|elsius)?(?: inside| internal| core)?|(\d{2,3})\s*(?:°|degrees|deg)?\s*([FC]?)\s*(?:inside|internal(?:ly)?|core|in the (?:middle|center|centre)))$`)
