package planner

import (
	"slices"
	"strings"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/unit"
)

// inOwnUnits leaves of each measure that a text of a plan tells in both systems the one of
// its cook. Rules of safety are told in both; names of dishes stay as they are.
func inOwnUnits(p schedule.Plan) schedule.Plan {
	own := ownWords(unit.System(p.Units), p.Request.Dishes)
	p.Cautions, p.Findings, p.Steps, p.Remedies = ownCautions(p.Cautions, own), ownFindings(p.Findings, own), slices.Clone(p.Steps), slices.Clone(p.Remedies)
	for i, s := range p.Steps {
		p.Steps[i].Text, p.Steps[i].Why = own(s.Text), own(s.Why)
	}
	for i, r := range p.Remedies {
		p.Remedies[i].Text, p.Remedies[i].Price = own(r.Text), own(r.Price)
	}
	return p
}

// ownWords changes a text, but for one with a name in it that looks like a measure told twice.
func ownWords(u unit.System, dishes []schedule.Dish) func(string) string {
	var names []string
	for _, d := range dishes {
		if u.Own(d.Name) != d.Name {
			names = append(names, d.Name)
		}
	}
	return func(text string) string {
		if slices.ContainsFunc(names, func(name string) bool { return strings.Contains(text, name) }) {
			return text
		}
		return u.Own(text)
	}
}

func ownCautions(all []schedule.Caution, own func(string) string) []schedule.Caution {
	all = slices.Clone(all)
	for i, c := range all {
		all[i].Text = own(c.Text)
	}
	return all
}

func ownFindings(all []schedule.Finding, own func(string) string) []schedule.Finding {
	all = slices.Clone(all)
	for i, f := range all {
		all[i].Text = own(f.Text)
	}
	return all
}
