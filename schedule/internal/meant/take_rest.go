package meant

import (
	"regexp"
	"strconv"
	"strings"

	"example.com/cookday/schedule/internal/strict"
)

// loose is a field at the top that would be one of a dish.
type loose struct {
	name  string
	line  int
	value *strict.Node
}

// unused notes words that the plan does nothing with.
func (t *taker) unused(said string) { t.say("%s", notUsed(said)) }

// passedOver takes a field that the plan does nothing with, and says so.
func (t *taker) passedOver(name string, value *strict.Node) bool {
	word := plainWord(name)
	m := t.special("", name, value)
	nothing := strings.HasPrefix(m.Sentence, "the plan does nothing with it") || oneOf(word, nothingWith...)
	if g, ok := guessOf("", name); ok && g.right == "" {
		nothing = true
	}
	switch {
	case frailWords.MatchString(value.Text) && value.Kind == strict.NodeText && (nothing || m.Sentence != ""):
		t.guests.frail = true
		t.say("%s is read as: somebody at the table is very young, old, pregnant or ill", strconv.Quote(name+": "+value.Text))
		return true
	case strings.HasPrefix(m.Sentence, "the plan knows nothing of allergies") || nothing && needsWords.MatchString(value.Text):
		t.say("the plan knows nothing of %s: keep boards, tongs and a part of the grate of their own", strconv.Quote(inWords(name, value)))
		return true
	case nothing:
		t.unused(inWords(name, value))
		return true
	}
	return false
}

// nothingWith are fields of a party that no plan is made of.
var nothingWith = []string{"party", "guestsarrive", "arrival", "arrive", "doors", "guestscome", "peoplearrive", "everyonearrives", "bring", "bringing", "potluck", "what", "occasion", "theme", "host", "address", "theyrebringing", "guestsbring", "rub", "drinks", "beer", "cutlery", "plates", "eventname", "status", "priority", "author", "version", "created"}

// inWords is a field with its value as a cook would say it.
func inWords(name string, value *strict.Node) string {
	if value.Kind == strict.NodeObject || value.Kind == strict.NodeList {
		return name + ": " + strings.Trim(value.Flow(), "{}[]")
	}
	return strings.TrimSuffix(name+": "+value.Text, ": ")
}

// settle gives fields at the top that would be a dish's to the one dish there is; of several
// it is not known whose they are.
func (t *taker) settle() {
	list := t.out.Get("dishes")
	for _, f := range t.loose {
		if f.name == fuelOfGrill {
			t.fuel(f)
			continue
		}
		one := list != nil && list.Kind == strict.NodeList && len(list.Items) == 1 && list.Items[0].Kind == strict.NodeObject
		if one {
			if dish, ok := t.dishField(list.Items[0], f.name, f.value); ok {
				list = strict.NewList(list.Line, dish)
				t.out = t.out.With("dishes", list)
				continue
			}
		}
		if list != nil && t.heatOfAll(list, f) {
			list = t.out.Get("dishes")
			continue
		}
		if unread, nothing := t.pastDish(f); nothing {
			t.unused(unread)
			continue
		}
		t.out = t.out.WithAt(f.name, f.line, f.value)
	}
}

// pastDish says whether a dish's field says nothing that a plan is made of: a rub, a wood.
func (t *taker) pastDish(f loose) (said string, nothing bool) {
	g, ok := guessOf("dishes", f.name)
	return inWords(f.name, f.value), ok && g.right == "" && strings.HasPrefix(g.why, "the plan does nothing")
}

// ofDish says whether a field at the top would be one of a dish.
func ofDish(word string) bool {
	if _, top := guessOf("", word); top {
		return false
	}
	_, ok := guessOf("dishes", word)
	return ok && !oneOf(word, "of", "was", "amount", "number", "num", "kind", "type", "what", "on", "time", "when", "at", "method", "note", "notes") || oneOf(word, "wrap", "target", "rest", "hold", "level", "start", "thickness", "prep", "weight", "doneness", "state") || oneOf(word, perHeadNames...) || heatOf(word) && word != "at" && word != "temp" && word != "temperature" && word != "heat"
}

// startFields are names of the field that says when the cook begins.
var startFields = []string{"start", "begin", "starttime", "startcooking", "begincooking", "starting", "puton", "cook", "cooking"}

// nightBefore are words for a cook that goes through the night.
var nightBefore = regexp.MustCompile(`(?i)\bovernight\b|\bnight\b|\bevening before\b`)

// overNight takes a beginning in words, which the plan finds out by itself: that it may be
// the night is a field of its own.
func (t *taker) overNight(name string, line int, value *strict.Node) {
	said := strconv.Quote(inWords(name, value))
	if !strings.Contains(strings.ToLower(value.Text), "overnight") {
		t.say("%s: the plan works out when to start, so this is not used", said)
		return
	}
	t.say("%s is read as: the fire may burn through the night; the plan works out when to start", said)
	if t.out.Get("overnight") == nil {
		t.out = t.out.WithAt("overnight", line, strict.NewTruth(true, line))
	}
}
