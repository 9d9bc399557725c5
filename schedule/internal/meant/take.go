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
	Heard   []string       // what a cook has to see of how it was read: one sentence each
	Dropped []*strict.Node // dishes that are nothing for a grill, where there is no other
}

// taker reads the fields of a request one after the other.
type taker struct {
	Day
	out     *strict.Node
	dishes  []*strict.Node
	dropped []*strict.Node // dishes that are nothing for the grill
	menuAt  int            // the line of the first menu; 0 for none yet
	guests  crowd
	heard   []string
	times   []loose // groups of dishes with the time of each
	loose   []loose // fields that may be of the one dish
}

// say notes what a cook has to see of how words were read.
func (t *taker) say(format string, args ...any) {
	if text := fmt.Sprintf(format, args...); !slices.Contains(t.heard, text) {
		t.heard = append(t.heard, text)
	}
}

// formFields are those of a request, but for what is taken in another way.
var formFields = []string{"format", "id", "name", "oven", "box", "weather", "quiet", "overnight", "layout", "confidence", "units", "earliest", "lit", "heard"}

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
	t.serveEach()
	t.lastServed()
	t.settle()
	taking := Taken{Request: t.out, Heard: t.heard}
	if len(t.dishes) == 0 {
		taking.Dropped = t.dropped
	}
	return taking
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
	case isZone(name) && grillWithin.MatchString(value.Text) && t.out.Get("grill") == nil:
		t.keep("grill", line, t.grill(value))
	case low == "serve" && t.When.Node != nil && formServe(value):
		t.keep(low, line, t.mendedServe(value))
	case t.When.Node != nil && slices.Contains(t.Fields, name), t.When.Node != nil && isZone(name):
		if t.out.Get("serve") == nil {
			t.out = t.out.WithAt("serve", line, onLine(t.When.Node, line))
			t.heard = append(t.heard, t.When.Heard...)
		}
		if name == partyStarts {
			t.say("people are taken to eat when the party starts, %s; if it is later write serve with that time", t.When.Node.Get("time").Text)
		}
	case low == "serve":
		t.keep(low, line, value)
	case low == "grill" && value.Kind != strict.NodeList:
		t.keep("grill", line, t.grill(value))
	case t.grillField(name, line, value), t.guestField(name, line, value):
	case low == "dishes", t.isMenu(name, value):
		t.menu(name, line, value)
	case t.stateField(name, line, value):
	case oneOf(low, formFields...):
		t.keep(low, line, t.formValue(low, value))
	case oneOf(word, "temp", "temperature", "heat") && t.isGrateHeat(name, value):
		t.loose = append(t.loose, loose{"pit temp", line, value})
	case t.weatherField(name, line, value), t.passedOver(name, value):
	case oneOf(word, "event", "occasion", "title", "eventname", "partyname") && value.Kind == strict.NodeText && t.out.Get("name") == nil:
		t.keep("name", line, value)
	case t.dishTimes(value) != nil:
		t.times = append(t.times, loose{name, line, value})
	case notOnGrill.MatchString(strings.TrimSpace(name)) && !isClock(value.Text):
		t.say("%s is not planned: it is not on the grill", strconv.Quote(inWords(name, value)))
	case t.hoursField(name, line, value):
	case sleepName.MatchString(name) && value.Kind == strict.NodeText && t.out.Get("quiet") == nil && quietIn(value) != nil:
		t.keep("quiet", line, quietIn(value))
	case oneOf(word, startFields...) && value.Kind == strict.NodeText && !isClock(value.Text) && nightBefore.MatchString(value.Text):
		t.overNight(name, line, value)
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
	if value.Kind == strict.NodeObject && oneOf(name, "weather", "oven") {
		return t.renamedIn(name, value)
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

// notOnGrill are names of fields of food that is made elsewhere.
var notOnGrill = regexp.MustCompile(`(?i)^(?:in|from|on) the (?:kitchen )?(?:oven|stove|kitchen|fridge|hob|pot)$|^(?:oven|stove|kitchen|stovetop|bought|store[- ]bought) (?:dishes|food|sides|stuff)$|^stove ?top$`)

func isClock(text string) bool {
	_, err := instant.ParseClock(strings.TrimSpace(text))
	return err == nil
}

// earliestName are names of the field that says before when nothing is done.
var earliestName = regexp.MustCompile(`(?i)^(?:start|begin).*|no(?:t)? (?:earlier|before|sooner)`)

// onLine is a group as if it had been written on a line.
func onLine(n *strict.Node, line int) *strict.Node {
	out := strict.NewGroup(line)
	for name, value := range n.Fields() {
		out = out.WithAt(name, line, strict.NewText(value.Text, line))
	}
	return out
}
