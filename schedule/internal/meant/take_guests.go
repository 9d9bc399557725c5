package meant

import (
	"regexp"
	"strconv"
	"strings"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
)

// crowd is who eats, as far as fields of a request have said it.
type crowd struct {
	adults, kids int
	frail        bool
	none         bool // it was said that nobody is frail
	line         int  // of the first field; 0 where nothing was said
	asWritten    *strict.Node
}

var (
	guestParts = regexp.MustCompile(`(?i)[,;()/+&.]+|\band\b|\bplus\b|\bwith\b|\bincl(?:uding|\.)?|\bof (?:them|whom)\b`)
	plusFrail  = regexp.MustCompile(`(?i)(?:\bplus\b|\+)\s*(?:a|an|one|my|the|1)?\s*` + frailText)
	kidNoun    = regexp.MustCompile(`(?i)\b(?:kids?|child(?:ren)?|teens?|teenagers?|boys?|girls?)\b`)
	adultNoun  = regexp.MustCompile(`(?i)\b(?:people|persons?|guests?|adults?|grown-?ups?|heads?|of us|eaters?|friends|in all|total|men|women|couples?|neighbou?rs|we|are|us|we're|leute|personen|erwachsene)\b`)
	couple     = regexp.MustCompile(`(?i)\bcouples?\b`)
	kinder     = regexp.MustCompile(`(?i)\bkinder\b`)
)

const frailText = `(?:pregnant|expecting|bab(?:y|ies)|toddlers?|infants?|newborns?|elderly|frail|sick|ill|grand(?:ma|pa|mother|father|parents))`

// guestField takes a field of who eats; false for another.
func (t *taker) guestField(name string, line int, value *strict.Node) bool {
	word := plainWord(name)
	g, ok := guessOf("", name)
	about := word == "guests" || ok && strings.HasPrefix(g.right, "guests: 8") || oneOf(word, "guestcount", "feeding", "feed", "serving", "headcount", "count", "company", "family", "pax", "whoiscoming", "howmanyareeating", "wearing")
	if about && word == "count" && value.Kind != strict.NodeNumber {
		about = false
	}
	if !about && oneOf(word, "cooking") {
		return false
	}
	if t.guests.line == 0 {
		defer func() {
			if t.guests.line == 0 {
				t.guests.asWritten = nil
			}
		}()
	}
	var heard crowd
	var notes []func()
	switch frailField := oneOf(word, frailNames...); {
	case about && value.Kind == strict.NodeObject:
		heard, notes, ok = t.inGroup(value)
	case about:
		heard, notes, ok = t.inText(value.Text)
	case oneOf(word, "adults", "adult", "grownups") && isCount(value):
		heard.adults, ok = countOf(value), true
	case oneOf(word, "kids", "kid", "children", "child", "kinder") && isCount(value):
		heard.kids, ok = countOf(value), true
	case frailField:
		yes, known := value.Says()
		heard.frail, heard.none, ok = !known || yes, known && !yes, known || isCount(value)
		if heard.frail && countOf(value) == 0 && !known {
			heard.frail, heard.none = false, true
		}
	default:
		return false
	}
	if !ok {
		return false
	}
	for _, note := range notes {
		note()
	}
	t.guests.add(heard, line)
	if t.out.Get("guests") == nil {
		t.out = t.out.WithAt("guests", line, strict.NewNumber(0, line)) // its place; filled once all is heard
	}
	return true
}

var frailNames = []string{"frail", "elderly", "pregnant", "pregnancy", "babies", "baby", "toddlers", "toddler", "seniors", "grandma", "grandpa", "grandparents", "grandmother", "grandfather", "infants", "sick", "ill"}

func (c *crowd) add(other crowd, line int) {
	c.adults, c.kids = c.adults+other.adults, c.kids+other.kids
	c.frail, c.none = c.frail || other.frail, c.none || other.none
	if c.line == 0 {
		c.line = line
	}
}

// seat writes down who eats, once all fields are read.
func (t *taker) seat() {
	c := t.guests
	switch {
	case c.line == 0 && !c.frail:
		return
	case c.adults+c.kids == 0:
		t.out = t.out.Without("guests")
		if c.frail { // how many is asked: the form wants it beside
			t.out = t.out.WithAt("guests", c.line, strict.NewGroup(c.line).With("frail", strict.NewTruth(true, c.line)))
		}
		return
	}
	if c.kids == 0 && !c.frail && !c.none {
		t.out = t.out.WithAt("guests", c.line, strict.NewNumber(c.adults, c.line))
		return
	}
	n := strict.NewGroup(c.line).With("adults", strict.NewNumber(c.adults, c.line))
	if c.kids > 0 {
		n = n.With("children", strict.NewNumber(c.kids, c.line))
	}
	if c.frail || c.none {
		n = n.With("frail", strict.NewTruth(c.frail, c.line))
	}
	t.out = t.out.WithAt("guests", c.line, n)
}

func isCount(n *strict.Node) bool {
	return n.Kind == strict.NodeNumber && digitsOnly.MatchString(n.Text) || n.Kind == strict.NodeText && countOf(n) > 0
}

// countOf is a number of people, in figures or in a word; 0 for none.
func countOf(n *strict.Node) int {
	if k, err := strconv.Atoi(n.Text); err == nil && k >= 0 && k < 10000 {
		return k
	}
	if s := cut.Speak(plainly(n.Text)); alone(s) && s.Weight == "" && !s.PerHead {
		return s.Count
	}
	return 0
}

