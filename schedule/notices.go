package schedule

import (
	"slices"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/safety"
)

// noteTexts says what the codes of the fire mean.
var noteTexts = map[fire.Note]string{
	fire.SizeOutsideLaw: "The grill is smaller than 14 in or larger than 27 in: the fuel figures are stretched beyond what they were compared with.",
	fire.LevelOutside:   "The layout is not made for this grate temperature: watch it closely.",
	fire.RingRunsCool:   "Even the thickest ring gives too little heat for this level on this day: bank the coals instead.",
	fire.LumpUneven:     "Lump burns a ring unevenly: close gaps as they show.",
	fire.NeedsBasket:    "This is more fuel than a loose pile holds: use a basket or bricks to keep it together.",
	fire.ThinAir:        "At this altitude, open the vents a little more.",
	fire.FillsNotLaw:    "At searing heat fuel is counted in chimney fills of 45 to 60 minutes each.",
}

// Notices lists everything a plan may warn of, each code once: first the findings
// of the planner, then the findings and cautions of food and fire safety, the
// gravest of these first. The text is what the code means; a plan says it with its
// names and figures. Source is a source key, or "common practice, no source".
func Notices() []Caution {
	all := slices.Clone(notices)
	for _, c := range safety.Catalogue() {
		if _, ours := Notice(c.Code); !ours {
			all = append(all, Caution{Code: c.Code, Severity: Severity(c.Severity), Text: c.Sentence, Source: c.Source})
		}
	}
	return all
}

