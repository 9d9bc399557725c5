package meant

import (
	"regexp"
	"strconv"
	"strings"

	"example.com/cookday/schedule/cut"
)

var (
	guestParts = regexp.MustCompile(`(?i)[,;()/+&.]+|\band\b|\bplus\b|\bwith\b|\bincl(?:uding|\.)?|\bof (?:them|whom)\b`)
	plusFrail  = regexp.MustCompile(`(?i)(?:\bplus\b|\+)\s*(?:a|an|one|my|the|1)?\s*` + frailText)
	kidNoun    = regexp.MustCompile(`(?i)\b(?:kids?|child(?:ren)?|teens?|teenagers?|boys?|girls?)\b`)
	adultNoun  = regexp.MustCompile(`(?i)\b(?:people|persons?|guests?|adults?|grown[- ]?ups?|heads?|of us|eaters?|friends|in all|total|men|women|guys|lads|mates|blokes|ladies|mouths|couples?|neighbou?rs|we|are|us|we're|leute|personen|erwachsene)\b`)
	couple     = regexp.MustCompile(`(?i)\bcouples?\b`)
	kinder     = regexp.MustCompile(`(?i)\bkinder\b`)
)

// inText reads guests in words: "6 adults and 2 kids", "8 (2 toddlers)", "10 of us, incl. gran
// (86)", "20, potluck". Who is among those that were counted adds none.
func (t *taker) inText(text string) (c crowd, notes []func(), ok bool) {
	if n := ourselves(text); n > 0 {
		return crowd{adults: n}, nil, true
	}
	text, c.frail = withoutAges(partyOf.ReplaceAllString(text, ""))
	text = nextCount.ReplaceAllString(text, "$1, $2")
	extra := 0
	if plusFrail.MatchString(text) {
		extra = 1
	}
	if adults := rangeOf.FindStringSubmatch(text); adults != nil {
		text = strings.Replace(text, adults[0], adults[2], 1)
		said := adults[0]
		notes = append(notes, func() { t.say("of %s guests the larger number is planned for", said) })
	}
	text = amongThem.ReplaceAllString(text, " incl $1 ")
	base := false                 // how many there are in all is said
	among, within := false, false // within are brackets
	for len(text) > 0 {
		part, rest := text, ""
		next := among
		if at := guestParts.FindStringIndex(text); at != nil {
			part, rest = text[:at[0]], text[at[1]:]
			joint := strings.ToLower(text[at[0]:at[1]])
			next = among && strings.TrimSpace(part) == "" || strings.HasPrefix(joint, "incl") || joint == "(" || strings.HasPrefix(joint, "of ")
			within = (within || strings.Contains(joint, "(")) && !strings.Contains(joint, ")")
			next = next || within
		}
		if part = strings.TrimSpace(part); part != "" {
			note, fine := t.guestPart(&c, part, &base, among)
			if !fine {
				return crowd{}, nil, false
			}
			if note != nil {
				notes = append(notes, note)
			}
		}
		text, among = rest, next
	}
	c.adults += extra
	return c, notes, c.adults+c.kids > 0
}

var partyOf = regexp.MustCompile(`(?i)^\s*(?:a |the )?(?:party|group|crowd|family|gang|table) of\s+`)

// guestPart takes one part of a text of guests; note is what is to be said of it, if anything.
func (t *taker) guestPart(c *crowd, part string, base *bool, among bool) (note func(), ok bool) {
	spoken := part
	part = comingTail.ReplaceAllString(part, "")
	if bigEaters.MatchString(part) {
		part = bigEaters.ReplaceAllString(part, " ")
		note = func() {
			t.say("%s: amounts are for usual eaters, so buy more than the sheet says", strconv.Quote(strings.TrimSpace(spoken)))
		}
	}
	part = smallOnes.ReplaceAllString(part, "${1} kids")
	kid := kidNoun.MatchString(part) || kinder.MatchString(part)
	s := cut.Speak(strings.TrimSpace(adultNoun.ReplaceAllString(kidNoun.ReplaceAllString(kinder.ReplaceAllString(littleOnes.ReplaceAllString(plainly(part), " kids"), "kids"), " "), " ")))
	kid = kid || littleOnes.MatchString(part)
	frail := frailWords.MatchString(spoken)
	c.frail = c.frail || frail
	counted := s.Count > 0 && s.Name == "" && s.Weight == "" && !s.Part
	switch {
	case counted && kid && among && *base && c.adults > s.Count:
		c.adults, c.kids = c.adults-s.Count, c.kids+s.Count
	case frail && !counted:
		if !*base && s.Count > 1 { // nothing else was counted yet
			plain := cut.Speak(strings.TrimSpace(adultNoun.ReplaceAllString(frailPart.ReplaceAllString(plainly(part), " "), " ")))
			if plain.Count == 0 || !alone(plain) {
				return nil, false
			}
			c.adults, *base = c.adults+plain.Count, true
		}
	case needsWords.MatchString(part):
		c.odd = true
		return func() { t.needs(part) }, true
	case counted && among && *base: // they are among those that were counted
	case counted:
		if couple.MatchString(part) && !strings.HasPrefix(strings.ToLower(part), "a couple of") {
			s.Count *= 2
		}
		if kid {
			c.kids += s.Count
		} else {
			c.adults, *base = c.adults+s.Count, true
		}
	case digits.MatchString(part) || s.Count > 0:
		return nil, false // a number that is not understood is nobody's to leave out
	case strings.Trim(adultNoun.ReplaceAllString(part, ""), " '") == "":
	default:
		c.odd = true
		return func() { t.unused(part) }, true
	}
	return note, true
}

