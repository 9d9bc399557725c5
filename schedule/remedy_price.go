package schedule

import (
	"slices"
	"sort"
	"strings"
)

// remedy is what the changes come to.
func (m *mender) remedy(p Plan, used []change) priced {
	rem := priced{}
	rem.Remedy = Remedy{Code: used[0].code, For: codeOf(m.plan), LightAt: p.LightAt, ServeAt: p.tableAt(), Chance: p.Chance.All, Cost: p.Solution.Objective}
	rem.Text = joined(used, " ", func(c change) []string { return []string{c.text} })
	rem.Price = joined(used, "; ", func(c change) []string { return strings.Split(c.price, "; ") })
	for _, c := range used {
		rem.Edits, rem.pain = append(rem.Edits, c.edits...), rem.pain+c.pain
	}
	return rem
}

// Slots in the texts of a change: for the name of its dish, and for how many dishes.
const (
	dishSlot  = "{dish}"
	countSlot = "{dishes}"
)

// joined says changes one after another, and like ones of several dishes in one breath.
func joined(used []change, between string, say func(change) []string) string {
	var said []string
	names := map[string][]string{}
	for _, c := range used {
		for _, text := range say(c) {
			if !slices.Contains(said, text) {
				said = append(said, text)
			}
			if !slices.Contains(names[text], c.name) {
				names[text] = append(names[text], c.name)
			}
		}
	}
	for i, text := range said {
		dishes := "one dish"
		if n := len(names[text]); n > 1 {
			dishes = numberWord(n) + " dishes"
		}
		said[i] = strings.NewReplacer(dishSlot, listed(names[text], "and"), countSlot, dishes).Replace(text)
	}
	return strings.Join(said, between)
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
