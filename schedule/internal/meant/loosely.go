package meant

import (
	"regexp"
	"strconv"
	"strings"
	"time"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
)

// Loosely is a request in a text of any shape, for a guess: what is heard of it stands in the
// fields that it is of, and left is the rest. Nil where no part of it names a food.
func Loosely(data []byte, now time.Time) (request *strict.Node, left []*strict.Node) {
	if len(data) > maxPlain || logHead.Match(data) {
		return nil, nil
	}
	n := note{now: now, letter: true, form: strict.NewGroup(1)}
	for _, part := range splitNote(strings.NewReplacer("{", " ", "}", " ", "[", " ", "]", " ", "\t", " ").Replace(string(data))) {
		n.line = part.Line
		text := strings.Trim(part.Text, ` ,`)
		if strings.HasPrefix(text, `"`) {
			text = strings.Trim(text, `"`)
		}
		if name, value, ok := nameAndValue(text); ok {
			n.named(name, value)
			continue
		}
		n.hear(text)
	}
	return n.whole()
}

var equalSign = regexp.MustCompile(`^\s*"?(\pL[\pL\d ()_'’-]{0,40}?)"?\s*(?:=|:\s)\s*(.+)$`)

// nameAndValue parts a line with a name of its own, before a colon or an equal sign.
func nameAndValue(line string) (name, value string, ok bool) {
	m := equalSign.FindStringSubmatch(line)
	if m == nil {
		return "", "", false
	}
	return strings.TrimSpace(m[1]), strings.Trim(strings.TrimSpace(m[2]), `",`), true
}

// whole is what was heard of a text, with the sentences that were not understood taken apart.
func (n *note) whole() (request *strict.Node, left []*strict.Node) {
	open := append(n.left, n.others...)
	if n.left, n.others = nil, nil; len(n.dishes) == 0 { // the food stands in a sentence with the grill or the day
		open = append(append(open, n.grill...), n.when...)
	}
	for _, part := range open {
		n.line = part.Line
		n.shred(part.Text)
	}
	if len(n.dishes)+len(n.meals) == 0 {
		return nil, nil
	}
	return n.asRequest(), n.left
}

var shreds = regexp.MustCompile(`(?i)[,;!?]\s*|\s+(?:and|on (?:my|the|our|a)|then|there(?:'ll| will) be|for|with)\s+`)

// restWithin is how long a dish rests, in a sentence.
var restWithin = regexp.MustCompile(`(?i)\brest(?:ed|ing|s)?\b[^.,;\d]*?\b(\d{1,2}|one|two|three|four) ?(hours?|min(?:utes)?)\b`)

var (
	onMyGrill      = regexp.MustCompile(`(?i)\s*\b(?:on|using|with) (?:my|our|the|a) ([^,.;\n]+)`)
	withoutArticle = regexp.MustCompile(`(?i)^(?:an?|the|some|my|our)\s+`)
	greeting       = regexp.MustCompile(`(?i)^(?:hi|hello|hey|dear|thanks|thank you|cheers|best|regards|many thanks|ta)\b\W*(?:all|everyone|again|there)?\W*$`)
)

// shred takes a sentence apart at its commas and small words, and keeps the pieces that are a
// time, people, a grill or food.
func (n *note) shred(text string) {
	used, behind := false, false
	if grill := onMyGrill.FindStringSubmatch(text); grill != nil && len(n.grill) == 0 && (grillWithin.MatchString(grill[1]) || acrossSaid.MatchString(grill[1])) {
		n.add(&n.grill, strings.TrimSpace(grill[1]))
		text, used = strings.Replace(text, grill[0], ",", 1), true
	}
	if m := restWithin.FindStringSubmatch(text); m != nil && n.form.Get("rest") == nil {
		hours := cut.Speak(m[1] + " x").Count
		n.form = n.form.WithAt("rest", n.line, strict.NewText(strconv.Itoa(hours)+" "+m[2], n.line))
		n.add(&n.others, text+" (read as: rest "+m[1]+" "+m[2]+")")
		return
	}
	for _, piece := range shreds.Split(text, -1) {
		piece = strings.TrimSpace(intro.ReplaceAllString(strings.TrimSpace(piece), ""))
		food, _ := foodWithin(piece)
		switch {
		case piece == "":
		case notForGrill(piece):
		case food != "" && grillWithin.MatchString(piece) && len(n.grill) > 0:
		case food != "" || birdAlone.MatchString(piece):
			n.add(&n.dishes, withoutArticle.ReplaceAllString(piece, ""))
			used, behind = true, true
		case behind && (cut.Speak(piece).Weight != "" || cut.Speak(piece).Thickness != ""): // how much of it
			n.dishes[len(n.dishes)-1].Text += ", " + piece
		case n.isGuests(piece) && len(n.guests) == 0:
			n.add(&n.guests, piece)
			used = true
		case timesIn.MatchString(piece) && len(n.when) == 0, daysIn.MatchString(piece) && len(n.when) == 0:
			n.add(&n.when, strings.TrimSpace(daysIn.FindString(piece)+" "+timesIn.FindString(piece)))
			used = true
		case grillWithin.MatchString(piece) && len(n.grill) == 0:
			n.add(&n.grill, piece)
			used = true
		}
	}
	if !used && !greeting.MatchString(text) {
		n.add(&n.left, text)
	}
}