// notices are the findings of the planner by subject. Where safety has the code
// too, the planner says it with figures of its own.
var notices = []Caution{
	// The day cannot be done.
	{"clash", Danger, "These dishes cannot be had together under these rules.", ours},
	{"never-arrives", Danger, "No fire that the dish may cook on brings it to its target.", ours},
	{"no-room", Danger, "The dish does not fit on the grate in any layout that cooks it.", ours},
	{"too-many-batches", Danger, "The menu makes more loads of the grate than a day holds.", ours},
	{"no-plan-found", Danger, "No plan was found within the budget of the search, and none was ruled out.", ours},
	{CodeNoRemedy, Info, "Of the changes that were tried, none makes the day work.", ours},
	{"ahead-infeasible", Danger, "What is to be cooked the day before cannot be had that day.", ours},
	{"ahead-chill", Danger, "No portion of the dish can be chilled within the published limits.", "fda_3_501_14"},

	// The fire.
	{"fire-cannot-last", Warning, "The fire runs down while nobody tends it.", practice},
	{"refuel-in-quiet", Warning, "A top-up comes due in quiet hours.", practice},
	{"too-windy", Danger, "Wind over 20 mph is forecast: no fire is lit in it.", practice},
	{"assumed-mild", Warning, "Nobody gave the weather of a day in winter: a mild one is planned.", ours},
	{"fire-weather", Info, "Wind, cold or rain take more coals; the counts have them in.", practice},
	{"own-grill", Info, "The vents rest on what cooks taught of this grill.", ours},
	{"no-charcoal-advice", Info, "A grill of another kind gets no charcoal advice.", ours},
	{"size-outside-law", Info, noteTexts["size-outside-law"], practice},
	{"level-outside-layout", Info, noteTexts["level-outside-layout"], practice},
	{"ring-runs-cool", Info, noteTexts["ring-runs-cool"], practice},
	{"lump-fuse-uneven", Info, noteTexts["lump-fuse-uneven"], practice},
	{"needs-basket", Info, noteTexts["needs-basket"], practice},
	{"thin-air", Info, noteTexts["thin-air"], practice},
	{"chimney-fills", Info, noteTexts["chimney-fills"], practice},
	{"fire-weak", Warning, "With all vents open the cooker is likely to stay below the level.", practice},
	{"layout-asked", Info, "The coals lie as they were asked to.", ours},
	{"layout-ring", Info, "The coals lie in a ring, which lasts longest by itself.", practice},
	{"layout-not-had", Warning, "The coals cannot lie as they were asked to.", ours},
	{"target-lowered", Warning, "The target lies too near the boiling point; the plan aims a little lower.", ours},
	{"grate-doubtful", Warning, "The grate is hardly as cool as its gauge says; the times are for a hotter one.", ours},
	{"grate-creeps", Warning, "The core only just creeps up to its target at that heat; a little hotter or wrapped is surer.", ours},
	{CodeHotter, Info, "A tough cut cooks hotter than it usually does; the plan says why.", ours},
	{"measure-thickness", Info, "How thick the piece is decides when it is done: measure it.", ours},
	{"done-before-wrap", Info, "The dish is done before it would be wrapped.", ours},
	{"tight", Info, "The pieces will be tight on their side of the grate.", ours},

	// The night.
	{CodeNightDay, Info, "Nothing is on the fire in the usual hours of sleep.", ours},
	{CodeNightOven, Info, "What is cooked in the evening waits in the oven overnight.", ours},
	{CodeNightEarly, Info, "The day begins before the usual hours of sleep end.", ours},
	{CodeNightFire, Warning, "The fire burns unwatched while people sleep.", practice},
	{"night-sure", Warning, "How many fires like this one keep their level through the night, untouched.", ours},
	{CodeNightAwake, Warning, "Somebody has to be up in the usual hours of sleep.", ours},

	// Before the day.
	{"thaw-first", Info, "A frozen piece must begin to thaw in time.", "fsis_thaw"},
	{"thaw-no-time", Danger, "There is no time to thaw a frozen piece.", "fsis_thaw"},
	{"frozen-longer", Warning, "A piece goes on frozen and takes at least half as long again.", "fsis_roasting_general"},
	{"salt-no-time", Info, "There is no evening before to salt in.", practice},

	// After the fire.
	{CodeHoldShort, Warning, "Done on a fast day, the dish cannot wait until it is served.", "usda_danger_zone"},
	{CodeOvenDries, Warning, "Hotter than 165 °F for more than 4 hr, what is held in an oven dries.", practice},
	{"box-unproven", Info, "A box that is called good counts as a usual one until a hold of it has shown it.", ours},
	{"hold-grill-busy", Warning, "The fire is still needed, so nothing can be held over it as it dies.", ours},
	{"travel-short", Warning, "The dish does not stay hot until it arrives.", "usda_danger_zone"},
	{"ahead-portions", Info, "Only portions up to a thickness chill within the published limits.", "fda_3_501_14"},
	{"ahead-fuel", Info, "The day before burns charcoal of its own.", ours},

	{"cool-zones", Info, "No zone beside the fire has the heat that the dish is usually cooked at.", practice},

	// While it cooks.
	{Late, Warning, "The dish is expected after it is served.", ours},
	{MayBeLate, Warning, "The dish is ready in time with less than the asked chance.", ours},
	{NeverDone, Warning, "As things stand the dish is not done within a day.", ours},
	{Early, Info, "The dish will have to wait for long.", ours},
	{"served-later", Warning, "What is left cannot be ready in time; the plan is for the earliest hour that works.", ours},
	{"stands-in-the-way", Warning, "What is on the grate is not done in time for the rest to follow.", ours},
	{"less-sure", Warning, "The serving instant holds only if things go as expected.", ours},
	{"stall", Info, "The core all but stands still: a stall, no fault.", ours},
	{"core-falling", Warning, "The core falls on the fire.", ours},
	{"fire-died", Danger, "The fire is out or dying.", practice},
	{"grate-off-level", Warning, "The grate is not at its level.", ours},
	{"fat-may-burn", Danger, "The grate went up at once and nothing was touched: fat may burn.", practice},
	{"grate-drifts", Info, "The grate is at its level now, and on its way off it.", ours},
	{"grate-doubted", Warning, "A reading of the grate is not what the fire can have done.", ours},
	{"gauge-only", Info, "Only the gauge in the lid was read.", practice},
	{"gauge-offset", Info, "The lid gauge is off by another amount than was said.", ours},
	{"no-readings", Info, "A piece on the fire was never measured.", ours},
	{"readings-stopped", Info, "The readings of a piece have stopped.", ours},
	{"taken-as-done", Info, "The log is silent on a step whose time is past; the plan assumes that it was done.", ours},
	{OwnFault, Warning, "The plan breaks a rule that every plan keeps, and nothing in the log contradicts itself.", ours},
	{"unsound", Danger, "The log does not fit together, and the plan made of it breaks a rule that every plan keeps.", ours},
	{LineLeft, Warning, "A line of the log cannot be read; the rest is followed without it.", ours},
	{"other-model", Warning, "The plan was made by another edition of the model; its times are worked out anew.", ours},
	{"unwatched-heat", Danger, "A piece is far colder than hours of heat leave it, after a fire that nobody read.", ours},
	{"slow-over", Danger, "A bird was still below 140 °F (60 °C) after 4 hours between that and 40 °F (4 °C).", practice},
	{"no-word", Warning, "Nothing is known of a piece that was due off before its serving.", ours},
	{ProbeInAir, Warning, "A probe shows the air of the grill, or the grate.", ours},
	{ProbeFellOut, Warning, "A probe shows the air outside.", ours},
	{ProbeHot, Warning, "A probe shows more than the meat can have.", ours},
	{ReadingOpen, Danger, "A reading shows a fire that died, or a probe in the wrong place; which is not known yet.", ours},
	{ReadingUnit, Warning, "A reading fits only if it was meant in the other unit.", ours},
	{ReadingOther, Warning, "A reading fits another dish.", ours},
	{ReadingSettled, Info, "A reading that was doubtful is settled by what was measured after it.", ours},
	{FrozenMiddle, Warning, "A piece is still frozen in its middle.", ours},
	{WentOnWarm, Danger, "A piece shows a core as if it had been out of the refrigerator for hours.", "usda_danger_zone"},
	{Plateau, Warning, "The core stands near its target: tenderness decides, or a measurement at another place.", ours},
	{SlowCook, Warning, "A cook is slower than 19 in 20 such cooks.", ours},
	{OnNotTold, Warning, "Nobody logged when a piece went on; the plan assumes that it was as planned.", ours},
	{HoldRead, Info, "The readings of what is held say until when it lasts.", ours},
	{StandsOpen, Warning, "What is done, or was taken off before it was, stands without heat.", "usda_danger_zone"},
	{PastTarget, Warning, "A piece is at its target, or past it.", ours},
	{Leftovers, Warning, "What is left of a dish that was served has a deadline.", "usda_danger_zone"},
	{OffUndone, Danger, "A piece came off below what it must have shown, and was not read at it since.", "usda_danger_zone"},
	{OffUnread, Warning, "A piece came off, and nobody read it then at what it must show.", ours},
	{LidWasOff, Warning, "The lid was off for so long that the meat had no heat.", ours},
	{Sparks, Warning, "The wind takes sparks and embers from a fire that burns.", practice},
	{InTheRain, Warning, "It rains on a fire that burns.", practice},
	{NoFuel, Warning, "No fuel is left, and the fire wants some.", practice},
	{CoolOven, Warning, "A piece below its minimum is in an oven that is too cool for it.", "fsis_roasting_general"},
	{FireRelit, Warning, "The fire was lit again, and nobody told when it went out.", ours},
	{HeatLost, Info, "A piece was without heat for a while; that counts beside what may come.", "usda_danger_zone"},
	{LowHeat, Warning, "The air beside a raw piece has been below 225 °F (107 °C) for half an hour.", ours},
	{RawBeside, Warning, "Raw meat went on beside what is partly cooked.", "fda_3_302_11"},
	{ProbeCold, Warning, "A probe shows less than the meat can have.", ours},

	// The guests.
	{CodeAssumed, Info, "A weight, a count or the weather was not said, and is taken as usual.", practice},
	{"burns-over", Warning, "It lies over the coals, where it burns before it is done if nobody turns it.", ours},
	{"planned-plain", Warning, "By its name more is meant than is planned.", ours},
	{"below-asked", Warning, "The odds that were asked for cannot be had.", ours},
	{CodeHeard, Warning, "Words that the form of a request does not have were read so.", ours},
	{CodeEarlyMeal, Warning, "The meal is planned for the small hours of the morning.", ours},
	{"too-little", Warning, "The menu is short for the guests.", practice},
	{"too-much", Info, "The menu is far more than the guests eat.", practice},
}

// Where a notice has no publication behind it: a fact of the trade, or a result of
// this plan.
const (
	practice = safety.NoSource
	ours     = "this plan"
)

// NewFinding is a finding of the table of notices, with a text of its own: a code has
// one severity and one source.
func NewFinding(code, path, text string, dishes ...string) Finding {
	n, _ := Notice(code) // what is not in the table has no severity, which the judge sees
	return Finding{Code: code, Severity: n.Severity, Path: path, Dishes: dishes, Text: text, Source: n.Source}
}

// Notice is the entry of a code.
func Notice(code string) (Caution, bool) {
	i := slices.IndexFunc(notices, func(c Caution) bool { return c.Code == code })
	if i < 0 {
		return Caution{}, false
	}
	return notices[i], true
}
