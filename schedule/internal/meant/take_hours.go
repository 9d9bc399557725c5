package meant

import (
	"regexp"
	"strconv"
	"strings"

	"example.com/cookday/schedule/internal/strict"
)

// usualNight is when everybody sleeps where nobody says it, as the form has it; the table of
// a day's own is in the planner's request.
const nightFrom, nightTo = "23:00", "05:00"

var (
	awayName   = regexp.MustCompile(`(?i)\b(?:away|out|pick ?up|not home|can'?t (?:watch|tend)|busy|nobody home)\b`)
	awakeName  = regexp.MustCompile(`(?i)^(?:we(?:'re| are) |i(?:'m| am) |i )?(?:awake|up)$`)
	quietName  = regexp.MustCompile(`(?i)^(?:quiet[ _-]?hours?|ruhezeit|nachtruhe|schlafzeit|no[ _-]?noise)$`)
	nobodyUp   = regexp.MustCompile(`(?i)^(?:nobody|no one|noone|not|none of us)\b.*\b(?:up|awake|out of bed)\b.*\b(?:before|till?|until)$|^(?:(?:everyone|everybody|all|we)(?:'re| are)? )?(?:asleep|sleeping|in bed) (?:till?|until)$`)
	cannotName = regexp.MustCompile(`(?i)\b(?:can'?t|cannot|don'?t|won'?t|not)\b.*\b(?:start|begin|light|before)\b`)
)

// hoursField takes hours in which nobody tends a fire, under whichever name, and a time
// before which nobody can begin; false for another field.
func (t *taker) hoursField(name string, line int, value *strict.Node) bool {
	switch {
	case cannotName.MatchString(name) && isClock(value.Text):
		t.keep("earliest", line, value)
		t.say("%s is read as: nothing is done before %s", strconv.Quote(name+": "+value.Text), value.Text)
		return true
	case nobodyUp.MatchString(strings.TrimSpace(name)) && isClock(value.Text) && t.out.Get("quiet") == nil:
		t.keep("quiet", line, strict.NewList(line, span(nightFrom, value.Text, line)))
		t.say("%s is read as: nobody tends the fire from %s to %s", strconv.Quote(name+": "+value.Text), nightFrom, value.Text)
		return true
	case quietName.MatchString(strings.TrimSpace(name)) && t.out.Get("quiet") == nil:
		if value.Kind == strict.NodeText && quietIn(value) != nil {
			value = quietIn(value)
		}
		if value.Kind != strict.NodeList && value.Kind != strict.NodeObject {
			return false
		}
		t.keep("quiet", line, value)
		return true
	case value.Kind != strict.NodeText, quietIn(value) == nil, quietIn(value).Kind != strict.NodeList, len(quietIn(value).Items) != 1:
		return false
	case awakeName.MatchString(strings.TrimSpace(name)) && t.out.Get("quiet") == nil:
		one := quietIn(value).Items[0]
		t.keep("quiet", line, strict.NewList(line, span(one.Get("to").Text, one.Get("from").Text, line)))
		return true
	case awayName.MatchString(name):
		one := quietIn(value).Items[0]
		hours := []*strict.Node{span(one.Get("from").Text, one.Get("to").Text, line)}
		if t.out.Get("quiet") == nil {
			hours = append(hours, span(nightFrom, nightTo, line))
			t.out = t.out.WithAt("quiet", line, strict.NewList(line, hours...))
		} else if before := t.out.Get("quiet"); before.Kind == strict.NodeList {
			t.out = t.out.With("quiet", strict.NewList(before.Line, append(append([]*strict.Node{}, before.Items...), hours...)...))
		} else {
			return false
		}
		t.say("%s is read as: nobody tends the fire then, nor in the usual night", strconv.Quote(name+": "+value.Text))
		return true
	}
	return false
}

func span(from, to string, line int) *strict.Node {
	return strict.NewGroup(line).With("from", strict.NewText(from, line)).With("to", strict.NewText(to, line))
}

var (
	yesAndMore = regexp.MustCompile(`(?i)^(?:yes|yep|yeah|sure|ok|one|1)\b[^0-9]{2,}$`)
	agreed     = regexp.MustCompile(`(?i)^(?:ok|okay|sure|fine|allowed|ja|yep|yeah|no problem|of course)$`)
	refused    = regexp.MustCompile(`(?i)^(?:no way|never|nope|nein|not allowed|please no)$`)
	coolBox    = regexp.MustCompile(`(?i)\b(?:cooler|cool ?box|ice ?box|esky|insulated box)\b`)
	ovenWord   = regexp.MustCompile(`(?i)^(?:an? |the |kitchen |my )*oven$`)
)

// stateField takes yes and no in other words, a box that is called by what it is, and a list
// of what is there; false for another field.
func (t *taker) stateField(name string, line int, value *strict.Node) bool {
	word := plainWord(name)
	if value.Kind != strict.NodeText {
		return false
	}
	switch text := strings.TrimSpace(value.Text); {
	case word == "overnight" && (agreed.MatchString(text) || refused.MatchString(text)):
		t.keep("overnight", line, strict.NewTruth(agreed.MatchString(text), line))
	case word == "oven" && yesAndMore.MatchString(text):
		t.keep("oven", line, strict.NewTruth(true, line))
		t.unused(name + ": " + text)
	case word == "oven" && (agreed.MatchString(text) || refused.MatchString(text)):
		t.keep("oven", line, strict.NewTruth(agreed.MatchString(text), line))
	case oneOf(word, "box", "cooler") && coolBox.MatchString(text):
		t.keep("box", line, strict.NewText("usual", line))
	case oneOf(word, "units", "unit", "temperaturein", "degrees", "temperatures") && systemOf(text) != "" && t.out.Get("units") == nil:
		t.keep("units", line, strict.NewText(systemOf(text), line))
	case oneOf(word, "have", "got", "ihave", "wehave", "equipment", "available"):
		return t.haves(line, text)
	default:
		return false
	}
	return true
}

// haves takes a list of what is there; false where it may name a grill.
func (t *taker) haves(line int, text string) bool {
	if grillWithin.MatchString(text) {
		return false
	}
	for _, one := range betweenDishes.Split(text, -1) {
		switch one = strings.TrimSpace(one); {
		case one == "":
		case ovenWord.MatchString(one) && t.out.Get("oven") == nil:
			t.out = t.out.WithAt("oven", line, strict.NewTruth(true, line))
		case coolBox.MatchString(one) && t.out.Get("box") == nil:
			t.out = t.out.WithAt("box", line, strict.NewText("usual", line))
		default:
			t.unused(one)
		}
	}
	return true
}

// systemOf is the system of units that a word for one of its units names; empty for another.
func systemOf(text string) string {
	switch strings.ToLower(strings.Trim(text, " °.")) {
	case "c", "celsius", "centigrade", "metric", "kg", "cm", "si":
		return "metric"
	case "f", "fahrenheit", "us", "imperial", "american", "lb", "pounds", "inches":
		return "us"
	}
	return ""
}
