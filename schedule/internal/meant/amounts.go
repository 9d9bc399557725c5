package meant

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// amount takes what a part says of how much there is.
func (h *hearer) amount(s cut.Spoken) {
	if s.Count > 0 {
		h.said.Count, h.said.PerHead, h.said.Packs = s.Count, s.PerHead, s.Packs
	}
	if s.Weight != "" {
		h.said.Weight, h.said.Total = s.Weight, s.Total
		h.said.PerHead = h.said.PerHead || s.PerHead
	}
	if across, err := unit.ParseLength(s.Thickness); err == nil && s.Thickness != "" && h.cut.Style == cut.Timed && float64(across) > 0.1 { // no slice is so thick: it is how wide it is
		h.Unused = append(h.Unused, s.Thickness)
	} else if s.Thickness != "" {
		h.said.Thickness = s.Thickness
	}
	h.said.Larger, h.said.Part = h.said.Larger || s.Larger, h.said.Part || s.Part
}

// amounts writes down how much there is. No number is made up: without one the guests are
// fed, or it is asked.
func (h *hearer) amounts() {
	s, small := h.said, h.cut.Quick()
	if h.half > 0 && h.withHalf(s) || h.bunches > 0 && h.inBunches() {
		return
	}
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
	case s.PerHead && s.Count == 0 && s.Weight != "" && h.eaters > 0:
		h.perHead(s)
		return
	case s.PerHead && h.eaters == 0:
		open("how many eat is not said; write guests, or how many pieces there are in all, as count")
		s.Count = 0
	case s.PerHead:
		s.Count *= h.eaters
	}
	if m, err := unit.ParseMass(s.Weight); err == nil {
		if h.halved && float64(m) < h.cut.MinPieceKg {
			open("half of one that weighs so little is another piece than " + h.cut.InText() + "; write which cut it is, such as a butterflied or a boned one")
		}
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
	if !h.sliced && !s.PerHead {
		dish, said := Day{Eaters: h.eaters}.Cutting(h.Node)
		if h.Node = dish; said != "" {
			h.Heard = append(h.Heard, said)
		}
	}
	if s.Larger {
		h.set("assumed", strict.NewList(h.line, strict.NewText(larger, h.line)))
	}
}

// perHead shares so much for each who eats among pieces: of what is small, usual ones; of a
// roast as few as can be.
func (h *hearer) perHead(s cut.Spoken) {
	each, err := unit.ParseMass(s.Weight)
	if err != nil {
		h.Unclear = err.Error()
		return
	}
	all := float64(each) * float64(h.eaters)
	usual := h.cut.UsualKg(h.Node.Get("cut").Text)
	n := max(int(math.Ceil(all/h.cut.MaxPieceKg)), 1)
	if h.cut.Quick() || h.cut.Style == cut.Small {
		n = max(int(math.Round(all/usual)), 1)
	}
	m := weightText.FindStringSubmatch(s.Weight)
	one, bad := unit.ParseMass("1 " + m[2])
	if bad != nil {
		h.Unclear = bad.Error()
		return
	}
	h.setText("weight", Shared(inUnits(all/float64(one), m[2]), n))
	if n > 1 {
		h.set("count", strict.NewNumber(n, h.line))
	}
	h.Heard = append(h.Heard, fmt.Sprintf("%s for each of %d is %s", s.Weight, h.eaters, inUnits(all/float64(one), m[2])))
}

func inUnits(n float64, of string) string {
	return strconv.FormatFloat(math.Round(n*1000)/1000, 'f', -1, 64) + " " + of
}

const kgInLb = 0.45359237

// withHalf writes down pieces of which one is half a usual one: half a rack, two and a half.
func (h *hearer) withHalf(s cut.Spoken) bool {
	if h.Unclear != "" || s.Weight != "" || s.PerHead {
		return false
	}
	usual := h.cut.UsualKg(h.Node.Get("cut").Text)
	if usual/2 < h.cut.MinPieceKg {
		h.Unclear = "half of a usual one is less than such a piece weighs; write its weight"
		return true
	}
	whole, half := inUnits(math.Round(usual/kgInLb*100)/100, "lb"), inUnits(math.Round(usual/kgInLb*50)/100, "lb")
	h.Heard = append(h.Heard, fmt.Sprintf("half of %s is taken as half of a usual one, %s; write what it weighs if you know", h.cut.InText(), half))
	if s.Count == 0 {
		h.setText("weight", half)
		return true
	}
	list := strict.NewList(h.line)
	for range s.Count {
		list.Items = append(list.Items, strict.NewText(whole, h.line))
	}
	list.Items = append(list.Items, strict.NewText(half, h.line))
	h.set("weights", list)
	return true
}

