package meant

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"example.com/cookday/schedule/cut"
)

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
	if c.Name == "" {
		return false
	}
	word, usual := donenessOf(c, strings.TrimSuffix(strings.TrimPrefix(strings.ToLower(words), "cooked "), " please"))
	switch {
	case usual:
		h.Heard = append(h.Heard, strconv.Quote(words)+" is how "+c.InText()+" is done by itself")
	case word == "":
		return false
	default:
		h.setText("target", word)
	}
	return true
}

// ownDoneness are words of cooks for how done a dish is (common practice, no source); the
// first that the food has counts.
var ownDoneness = []struct {
	words *regexp.Regexp
	means []string
	usual bool // else it is what the food is done to by itself
}{

	{regexp.MustCompile(`(?i)^(?:(?:a (?:little|bit)|slightly|just|still) )?(?:pink|rosa)(?: in the (?:middle|center|centre)| inside)?$`), []string{"medium"}, false},
	{regexp.MustCompile(`(?i)^(?:fall(?:ing)?[- ]?(?:apart|off the bone)|shreddable|pull[- ]?apart|for pulling|pullable|shredding|(?:for )?(?:pulled|shredded)(?: (?:pork|beef|chicken|lamb|meat))?(?: (?:sandwich(?:es)?|tacos|buns|rolls))?)(?:[ -]tender)?$`), []string{"pulled", "tender"}, true},
	{regexp.MustCompile(`(?i)^(?:(?:probe|butter|fork|very|nice and) )?tender$`), []string{"tender", "pulled", "sliced"}, true},
	{regexp.MustCompile(`(?i)^(?:done|fully (?:cooked|done)|cooked through|through|no pink|not pink|durch|durchgebraten|well cooked)$`), []string{"well-done", "done"}, true},
	{regexp.MustCompile(`(?i)^(?:bite|bite[- ]?through|with a bite|competition)$`), []string{"bite"}, false},
}

// donenessOf is what a food's cook calls so done; usual says that it is so done by itself.
func donenessOf(c cut.Cut, text string) (word string, usual bool) {
	word = Doneness(text)
	if _, ok := c.FindDoneness(word); ok {
		return word, false
	}
	for _, d := range ownDoneness {
		if !d.words.MatchString(strings.TrimSpace(text)) {
			continue
		}
		for _, means := range d.means {
			if _, ok := c.FindDoneness(means); ok {
				return means, false
			}
		}
		return "", d.usual
	}
	return "", false
}

// rareWords are those for meat that is not done through.
var rareWords = regexp.MustCompile(`(?i)^(?:(?:medium|med)[ -]?)?rare$|^medium$|^med$|^pink(?: in the middle)?$|^medium[- ]rare$|^mr$|^med-rare$|^blue$`)

// tooDone says why a food that is not cooked rare can not be, where that was asked for.
func (h *hearer) tooDone() {
	k := slices.IndexFunc(h.Left, rareWords.MatchString)
	if k < 0 || h.Unclear != "" {
		return
	}
	food := h.cut.Food
	if name := h.Node.Get("name"); food == "ground" && (poultryWords.MatchString(h.called) || name != nil && poultryWords.MatchString(name.Text)) {
		food = "ground poultry"
	}
	why := map[string]string{"ground poultry": "ground poultry is cooked to 165 °F",
		"ground": "ground meat carries its surface inside and is cooked to 160 °F", "sausage": "sausage is ground meat and is cooked to 160 °F", "poultry": "poultry is cooked to 165 °F",
	}[food]
	if why == "" {
		return
	}
	h.Unclear = strconv.Quote(h.Left[k]) + ": " + why + "; leave it out"
	h.Left = slices.Delete(h.Left, k, k+1)
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
