package safety

// entry is a caution and the situations it belongs to. A nil applies marks what only
// a judgement brings up, with the size it measured.
type entry struct {
	Caution
	applies func(Situation) bool
}

func always(Situation) bool { return true }

// catalogue is every caution and finding of this package, the gravest first, and
// within a severity in the order in which a cook should read them.
var catalogue = []entry{
	{Caution{"carbon-monoxide", Danger, "Burn charcoal outdoors only. Never in a house, garage, tent or vehicle, not even with the door open: the carbon monoxide has no smell and can kill you.", "cpsc_99_051"},
		func(s Situation) bool { return s.Charcoal }},
	{Caution{"fire-unattended", Danger, "This fire burns unattended for hours. Set the grill level on dirt or stone, away from walls, fences and dry grass, lid on, and set a high and low temperature alarm.", NoSource},
		func(s Situation) bool { return s.UnattendedFire }},
	{Caution{"flare-on-opening", Danger, "A starved fire flares when air rushes in. " + OpenStarved, NoSource},
		func(s Situation) bool { return s.StarvedFireOpened && !s.NoSchedule }},
	{Caution{"lit-coals-moved", Danger, "Take the food and the grate off before you move lit coals. Wear long gloves and closed shoes.", NoSource},
		func(s Situation) bool { return s.LitCoalChange }},
	{Caution{"target-refused", Danger, "This target is below the USDA minimum for such food and is not planned.", "fsg_safemin_2019"}, nil},
	{Caution{"target-refused-frail", Danger, "This target is below the USDA minimum and is not planned for frail guests.", "fsg_safemin_2019"}, nil},
	{Caution{"target-not-a-temperature", Danger, "The target is not a temperature.", NoSource}, nil},
	{Caution{"frozen-refused", Danger, "Thaw it completely first: on a slow fire a frozen center stays too long between 40 and 140 °F (4 and 60 °C).", "fsis_smoking"}, nil},
	{Caution{"partial-cooking", Danger, "It was stopped before the USDA minimum and chilled. Cooking part of the way and finishing later is outside the published limits: do not serve it.", "fsis_smoking"}, nil},
	{Caution{"fire-out-over", Danger, "With the fire out this is outside the published limits: do not serve it.", "usda_danger_zone"}, nil},
	{Caution{"low-heat-over", Danger, "On so little heat this is outside the published limits: do not serve it.", "usda_danger_zone"}, nil},
	{Caution{"stopped-over", Danger, "Off the heat before it was done, this is outside the published limits: do not serve it.", "usda_danger_zone"}, nil},
	{Caution{"standing-over", Danger, "Standing out this long is outside the published limits: do not serve or keep it.", "usda_danger_zone"}, nil},
	{Caution{"hold-over", Danger, "The hold goes on after the published limit.", "usda_danger_zone"}, nil},
	{Caution{"cooling-outside", Danger, "This is outside the published limits: do not keep it.", "fda_3_501_14"}, nil},

	{Caution{"target-below-minimum", Warn, "A target on this sheet is below the USDA minimum. Tell your guests, and do not give it to anyone who is very young, old, pregnant or ill.", "fsg_safemin_2019"},
		func(s Situation) bool { return s.TargetBelowMinimum }},
	{Caution{"frail-guests", Warn, "Very young, old, pregnant or ill guests get nothing below the USDA minimum: measure every piece you serve them.", "fsis_memory"},
		func(s Situation) bool { return s.Frail }},
	{Caution{"who-eats", Warn, "Ask first: is anyone who eats very young, old, pregnant or ill? Then write frail: true under guests and plan again: the rules are stricter. If nobody is, write frail: false.", "fsis_memory"},
		func(s Situation) bool {
			return !s.Frail && !s.FrailAsked && !s.NoSchedule && (s.WholeMuscle || s.Poultry || s.Ground)
		}},
	{Caution{"label-not-read", Warn, "Label not read: solution, basted, tenderized, rolled, tied, stuffed? Say so. Until then birds 165 °F (74 °C) everywhere, pork 155 °F (69 °C) or 145 °F (63 °C) held for 3 min.", "fda_3_401_11"},
		func(s Situation) bool { return s.LabelUnread && !s.NoSchedule }},
	{Caution{"measure", Warn, "Measure in the thickest part, clear of bone, fat and grate. The thermometer decides, not the clock.", "fsis_memory"}, always},
	{Caution{"measure-poultry", Warn, "Poultry: measure each piece in its thickest part, and a whole bird in the inner thigh and the breast. Every reading must be 165 °F (74 °C) or more.", "fsis_memory"},
		func(s Situation) bool { return s.Poultry }},
	{Caution{"measure-ground", Warn, "Patties and sausages: push the probe in from the side, to the middle, and measure each one.", "fsis_memory"},
		func(s Situation) bool { return s.Ground }},
	{Caution{"measure-stuffing", Warn, "Measure the middle of the stuffing too: 165 °F (74 °C) or more.", "fsg_safemin_2019"},
		func(s Situation) bool { return s.Stuffed }},
	{Caution{"pierced", Warn, "Needles and blades push surface bacteria into the meat: never serve it below its FDA minimum.", "fda_3_401_11"},
		func(s Situation) bool { return s.Pierced }},
	{Caution{"colour", Warn, "Color is no sign of doneness: smoke keeps cooked meat pink, and raw meat can turn brown.", "fsis_memory"}, always},
	{Caution{"raw-cooked-apart", Warn, "Keep raw and cooked apart: clean plate, clean tongs, washed hands.", "fsis_memory"}, always},
	{Caution{"sauce-apart", Warn, "Sauce and glaze: from a portion that never met raw meat, with a fresh brush, or boiled. Stop basting raw meat 10 min before it comes off.", NoSource},
		func(s Situation) bool { return !s.NoSchedule && (s.WholeMuscle || s.Poultry || s.Ground) }},
	{Caution{"two-hours", Warn, "Don't leave food out more than 2 hr, or 1 hr above 90 °F (32 °C): eat it or chill it.", "usda_danger_zone"}, always},
	{Caution{"slow-through-danger-zone", Warn, "For poultry, ground, stuffed, injected, tenderized, rolled or boned pieces keep it under 4 hr: use more heat or smaller pieces.", NoSource}, nil},
	{Caution{"low-grate", Warn, "The grate is planned below 225 °F (107 °C), the published floor for smoking.", "fsis_smoking"},
		func(s Situation) bool { return s.LowGrate }},
	{Caution{"no-partial-cooking", Warn, "Cook it through in one go. Never let part-cooked meat wait: it goes straight on to the hot grill.", "fsis_smoking"},
		func(s Situation) bool { return s.ChillAhead }},
	{Caution{"chill-fast", Warn, "Cut it small and spread it shallow: from 135 to 70 °F (57 to 21 °C) within 2 hr, to 41 °F (5 °C) within 6 hr in all.", "fda_3_501_14"},
		func(s Situation) bool { return s.ChillAhead }},
	{Caution{"cooling-unknown", Warn, "No reading shows how it cooled. If it was not at 70 °F (21 °C) after 2 hr, do not keep it.", "fda_3_501_14"}, nil},
	{Caution{"reheat", Warn, "Reheat to 165 °F (74 °C) in the middle, within 2 hr.", "fda_3_403_11"},
		func(s Situation) bool { return s.Reheat }},
	{Caution{"reheat-slow", Warn, "Reheating may take 2 hr at most: use more heat, now.", "fda_3_403_11"}, nil},
	{Caution{"fire-out", Warn, "Get the fire going again or take the food to the oven, then measure.", "usda_danger_zone"}, nil},
	{Caution{"hold-line", Warn, "While it is held, measure just under the surface. Below 140 °F (60 °C), serve it or chill it.", "usda_danger_zone"},
		func(s Situation) bool { return s.Holding }},
	{Caution{"travel", Warn, "Hot food travels hot: boxed, and still above 140 °F (60 °C) just under the surface when it arrives.", "usda_danger_zone"},
		func(s Situation) bool { return s.Travel }},
	{Caution{"thaw-cold", Warn, "Thaw in the refrigerator or in cold water, never on the counter. Change the water every 30 min, and cook at once after it.", "fsis_thaw"},
		func(s Situation) bool { return s.Frozen }},
	{Caution{"frozen-longer", Warn, "From frozen it takes at least half as long again.", "fsis_roasting_general"}, nil},
	{Caution{"carbon-monoxide-lighting", Warn, "Keep out of the smoke for 20 min after lighting and after adding unlit coals: that is when it is worst.", "emission_2020"},
		func(s Situation) bool { return s.Charcoal && !s.NoSchedule }},
	{Caution{"probes-out", Warn, "Take the probes out of the grill before the sear: past their rating they fail and read wrong.", NoSource},
		func(s Situation) bool { return s.Sear && s.Probes }},
	{Caution{"hot-ash", Warn, "Ash stays hot for days. Close the grill until it is cold, then use a metal can with a lid, away from the house.", NoSource},
		func(s Situation) bool { return s.Charcoal && !s.NoSchedule }},
	{Caution{"coals-until-out", Warn, "Leave the grill outdoors until it is cold: coals give off carbon monoxide until they are fully out.", "cpsc_99_051"},
		func(s Situation) bool { return s.Charcoal && !s.NoSchedule }},
	{Caution{"fire-rules", Warn, "Before you light: is there a burn ban, or a rule of your house or town against open fire?", NoSource},
		func(s Situation) bool { return s.Charcoal && !s.NoSchedule }},

	{Caution{"rest-counts", Info, "The resting time is part of the USDA minimum: don't cut early.", "fsg_safemin_2019"},
		func(s Situation) bool { return s.WholeMuscle }},
	{Caution{"leftovers-days", Info, "Eat chilled leftovers within 3 to 4 days.", "usda_danger_zone"},
		func(s Situation) bool { return s.ChillAhead }},
	{Caution{"local-codes", Info, "Local food and fire codes come before anything written here.", NoSource}, always},
}
