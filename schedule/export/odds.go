package export

import (
	"slices"
	"strings"

	"example.com/cookday/schedule"
)

// sure says how likely the plan is to hold.
func (v *view) sure() string {
	all := capital(percent(v.Chance.All)) + " that everything is ready on time"
	if v.Revision == 0 && slices.ContainsFunc(v.Findings, func(f schedule.Finding) bool { return f.Code == schedule.CodeHoldShort }) {
		all += " and keeps until it is eaten"
	}
	if v.Revision == 0 && v.Chance.All < schedule.LongOdds {
		all = strings.Replace(all, " that", ": long odds that", 1)
	}
	var words, out, first []string
	for _, d := range v.Dishes {
		switch {
		case v.unfit(d.ID) && !v.measuredFirst(d.ID):
			out = append(out, v.dish(d.ID))
		case v.heldBack(d.ID):
			first = append(first, v.dish(d.ID))
		default:
			words = append(words, v.dish(d.ID)+" "+percent(d.Chance))
		}
	}
	switch {
	case len(words) == 0 && len(first) > 0:
		return "Measure first: nothing of this is served before that"
	case len(words) == 0:
		return "Nothing of this may be served"
	case len(words) == 1 && len(v.Dishes) == 1:
		return all + v.longOdds() + v.sureBefore() + v.keepsNot()
	}
	told := ""
	if len(out) > 0 {
		told = "Do not serve " + strings.Join(out, " or ") + ". "
	}
	if len(first) > 0 {
		told += "Measure " + list(first) + " before you serve it. "
	}
	if told != "" {
		all = strings.Replace(all, "everything", "the rest", 1)
	}
	return told + all + " (" + strings.Join(words, ", ") + ")" + v.longOdds() + v.sureBefore() + v.keepsNot()
}

// heldBack says whether a dish is not served before it was measured: it has no odds until then.
func (v *view) heldBack(id string) bool {
	return v.measuredFirst(id) || v.found(schedule.OffUnread, id) || v.MeasuredNow(id)
}

// longOdds says what a day is likely to be that is more of a gamble than a plan.
func (v *view) longOdds() string {
	if v.Revision > 0 || v.Chance.All >= schedule.LongOdds {
		return ""
	}
	text := ". Expect to eat late"
	if slices.ContainsFunc(v.Findings, func(f schedule.Finding) bool { return f.Code == schedule.CodeHoldShort }) {
		text = ". Expect it late, or done too long before you eat"
	}
	if len(v.Remedies) > 0 {
		text += "; better ways are under " + otherWays
	}
	return text
}

// unfit says whether a dish must not be served: a finding of danger names it.
func (v *view) unfit(id string) bool {
	return slices.ContainsFunc(v.Findings, func(f schedule.Finding) bool {
		return v.Revision > 0 && f.Severity == schedule.Danger && slices.Contains(f.Dishes, id)
	})
}

// measuredFirst says whether a dish that must not be served as things stand may be cleared by
// a measurement: a step of now asks for it.
func (v *view) measuredFirst(id string) bool {
	return slices.ContainsFunc(v.Steps, func(s schedule.Step) bool {
		return s.Kind == schedule.StepLook && s.Dish == id && !s.Done && v.unfit(id) && v.RevisedAt != nil && s.At.Equal(*v.RevisedAt)
	})
}
