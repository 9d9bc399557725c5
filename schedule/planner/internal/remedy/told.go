package remedy

import (
	"cmp"
	"math"
	"slices"
	"sort"
	"strings"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/arrange"
)

// remedy is what changes come to: the request with them, and its day.
func (m *mender) remedy(now schedule.Request, p schedule.Plan, used []change) priced {
	rem := priced{leads: now, proven: p.Solution.Proven}
	rem.Remedy = schedule.Remedy{Code: used[0].code, For: codeOf(m.plan)}
	tell(&rem.Remedy, p)
	rem.Text = joined(used, " ", func(c change) []string { return []string{c.text} })
	rem.Price = joined(used, "; ", func(c change) []string { return strings.Split(c.price, "; ") })
	for _, c := range used {
		rem.Edits, rem.pain = append(rem.Edits, c.edits...), rem.pain+c.pain
	}
	return rem
}

// tell writes down the day that a remedy leads to.
func tell(r *schedule.Remedy, p schedule.Plan) {
	r.LightAt, r.ServeAt, r.Chance, r.Cost = p.LightAt, plans.TableAt(p), p.Chance.All, p.Solution.Objective
}

// Slots in the texts of a change: for the name of its dish, and for how many dishes.
const (
	dishSlot  = "{dish}"
	countSlot = "{dishes}"
)

// joined says changes one after another, and like ones of several dishes in one breath.
func joined(used []change, between string, textsOf func(change) []string) string {
	var said []string
	names := map[string][]string{}
	for _, c := range used {
		for _, text := range textsOf(c) {
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
		said[i] = strings.NewReplacer(dishSlot, say.Listed(names[text], "and"), countSlot, dishes).Replace(text)
	}
	return strings.Join(said, between)
}

// ranked are the remedies without those that hold all that another asks, and more, for
// no less pain; the least painful first.
func ranked(all []priced) []priced {
	var out []priced
	sort.SliceStable(all, func(i, j int) bool { return all[i].pain < all[j].pain })
	for i, a := range all {
		idle := slices.ContainsFunc(all, func(b priced) bool {
			return len(b.Edits) < len(a.Edits) && b.within(a) && b.pain <= a.pain
		}) || slices.ContainsFunc(all[:i], func(b priced) bool {
			return b.Text == a.Text || len(b.Edits) == len(a.Edits) && b.within(a)
		})
		if !idle && len(out) < mostRemedies {
			out = append(out, a)
		}
	}
	return out
}

// within says whether another remedy asks for all that this one does. An edit may be
// there twice: the next dish moves up where one is sent away.
func (p priced) within(o priced) bool {
	left := slices.Clone(o.Edits)
	for _, e := range p.Edits {
		i := slices.Index(left, e)
		if i < 0 {
			return false
		}
		left = slices.Delete(left, i, i+1)
	}
	return true
}

// settled are remedies that tell of the days which the cook gets: a day whose search was
// stopped is planned anew as Make plans it. Bad bets stand last, and a hopeless one is left
// out where there is a better.
func (m *mender) settled(all []priced) []schedule.Remedy {
	out := []schedule.Remedy{}
	for i, rem := range all {
		if p, ok := m.inFull(rem); ok {
			tell(&all[i].Remedy, p)
		}
	}
	slices.SortStableFunc(all, func(a, b priced) int { return cmp.Compare(a.felt(), b.felt()) })
	for _, rem := range all {
		rem.Write = asWritten(rem.Edits, m.plan.Request)
		out = append(out, rem.Remedy)
	}
	better := slices.ContainsFunc(out, func(r schedule.Remedy) bool { return r.Chance >= schedule.Hopeless })
	out = slices.DeleteFunc(out, func(r schedule.Remedy) bool { return better && r.Chance < schedule.Hopeless })
	slices.SortStableFunc(out, func(a, b schedule.Remedy) int { return badBet(a) - badBet(b) })
	return out
}

// badBet is 1 for a day that is likelier to fail than to hold.
func badBet(r schedule.Remedy) int {
	if r.Chance < schedule.BadBet {
		return 1
	}
	return 0
}

// Odds below likely weigh on the order of remedies, each hundredth of them as much as oddsPain
// (assumption: twenty hundredths as much as an hour's wait).
const (
	likely   = 0.8
	oddsPain = 1
)

// felt is the pain of a remedy, and of its odds.
func (p priced) felt() float64 {
	return float64(p.pain) + oddsPain*100*math.Max(likely-p.Chance, 0)
}

// asWritten says what a remedy is in the request: the lines to write, one after another. A
// dish that is taken out moves those behind it up.
func asWritten(edits []schedule.Edit, r schedule.Request) string {
	var lines []string
	for _, e := range edits {
		dish, line := e.Line(r)
		if line == "" {
			return ""
		}
		var err error
		if r, err = r.With(e); err != nil { // the edits are ours
			return ""
		}
		if dish != "" {
			line = dish + ", " + line
		}
		lines = append(lines, line)
	}
	return strings.Join(lines, "; ")
}

// inFull is the day that a remedy leads to, planned as Make plans it; false where that
// has nothing new to say.
func (m *mender) inFull(rem priced) (schedule.Plan, bool) {
	if rem.proven || m.err != nil {
		return schedule.Plan{}, false
	}
	e := m.effort
	e.Nodes, e.Allowance = 0, arrange.NewAllowance(arrange.FullAllowance)
	p, ok := m.made(rem.leads, e)
	return p, ok && p.Feasible
}

// priced is a remedy with what it asks of the cook, and the request that it leads to.
type priced struct {
	schedule.Remedy
	pain   int
	leads  schedule.Request
	proven bool // that no better day can be made of it
}
