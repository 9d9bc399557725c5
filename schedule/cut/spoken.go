package cut

import (
	"regexp"
	"strconv"
	"strings"
)

// Spoken is a dish in the words of a cook: "2 racks of ribs", "two ribeyes 1.5 inch thick",
// "brisket 10 lb".
type Spoken struct {
	Name      string // what is left: what it is
	Count     int    // pieces; 0 where nothing is said
	Weight    string // of one, with its unit; empty where nothing is said
	Thickness string // of one, with its unit; empty where nothing is said
}

// numberText is a number as the units read it: 10, 1.5, 1/2 or 1 1/2.
const numberText = `(?:\d+\s+\d+/\d+|\d+/\d+|\d*\.?\d+)`

var (
	spokenWeight    = regexp.MustCompile(`(?i)(?:^|[\s(@×x])` + `(` + numberText + `\s*-?\s*(?:kilos?|kilograms?|kg|grams?|g|lbs?|pounds?|pounders?|oz|ounces?)\b\.?(?:\s*\d+(?:\.\d+)?\s*oz\b)?)`)
	spokenThickness = regexp.MustCompile(`(?i)(?:^|[\s(])(` + numberText + `\s*-?\s*(?:inch(?:es)?\b|in\b|"|”|cm\b|mm\b))\s*-?(?:thick\b)?`)
	spokenCount     = regexp.MustCompile(`(?i)^\s*(\d+|(?:a )?dozen|an?|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)\b(?:\s*(?:x\b|×))?\s*`)
	spokenPieces    = regexp.MustCompile(`(?i)^(?:(?:full|whole|half)\s+)?(?:racks?|slabs?|sides?|pieces?|pcs|heads?|ears?|packs?|packages?)\b\s*(?:of\b)?\s*`)
	spokenBinding   = regexp.MustCompile(`(?i)^(?:of\s+|x\s+|×\s*)`)
	spokenTail      = regexp.MustCompile(`(?i)[\s,]*(?:\b(?:each|apiece|a piece|of|at|x|and|about|around|thick)|[@(×])\s*$`)
	spokenAfter     = regexp.MustCompile(`(?i)^\s*(?:\)|(?:each|apiece|a piece|of|thick)\b)+`)
)

// spokenCounts are numbers that people write as words.
var spokenCounts = map[string]int{"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7,
	"eight": 8, "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "a dozen": 12, "dozen": 12}

// Speak takes a count, a weight and a thickness from a text, and gives what is left as
// the name. It does not look at whether the name is one of a cut.
func Speak(text string) Spoken {
	var s Spoken
	s.Thickness, text = takeOut(spokenThickness, text)
	s.Weight, text = takeOut(spokenWeight, text)
	s.Weight = strings.ReplaceAll(strings.Replace(s.Weight, "pounder", "pound", 1), "-", " ")
	s.Thickness = strings.NewReplacer("-", " ", "”", `"`).Replace(s.Thickness)
	if m := spokenCount.FindStringSubmatch(text); m != nil {
		word := strings.ToLower(m[1])
		if s.Count = spokenCounts[word]; s.Count == 0 {
			s.Count, _ = strconv.Atoi(word) // digits by the pattern; too many of them are no count
		}
		text = text[len(m[0]):]
	}
	text = strings.Join(strings.Fields(spokenBinding.ReplaceAllString(strings.TrimSpace(spokenTail.ReplaceAllString(text, "")), "")), " ")
	if bare := spokenPieces.ReplaceAllString(text, ""); bare != text && (leadsTo(bare) == 1 || leadsTo(text) == 0) { // a rack of lamb is a cut
		text = bare
	}
	s.Name = strings.Trim(text, " ,")
	return s
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
