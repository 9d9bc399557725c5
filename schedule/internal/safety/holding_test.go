package safety

import (
	"math"
	"testing"
)

// rowUse checks the rule that a row of the holding file stands for.
type rowUse func(t *testing.T, r row)

func isF(got float64, column string) rowUse {
	return func(t *testing.T, r row) {
		if want := r.number(t, column); !near(fahrenheit(got), want) {
			t.Errorf("%s, %s: %.2f F, want %v", r["source"], r["item"], fahrenheit(got), want)
		}
	}
}

func isHours(minutes float64) rowUse {
	return func(t *testing.T, r row) {
		if want := r.number(t, "time_max_h") * 60; minutes != want {
			t.Errorf("%s, %s: %v min, want %v", r["source"], r["item"], minutes, want)
		}
	}
}

func both(all ...rowUse) rowUse {
	return func(t *testing.T, r row) {
		for _, use := range all {
			use(t, r)
		}
	}
}

// noLaxerHold: the household line for hot holding is at least the row's.
func noLaxerHold(t *testing.T, r row) {
	rule := HoldFor(finished(Shoulder, Beef, 200, InBox))
	if want := r.number(t, "temp_min_f"); fahrenheit(rule.LimitC) < want-1e-9 {
		t.Errorf("%s: held at %.1f F, row asks %v", r["source"], fahrenheit(rule.LimitC), want)
	}
}

// fridge: MostHours is the printed range at both of its ends; LeastHours not above it.
func fridge(t *testing.T, r row) {
	for _, end := range []string{"min", "max"} {
		th := ThawInRefrigerator(Poultry, r.number(t, "weight_"+end+"_lb")*kgPerLb)
		if want := r.number(t, "time_"+end+"_h"); math.Abs(th.MostHours-want) > 1e-6 || th.LeastHours > want {
			t.Errorf("refrigerator, %s lb: %+v, printed %v h", r["weight_"+end+"_lb"], th, want)
		}
	}
}

// fridgeRule: a day for 4 lb at most, for 5 lb at least.
func fridgeRule(t *testing.T, r row) {
	most := ThawInRefrigerator(Beef, r.number(t, "weight_min_lb")*kgPerLb).MostHours
	least := ThawInRefrigerator(Beef, r.number(t, "weight_max_lb")*kgPerLb).LeastHours
	if math.Abs(most-24) > 1e-6 || math.Abs(least-24) > 1e-6 {
		t.Errorf("a day: 4 lb %v h, 5 lb %v h", most, least)
	}
}

// water: half an hour a pound at both ends of the printed range; never less than the
// printed time of a package of that weight.
func water(t *testing.T, r row) {
	for _, end := range []string{"min", "max"} {
		th := ThawInColdWater(r.number(t, "weight_"+end+"_lb") * kgPerLb)
		if want := r.number(t, "time_"+end+"_h"); math.Abs(th.LeastHours-want) > 1e-6 || th.MostHours < want-1e-6 {
			t.Errorf("cold water, %s lb: %+v, printed %v h", r["weight_"+end+"_lb"], th, want)
		}
	}
}

// packages: the longest printed time, over the whole printed range of weights.
func packages(t *testing.T, r row) {
	for _, end := range []string{"weight_min_lb", "weight_max_lb"} {
		want := r.number(t, "time_max_h")
		if th := ThawInColdWater(r.number(t, end) * kgPerLb); math.Abs(th.MostHours-want) > 1e-6 {
			t.Errorf("package, %s lb: %+v, printed %v h", r[end], th, want)
		}
	}
}

func keeps(c Category) rowUse {
	return func(t *testing.T, r row) {
		if k := ThawInRefrigerator(c, 2).KeepsHours; k != r.number(t, "time_min_h") {
			t.Errorf("%s keeps %v h, printed %s-%s", c, k, r["time_min_h"], r["time_max_h"])
		}
	}
}

func hasCaution(code string, s Situation) rowUse {
	return func(t *testing.T, r row) {
		for _, c := range Cautions(s) {
			if c.Code == code && c.Source == r["source"] {
				return
			}
		}
		t.Errorf("%s, %s: no caution %s with this source", r["source"], r["item"], code)
	}
}

const kgPerLb = 0.45359237 // by definition

