package assemble

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/unit"
)

// Over says whether one of some rules stands in the way; where none is known, all may.
func (t Trouble) Over(rules ...string) bool {
	return len(t.Rules) == 0 || slices.ContainsFunc(rules, func(r string) bool { return slices.Contains(t.Rules, r) })
}

// Trouble is a set of dishes that cannot be had together under some rules, and
// can without any one of them. Unproven says that the last was not shown.
type Trouble struct {
	Dishes   []string // ids
	Rules    []string
	Idle     []string // rules of the request without which it is as impossible
	Unproven bool
	Vague    bool // it is not known which of the rules it needs
}

func (t *Trouble) add(rule string) {
	if !slices.Contains(t.Rules, rule) {
		t.Rules = append(t.Rules, rule)
	}
}

// Finding says a clash in words, with the names of the request.
func (t Trouble) Finding(r schedule.Request) schedule.Finding {
	f := schedule.NewFinding(schedule.CodeClash, "", "", t.Dishes...)
	f.Rules = t.Rules
	var names, rules []string
	for _, dish := range r.Dishes {
		if slices.Contains(t.Dishes, dish.ID) {
			names = append(names, dish.Name)
		}
	}
	for _, rule := range []string{arrange.RuleEarliest, arrange.RuleQuiet, arrange.RuleHands, arrange.RuleRoom, arrange.RuleFire, arrange.RuleHold} {
		if text := t.ruleText(rule, r); text != "" && slices.Contains(t.Rules, rule) {
			rules = append(rules, text)
		}
	}
	f.Text = say.Listed(names, "and") + " won't work"
	if len(names) > 1 {
		f.Text += " together"
	}
	f.Text += cmp.Or(strings.TrimSuffix(": "+strings.Join(rules, "; "), ": "), " as planned") + "."
	if t.Vague {
		f.Text += " It may be only some of that."
	}
	if t.Unproven && len(t.Dishes) > 1 {
		f.Text += " Fewer of them may be too much already."
	}
	return f
}

// ruleText says a rule as a cook would; empty where another rule of the clash says
// all there is to say: for one dish, a fire that would have to be lit while nobody is
// up, or a second fire that would give more room.
func (t Trouble) ruleText(rule string, r schedule.Request) string {
	lone, it := len(t.Dishes) == 1, "it doesn't"
	if lone && slices.ContainsFunc(r.Dishes, func(d schedule.Dish) bool { return d.ID == t.Dishes[0] && d.Count > 1 }) {
		it = "they don't"
	}
	has := func(other string) bool { return slices.Contains(t.Rules, other) }
	switch {
	case rule == arrange.RuleQuiet:
		return quietText(r.Units, r.Quiet)
	case rule == arrange.RuleEarliest:
		return earliestText(r)
	case rule == arrange.RuleHands:
		return "one cook has two hands"
	case rule == arrange.RuleRoom && lone:
		return it + " all fit on the grate at once"
	case rule == arrange.RuleRoom:
		return "they don't all fit on the grate at once"
	case rule == arrange.RuleFire && lone && (has(arrange.RuleQuiet) || has(arrange.RuleRoom)):
		return ""
	case rule == arrange.RuleFire && lone:
		return "a fire takes its time to come up or to change"
	case rule == arrange.RuleFire:
		return "one fire has one heat, and it takes a while to change"
	case lone && has(arrange.RuleRoom):
		return "the first batch won't hold until the rest is done"
	case lone:
		return "it does not keep that long once it is done"
	}
	return "what is done first won't hold until the rest is done"
}

func quietText(u unit.System, all []schedule.Quiet) string {
	var spans []string
	for _, q := range all {
		spans = append(spans, fmt.Sprintf("between %s and %s", say.TimeOfDay(u, q.From), say.TimeOfDay(u, q.To)))
	}
	return "nobody is there to tend the fire or to take anything off " + say.Listed(spans, "or")
}

func earliestText(r schedule.Request) string {
	switch {
	case !HasEarliest(r):
		return "it would have to begin more than two days ahead"
	case r.Earliest == nil:
		return "it may not start before the time you gave"
	}
	if loc, err := r.Location(); err == nil {
		return "nothing may start before " + r.Units.ClockOn(day.ClockIn(r, r.Earliest, loc))
	}
	return "nothing may start before " + say.TimeOfDay(r.Units, r.Earliest.Time)
}

// HasEarliest says whether an instant was asked for before which nothing starts.
func HasEarliest(r schedule.Request) bool {
	return r.Earliest != nil || slices.ContainsFunc(r.Dishes, func(d schedule.Dish) bool { return d.Earliest != nil })
}

func (t Trouble) Key() string { return say.Listed(t.Dishes, "and") }