// inGroup reads guests by their kinds: {adults: 4, kids: 2, grandma: 1}.
func (t *taker) inGroup(group *strict.Node) (c crowd, notes []func(), ok bool) {
	for name, value := range group.Fields() {
		word := plainWord(name)
		yes, known := value.Says()
		g, guess := guessOf("guests", name)
		switch {
		case oneOf(word, "adults", "adult", "grownups") && isCount(value), guess && strings.HasPrefix(g.right, "adults") && isCount(value):
			c.adults += countOf(value)
		case oneOf(word, "children", "kids", "kid", "child", "teens", "teenagers", "kinder") && isCount(value):
			c.kids += countOf(value)
		case oneOf(word, "grandma", "grandpa", "grandparents", "grandmother", "grandfather") && isCount(value):
			c.adults, c.frail = c.adults+countOf(value), true
		case (oneOf(word, frailNames...) || guess && strings.HasPrefix(g.right, "frail")) && (known || isCount(value)):
			c.frail = c.frail || known && yes || !known && countOf(value) > 0
			c.none = c.none || known && !yes
		case needsWords.MatchString(name):
			said := inWords(name, value)
			notes = append(notes, func() { t.needs(said) })
		default:
			return crowd{}, nil, false
		}
	}
	c.none = c.none && !c.frail
	return c, notes, true
}

func (t *taker) needs(said string) {
	t.say("the plan knows nothing of %s: plan their dishes with a count, and keep boards, tongs and a part of the grate of their own", strconv.Quote(said))
}

// inText reads guests in words: "6 adults and 2 kids", "8 (2 toddlers)", "10 of us, incl. gran
// (86)", "20, potluck". Who is among those that were counted adds none.
func (t *taker) inText(text string) (c crowd, notes []func(), ok bool) {
	text, c.frail = withoutAges(text)
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
	base := false // how many there are in all is said
	among := false
	for len(text) > 0 {
		part, rest := text, ""
		next := among
		if at := guestParts.FindStringIndex(text); at != nil {
			part, rest = text[:at[0]], text[at[1]:]
			joint := strings.ToLower(text[at[0]:at[1]])
			next = among && strings.TrimSpace(part) == "" || strings.HasPrefix(joint, "incl") || joint == "(" || strings.HasPrefix(joint, "of ")
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

// guestPart takes one part of a text of guests; note is what is to be said of it, if anything.
func (t *taker) guestPart(c *crowd, part string, base *bool, among bool) (note func(), ok bool) {
	kid := kidNoun.MatchString(part) || kinder.MatchString(part)
	s := cut.Speak(strings.TrimSpace(adultNoun.ReplaceAllString(kidNoun.ReplaceAllString(kinder.ReplaceAllString(littleOnes.ReplaceAllString(plainly(part), " kids"), "kids"), " "), " ")))
	kid = kid || littleOnes.MatchString(part)
	frail := frailWords.MatchString(part)
	c.frail = c.frail || frail
	counted := s.Count > 0 && s.Name == "" && s.Weight == "" && !s.Part
	switch {
	case counted && kid && among && *base && c.adults > s.Count:
		c.adults, c.kids = c.adults-s.Count, c.kids+s.Count
	case frail && !counted:
		if !*base && s.Count > 1 { // nothing else was counted yet
			plain := guestsIn(strict.NewText(part, 0))
			if plain == nil || plain.Get("adults") == nil {
				return nil, false
			}
			c.adults, *base = c.adults+countOf(plain.Get("adults")), true
		}
	case needsWords.MatchString(part):
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
		return func() { t.unused(part) }, true
	}
	return nil, true
}

var (
	amongThem  = regexp.MustCompile(`(?i)\b(\d+|one|two|three|four|five|six|seven|eight|nine|ten) of (?:them|whom|those)\b(?: (?:is|are))?`)
	littleOnes = regexp.MustCompile(`(?i)\b(?:little|small|tiny) (?:kids?|children|ones?)\b`)
	oldAge     = regexp.MustCompile(`(?i)\(\s*(?:aged? )?(?:6[5-9]|[789]\d|1[01]\d)\s*\)|\b(?:is|are|aged?|who is|one(?: of (?:them|us))?(?: is)?|gran(?:ny|ma|pa|dad)?|mum|mom|dad)\s+(?:6[5-9]|[789]\d|1[01]\d)\b(?: years? old)?|\b(?:6[5-9]|[789]\d)[- ]years?(?:[- ]old)?\b`)
	youngAge   = regexp.MustCompile(`(?i)\b(?:under|below|aged?|younger than)\s+(?:one|two|three|four|five|[1-5])\b|\(\s*[1-5]\s*(?:months?|years?)\s*\)|\b[1-4][- ]years?[- ]olds?\b`)
	otherAge   = regexp.MustCompile(`(?i)\(\s*(?:aged? )?\d{1,2}\s*\)|\baged? \d{1,2}\b`)
)

// withoutAges takes ages out of a text, which count nobody; frail says whether one of them is
// of somebody very young or old.
func withoutAges(text string) (rest string, frail bool) {
	frail = oldAge.MatchString(text) || youngAge.MatchString(text)
	for _, age := range []*regexp.Regexp{oldAge, youngAge} {
		text = age.ReplaceAllStringFunc(text, func(s string) string {
			if strings.HasPrefix(strings.ToLower(s), "one") {
				return "incl one"
			}
			return " "
		})
	}
	return otherAge.ReplaceAllString(text, " "), frail
}

var rangeOf = regexp.MustCompile(`\b(\d{1,3})\s*(?:-|–|\bto\b|\bor\b)\s*(\d{1,3})\b`)
