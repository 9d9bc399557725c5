package schedule

// Means says what an entry of the kind tells, in a few words; empty for no kind.
func (k EntryKind) Means() string { return kindMeanings[k] }

var kindMeanings = map[EntryKind]string{
	LogCore: "What its probe shows inside.", LogColdest: "The coldest place of a probe pushed through all of it.",
	LogOuter: "What a probe shows just under its surface, while it is held.", LogGrate: "The air at the grate, beside the meat.",
	LogGauge: "The gauge in the lid.", LogOven: "The air of the kitchen oven, by a thermometer of its own.",

	LogLit: "The fire was lit, first or again.", LogLevel: "You set the grate to another heat.", LogFireOut: "The fire has gone out, or choked.",
	LogRefuelled: "Fuel was added.", LogLidOpened: "The lid was opened: readings of the next minutes mean little.", LogLidClosed: "The lid was off until now.",
	LogVents: "How the vents stand from now on.", LogLitCoals: "So many coals were poured or added, lit.", LogUnlitCoals: "So many coals were laid on, unlit.",
	LogAshCleared: "The ash was swept out from under the coals.", LogWind: "The wind from now on.", LogRain: "It rains from now on; over: it has stopped.", LogNoFuel: "No fuel is left to add.",

	LogOn: "It was put on.", LogWrapped: "It was wrapped, or is left bare: none.", LogToOven: "It goes on cooking in the kitchen oven, at a temperature.",
	LogPulled: "It was taken off, done.", LogBoxed: "It was put into the cooler or the oven to wait, or where the plan has it.", LogCounter: "It is done, and stands without heat.",
	LogStopped: "It was taken off the heat before it was done.", LogChilled: "It went into the refrigerator or on ice.", LogRestarted: "It is back on the heat.",

	LogServed: "It is on the table; of no dish, the whole meal.", LogServingMoved: "People eat at another time.", LogDishAdded: "A dish was added, as JSON.", LogDishCancelled: "The dish is no longer wanted.",
}
