package cut

import (
	"regexp"
	"strconv"
	"strings"
)

// massUnit is a unit of weight as cooks write it.
const massUnit = `(?:kilos?|kilograms?|kg|grams?|g|lbs?|pounds?|pounders?|oz|ounces?)`

// smallNumbers are numbers that people write as words.
var smallNumbers = map[string]int{"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7,
	"eight": 8, "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16,
	"seventeen": 17, "eighteen": 18, "nineteen": 19, "twenty": 20, "a couple": 2, "couple": 2, "a pair": 2}

const numberWord = `one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen|twenty`

var (
	glyphs      = strings.NewReplacer("½", "1/2", "¼", "1/4", "¾", "3/4", "⅓", "1/3", "⅔", "2/3")
	glyphAfter  = regexp.MustCompile(`(\d)([½¼¾⅓⅔])`)
	hyphenMixed = regexp.MustCompile(`(\d)-(\d/\d)`)                                      // 1-1/2
	poundSign   = regexp.MustCompile(`(\d)\s*#`)                                          // 12#
	halfMore    = regexp.MustCompile(`(?i)\b(\d+|` + numberWord + `)\s+and\s+a\s+half\b`) // two and a half
	poundPart   = regexp.MustCompile(`(?i)\b(?:an? |one )?(half|third|quarter)(?:[\s-]+of)?(?:[\s-]+an?)?[\s-]+(pounds?|pounders?|lbs?|kilos?|kg)\b`)
	// four quarter pound burgers are no 4 1/4 pounds
	countOfParts = regexp.MustCompile(`(?i)\b(\d+|` + numberWord + `)\s+((?:half|third|quarter)[\s-]+(?:pounds?|pounders?|lbs?|kilos?|kg)\b)`)
	halfOf       = regexp.MustCompile(`(?i)\bhalf\s+an?\s+(` + massUnit + `\b)`) // half a pound
	wordOf       = regexp.MustCompile(`(?i)\b(an?|` + numberWord + `)[\s-]+(` + massUnit + `|inch(?:es)?)\b`)
	massRange    = regexp.MustCompile(`(?i)(` + numberText + `)\s*` + massUnit + `?\s*(?:-|–|—|\bto\b|\bor\b)\s*(` + numberText + `)(\s*-?\s*` + massUnit + `\b)`)
	countRange   = regexp.MustCompile(`(?i)^\s*(\d+)\s*(?:-|–|—|\bto\b|\bor\b)\s*(\d+)\b`)
	countPart    = regexp.MustCompile(`(?i)^\s*(?:\d+\s+\d+/\d+|\d+/\d+|\d*\.\d+)(?:\s|$)`)
	dozens       = regexp.MustCompile(`(?i)^\s*(?:(half(?:\s+a)?)|(\d+|an?|` + numberWord + `)(\.5|\s+1/2)?)?\s*dozens?\b(?:\s+of\b)?\s*`)
	perHead      = regexp.MustCompile(`(?i)[\s,(]*\b(?:(?:per|for\s+each|for\s+every|each|every|a)\s+(?:person|guest|head|adult|eater|one\s+of\s+us)|p\.?\s?p\b\.?)\)?`)
	eachAlone    = regexp.MustCompile(`(?i)^(\s*(?:\d+|an?|` + numberWord + `)\b.*?)[\s,]+each\s*$`)
	eachBehind   = regexp.MustCompile(`(?i)^(.*\pL)[\s,]+(\d+|` + numberWord + `)\s+(?:each|apiece|per head)\s*$`)
	inAll        = regexp.MustCompile(`(?i)[\s,(]*\b(?:in\s+total|total|in\s+all|all\s+together|altogether|combined)\)?`)
	halfDozen    = regexp.MustCompile(`(?i)^and\s+a\s+half\b\s*`)
	packsOf      = regexp.MustCompile(`(?i)^(?:packs?|packages?|bags?|boxes|box|cartons?|trays?)\b`)
)

// plainNumbers writes the numbers of a text as the units read them: 10½ is 10 1/2, 12# is
// 12 lb, twelve pounds are 12 pounds.
func plainNumbers(text string) string {
	text = glyphs.Replace(glyphAfter.ReplaceAllString(text, "$1 $2"))
	text = poundSign.ReplaceAllString(hyphenMixed.ReplaceAllString(text, "$1 $2"), "$1 lb")
	text = halfMore.ReplaceAllStringFunc(text, func(s string) string { return digitsOf(strings.Fields(s)[0]) + " 1/2" })
	text = countOfParts.ReplaceAllString(text, "$1 x $2")
	text = poundPart.ReplaceAllStringFunc(text, func(s string) string {
		m := poundPart.FindStringSubmatch(s)
		return map[string]string{"half": "1/2 ", "third": "1/3 ", "quarter": "1/4 "}[strings.ToLower(m[1])] + strings.Replace(m[2], "ounder", "ound", 1)
	})
	text = halfOf.ReplaceAllString(text, "1/2 $1")
	return wordOf.ReplaceAllStringFunc(text, func(s string) string {
		m := wordOf.FindStringSubmatch(s)
		return digitsOf(m[1]) + " " + m[2]
	})
}

