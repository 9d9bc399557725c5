package schedule

import (
	"fmt"
	"slices"
	"strings"
)

// finding says a clash in words, with the names of the request.
func (t trouble) finding(r Request) Finding {
	f := Finding{Code: codeClash, Severity: Danger, Dishes: t.dishes, Rules: t.rules}
	var names, rules []string
	for _, dish := range r.Dishes {
		if slices.Contains(t.dishes, dish.ID) {
			names = append(names, dish.Name)
		}
	}
	for _, rule := range []string{ruleEarliest, ruleQuiet, ruleHands, ruleRoom, ruleFire, ruleHold} {
		if text := t.ruleText(rule, r); text != "" && slices.Contains(t.rules, rule) {
			rules = append(rules, text)
		}
	}
	f.Text = listed(names, "and") + " cannot be had as asked."
	if len(names) > 1 {
		f.Text = listed(names, "and") + " cannot be had together as asked."
	}
	if len(rules) > 0 {
		f.Text += " What stands in the way: " + strings.Join(rules, "; ") + "."
	}
	if t.vague {
		f.Text += " Whether it is all of that is not worked out."
	}
	if t.unproven && len(t.dishes) > 1 {
		f.Text += " Perhaps fewer of them are too much already: that is not worked out."
	}
	return f
}

// ruleText says a rule as a cook would; empty where another rule of the clash says
// all there is to say: for one dish, a fire that would have to be lit while nobody is
// up, or a second fire that would give more room.
func (t trouble) ruleText(rule string, r Request) string {
	lone := len(t.dishes) == 1
	has := func(other string) bool { return slices.Contains(t.rules, other) }
	switch {
	case rule == ruleQuiet:
		return quietText(r.Quiet)
	case rule == ruleEarliest:
		return earliestText(r)
	case rule == ruleHands:
		return "one cook has two hands"
	case rule == ruleRoom && lone:
		return "the grate has no room for all of it at once"
	case rule == ruleRoom:
		return "the grate has no room for all of them at once"
	case rule == ruleFire && lone && (has(ruleQuiet) || has(ruleRoom)):
		return ""
	case rule == ruleFire && lone:
		return "a fire takes its time to come up or to change"
	case rule == ruleFire:
		return "a fire has one heat at a time and takes a while to change"
	case lone && has(ruleRoom):
		return "what comes off first does not keep until the rest is done"
	case lone:
		return "it does not keep that long once it is done"
	}
	return "what is done first does not keep until the rest is done"
}

func quietText(all []Quiet) string {
	var spans []string
	for _, q := range all {
		spans = append(spans, fmt.Sprintf("between %s and %s", q.From.HhMm(), q.To.HhMm()))
	}
	return "nobody is there to tend the fire or to take anything off " + listed(spans, "or")
}

func earliestText(r Request) string {
	switch {
	case !hasEarliest(r):
		return "it would have to begin more than two days ahead"
	case r.Earliest == nil:
		return "it may not start before the time you gave"
	}
	if loc, err := r.Location(); err == nil {
		return "nothing may start before " + dayClock(clockIn(r, r.Earliest, loc))
	}
	return "nothing may start before " + r.Earliest.Time.HhMm()
}

// hasEarliest says whether an instant was asked for before which nothing starts.
func hasEarliest(r Request) bool {
	return r.Earliest != nil || slices.ContainsFunc(r.Dishes, func(d Dish) bool { return d.Earliest != nil })
}
