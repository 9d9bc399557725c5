package cut

import (
	"regexp"
	"strings"
)

// Spoken is a dish in the words of a cook: "2 racks of ribs", "two ribeyes 1.5 inch thick",
// "brisket 10 lb", "3 dozen wings", "6 wings per person".
type Spoken struct {
	Name      string // what is left: what it is
	Count     int    // pieces; 0 where nothing is said
	Weight    string // of one, with its unit; empty where nothing is said
	Thickness string // of one, with its unit; empty where nothing is said

	PerHead bool // the count is for each who eats
	Total   bool // the weight is of all pieces together
	Larger  bool // of "10 to 12" or "3-4 lb" the larger is taken
	Part    bool // the count is no whole number: then there is none
	Packs   bool // the count is of packs, and nobody said how many are in one
}

// numberText is a number as the units read it: 10, 1.5, 1/2 or 1 1/2.
const numberText = `(?:\d+\s+\d+/\d+|\d+/\d+|\d*\.?\d+)`

var (
	spokenWeight    = regexp.MustCompile(`(?i)(?:^|[\s(@×x])` + `(` + numberText + `\s*-?\s*` + massUnit + `\b\.?(?:\s*\d+(?:\.\d+)?\s*oz\b)?)`)
	spokenThickness = regexp.MustCompile(`(?i)(?:^|[\s(])(` + numberText + `\s*-?\s*(?:inch(?:es)?\b|in\b|"|”|cm\b|mm\b))\s*-?(?:thick\b)?`)
	spokenCount     = regexp.MustCompile(`(?i)^\s*(\d+|a couple|a pair|couple|an?|` + numberWord + `)\b(?:\s*(?:x\b|×))?\s*`)
	spokenPieces    = regexp.MustCompile(`(?i)^(?:(?:full|whole|half|big|large|small)\s+)?(?:pots?|racks?|slabs?|sides?|pieces?|pcs|heads?|ears?|pans?|packs?|packages?|bags?|boxes|box|cartons?|trays?|blocks?)\b\s*(?:of\b)?\s*`)
	spokenBinding   = regexp.MustCompile(`(?i)^(?:of\s+|x\s+|×\s*)`)
	spokenTail      = regexp.MustCompile(`(?i)[\s,]*(?:\b(?:each|apiece|a piece|of|at|x|and|about|around|thick)|[@(×])\s*$`)
	spokenAfter     = regexp.MustCompile(`(?i)^\s*(?:\)|(?:each|apiece|a piece|of|thick)\b)+`)
)

// Speak takes a count, a weight and a thickness from a text, and gives what is left as
// the name. It does not look at whether the name is one of a cut.
func Speak(text string) Spoken {
	var s Spoken
	text, s.Larger = largerOf(plainNumbers(text))
	text, s.PerHead = without(perHead, text)
	s.Thickness, text = takeOut(spokenThickness, text)
	s.Weight, text = takeOut(spokenWeight, text)
	if s.Weight != "" {
		text, s.Total = without(inAll, text)
	} else if m := eachAlone.FindStringSubmatch(text); m != nil { // of a weight it would be its piece's
		text, s.PerHead = m[1], true
	} else if m := eachBehind.FindStringSubmatch(text); m != nil { // burgers 2 each
		text, s.PerHead = m[2]+" "+m[1], true
	}
	s.Weight = strings.ReplaceAll(strings.Replace(s.Weight, "pounder", "pound", 1), "-", " ")
	s.Thickness = strings.NewReplacer("-", " ", "”", `"`).Replace(s.Thickness)
	text = s.takeCount(text)
	text = strings.Join(strings.Fields(spokenBinding.ReplaceAllString(strings.TrimSpace(spokenTail.ReplaceAllString(text, "")), "")), " ")
	if bare := spokenPieces.ReplaceAllString(text, ""); bare != text && (leadsTo(bare) == 1 || leadsTo(text) == 0) { // a rack of lamb is a cut
		s.Packs = packsOf.MatchString(text)
		text = bare
	}
	s.Name = strings.Trim(text, " ,")
	return s
}

// without is a text without the first match, and whether there was one.
func without(what *regexp.Regexp, text string) (rest string, found bool) {
	at := what.FindStringIndex(text)
	if at == nil {
		return text, false
	}
	return text[:at[0]] + " " + text[at[1]:], true
}

// takeOut takes the first match out of a text, and the words that bound it.
func takeOut(what *regexp.Regexp, text string) (found, rest string) {
	at := what.FindStringSubmatchIndex(text)
	if at == nil {
		return "", text
	}
	before := spokenTail.ReplaceAllString(text[:at[2]], "")
	return strings.TrimSuffix(strings.TrimSpace(text[at[2]:at[3]]), "."), before + " " + spokenAfter.ReplaceAllString(text[at[1]:], "")
}

// leadsTo counts the foods that go by a name.
func leadsTo(name string) int {
	cuts, outside := Named(name)
	return len(cuts) + len(outside)
}
