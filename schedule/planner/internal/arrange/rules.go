package arrange

import (
	"fmt"

	"example.com/cookday/schedule/planner/internal/sequence"
)

// Words for the rules that a clash names.
const (
	RuleQuiet    = "quiet-hours"
	RuleEarliest = "earliest"
	RuleHands    = "hands"
	RuleHold     = "hold"
	RuleRoom     = "room"
	RuleFire     = "fire"
)

// RuleWord is the word for a rule of the solver. What may not come due in quiet
// hours, and a fire that must last them, are parts of one rule to a cook.
func RuleWord(r sequence.Rule) string {
	switch r {
	case sequence.RuleQuiet, sequence.RuleClosed:
		return RuleQuiet
	case sequence.RuleHands:
		return RuleHands
	case sequence.RuleEarliest:
		return RuleEarliest
	case sequence.RuleHold:
		return RuleHold
	case sequence.RuleCapacity:
		return RuleRoom
	}
	return RuleFire
}

// KitchenRules are those that nobody can let go of. What a clash needs of them is
// found by asking whether it stays one without them; those that say the least to a
// cook are left out first.
var KitchenRules = []string{RuleHands, RuleEarliest, RuleFire, RuleRoom, RuleHold}

// endless is more room than any day needs, cm2.
const endless = 1_000_000

// without relaxes a problem: some of the rules no longer bind. Every plan of the
// problem as it was is a plan of the relaxed one.
func without(p *sequence.Problem, rules []string) {
	for _, rule := range rules {
		switch rule {
		case RuleHands:
			freeHands(p)
		case RuleEarliest:
			p.Earliest = Ever
		case RuleFire:
			manyFires(p)
		case RuleRoom:
			for i := range p.Ovens {
				p.Ovens[i] = endless
			}
			for _, f := range p.Fires {
				for z := range f.Zones {
					f.Zones[z] = endless
				}
			}
		case RuleHold:
			for i := range p.Chains {
				tasks := p.Chains[i].Tasks
				for m := range tasks[len(tasks)-1].Modes {
					tasks[len(tasks)-1].Modes[m].Gap.Max = sequence.NoLimit
				}
			}
		}
	}
}

// freeHands lets everything that needs somebody be done at one instant.
func freeHands(p *sequence.Problem) {
	free := func(minutes *int) { *minutes = min(*minutes, 0) }
	free(&p.LightHands)
	free(&p.ChangeHands)
	for i := range p.Chains {
		for j := range p.Chains[i].Tasks {
			free(&p.Chains[i].Tasks[j].StartHands)
			free(&p.Chains[i].Tasks[j].EndHands)
		}
	}
}

// manyFires lets all fires burn at any time, as if each place had a grill of its own:
// what may cook in the same zones shares the largest of them.
func manyFires(p *sequence.Problem) {
	grills := map[string]int{}
	for i := range p.Chains {
		for j := range p.Chains[i].Tasks {
			for m := range p.Chains[i].Tasks[j].Modes {
				mode := &p.Chains[i].Tasks[j].Modes[m]
				if mode.Places[0].Fire == sequence.OvenFire {
					continue
				}
				key := fmt.Sprint(mode.Places)
				if _, ok := grills[key]; !ok {
					grills[key] = len(p.Ovens)
					p.Ovens = append(p.Ovens, 0)
				}
				zone := &p.Ovens[grills[key]]
				for _, at := range mode.Places {
					*zone = max(*zone, p.Fires[at.Fire].Zones[at.Zone])
				}
				mode.Places = []sequence.Place{{Fire: sequence.OvenFire, Zone: grills[key]}}
			}
		}
	}
	p.Fires, p.Change, p.ChangeCosts = nil, nil, nil
}
