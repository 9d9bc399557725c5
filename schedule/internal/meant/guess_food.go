package meant

import (
	"regexp"
	"slices"
	"strings"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
)

// A GuessedDish is the likeliest dish that a text may mean.
type GuessedDish struct {
	Node  *strict.Node // nil where none is likely
	Wrote string       // the words that it is of
	How   string       // what was guessed; empty where all but words left aside was understood
	Left  []string     // words that it does nothing with
	Title bool         // it names a food without any amount, as a heading does
}

// GuessDishes are the likeliest dishes of a text that [Dish] does not understand for certain.
// Of several foods that it may mean, the one with the stricter minimum is taken; a food that
// nobody knows is none.
func GuessDishes(text string, eaters, line int) (dishes []GuessedDish) {
	text = strings.TrimSpace(decimalPoint(text))
	if _, cuts := foodWithin(text); len(cuts) == 0 && birdAlone.MatchString(text) { // what a bird without a name is
		guess := GuessDishes(birdAlone.ReplaceAllString(text, "whole chickens"), eaters, line)
		for k := range guess {
			if guess[k].Wrote = text; guess[k].Node != nil {
				guess[k].How = "whole chickens"
			}
		}
		return guess
	}
	parts := foodParts(text, eaters)
	for _, part := range parts {
		if notForGrill(part) {
			dishes = append(dishes, GuessedDish{Wrote: part})
			continue
		}
		dishes = append(dishes, guessDish(part, eaters, line))
	}
	return dishes
}

var birdAlone = regexp.MustCompile(`(?i)\b(?:whole )?birds?\b`)

var aroundFood = regexp.MustCompile(`\s*(?:[,;\n]|\s[+&]\s|\band\b|\bplus\b)\s*`)

// foodParts are the parts of a text that each name a food, with what is said behind it.
func foodParts(text string, eaters int) (parts []string) {
	if Dish(text, eaters, 0).Certain() {
		return []string{text}
	}
	joints := aroundFood.FindAllString(text, -1)
	for k, part := range aroundFood.Split(text, -1) {
		part = strings.TrimSpace(part)
		food, _ := foodWithin(part)
		aside := rareWords.MatchString(part) && len(strings.Fields(part)) < 4
		switch {
		case part == "":
		case len(parts) == 0, (food != "" || notForGrill(part)) && !aside:
			parts = append(parts, part)
		default:
			parts[len(parts)-1] += strings.TrimRight(joints[k-1], " ") + " " + part
		}
	}
	return parts
}

// foodWithin is the longest run of words of a text that some food goes by, and the cuts of it.
func foodWithin(text string) (food string, cuts []cut.Cut) {
	words := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" ,.()\"!?:;/", r) })
	for n := min(len(words), 5); n > 0; n-- {
		for at := len(words) - n; at >= 0; at-- { // the kind of food stands at the end
			name := strings.Join(words[at:at+n], " ")
			if len(name) < 3 || noFood.MatchString(name) || articleIn.MatchString(name) {
				continue
			}
			if found, _ := cut.Named(name); len(found) > 0 && (n == 1 || !adultNoun.MatchString(name)) {
				return name, found
			}
		}
	}
	return "", nil
}

var (
	noFood    = regexp.MustCompile(`(?i)^(?:grill|bbq|barbecue|smoked|hot|the|for|fire|(?:pounds? |lbs? |kg )?(?:bone[- ]in|boneless|skin[- ]on|halves|half|whole|large|small|racks?|slabs?|full|rib|side|sides))$`)
	articleIn = regexp.MustCompile(`(?i)^(?:an?|the|some|my|our|one|two|three|four|of|\d+\S*)\s|^(?:pounds?|lbs?|kilos?|kg|g)\s`)
)

// guessDish is the likeliest dish of one part of a text.
func guessDish(text string, eaters, line int) GuessedDish {
	s := Dish(text, eaters, line)
	g := GuessedDish{Wrote: text}
	if s.Certain() {
		g.Node, g.Left = s.Node, s.Unused
		return g
	}
	if s.Node == nil {
		s = guessFood(text, eaters, line)
		if s.Node == nil {
			return g
		}
	}
	g.Node, g.Left = s.Node, append(s.Left, s.Unused...)
	said := s.Node.Get("cut").Text
	if cuts, _ := cut.Named(said); len(cuts) > 1 || s.Unclear != "" {
		g.How = s.Node.Get("cut").Text
	}
	if c := strictest(text, s); c != "" {
		g.Node = g.Node.With("cut", strict.NewText(c, line))
		g.How = c
	}
	g.Title = g.Node.Get("count") == nil && g.Node.Get("weight") == nil && g.Node.Get("weights") == nil
	g.prepared(text, line)
	return g
}

// strictest is the cut with the highest minimum of those that the words of a dish may mean;
// empty where they mean one.
func strictest(text string, s Spoken) string {
	_, cuts := foodWithin(text)
	if len(cuts) < 2 {
		return ""
	}
	rank := func(c cut.Cut) int {
		switch {
		case c.Poultry:
			return 0
		case c.Ground:
			return 1
		}
		return 2
	}
	best := slices.MinFunc(cuts, func(a, b cut.Cut) int { return rank(a) - rank(b) })
	return best.Name
}