var (
	nextCount = regexp.MustCompile(`(?i)\b(adults?|grown[- ]?ups?|people|guests|kids?|children)\s+(\d+|one|two|three|four|five|six|seven|eight|nine|ten)\b`)
	bigEaters = regexp.MustCompile(`(?i)\b(?:big|hungry|good|hearty|serious) ?(?:eaters?)?\b`)
	smallOnes = regexp.MustCompile(`(?i)\b(\d+|two|three|four|five|six) (?:toddlers|babies|infants|little ones|small ones)\b`)
)

var (
	amongThem  = regexp.MustCompile(`(?i)\b(\d+|one|two|three|four|five|six|seven|eight|nine|ten) of (?:them|whom|those)\b(?: (?:is|are))?`)
	comingTail = regexp.MustCompile(`(?i)\s+(?:(?:are |who are )?(?:coming|invited|expected|attending|eating|dining)(?: over)?|to feed|at the table|for dinner|for lunch)\s*$`)
	littleOnes = regexp.MustCompile(`(?i)\b(?:little|small|tiny) (?:kids?|children|ones?)\b`)
	oldAge     = regexp.MustCompile(`(?i)\(\s*(?:aged? )?(?:6[5-9]|[789]\d|1[01]\d)\s*\)|\b(?:is|are|aged?|who is|one(?: of (?:them|us))?(?: is)?|gran(?:ny|ma|pa|dad)?|mum|mom|dad)\s+(?:6[5-9]|[789]\d|1[01]\d)\b(?: years? old)?|\b(?:6[5-9]|[789]\d)[- ]years?(?:[- ]old)?\b`)
	youngAge   = regexp.MustCompile(`(?i)[,;]?\s*\b(?:(?:one|the youngest|the little one|who)(?: of (?:them|whom))?(?: is)? )?\d{1,2}[- ]months?(?:[- ]old)?\b|\(\s*(?:ages? |aged? )?(?:[1-4]\s*(?:,|and|&)\s*\d{1,2}|\d{1,2}\s*(?:,|and|&)\s*[1-4])\s*(?:years?|yrs?|y)?(?:[- ]olds?)?\s*\)|\b(?:under|below|aged?|younger than)\s+(?:one|two|three|four|five|[1-5])\b|\(\s*[1-5]\s*(?:months?|years?)\s*\)|\b[1-4][- ]years?[- ]olds?\b`)
	otherAge   = regexp.MustCompile(`(?i)\(\s*(?:ages? |aged? )?\d{1,2}(?:\s*(?:,|and|&|\+|to|-)\s*\d{1,2})*\s*(?:years?|yrs?|y)?(?:[- ]olds?)?\s*\)|\(\s*(?:aged? )?\d{1,2}\s*\)|\b(?:aged?|ages)\s+\d{1,2}(?:\s*(?:,|and|&|\+|to|-)\s*\d{1,2})*\b`)
)

var (
	severalAges = regexp.MustCompile(`(?i)\b(?:aged?|ages)\s+\d{1,2}(?:\s*(?:,|and|&|\+|to|-)\s*\d{1,2})+\b`)
	veryYoung   = regexp.MustCompile(`\b[1-4]\b`)
)

// withoutAges takes ages out of a text, which count nobody; frail says whether one of them is
// of somebody very young or old.
func withoutAges(text string) (rest string, frail bool) {
	several := ""
	text = severalAges.ReplaceAllStringFunc(text, func(s string) string { several += s; return " " })
	frail = oldAge.MatchString(text) || youngAge.MatchString(text) || veryYoung.MatchString(several)
	for _, age := range []*regexp.Regexp{oldAge, youngAge} {
		text = age.ReplaceAllStringFunc(text, func(s string) string {
			if strings.HasPrefix(strings.ToLower(s), "one") && !strings.Contains(s, "month") {
				return "incl one"
			}
			return " "
		})
	}
	return otherAge.ReplaceAllString(text, " "), frail
}

const companion = `(?:wife|husband|spouse|partner|girlfriend|boyfriend|better half|mother|father|mum|mom|dad|brother|sister|friend|roommate|neighbou?r)`

var (
	twoOfUs = regexp.MustCompile(`(?i)^(?:just |only )?(?:(?:for )?(?:me|myself|i) (?:and|plus|&|\+) (?:my |the |a )?` + companion + `|(?:my |the )?` + companion + ` (?:and|&) (?:me|myself|i)|(?:the )?two of us|us two|both of us|we two|the both of us)$`)
	oneOfUs = regexp.MustCompile(`(?i)^(?:just |only )?(?:for )?(?:me|myself)(?: alone| only)?$`)
)

// ourselves is how many "my wife and me" are; 0 for another text.
func ourselves(text string) int {
	switch text = strings.Trim(strings.TrimSpace(text), ".!"); {
	case twoOfUs.MatchString(text):
		return 2
	case oneOfUs.MatchString(text):
		return 1
	}
	return 0
}

var rangeOf = regexp.MustCompile(`\b(\d{1,3})\s*(?:-|–|\bto\b|\bor\b)\s*(\d{1,3})\b`)
