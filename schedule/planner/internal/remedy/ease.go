package remedy

import (
	"math"
	"slices"
	"sort"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner/internal/assemble"
)

// tightChance is the chance of all dishes together below which a day counts as
// tight (assumption); sameOdds is what tells two chances apart; easeGain is how much a change must add to it to be told, and
// easeShare what part of the minutes that dishes are done too early it must save.
const (
	tightChance = 0.7
	easeGain    = 0.05
	easeShare   = 0.5
	sameOdds    = 0.01
	mostEases   = 3
	mostPairs   = 8 // of changes tried together
)

// ease looks for what would give a tight but feasible day the most slack: a place to
// hold what may be done long before it is eaten, a later start or a cook that is less
// of a guess; and more time for what may be late.
func (m *mender) ease(r schedule.Request) ([]schedule.Remedy, error) {
	short, unsure := shortDishes(m.plan), m.plan.Chance.All < tightChance
	if len(short) == 0 && !unsure {
		return []schedule.Remedy{}, nil
	}
	var gains []eased
	all := easeChanges(r, short, unsure)
	for _, c := range all {
		if g, ok := m.eases(r, c); ok {
			gains = append(gains, g)
		}
	}
	if len(short) > 0 && !slices.ContainsFunc(gains, func(g eased) bool { return g.held == len(short) }) {
		for _, pair := range easePairs(all) {
			if g, ok := m.eases(r, pair...); ok && g.held > 0 {
				gains = append(gains, g)
			}
		}
	}
	sort.SliceStable(gains, func(i, j int) bool { return gains[i].better(gains[j]) })
	out := []schedule.Remedy{}
	for _, g := range gains[:min(len(gains), mostEases)] {
		out = append(out, g.rem.Remedy)
	}
	return out, m.err
}

// eased is a change of a tight day and what it gains: findings of a hold that is too
// short which are gone, and chance.
type eased struct {
	rem  priced
	held int
	by   float64
}

func (g eased) better(o eased) bool {
	if g.held != o.held {
		return g.held > o.held
	}
	if g.held > 0 {
		return g.rem.pain < o.rem.pain
	}
	return g.by > o.by
}

// eases says what changes gain, and whether that is worth telling.
func (m *mender) eases(r schedule.Request, used ...change) (eased, bool) {
	if m.err != nil || m.effort.Allowance.Empty() {
		return eased{}, false
	}
	changed := m.with(r, used...)
	p, ok := m.whole(changed, remedyBudget)
	if !ok || !p.Feasible {
		return eased{}, false
	}
	rem := m.remedy(changed, p, used)
	if full, ok := m.inFull(rem); ok {
		p = full
		tell(&rem.Remedy, p)
	}
	g := eased{rem: rem, held: len(shortDishes(m.plan)) - len(shortDishes(p)), by: p.Chance.All - m.plan.Chance.All}
	less := tooEarly(p) <= (1-easeShare)*tooEarly(m.plan) && tooEarly(m.plan) > 0
	looser := slices.ContainsFunc(used, func(c change) bool { return c.code == codeConfidence })
	if looser && g.by > 0 {
		g.rem.Price = "it goes on later, and a slow day has less time"
	}
	if used[0].code == codeSurer && later(p.LightAt, m.plan.LightAt) {
		g.rem.Price = "another way to cook, and longer holds on most days"
	}
	g.rem.Write = asWritten(rem.Edits, r)
	switch {
	case g.held < 0, looser && g.by < easeGain: // it may go on later, and be no surer for it
		return eased{}, false
	case g.held > 0 && g.by < -sameOdds: // what is done early keeps, and the day is less sure all the same
		return eased{}, false
	case g.held > 0:
		g.rem.For = schedule.CodeHoldShort
		if g.by < easeGain {
			g.rem.Price += "; what is done early keeps until it is eaten"
		}
	case less && !looser:
		g.rem.For = schedule.CodeHoldShort
		g.rem.Price += "; on a fast day still done too early, though by less"
	case g.by < easeGain:
		return eased{}, false
	}
	return g, true
}

// later says whether a fire is lit after another.
func later(a, b *time.Time) bool { return a != nil && b != nil && a.After(*b) }

// easeChanges are the changes that may ease a day whose named dishes are done too
// early to be held.
func easeChanges(r schedule.Request, short []string, unsure bool) []change {
	var all []change
	if len(short) > 0 && r.Oven == nil {
		all = append(all, ovenChange(r))
	}
	for i, dish := range r.Dishes {
		if slices.Contains(short, dish.ID) {
			all = append(all, steadier(r, i)...)
		}
	}
	if len(short) > 0 && r.Confidence > loose {
		all = append(all, confidenceChanges(r)[0])
	}
	if unsure && r.Confidence < surer {
		all = append(all, surerChange(r))
	}
	return all
}

// steadier are changes of a dish that let it wait longer, or that make its cook less
// of a guess: a wrap and a hotter grate shorten the stall.
func steadier(r schedule.Request, i int) []change {
	var all []change
	if len(r.Dishes[i].Hold) > 0 {
		all = append(all, holdChange(r, r.Dishes[i]))
	}
	for _, c := range dishChanges(r, i, assemble.Trouble{Dishes: []string{r.Dishes[i].ID}}) {
		if c.code == codeWrap || c.code == codeHotter {
			all = append(all, c)
		}
	}
	return all
}

// easePairs are two of the changes together, the least painful pairs first.
func easePairs(all []change) [][]change {
	var pairs [][]change
	for i, a := range all {
		for _, b := range all[i+1:] {
			if a.dose() != b.dose() && a.code != codeSurer && b.code != codeSurer {
				pairs = append(pairs, []change{a, b})
			}
		}
	}
	sort.SliceStable(pairs, func(i, j int) bool {
		return pairs[i][0].pain+pairs[i][1].pain < pairs[j][0].pain+pairs[j][1].pain
	})
	return pairs[:min(len(pairs), mostPairs)]
}

// shortDishes are those that may be done too early to be held.
func shortDishes(p schedule.Plan) []string {
	var ids []string
	for _, f := range p.Findings {
		if f.Code == schedule.CodeHoldShort {
			ids = append(ids, f.Dishes...)
		}
	}
	slices.Sort(ids)
	return slices.Compact(ids)
}

// tooEarly is by how many minutes, of all dishes, the early end of the cook is too
// early for the way of waiting that is planned.
func tooEarly(p schedule.Plan) float64 {
	sum, short := 0.0, shortDishes(p)
	for _, dish := range p.Dishes {
		if !slices.Contains(short, dish.ID) {
			continue
		}
		limit := 0.0
		for _, h := range dish.Holds {
			if h.Chosen {
				limit = h.LimitMinutes
			}
		}
		for _, b := range dish.Batches {
			if m, ok := b.Milestone(schedule.MilestoneTakeOff); ok {
				sum += math.Max(dish.ServeAt.Sub(m.Window.Early).Minutes()-limit, 0)
			}
		}
	}
	return sum
}