func digitsOf(word string) string {
	if n := smallNumbers[strings.ToLower(word)]; n > 0 {
		return strconv.Itoa(n)
	}
	return word
}

// largerOf takes the larger of two weights: "3-4 lb" is 4 lb.
func largerOf(text string) (plain string, larger bool) {
	plain = massRange.ReplaceAllStringFunc(text, func(s string) string {
		m := massRange.FindStringSubmatch(s)
		if first, second := fraction(m[1]), fraction(m[2]); first >= second {
			return s
		}
		larger = true
		return m[2] + m[3]
	})
	return plain, larger
}

// fraction is the value of a number as [numberText] has it.
func fraction(text string) float64 {
	var v float64
	for _, part := range strings.Fields(text) {
		over, under, is := strings.Cut(part, "/")
		a, _ := strconv.ParseFloat(over, 64) // by the pattern
		if b, err := strconv.ParseFloat(under, 64); is && err == nil && b > 0 {
			a /= b
		}
		v += a
	}
	return v
}

// countBehind is a number of pieces behind their name: "hot dogs 8", "burgers x 12".
var countBehind = regexp.MustCompile(`(?i)^\s*([\pL][\pL' -]*?)(?:\s*\b[x×]\s*|\s+)(?:(?:maybe|about|around|roughly|say)\s+)?(\d{1,3}|` + numberWord + `)(?:\s+(racks?|slabs?|sides?|pieces?|pcs|ears?|links?|stück|stk|heads?|blocks?|packs?|packages?|bags?|boxes|trays?))?\s*$`)

// countWithin is a number behind a food, with more words about it behind: "burgers 8 well done".
var (
	countWithin = regexp.MustCompile(`(?i)^\s*([\pL][\pL' -]*?)\s+(?:x\s*)?(\d{1,3}|` + numberWord + `)\s+(\pL.*)$`)
	partOfIt    = regexp.MustCompile(`(?i)^(?:bones?|ribs?|ways?|hours?|hrs?|minutes?|min|days?|degrees?|inch|in|of|to|or|and|cans?|cups?|dozens?|portions?|servings?|people|persons?|guests?|%|x)\b`)
)

// endsInFood says whether a name, or the end of one, is that of a food.
func endsInFood(name string) bool {
	for words := strings.Fields(name); len(words) > 0; words = words[1:] {
		if leadsTo(strings.Join(words, " ")) > 0 {
			return true
		}
	}
	return false
}

var dozensBehind = regexp.MustCompile(`(?i)^\s*(\pL[\pL' -]*?)[\s,]+(\d+|a|` + numberWord + `)\s+dozen\s*$`) // oysters 2 dozen

// takeCount takes the number of pieces from the head of a text, or from its end behind the
// name of a food.
func (s *Spoken) takeCount(text string) string {
	text = dozensBehind.ReplaceAllString(text, "$2 dozen $1")
	if countPart.MatchString(text) && !dozens.MatchString(text) {
		s.Part = true
		return text
	}
	if m := dozens.FindStringSubmatch(text); m != nil {
		switch n, _ := strconv.Atoi(digitsOf(m[2])); {
		case m[1] != "":
			s.Count = 6
		default:
			s.Count = 12 * max(n, 1)
			if m[3] != "" {
				s.Count += 6
			}
		}
		rest := text[len(m[0]):]
		if half := halfDozen.FindString(rest); half != "" {
			s.Count, rest = s.Count+6, rest[len(half):]
		}
		return rest
	}
	if m := countRange.FindStringSubmatch(text); m != nil {
		first, _ := strconv.Atoi(m[1])
		if second, err := strconv.Atoi(m[2]); err == nil && second > first {
			s.Count, s.Larger = second, true
			return text[len(m[0]):]
		}
	}
	if m := spokenCount.FindStringSubmatch(text); m != nil {
		word := strings.ToLower(m[1])
		if s.Count = smallNumbers[word]; s.Count == 0 {
			s.Count, _ = strconv.Atoi(word) // digits by the pattern; too many of them are no count
		}
		return text[len(m[0]):]
	}
	if m := countBehind.FindStringSubmatch(text); m != nil && leadsTo(m[1]) > 0 {
		s.Count, _ = strconv.Atoi(digitsOf(m[2]))
		s.Packs = packsOf.MatchString(m[3])
		return m[1]
	}
	if m := countWithin.FindStringSubmatch(text); m != nil && endsInFood(m[1]) && !partOfIt.MatchString(m[3]) {
		s.Count, _ = strconv.Atoi(digitsOf(m[2]))
		return m[1] + " " + m[3]
	}
	return text
}
