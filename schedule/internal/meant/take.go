package meant

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/strict"
)

// Taken is a request in the form's words as far as what was written means one thing without
// doubt; all else in it stays as it was written.
type Taken struct {
	Request *strict.Node
	Heard   []string // what a cook has to see of how it was read: one sentence each
}

// taker reads the fields of a request one after the other.
type taker struct {
	Day
	out    *strict.Node
	dishes []*strict.Node
	menuAt int // the line of the first menu; 0 for none yet
	guests crowd
	heard  []string
	loose  []loose // fields that may be of the one dish
}

// loose is a field at the top that would be one of a dish.
type loose struct {
	name  string
	line  int
	value *strict.Node
}

// say notes what a cook has to see of how words were read.
func (t *taker) say(format string, args ...any) {
	if text := fmt.Sprintf(format, args...); !slices.Contains(t.heard, text) {
		t.heard = append(t.heard, text)
	}
}

// unused notes words that the plan does nothing with.
func (t *taker) unused(said string) { t.say("%s", notUsed(said)) }

// formFields are those of a request, but for what is taken in another way.
var formFields = []string{"format", "id", "name", "oven", "box", "weather", "quiet", "overnight", "layout", "confidence", "units", "earliest", "lit", "heard"}

// Shaped is a request as a group of fields, whatever its cook made of it.
func Shaped(request *strict.Node) *strict.Node { return spokenKeys(shaped(request)) }

// Take is a request in the form's words, as far as that is certain. The request is [Shaped].
func (d Day) Take(request *strict.Node) Taken {
	if request.Kind != strict.NodeObject {
		return Taken{Request: request}
	}
	t := &taker{Day: d, out: strict.NewGroup(request.Line)}
	taken := t.meals(request)
	t.oneSitting(request, taken)
	for name, value := range request.Fields() {
		if slices.Contains(taken, name) {
			continue
		}
		t.field(name, request.LineOf(name), value)
	}
	t.seat()
	t.serveUp()
	t.lastServed()
	t.settle()
	return Taken{Request: t.out, Heard: t.heard}
}

// shaped is a request as a group of fields: dishes alone are its menu, and what stands in a
// group of its own about the day stands at the top.
func shaped(n *strict.Node) *strict.Node {
	if n.Kind == strict.NodeList && len(n.Items) > 0 && !slices.ContainsFunc(n.Items, func(item *strict.Node) bool { return !namesFood(item) }) {
		return strict.NewGroup(n.Line).With("dishes", n)
	}
	if n.Kind != strict.NodeObject {
		return n
	}
	out, meals := strict.NewGroup(n.Line), 0
	for name := range n.Fields() {
		if oneOf(plainWord(name), mealNames...) {
			meals++
		}
	}
	for name, value := range n.Fields() {
		inside := !(meals > 1 && oneOf(plainWord(name), mealNames...)) && value.Kind == strict.NodeObject && !isForm(name) && holdsFields(value) && !holdsMenu(value)
		for inner := range value.Fields() {
			inside = inside && n.Get(inner) == nil && out.Get(inner) == nil
		}
		if !inside {
			out = out.WithAt(name, n.LineOf(name), value)
			continue
		}
		for inner, v := range value.Fields() {
			out = out.WithAt(inner, value.LineOf(inner), v)
		}
	}
	return out
}

// isForm says whether a request has a field of that name, in letters of whatever size.
func isForm(name string) bool {
	low := strings.ToLower(name)
	return oneOf(low, "serve", "guests", "grill", "dishes") || oneOf(low, formFields...)
}

