package meant

import (
	"regexp"
	"strings"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// saidOf are words about a dish, by the field that they are of (common practice, no source).
var saidOf = []struct {
	words        *regexp.Regexp
	field, value string // a value in brackets is an item of a list; without a field they say nothing that a plan needs
}{
	{regexp.MustCompile(`(?i)^(?:from )?frozen(?: solid)?$`), "start", "frozen"},
	{regexp.MustCompile(`(?i)^reverse[ -]?sear(?:ed)?$|^seared?(?: at the end)?$`), "finish", "sear"},
	{regexp.MustCompile(`(?i)^(?:with a )?(?:solution|injected|enhanced|basted|self-basting)$`), "prep", "[injected"},
	{regexp.MustCompile(`(?i)^(?:blade |needle )?tenderi[sz]ed$`), "prep", "[tenderized"},
	{regexp.MustCompile(`(?i)^(?:dry |wet )?brined$`), "prep", "[brined"},
	{regexp.MustCompile(`(?i)^stuffed$`), "prep", "[stuffed"},
	{regexp.MustCompile(`(?i)^(?:rolled|tied|rolled and tied|boned and tied)$`), "prep", "[rolled"},
	{regexp.MustCompile(`(?i)^(?:label )?(?:none|nothing|nothing on the label)$`), "prep", "["},
	{regexp.MustCompile(`(?i)^(?:wrapped in |in )(?:tin|aluminum|aluminium)? ?foil$`), "wrap", "foil"},
	{regexp.MustCompile(`(?i)^(?:wrapped in |in )(?:butcher )?paper$`), "wrap", "paper"},
	{regexp.MustCompile(`(?i)^(?:unwrapped|no wrap|not wrapped)$`), "wrap", "none"},
	{regexp.MustCompile(`(?i)^(?:direct(?:ly)?|over the coals)$`), "zone", "direct"},
	{regexp.MustCompile(`(?i)^(?:indirect(?:ly)?|beside the coals)$`), "zone", "indirect"},
	{regexp.MustCompile(`(?i)^(?:fresh|raw|thawed|smoked|grilled|barbecued|bbq|homemade|big|large|nice|plain|good|some|about|each|whole|raw weight|label not read|not read)$`), "", ""},
}

// modified is a name without the words about the dish, which are taken down. A name that
// some food goes by stays whole.
func (h *hearer) modified(name string) string {
	for range 4 { // more words about one dish are no name
		if name == "" || knownFood(name) {
			return name
		}
		words := strings.Fields(name)
		shorter := ""
		for k := 1; k < len(words) && k < 4 && shorter == ""; k++ {
			head, tail := strings.Join(words[:k], " "), strings.Join(words[k:], " ")
			back, front := strings.Join(words[len(words)-k:], " "), strings.Join(words[:len(words)-k], " ")
			switch {
			case h.word(head):
				shorter = tail
			case h.word(back), knownFood(front) && h.doneness(front, back):
				shorter = front
			}
		}
		if shorter == "" {
			return h.bound(name)
		}
		name = shorter
	}
	return name
}

var boundBy = regexp.MustCompile(`(?i)\s+(for|with|from|on|in|to|at|per|or)\s+`)

// bound is a name without what stands behind a word such as "for", which is left over.
func (h *hearer) bound(name string) string {
	at := boundBy.FindStringIndex(name)
	if at == nil || !knownFood(name[:at[0]]) {
		return name
	}
	h.hear(strings.TrimSpace(name[at[0]:]))
	return name[:at[0]]
}

// word takes down a word about the dish; false for another.
func (h *hearer) word(text string) bool {
	for _, s := range saidOf {
		if !s.words.MatchString(text) {
			continue
		}
		h.take(s.field, s.value)
		return true
	}
	return false
}

func (h *hearer) take(field, value string) {
	item, listed := strings.CutPrefix(value, "[")
	switch {
	case field == "":
	case !listed:
		h.setText(field, value)
	default:
		list := strict.NewList(h.line)
		if before := h.Node.Get(field); before != nil {
			list.Items = append(list.Items, before.Items...)
		}
		if item != "" {
			list.Items = append(list.Items, strict.NewText(item, h.line))
		}
		h.set(field, list)
	}
}

// hear takes one more thing that is said of a dish, behind a comma or in brackets.
func (h *hearer) hear(part string) {
	part = strings.TrimSpace(strings.TrimPrefix(part, "and "))
	if h.doneness("", part) || h.word(part) {
		return
	}
	if t, err := unit.ParseTemperature(part); err == nil && t > 0 {
		h.setText("target", part)
		return
	}
	s := cut.Speak(part)
	amount := s.Count > 0 || s.Weight != "" || s.Thickness != ""
	rest := strings.TrimSpace(s.Name)
	if amount && rest != "" { // "16 bone in", "4 well done" is more than an amount
		if h.cut.OwnName(rest) || h.another(rest) {
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

// another takes words that make another cut of the dish's: bone-in, boneless, butterflied.
func (h *hearer) another(words string) bool {
	if h.cut.Name == "" {
		return false
	}
	name := h.Node.Get("cut").Text
	for _, called := range []string{words + " " + name, name + " " + words} {
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

// doneness takes down how done a dish is to be, if it is one of what the food has: of the
// dish, or of the food that is named.
func (h *hearer) doneness(food, words string) bool {
	c := h.cut
	if food != "" {
		var unknown string
		if c, unknown = cut.One(food); unknown != "" {
			return false
		}
	}
	word := Doneness(strings.TrimSuffix(strings.TrimPrefix(strings.ToLower(words), "cooked "), " please"))
	if _, ok := c.FindDoneness(word); !ok || c.Name == "" {
		return false
	}
	h.setText("target", word)
	return true
}

// Doneness is a word for how done a dish is, as the catalogue writes it.
func Doneness(text string) string {
	word := strings.ReplaceAll(strings.ToLower(strings.TrimSpace(text)), " ", "-")
	switch word {
	case "med-rare", "mr", "rare-medium", "medium-to-rare":
		return "medium-rare"
	case "med":
		return "medium"
	case "med-well":
		return "medium-well"
	case "well", "welldone", "fully-done", "cooked-through", "through":
		return "well-done"
	case "sliceable", "slices", "for-slicing":
		return "sliced"
	case "shredded", "pull", "pullable", "for-pulling":
		return "pulled"
	}
	return word
}