// inBunches writes down asparagus by the bunch, which is about a pound (common practice, no
// source); how many of another thing are in one nobody knows.
func (h *hearer) inBunches() bool {
	if each := cut.Bunch(h.Node.Get("cut").Text); h.Unclear == "" && each > 0 {
		h.set("count", strict.NewNumber(h.bunches*each, h.line))
		h.Heard = append(h.Heard, fmt.Sprintf("a bunch of %s is taken as %d", h.Node.Get("cut").Text, each))
		return true
	}
	if name := h.Node.Get("cut").Text; h.Unclear != "" || !strings.Contains(strings.ToLower(name), "asparagus") && !strings.Contains(strings.ToLower(name), "spargel") {
		h.Unclear = "how many are in a bunch is not said; write how many there are in all, as count"
		return true
	}
	n := max(int(math.Round(float64(h.bunches)*kgInLb/h.cut.UsualKg(h.Node.Get("cut").Text))), 1)
	h.set("count", strict.NewNumber(n, h.line))
	h.Heard = append(h.Heard, fmt.Sprintf("a bunch of asparagus is taken as a pound: %d spears in all", n))
	return true
}

var (
	halfPiece  = regexp.MustCompile(`(?i)^\s*(?:half\s+(?:of\s+)?(?:an?|the)?\s*|1/2\s+(?:an?\s+)?|½\s*)(rack|slab|side)?s?\s*(?:of\s+)?(.*)$`)
	halfMore   = regexp.MustCompile(`(?i)^\s*(\d+)(?:\s+1/2|\.5|\s*½|\s+and a half)\s+(racks?|slabs?|sides?)\s*(?:of\s+)?(.*)$`)
	halfBehind = regexp.MustCompile(`(?i)^(.*?),?\s+(\d+)(?:\s+1/2|\.5|\s*½|\s+and a half)\s+(racks?|slabs?|sides?)$`)
	bunches    = regexp.MustCompile(`(?i)[\s,(]*\b(\d+|an?|one|two|three|four|five|six)?\s*bunch(?:es)?\b(?:\s+of\b)?\)?`)
)

// halves takes a half piece, or bunches, out of a text.
func (h *hearer) halves(text string) string {
	if m := bunches.FindStringSubmatch(text); m != nil {
		h.bunches = max(cut.Speak(m[1]).Count, 1)
		if n, err := strconv.Atoi(m[1]); err == nil {
			h.bunches = n
		}
		return strings.TrimSpace(strings.Replace(text, m[0], " ", 1))
	}
	if m := halfMore.FindStringSubmatch(text); m != nil {
		h.half = 1
		return m[1] + " " + m[2] + " of " + m[3]
	}
	if m := halfBehind.FindStringSubmatch(text); m != nil {
		h.half = 1
		return m[2] + " " + m[3] + " of " + m[1]
	}
	m := halfPiece.FindStringSubmatch(text)
	if m == nil || strings.HasPrefix(strings.ToLower(m[2]), "dozen") || knownFood(strings.TrimSpace(text)) {
		return text
	}
	food, tail, _ := strings.Cut(m[2], ",")
	s := cut.Speak(food)
	if m[1] == "" && knownFood("half "+s.Name) { // half a chicken is a cut
		return strings.TrimSuffix("1 half "+m[2], " ") + strings.Repeat("", len(tail))
	}
	if s.Weight != "" || strings.ContainsAny(tail, "0123456789") { // what it weighs is said
		h.halved = true
		return m[2]
	}
	if massWord.MatchString(food) {
		return text
	}
	h.half = 1
	return m[2]
}

var massWord = regexp.MustCompile(`(?i)^(?:pounds?|lbs?|kilos?|kg|inch|of us)\b`)

// larger is what a request says where the larger of two amounts was taken.
const larger = "larger"

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
