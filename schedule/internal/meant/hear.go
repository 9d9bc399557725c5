package meant

import (
	"regexp"
	"slices"
	"strconv"
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
	{frozenText, "start", "frozen"},
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
	{regexp.MustCompile(`(?i)^(?:fresh|raw|thawed|smoked|grilled|barbecued|bbq|homemade|big|large|nice|plain|good|some|about|each|whole|raw weight|label not read|not read|grade a|a)$`), "", ""},
	{unusedText, "", "unused"},
}

// unusedText are words about a dish that no plan is made of: they are told back.
var unusedText = regexp.MustCompile(`(?i)^(?:(?:usda )?(?:choice|prime|select)(?: grade)?|angus|wagyu|grass[- ]?fed|organic|free[- ]range|local|heritage|(?:lightly )?(?:salted|seasoned|marinated|rubbed|dry[- ]rubbed|glazed|sauced)|salt (?:and|&) pepper|with (?:bbq |barbecue )?sauce|(?:bbq|barbecue) sauce|for (?:the |my |our )?(?:\d+ |two |three |four )?(?:kids?|children|adults|grown-?ups|vegetarians?|veggies|vegans?|mom|mum|dad|grandma|grandpa|wife|husband|boys|girls|me|us|him|her|them)|store[- ]bought|home[- ]?made|3-2-1|321|2-2-1|from the butcher|untrimmed|trimmed|skin on|skin-on|mit haut|mit knochen)$`)

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
			case h.bone(front, back), h.word(back), outsideOnly(front) && rareWords.MatchString(back), knownFood(front) && h.doneness(front, back):
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
	at := boundBy.FindStringIndex(name)
	if at == nil || !knownFood(name[:at[0]]) {
		return name
	}
	if said := strings.TrimSpace(name[at[0]:]); !h.doneness(name[:at[0]], said) && !h.word(said) && !h.forAll(said) {
		h.hear(said)
	}
	return name[:at[0]]
}

var wrapSaid = regexp.MustCompile(`(?i)^wrap(?:ped)?(?: in| with)?\s*((?:butcher |pink )?paper|foil)?\s*(?:at|from|@)\s*(\d{2,3})\s*°?\s*([FC]?)$`)

// forAll takes "for 20" where just so many eat: the dish is for all of them.
func (h *hearer) forAll(said string) bool {
	m := forPeople.FindStringSubmatch(said)
	return m != nil && h.eaters > 0 && m[1] == strconv.Itoa(h.eaters) || forEverybody.MatchString(said)
}

var forEverybody = regexp.MustCompile(`(?i)^for (?:everyone|everybody|all(?: of us)?|the crowd|the (?:whole )?(?:family|party|group))$`)

// word takes down a word about the dish; false for another.
func (h *hearer) word(text string) bool {
	for _, s := range saidOf {
		if !s.words.MatchString(text) {
			continue
		}
		h.take(s.field, s.value, text)
		return true
	}
	return false
}

func (h *hearer) take(field, value, words string) {
	item, listed := strings.CutPrefix(value, "[")
	switch {
	case field == "":
		if value == "unused" {
			h.Unused = append(h.Unused, words)
		}
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
	if h.doneness("", part) || strings.EqualFold(part, "whole") && h.another(part) || h.word(part) {
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
	if amount && rest != "" { // "16 bone in", "4 well done" is more than an amount
		if h.cut.OwnName(rest) || h.another(rest) || h.word(rest) {
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
	{regexp.MustCompile(`(?i)^(?:fall(?:ing)?[- ]?(?:apart|off the bone)|shreddable|pull[- ]?apart|for pulling|pullable|shredding)(?:[ -]tender)?$`), []string{"pulled", "tender"}, true},
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

// outsideOnly says whether a name is one of foods that the catalogue does not have.
func outsideOnly(name string) bool {
	cuts, outside := cut.Named(name)
	return len(cuts) == 0 && len(outside) > 0
}

// rareWords are those for meat that is not done through.
var rareWords = regexp.MustCompile(`(?i)^(?:(?:medium|med)[ -]?)?rare$|^medium$|^med$|^pink(?: in the middle)?$|^medium[- ]rare$|^mr$|^med-rare$|^blue$`)

// tooDone says why a food that is not cooked rare can not be, where that was asked for.
func (h *hearer) tooDone() {
	k := slices.IndexFunc(h.Left, rareWords.MatchString)
	if k < 0 || h.Unclear != "" {
		return
	}
	why := map[string]string{
		"ground": "ground meat carries its surface inside and is cooked to 160 °F", "sausage": "sausage is ground meat and is cooked to 160 °F", "poultry": "poultry is cooked to 165 °F",
	}[h.cut.Food]
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

// animalOf says whether a word only names the animal that a food is of: beef rump cap.
func animalOf(word, food string) bool {
	c, unknown := cut.One(food)
	return unknown == "" && strings.EqualFold(word, c.Food) && oneOf(c.Food, "beef", "pork", "lamb")
}
