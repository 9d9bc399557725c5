package schedule

import (
	"slices"
	"sort"
)

// remedy is what the changes come to.
func (m *mender) remedy(p Plan, used []change) priced {
	rem := priced{}
	rem.Remedy = Remedy{Code: used[0].code, For: codeOf(m.plan), LightAt: p.LightAt, ServeAt: p.tableAt(), Chance: p.Chance.All, Cost: p.Solution.Objective}
	for i, c := range used {
		if i > 0 {
			rem.Text, rem.Price = rem.Text+" ", rem.Price+"; "
		}
		rem.Text, rem.Price = rem.Text+c.text, rem.Price+c.price
		rem.Edits, rem.pain = append(rem.Edits, c.edits...), rem.pain+c.pain
	}
	return rem
}

// ranked are the remedies without those that hold all that another asks, and more;
// the least painful first.
func ranked(all []priced) []Remedy {
	out := []Remedy{}
	sort.SliceStable(all, func(i, j int) bool { return all[i].pain < all[j].pain })
	for i, a := range all {
		idle := slices.ContainsFunc(all, func(b priced) bool {
			return len(b.Edits) < len(a.Edits) && !slices.ContainsFunc(b.Edits, func(e Edit) bool { return !slices.Contains(a.Edits, e) })
		}) || slices.ContainsFunc(all[:i], func(b priced) bool { return b.Text == a.Text })
		if !idle && len(out) < mostRemedies {
			out = append(out, a.Remedy)
		}
	}
	return out
}

// priced is a remedy with what it asks of the cook.
type priced struct {
	Remedy
	pain int
}