// guessFood is a dish of the food that words of a text name, where the text as a whole names
// none; with the amounts of the text.
func guessFood(text string, eaters, line int) Spoken {
	if s := beginning(text, eaters, line); s.Node != nil {
		return s
	}
	food, cuts := foodWithin(text)
	if len(cuts) == 0 || otherFood(text, food, cuts[0]) || shapeWords.MatchString(food) && ofUnknown(text, food) {
		return Spoken{}
	}
	amounts := cut.Speak(timesSign.ReplaceAllString(text, "$1 "))
	h := hearer{eaters: eaters, line: line, cut: cuts[0], called: food}
	h.Node = strict.NewGroup(line).With("cut", strict.NewText(food, line))
	h.amount(amounts)
	h.Unclear = "" // how much there is may be open: then it is the usual
	for _, word := range strings.Fields(amountWords.ReplaceAllString(strings.Replace(text, food, " ", 1), " ")) {
		if digits.MatchString(word) {
			continue
		}
		h.Left = append(h.Left, word)
	}
	if len(h.Left) > 0 {
		h.Left = []string{strings.Join(h.Left, " ")}
	}
	h.amounts()
	return h.Spoken
}

// amountWords say nothing but how much there is, or what makes no other cut.
var amountWords = regexp.MustCompile(`(?i)\b(?:about|around|pounds?|lbs?|kilos?|kg|each|total|in all|bone[- ]in|an?|the|some|whole|racks? of|of)\b|[(),]`)

// beginning is the dish that a text begins with, where that much of it is certain.
func beginning(text string, eaters, line int) Spoken {
	words := strings.Fields(text)
	for k := min(len(words)-1, 8); k > 0; k-- {
		s := Dish(strings.Join(words[:k], " "), eaters, line)
		rest := strings.Join(words[k:], " ")
		if c, unknown := cutOf(s); s.Certain() && unknown == "" && !otherFood("x "+rest, "x", c) && !digits.MatchString(rest) {
			s.Left = []string{rest}
			return s
		}
	}
	return Spoken{}
}

func cutOf(s Spoken) (cut.Cut, string) {
	if s.Node == nil {
		return cut.Cut{}, "none"
	}
	return cut.One(s.Node.Get("cut").Text)
}

// ofUnknown says whether a word that is no number stands before a food that only says its shape:
// what fillets they are nobody knows then.
func ofUnknown(text, food string) bool {
	before, _, _ := strings.Cut(text, food)
	words := strings.Fields(before)
	return len(words) > 0 && !digits.MatchString(words[len(words)-1]) && cut.Speak(words[len(words)-1]+" "+food).Count == 0
}

var timesSign = regexp.MustCompile(`\b(\d{1,3})\s?[x×]\s`)

// otherFood says whether words of a text make another food of the one that it names, whose
// minimum may be higher: a burger of turkey is none of beef, and nobody knows what is in a pie.
func otherFood(text, food string, c cut.Cut) bool {
	rest := strings.Replace(text, food, " ", 1)
	return poultryWords.MatchString(rest) && !c.Poultry || foodWords.MatchString(rest) && !poultryWords.MatchString(rest) && c.IsMain() ||
		nobodyKnows.MatchString(rest)
}

// nobodyKnows are words of food whose minimum its name does not tell.
var nobodyKnows = regexp.MustCompile(`(?i)\b(?:raw|tartare?|rare inside|liver|leftover|pie|soup|stew)\b`)

var (
	stuffedWord  = regexp.MustCompile(`(?i)\bstuff(?:ed|ing)\b|\bfilled\b`)
	injectedWord = regexp.MustCompile(`(?i)\binject|\bpumped\b|\benhanced\b|\bin solution\b`)
	needledWord  = regexp.MustCompile(`(?i)\btenderi[sz]ed\b|\bneedled\b|\bbladed\b|\bpunctured\b`)
	groundWord   = regexp.MustCompile(`(?i)\b(?:ground|minced?|mett|faschiert\w*)\b`)
)

// prepared keeps what was done to a piece that makes its minimum stricter; ground meat under the
// name of a whole piece is no dish at all.
func (g *GuessedDish) prepared(text string, line int) {
	if c, unknown := cut.One(g.Node.Get("cut").Text); unknown == "" && groundWord.MatchString(text) && !c.Ground && c.IsMain() {
		g.Node = nil
		return
	}
	prep := strict.NewList(line)
	if said := g.Node.Get("prep"); said != nil && said.Kind == strict.NodeList {
		prep.Items = append(prep.Items, said.Items...)
	}
	for word, said := range map[string]*regexp.Regexp{"stuffed": stuffedWord, "injected": injectedWord, "tenderised": needledWord} {
		has := slices.ContainsFunc(prep.Items, func(n *strict.Node) bool { return n.Text == word })
		if said.MatchString(text) && !has {
			prep.Items = append(prep.Items, strict.NewText(word, line))
		}
	}
	if len(prep.Items) > 0 {
		slices.SortFunc(prep.Items, func(a, b *strict.Node) int { return strings.Compare(a.Text, b.Text) })
		g.Node = g.Node.With("prep", prep)
	}
}
