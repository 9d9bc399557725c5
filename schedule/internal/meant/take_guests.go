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
	odd          bool // something was said that no plan is made of
	line         int  // of the first field; 0 where nothing was said
	asWritten    *strict.Node
}

const frailText = `(?:pregnant|expecting|bab(?:y|ies)|toddlers?|infants?|newborns?|elderly|frail|sick|ill|grand(?:ma|pa|mother|father|parents))`

// guestField takes a field of who eats; false for another.
func (t *taker) guestField(name string, line int, value *strict.Node) bool {
	word := plainWord(name)
	ok := false
	about := isGuests(name) || oneOf(word, "guestcount", "feeding", "feed", "serving", "headcount", "count", "company", "family", "pax", "whoiscoming", "howmanyareeating", "wearing")
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

var guestNoun = regexp.MustCompile(`(?i)(?:^|[\s_-])(?:folks?|people|guests?|eaters|mouths|persons|diners)$`)

// isGuests says whether a field says by its name how many eat: "guests", "hungry folks".
func isGuests(name string) bool {
	g, ok := guessOf("", name)
	return plainWord(name) == "guests" || ok && strings.HasPrefix(g.right, "guests: 8") || !ok && guestNoun.MatchString(strings.TrimSpace(name))
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
	t.out = t.out.WithAt("guests", c.line, c.node())
}

// node is who eats, as the form has it.
func (c crowd) node() *strict.Node {
	if c.kids == 0 && !c.frail && !c.none {
		return strict.NewNumber(c.adults, c.line)
	}
	n := strict.NewGroup(c.line).With("adults", strict.NewNumber(c.adults, c.line))
	if c.kids > 0 {
		n = n.With("children", strict.NewNumber(c.kids, c.line))
	}
	if c.frail || c.none {
		n = n.With("frail", strict.NewTruth(c.frail, c.line))
	}
	return n
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
	said = strings.Join(strings.Fields(said), " ")
	t.say("the plan knows nothing of %s: meat is reckoned for everybody; plan their dishes with a count, and keep boards, tongs and a part of the grate of their own", strconv.Quote(said))
}
