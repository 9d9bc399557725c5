package meant

import (
	"bytes"
	"errors"
	"regexp"
	"strings"
	"time"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/strict"
)

// fieldLine is a line of a request that has fields: a name, a colon and a space.
var fieldLine = regexp.MustCompile(`(?m)^\s*(?:- )?"?\pL[\pL\d ()_'’-]{0,40}"?\s*:(?:\s|$)`)

// logHead is the first line of the log of a day, which is no menu.
var logHead = regexp.MustCompile(`(?im)^"?(?:time|dish|kind|value)"?\s*[,;\t].*\bkind\b.*\bvalue\b`)

// Plain is a request that has no fields: lines of a note, a table of cells, a text as it is
// spoken. Each part of it stands in the field that it is of, in the cook's own words. Left are
// the parts that are not understood; the request is nil where the text has another shape, or
// says nothing of a day.
func Plain(data []byte, now time.Time) (request *strict.Node, left []*strict.Node) {
	text := strings.TrimSpace(string(data))
	if len(text) > maxPlain || strings.HasPrefix(text, "{") || bytes.IndexByte(data, 0) >= 0 || fieldLine.MatchString(text) || logHead.MatchString(text) {
		return nil, nil
	}
	if rows := rowsOf(text); rows != nil {
		return table(rows), nil
	}
	n := note{now: now, letter: true, form: strict.NewGroup(1)}
	before := bytes.Count(data[:bytes.Index(data, []byte(text))], []byte("\n"))
	for _, part := range splitNote(text) {
		n.line = part.Line + before
		n.hear(part.Text)
	}
	return n.request(), n.left
}

// splitNote are the lines of a note and the sentences within them.
func splitNote(text string) (parts []*strict.Node) {
	for k, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(bullet.ReplaceAllString(line, ""))
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		line = spokenInches.ReplaceAllStringFunc(byFullStops(line), inchesInFigures)
		for _, part := range strings.Split(sentences.ReplaceAllString(line, "\n$1"), "\n") {
			parts = append(parts, strict.NewText(strings.Trim(part, " .!;"), k+1))
		}
	}
	return parts
}

// maxPlain is far more than anybody says of a day in one breath, in bytes.
const maxPlain = 4000

// sentences begin where somebody says who does what.
var sentences = regexp.MustCompile(`(?i)(?:[.!?;]\s+|\s+(?:and |so |but )*)((?:we|i|there|it|they)(?:'re|'ll|'m|'ve|'s|'d| are| is| will| want| have| need| plan| am| got| would| can)\b)`)

// fullStop ends a sentence, but behind a short form.
var (
	fullStop  = regexp.MustCompile(`(\S+?)([!?.]+|\s--|\s[–—])\s+`)
	shortForm = regexp.MustCompile(`(?i)(?:^|\W)(?:st|mt|ft|dr|mr|mrs|lbs?|oz|approx|ca|no|vs|p\.m|a\.m|in|min|hrs?|\pL)$`)
)

// byFullStops is a text with a new line behind each sentence.
func byFullStops(text string) string {
	return fullStop.ReplaceAllStringFunc(text, func(s string) string {
		m := fullStop.FindStringSubmatch(s)
		if m[2] == "." && shortForm.MatchString(m[1]) {
			return s
		}
		return m[1] + m[2] + "\n"
	})
}

// thatIsAll is behind what a cook has.
var thatIsAll = regexp.MustCompile(`(?i),? and that(?:'s| is) (?:it|all)$`)

// intro are the words before what a sentence says (common practice, no source).
var intro = regexp.MustCompile(`(?i)^(?:(?:ok|okay|hey|hi all|so|and|well|hi|hello|then|also|but|please)[\s,]+)*(?:can you |could you |please )?(?:(?:we|i|there|its|it|they)\b(?:'re|'ll|'m|'ve|'s|'d| are| is| will| want| have| need| plan| am| got| would| can)*\s*)?(?:(?:be|to|going to|gonna|like to|like|want to|make|making|cook|cooking|grill|grilling|smoke|smoking|do|doing|eat|eating|feed|feeding|serve|serving|bring|thinking|come over|got|have|having|buy|buying|use|using|on|for)\s+)*(?:my |our |the )?`)

// note gathers what the parts of a text say, each with its line.
type note struct {
	now                 time.Time
	letter              bool // it is no list of lines
	line                int  // of the part that is heard
	when, guests, grill []*strict.Node
	places              []*strict.Node // where it is
	meals               []*strict.Node // each with its name, its hour and what there is
	form                *strict.Node   // fields as the form has them
	dishes              []*strict.Node
	others              []*strict.Node // of which no plan is made, or which make its rules stricter
	left                []*strict.Node
}

// add puts a part where it is of.
func (n *note) add(to *[]*strict.Node, parts ...string) {
	for _, part := range parts {
		*to = append(*to, strict.NewText(part, n.line))
	}
}

