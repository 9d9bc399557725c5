package safety

import (
	"fmt"
	"math"
)

// VerdictKind is the answer to one rule.
type VerdictKind string

// The answers of JudgeTarget.
const (
	Meets        VerdictKind = "meets"         // at the published minimum or above, or no rule applies
	BelowMinimum VerdictKind = "below-minimum" // planned, with the caution of the sentence
	Refused      VerdictKind = "refused"       // not planned
)

// Verdict is the answer to one rule about a target temperature.
type Verdict struct {
	Kind     VerdictKind
	Code     string // stable, for programs: "target-meets-minimum", "target-held", ...
	Sentence string // for the cook
	// Minimum is the rule that was applied. When its HoldSeconds is set, the plan must
	// keep the core at Minimum.CoreC or above for that long.
	Minimum Minimum
	MarginK float64 // target - minimum; 0 if no rule applies
}

// printedToleranceK is half of the last digit the charts print (62.8 degC for
// 145 F), so that a target typed as the charts print it is not turned away.
const printedToleranceK = 0.05

// JudgeTarget compares a target core temperature with the published minimum. Below
// it, whole muscle and fish are planned with a caution, unless a guest is frail
// (very young, old, pregnant, ill); ground, stuffed, injected, tenderised, rolled and
// boned meat, whose surface lies inside, poultry and leftovers are refused for everybody.
func JudgeTarget(c Category, p Prep, targetC float64, frail bool) Verdict {
	all := MinimaFor(c, p)
	if !all[0].Applies() {
		return Verdict{Kind: Meets, Code: "no-minimum", Sentence: "No published minimum applies."}
	}
	for _, m := range all {
		if targetC >= m.CoreC-printedToleranceK {
			return meets(m, targetC)
		}
	}
	least := all[len(all)-1]
	v := Verdict{Minimum: least, MarginK: targetC - least.CoreC}
	below := fmt.Sprintf("A target of %s is below %s minimum of %s", spokenAs(targetC, math.Round), least.Whose(), spoken(least.CoreC))
	switch {
	case !(targetC > -273.15): // also NaN
		v.Kind, v.Code = Refused, "target-not-a-temperature"
		v.Sentence = "The target is not a temperature."
	case SurfaceInside(c, p):
		v.Kind, v.Code = Refused, "target-refused"
		v.Sentence = below + ". " + refusal(c, p)
	case frail:
		v.Kind, v.Code = Refused, "target-refused-frail"
		v.Sentence = below + ". Not for very young, old, pregnant or ill guests."
	default:
		v.Kind, v.Code = BelowMinimum, "target-below-minimum"
		v.Sentence = below + "."
	}
	return v
}

func meets(m Minimum, targetC float64) Verdict {
	v := Verdict{Kind: Meets, Code: "target-meets-minimum", Minimum: m, MarginK: targetC - m.CoreC,
		Sentence: fmt.Sprintf("The target is at %s minimum of %s or above.", m.Whose(), spoken(m.CoreC))}
	if m.HoldSeconds >= 60 {
		v.Code = "target-held"
		v.Sentence = fmt.Sprintf("Keep the core at %s or above for %s: that is %s minimum for injected or tenderized meat.",
			spoken(m.CoreC), spokenMinutes(m.HoldSeconds/60), m.Whose())
	}
	return v
}

func refusal(c Category, p Prep) string {
	switch {
	case p.Stuffed:
		return "Stuffed food can't go lower."
	case (p.Rolled || p.Boned) && !p.pierced():
		return "Rolled, tied and skewered meat has its surface inside, so it can't go lower."
	case p.pierced():
		return "Needles and blades push surface bacteria inside, so injected or tenderized meat can't go lower."
	case c == Poultry || c == GroundPoultry:
		return "Poultry can't go lower."
	case c == Ground || c == Sausage:
		return "Grinding mixes surface bacteria through the meat, so it can't go lower."
	default:
		return "It is not planned below it."
	}
}