// field takes one field of a request.
func (t *taker) field(name string, line int, value *strict.Node) {
	low, word := strings.ToLower(strings.TrimSpace(name)), plainWord(name)
	switch {
	case low == "serve" && t.When.Node != nil && formServe(value):
		t.keep(low, line, t.mendedServe(value))
	case t.When.Node != nil && saysWhen(name, value, t.Now), t.When.Node != nil && isZone(name):
		if t.out.Get("serve") == nil {
			t.out = t.out.WithAt("serve", line, onLine(t.When.Node, line))
			t.heard = append(t.heard, t.When.Heard...)
		}
	case low == "serve":
		t.keep(low, line, value)
	case low == "grill" && value.Kind != strict.NodeList:
		t.keep("grill", line, t.grill(value))
	case t.grillField(name, line, value), t.guestField(name, line, value):
	case low == "dishes", t.isMenu(name, value):
		t.menu(name, line, value)
	case oneOf(low, formFields...):
		t.keep(low, line, t.formValue(low, value))
	case t.passedOver(name, value):
	case oneOf(word, "event", "occasion", "title", "eventname", "partyname") && value.Kind == strict.NodeText && t.out.Get("name") == nil:
		t.keep("name", line, value)
	case (oneOf(word, "start") || earliestName.MatchString(name)) && isClock(value.Text):
		t.keep("earliest", line, value)
		t.say("%s is read as: nothing is done before %s", strconv.Quote(name+": "+value.Text), value.Text)
	case ofDish(word):
		t.loose = append(t.loose, loose{name, line, value})
	default:
		t.guessed(name, line, value)
	}
}

// keep sets a field, unless there is one of its name.
func (t *taker) keep(name string, line int, value *strict.Node) {
	if t.out.Get(name) != nil {
		name += " again" // told as a field that does not exist: two of one kind are the cook's to choose from
	}
	t.out = t.out.WithAt(name, line, value)
}

// formValue is the value of a field of the form, in the form's words.
func (t *taker) formValue(name string, value *strict.Node) *strict.Node {
	if said := t.Understood("", name, value); said != nil {
		return said
	}
	if name == "weather" && value.Kind == strict.NodeText {
		if group, left := weatherIn(value); !group.Empty() {
			t.say("the plan has no figure for %s: the weather is read as %s", strconv.Quote(left), strings.Trim(group.Flow(), "{}"))
			return group
		}
	}
	return value
}

// guessed takes a field that goes by another name, where its value fits as it stands.
func (t *taker) guessed(name string, line int, value *strict.Node) {
	m := t.Field("", name, value)
	switch {
	case m.As != "" && m.Read != nil && m.As != "dishes" && t.out.Get(m.As) == nil:
		t.keep(m.As, line, t.formValue(m.As, m.Read))
	case m.Whole && strings.HasPrefix(m.New, "earliest: "):
		t.keep("earliest", line, value)
		t.say("%s is read as: nothing is done before %s", strconv.Quote(name+": "+value.Text), value.Text)
	default:
		t.out = t.out.WithAt(name, line, value)
	}
}

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
var nothingWith = []string{"bring", "bringing", "potluck", "what", "occasion", "theme", "host", "address", "theyrebringing", "guestsbring", "rub", "drinks", "beer", "cutlery", "plates", "eventname", "status", "priority", "author", "version", "created"}

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
		if unread, nothing := t.pastDish(f); nothing {
			t.unused(unread)
			continue
		}
		t.out = t.out.WithAt(f.name, f.line, f.value)
	}
}

func isClock(text string) bool {
	_, err := instant.ParseClock(strings.TrimSpace(text))
	return err == nil
}

// earliestName are names of the field that says before when nothing is done.
var earliestName = regexp.MustCompile(`(?i)^(?:start|begin).*|no(?:t)? (?:earlier|before|sooner)`)

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

// spokenKeys gives a sentence that was dictated as the name of a field, or with no name at
// all, the name of what it says: "dinner on the table at six thirty p.m. this saturday: yes".
func spokenKeys(n *strict.Node) *strict.Node {
	if n.Kind != strict.NodeObject {
		return n
	}
	out := strict.NewGroup(n.Line)
	for name, value := range n.Fields() {
		yes, said := value.Says()
		when := instant.WhenWithin(name)
		if when == "" || len(strings.Fields(name)) < 4 || !(said && yes || value.Empty() && value.Text == "") || n.Get("serve") != nil {
			out = out.WithAt(name, n.LineOf(name), value)
			continue
		}
		out = out.WithAt("serve", n.LineOf(name), strict.NewText(when, value.Line))
	}
	return out
}

// onLine is a group as if it had been written on a line.
func onLine(n *strict.Node, line int) *strict.Node {
	out := strict.NewGroup(line)
	for name, value := range n.Fields() {
		out = out.WithAt(name, line, strict.NewText(value.Text, line))
	}
	return out
}
