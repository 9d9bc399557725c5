package arrange

import (
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

// ruleWord is the word for a rule of the solver. What may not come due in quiet
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
