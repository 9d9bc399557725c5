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
func Plain(data []byte, now time.Time) (request *strict.Node, left []string) {
	text := strings.TrimSpace(string(data))
	if len(text) > maxPlain || strings.HasPrefix(text, "{") || bytes.IndexByte(data, 0) >= 0 || fieldLine.MatchString(text) || logHead.MatchString(text) {
		return nil, nil
	}
	if rows := rowsOf(text); rows != nil {
		return table(rows), nil
	}
	n := note{now: now}
	for _, part := range splitNote(text) {
		n.hear(part)
	}
	return n.request(), n.left
}

// splitNote are the lines of a note and the sentences within them.
func splitNote(text string) (parts []string) {
	for _, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(bullet.ReplaceAllString(line, ""))
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		for _, part := range strings.Split(sentences.ReplaceAllString(line, "\n$1"), "\n") {
			parts = append(parts, strings.Trim(part, " .!;"))
		}
	}
	return parts
}

// maxPlain is far more than anybody says of a day in one breath, in bytes.
const maxPlain = 4000

// sentences begin where somebody says who does what.
var sentences = regexp.MustCompile(`(?i)(?:[.!?;]\s+|\s+(?:and |so |but )*)((?:we|i|there|it|they)(?:'re|'ll|'m|'ve|'s| are| is| will| want| have| need| plan| am| got| would| can)\b)`)

// intro are the words before what a sentence says (common practice, no source).
var intro = regexp.MustCompile(`(?i)^(?:(?:ok|okay|so|and|well|hi|hello|then|also|but|please)[\s,]+)*(?:(?:we|i|there|it|they)\b(?:'re|'ll|'m|'ve|'s| are| is| will| want| have| need| plan| am| got| would| can)*\s*)?(?:(?:be|to|going to|gonna|like to|like|want to|make|making|cook|cooking|grill|grilling|smoke|smoking|do|doing|eat|eating|feed|feeding|serve|serving|have|having|buy|buying|use|using|on|for)\s+)*(?:my |our |the )?`)

// note gathers what the parts of a text say.
type note struct {
	now                 time.Time
	when, guests, grill []string
	dishes              []string
	others              []string // of which no plan is made, or which make its rules stricter
	left                []string
}

func (n *note) hear(part string) {
	days, times, rest := instant.PartsWithin(part)
	var half *instant.HalfDayError
	if w, err := instant.ParseWhen(part, n.now); err == nil && (w.Day != nil || w.Time != nil) || errors.As(err, &half) && !half.NoDay && w.Day != nil {
		n.when = append(n.when, part)
		return
	}
	if len(days)+len(times) > 0 {
		n.when = append(append(n.when, days...), times...)
		part = rest
	}
	part = strings.TrimSpace(intro.ReplaceAllString(part, ""))
	switch {
	case part == "":
	case n.isGuests(part):
		n.guests = append(n.guests, part)
	case grillWithin.MatchString(part) && len(n.grill) == 0:
		n.grill = append(n.grill, strings.TrimPrefix(strings.TrimPrefix(part, "a "), "an "))
	case n.areDishes(part):
	case digits.MatchString(part) || knownWithin(part):
		n.left = append(n.left, part)
	case len(strings.Fields(part)) > 2 || frailWords.MatchString(part) || needsWords.MatchString(part):
		n.others = append(n.others, part)
	}
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
	if one := Dish(decimalPoint(part), 0, 0); one.Node != nil {
		n.dishes = append(n.dishes, part)
		return true
	}
	texts := betweenDishes.Split(part, -1)
	for k, text := range texts {
		text = someOf.ReplaceAllString(text, "")
		texts[k] = text
		if one := Dish(decimalPoint(text), 0, 0); one.Node == nil && !notGrilled.MatchString(text) {
			return false
		}
	}
	n.dishes = append(n.dishes, texts...)
	return true
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

// request is what was heard; nil where no food is.
func (n *note) request() *strict.Node {
	if len(n.dishes) == 0 || len(n.when)+len(n.guests)+len(n.grill) == 0 {
		return nil
	}
	out := strict.NewGroup(1)
	for _, f := range []struct {
		name string
		said []string
	}{{"serve", n.when}, {"guests", n.guests}, {"grill", n.grill}} {
		if len(f.said) > 0 {
			out = out.WithAt(f.name, 1, strict.NewText(strings.Join(f.said, " "), 1))
		}
	}
	if len(n.others) > 0 {
		out = out.WithAt("notes", 1, strict.NewText(strings.Join(n.others, ", "), 1))
	}
	list := strict.NewList(1)
	for _, dish := range n.dishes {
		list.Items = append(list.Items, strict.NewText(dish, 1))
	}
	return out.WithAt("dishes", 1, list)
}
