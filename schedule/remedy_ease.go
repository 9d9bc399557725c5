package schedule

import "sort"

// tightChance is the chance of all dishes together below which a day counts as
// tight (assumption); easeGain is how much a change must add to it to be told.
const (
	tightChance = 0.7
	easeGain    = 0.05
	mostEases   = 3
)

// ease looks for what would give a tight but feasible day the most slack: a place to
// hold what may be done long before it is eaten, and more time for what may be late.
func (m *mender) ease(r Request) ([]Remedy, error) {
	out := []Remedy{}
	short, unsure := countFindings(m.plan, codeHoldShort), m.plan.Chance.All < tightChance
	if short == 0 && !unsure {
		return out, nil
	}
	type gain struct {
		rem Remedy
		by  float64
	}
	var gains []gain
	for _, c := range easeChanges(r, short > 0, unsure) {
		changed := copyRequest(r)
		c.apply(&changed)
		p, err := m.whole(changed, remedyBudget)
		if _, bad := err.(*InputError); bad {
			continue
		}
		if err != nil {
			return nil, err
		}
		by := p.Chance.All - m.plan.Chance.All
		held := short - countFindings(p, codeHoldShort)
		if !p.Feasible || held < 0 || held == 0 && by < easeGain {
			continue
		}
		rem := m.remedy(p, []change{c}).Remedy
		if held > 0 {
			rem.For = codeHoldShort
		}
		gains = append(gains, gain{rem, by + float64(held)})
	}
	sort.SliceStable(gains, func(i, j int) bool { return gains[i].by > gains[j].by })
	for _, g := range gains[:min(len(gains), mostEases)] {
		out = append(out, g.rem)
	}
	return out, nil
}

// easeChanges are the changes that may ease a day.
func easeChanges(r Request, short, unsure bool) []change {
	var all []change
	if short && r.Oven == nil {
		all = append(all, ovenChange(r))
	}
	if short {
		for _, dish := range r.Dishes {
			if len(dish.Hold) > 0 {
				all = append(all, holdChange(r, dish))
			}
		}
	}
	if unsure && r.Confidence < surer {
		all = append(all, surerChange(r))
	}
	return all
}

func countFindings(p Plan, code string) int {
	n := 0
	for _, f := range p.Findings {
		if f.Code == code {
			n++
		}
	}
	return n
}