func (n *note) hear(part string) {
	if n.isMeal(part) {
		return
	}
	if n.aside(part) {
		return
	}
	days, times, rest := instant.PartsWithin(part)
	var half *instant.HalfDayError
	if w, err := instant.ParseWhen(part, n.now); err == nil && (w.Day != nil || w.Time != nil) || errors.As(err, &half) && !half.NoDay && w.Day != nil {
		n.add(&n.when, part)
		return
	}
	if n.letter && (len(days)+len(times) > 0 || daysIn.MatchString(part) || crowdIn.MatchString(part) || timesIn.MatchString(part)) && n.apart(part) {
		return
	}
	if len(days)+len(times) > 0 {
		n.add(&n.when, append(days, times...)...)
		part = rest
	}
	part = strings.Trim(intro.ReplaceAllString(strings.Trim(part, " ,"), ""), " ,")
	switch {
	case part == "":
	case !strings.Contains(part, ",") && n.isGuests(part):
		n.add(&n.guests, part)
	case n.letter && onGrill.MatchString(part) && n.apart(part):
	case grillWithin.MatchString(part) && len(n.grill) == 0 && !onlyGrilling.MatchString(part) && !bbqFood(part):
		n.add(&n.grill, thatIsAll.ReplaceAllString(strings.TrimPrefix(strings.TrimPrefix(part, "a "), "an "), ""))
	case !knownWithin(part) && placeIn(part) != "" && len(n.when) > 0:
		n.add(&n.when, placeIn(part))
	case n.areDishes(part):
	case n.inPieces(part):
	case n.isGuests(part):
		n.add(&n.guests, part)
	case n.inSentence(part):
	case oldAge.MatchString(part) && !digits.MatchString(oldAge.ReplaceAllString(part, "")):
		n.add(&n.others, part)
	case n.apart(part):
	case digits.MatchString(part) || knownWithin(part):
		n.add(&n.left, part)
	default:
		n.add(&n.others, part)
	}
}

var (
	guestsWithin = regexp.MustCompile(`(?i)\b(?:for|feeding|feed|have|having)\s+((?:about |around )?(?:\d{1,3}|two|three|four|five|six|seven|eight|nine|ten|twelve|twenty)(?: of us| people| guests| friends| adults| persons)?(?: and \d+ (?:kids|children))?)\b`)
	placeAtEnd   = regexp.MustCompile(`\s+(?:in|near)\s+(\p{Lu}[\pL .,]+)$`)
)

// inSentence takes the guests and the place out of a sentence about the day that names no food:
// "planning a cookout for 9 of us in Tucson".
func (n *note) inSentence(part string) bool {
	m := guestsWithin.FindStringSubmatch(part)
	if m == nil || !n.isGuests(m[1]) && !n.isGuests(m[1]+" people") || len(n.guests) > 0 {
		return false
	}
	rest, place := strings.Replace(part, m[0], " ", 1), ""
	if at := placeAtEnd.FindStringSubmatch(rest); at != nil && placeIn(at[1]) != "" {
		rest, place = strings.Replace(rest, at[0], " ", 1), placeIn(at[1])
	}
	if digits.MatchString(rest) || knownWithin(rest) || dayWithin.MatchString(rest) {
		return false
	}
	if guests := m[1]; n.isGuests(guests) {
		n.add(&n.guests, guests)
	} else {
		n.add(&n.guests, guests+" people")
	}
	if place != "" && len(n.when) > 0 {
		n.add(&n.when, place)
	}
	return true
}

// placeIn is a place that has a clock, without the word before it; empty for another text.
func placeIn(text string) string {
	text = placeBefore.ReplaceAllString(text, "")
	if len(text) > 3 && (instant.ZoneNamed(text) != "" || instant.ZonesNamed(text) != "") {
		return text
	}
	return ""
}

var placeBefore = regexp.MustCompile(`(?i)^(?:in|at|near|here in)\s+`)

// inPieces takes a part with commas in it piece by piece, if each of them is understood.
func (n *note) inPieces(part string) bool {
	if !strings.Contains(part, ",") {
		return false
	}
	try := *n
	for _, piece := range strings.Split(part, ",") {
		if try.hear(strings.TrimSpace(piece)); len(try.left) > len(n.left) {
			return false
		}
	}
	*n = try
	return true
}

func (n *note) isGuests(part string) bool {
	if !adultNoun.MatchString(part) && !kidNoun.MatchString(part) || knownWithin(part) {
		return false
	}
	c, _, ok := new(taker).inText(part)
	return ok && c.adults+c.kids > 0
}

// areDishes takes a part as dishes, if each of its own parts is one.
func (n *note) areDishes(part string) bool {
	one := Dish(decimalPoint(part), 0, 0)
	if one.Certain() || knownFood(cut.Speak(part).Name) {
		n.add(&n.dishes, part)
		return true
	}
	texts := withAttributes(splitDishes(part))
	for k, text := range texts {
		text = someOf.ReplaceAllString(text, "")
		texts[k] = text
		if of := Dish(decimalPoint(text), 0, 0); of.Node == nil && !notForGrill(text) {
			if one.Node != nil {
				n.add(&n.dishes, part)
			}
			return one.Node != nil
		}
	}
	n.add(&n.dishes, texts...)
	return true
}

// bbqFood says whether a part names food, and a grill only by a word that is also one for a sauce
// or a party.
func bbqFood(part string) bool {
	return knownWithin(part) && !grillWithin.MatchString(partyWord.ReplaceAllString(part, " "))
}

var partyWord = regexp.MustCompile(`(?i)\b(?:bbq|barbecue|barbie|braai)\b`)

// withAttributes joins what is only said of a dish to it: two ribeyes, medium rare, asparagus.
func withAttributes(texts []string) (joined []string) {
	for _, text := range texts {
		if last := len(joined) - 1; last >= 0 && Dish(decimalPoint(text), 0, 0).Node == nil && !notForGrill(text) && Dish(decimalPoint(joined[last]+", "+text), 0, 0).Certain() {
			joined[last] += ", " + text
			continue
		}
		joined = append(joined, text)
	}
	return joined
}

var someOf = regexp.MustCompile(`(?i)^(?:(?:some|also|then|maybe|the|a few)\s+)+`)

// knownWithin says whether a word of a text is a food.
func knownWithin(text string) bool {
	for _, word := range strings.Fields(text) {
		if word = strings.Trim(word, ",.()"); len(word) > 3 && !adultNoun.MatchString(word) && !kidNoun.MatchString(word) && knownFood(cut.Speak(word).Name) {
			return true
		}
	}
	return false
}