var uses = map[[2]string]rowUse{
	{"fda_3_501_16", "time/temperature control food"}:                                             noLaxerHold,
	{"fda_3_501_16", "roasts cooked or reheated by the roast rule"}:                               isF(HoldFor(Finished{Piece: Joint, Category: Beef, CoreC: celsius(130), Place: InOven, AirC: 20, OvenC: 70, ByRoast: true}).LimitC, "temp_min_f"),
	{"fda_3_501_14", "cooked food, step 1: 135 to 70 F"}:                                          both(isF(CoolingStartC, "temp_max_f"), isF(CoolingMiddleC, "temp_min_f"), isHours(CoolingFirstMinutes)),
	{"fda_3_501_14", "cooked food, whole: 135 to 41 F"}:                                           both(isF(CoolingStartC, "temp_max_f"), isF(CoolingEndC, "temp_min_f"), isHours(CoolingWholeMinutes)),
	{"fda_3_403_11", "cooked and cooled food, within 2 h"}:                                        both(isF(ReheatMinimum().CoreC, "temp_min_f"), isHours(ReheatWithinMinutes)),
	{"usda_danger_zone", "range"}:                                                                 both(isF(DangerLowC, "temp_min_f"), isF(DangerHighC, "temp_max_f")),
	{"usda_danger_zone", "time out of refrigeration"}:                                             isHours(HoldFor(Finished{Piece: Joint, CoreC: celsius(145), Place: InOpen, AirC: 20}).Clock(0).Eaten),
	{"usda_danger_zone", "time out of refrigeration when air is above 90 F"}:                      both(isF(HotAirC, "temp_min_f"), isHours(HoldFor(Finished{Piece: Joint, CoreC: celsius(145), Place: InOpen, AirC: 40}).Clock(0).Eaten)),
	{"usda_danger_zone", "consumer advice"}:                                                       noLaxerHold,
	{"usda_danger_zone", "refrigerate within"}:                                                    both(isHours(OutMinutes), hasCaution("two-hours", Situation{})),
	{"usda_danger_zone", "refrigerator storage, days 3-4"}:                                        hasCaution("leftovers-days", Situation{ChillAhead: true}),
	{"usda_danger_zone", "leftovers"}:                                                             isF(MinimumFor(Leftovers, Prep{}).CoreC, "temp_min_f"),
	{"usda_hot_hold_advice", "advisory: 135 F up to 8 h"}:                                         noLaxerHold,
	{"usda_hot_hold_advice", "advisory: 140 F without time limit"}:                                noLaxerHold,
	{"fsis_smoking", "air temperature in the smoker or covered grill"}:                            both(isF(SmokerLowC, "temp_min_f"), isF(SmokerHighC, "temp_max_f"), hasCaution("low-grate", Situation{LowGrate: true})),
	{"fsis_smoking", "thaw completely before smoking"}:                                            func(t *testing.T, _ row) { refusedFrozen(t, 225) },
	{"fsis_smoking", "partial cooking ahead only if it goes straight to the hot smoker or grill"}: hasCaution("no-partial-cooking", Situation{ChillAhead: true}),
	{"fsis_smoking", "whole poultry end temperature"}:                                             isF(MinimumFor(Poultry, Prep{}).CoreC, "temp_min_f"),
	{"fsis_roasting_general", "lowest oven setting for meat and poultry"}:                         isF(OvenLowC, "temp_min_f"),
	{"fsis_roasting_general", "cooking from frozen takes at least 50 pct longer"}: func(t *testing.T, r row) {
		if r["note"] != "factor 1.5" || FrozenFactor != 1.5 || JudgeFrozen(celsius(350)).Kind == Refused {
			t.Errorf("factor %v, printed %s", FrozenFactor, r["note"])
		}
	},
	{"fsis_thaw", "refrigerator, rule of thumb: 24 h per 4-5 lb"}:       fridgeRule,
	{"fsis_thaw", "turkey in refrigerator at 40 F or less"}:             fridge,
	{"fsis_thaw", "turkey in cold water, changed every 30 min"}:         water,
	{"fsis_thaw", "small package in cold water"}:                        packages,
	{"fsis_thaw", "package in cold water"}:                              packages,
	{"fsis_thaw", "keeps in refrigerator: ground meat, poultry, fish"}:  both(keeps(Ground), keeps(Poultry), keeps(Fish)),
	{"fsis_thaw", "keeps in refrigerator: red meat cuts"}:               both(keeps(Beef), keeps(Pork)),
	{"fsis_thaw", "after cold-water or microwave thawing cook at once"}: hasCaution("thaw-cold", Situation{Frozen: true}),
	{"cfia_poultry", "barbecued poultry for sale, hot"}:                 noLaxerHold,
}

func refusedFrozen(t *testing.T, grateF float64) {
	if v := JudgeFrozen(celsius(grateF)); v.Kind != Refused {
		t.Errorf("frozen at %v F: %+v", grateF, v)
	}
}

// unused rows, and why.
var unused = map[[2]string]string{
	{"fda_3_501_16:cold", "time/temperature control food"}:                                        "cold holding is the refrigerator's; 41 F is the end of the cooling rule",
	{"fda_3_501_14", "food prepared from ambient ingredients"}:                                    "salads and the like are not planned",
	{"fda_3_501_14_old", "cooked food, step 1: 140 to 70 F"}:                                      "older edition",
	{"fda_3_501_14_old", "cooked food, step 2: 70 to 41 F"}:                                       "older edition",
	{"fda_3_501_13", "refrigerated thawing"}:                                                      "the consumer text asks for 40 F",
	{"fda_3_501_13", "running water, water temperature"}:                                          "running water is not offered",
	{"fda_3_501_13", "running water, raw food above 41 F including preparation and cooling back"}: "running water is not offered",
	{"fda_3_501_19", "food starting at 41 F or less or 135 F or more"}:                            "4 h as a written control is for kitchens; households get 2 h",
	{"fda_3_501_19", "cold food kept at 70 F or less"}:                                            "cold food is not planned",
	{"fda_3_403_11", "commercially processed ready-to-eat food, within 2 h"}:                      "all leftovers are held to 165 F",
	{"usda_danger_zone", "bacteria can double in about 20 min"}:                                   "a reason, not a rule",
	{"fsis_roasting_general", "whole turkey stands before carving"}:                               "a rest for carving, not a rule of temperature",
	{"cfia_poultry", "barbecued poultry for sale, cold"}:                                          "cold holding",
}

func TestEveryHoldingRowIsUsedOrExplained(t *testing.T) {
	seen := map[[2]string]bool{}
	for _, r := range readRows(t, "holding.csv") {
		key := [2]string{r["source"], r["item"]}
		if r["topic"] == "cold holding" && r["source"] == "fda_3_501_16" {
			key[0] += ":cold"
		}
		seen[key] = true
		switch {
		case uses[key] != nil:
			uses[key](t, r)
		case unused[key] == "":
			t.Errorf("%v: neither used nor explained", key)
		}
	}
	if len(seen) != len(uses)+len(unused) {
		t.Errorf("%d kinds of rows, %d used, %d explained: a key is misspelt", len(seen), len(uses), len(unused))
	}
}
