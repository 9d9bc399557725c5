package meant

import (
	"regexp"
	"strings"

	"example.com/cookday/schedule/internal/strict"
)

// Frail says whether words of a text may be of somebody very young, old, pregnant or ill.
func Frail(text string) bool {
	text = babyFood.ReplaceAllString(text, " ")
	return frailWords.MatchString(text) || oldAge.MatchString(text) || youngAge.MatchString(text)
}

// babyFood is food that is called small.
var babyFood = regexp.MustCompile(`(?i)\bbab(?:y|ies)[ -](?:backs?|potato(?:es)?|carrots?|corn|gem|octopus|squid|bok|pak|spinach|zucchini|courgettes?|new|turnips?|beets?|peppers?|leeks?|onions?|artichokes?|aubergines?|eggplants?|leaf|leaves|lettuces?|greens|fennel|squash)\b`)

// GuessGuests is who eats by a text, as the form has it; nil where no number of people is in it.
func GuessGuests(text string, line int) *strict.Node {
	t := new(taker)
	for _, part := range []string{text, strings.Join(crowdIn.FindAllString(text, -1), ", "), peopleIn(text)} {
		if c, _, ok := t.inText(part); ok && part != "" {
			c.line, c.frail = line, c.frail || Frail(text)
			return c.node()
		}
	}
	if m := headNumber.FindStringSubmatch(text); m != nil {
		c, _, ok := t.inText(m[1])
		c.line, c.frail = line, Frail(text)
		if ok {
			return c.node()
		}
	}
	return nil
}

var headNumber = regexp.MustCompile(`\b(\d{1,3})\b`)
