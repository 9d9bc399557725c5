package safety

import (
	"fmt"

	"example.com/cookday/schedule/unit"
)

// Thaw says how long a frozen piece takes to thaw, as published.
type Thaw struct {
	LeastHours, MostHours float64
	// KeepsHours is how long it then keeps in the refrigerator; 0: cook it at once.
	KeepsHours float64
	Source     string
	Sentence   string
}

// The refrigerator rule: a day for every 4 to 5 lb. Cold water: half an hour a pound,
// the water changed every 30 min; small packages take longer for their weight.
const (
	fridgeHoursPerLbLeast = 24.0 / 5
	fridgeHoursPerLbMost  = 24.0 / 4
	waterHoursPerLb       = 0.5
)

// ThawInRefrigerator is the time at 40 F or less. The printed ranges (turkey, 4 to
// 24 lb) are a day for each 4 lb at both of their ends; MostHours is that. Plan with it.
func ThawInRefrigerator(c Category, massKg float64) Thaw {
	lb := unit.Mass(massKg).Pounds()
	t := Thaw{LeastHours: lb * fridgeHoursPerLbLeast, MostHours: lb * fridgeHoursPerLbMost,
		KeepsHours: 72, Source: "fsis_thaw"}
	switch c {
	case Poultry, Ground, GroundPoultry, Sausage, Fish:
		t.KeepsHours = 24
	}
	t.Sentence = fmt.Sprintf("Thaw it in the refrigerator, on a tray, for %s. It then keeps there for %.0f hr.", spokenDays(t.MostHours), t.KeepsHours)
	return t
}

// ThawInColdWater is the time in cold water, in a tight bag. Cook at once after it.
func ThawInColdWater(massKg float64) Thaw {
	lb := unit.Mass(massKg).Pounds()
	t := Thaw{LeastHours: lb * waterHoursPerLb, MostHours: max(packageHours(lb), lb*waterHoursPerLb), Source: "fsis_thaw"}
	t.Sentence = fmt.Sprintf("Thaw it in a tight bag in cold water for up to %s. Change the water every 30 min, then cook it at once.", spokenMinutes(t.MostHours*60))
	return t
}

// ThawPart begins what is said of a piece that thaws in the refrigerator for as long as
// there is, and is finished in cold water.
const ThawPart = "Thaw it in the refrigerator, on a tray, until it goes into cold water "

// FinishInColdWater is the time in cold water of a piece that has lain in the refrigerator
// for some hours, fewer than thaw it there: of the time in cold water as large a share as is
// left of the time in the refrigerator (assumption: what thaws is the same, only faster).
func FinishInColdWater(c Category, massKg, hoursInRefrigerator float64) Thaw {
	left := max(1-hoursInRefrigerator/ThawInRefrigerator(c, massKg).MostHours, 0)
	t := ThawInColdWater(massKg)
	t.LeastHours, t.MostHours = left*t.LeastHours, left*t.MostHours
	t.Sentence = fmt.Sprintf("Not thawed through yet: finish it in a tight bag in cold water, for up to %s. Change the water every 30 min, then cook it at once.", spokenMinutes(t.MostHours*60))
	return t
}

// packageHours is the printed longest time of packages: 1 h for a pound, 3 h for
// 3 to 4 lb. Between them a straight line, an assumption.
func packageHours(lb float64) float64 {
	switch {
	case lb <= 1:
		return 1
	case lb < 3:
		return 1 + (lb - 1)
	default:
		return 3
	}
}

func spokenDays(hours float64) string {
	days := int(hours / 24)
	if float64(days)*24 < hours-tableRounding {
		days++
	}
	if days <= 1 {
		return "a day"
	}
	return fmt.Sprintf("%d days", days)
}

// FrozenFactor: cooking from frozen takes at least half as long again (USDA FSIS,
// general roasting advice).
const FrozenFactor = 1.5

// JudgeFrozen says whether a piece may start frozen on a grate of grateC. On a slow
// fire (below 325 F, the lowest oven setting for raw meat) it is refused, because its
// centre stays too long in the danger zone. Elsewhere it is planned with FrozenFactor.
func JudgeFrozen(grateC float64) Verdict {
	code, kind := "frozen-refused", Refused
	if grateC >= OvenLowC-printedToleranceK {
		code, kind = "frozen-longer", BelowMinimum
	}
	return Verdict{Kind: kind, Code: code, Sentence: found(code, "", 0, 0).Sentence}
}
