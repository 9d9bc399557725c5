package logbook

// Means says what an entry of the kind tells, in a few words; empty for no kind.
func (k Kind) Means() string { return kindMeanings[k] }

var kindMeanings = map[Kind]string{
	Core: "What its probe shows inside.", Coldest: "The coldest place of a probe pushed through all of it.",
	Outer: "What a probe shows just under its surface, while it is held.", Grate: "The air at the grate, beside the meat.",
	Gauge: "The gauge in the lid.", Oven: "The air of the kitchen oven, by a thermometer of its own.",

	Lit: "The fire was lit, first or again.", Level: "You set the grate to another heat.", FireOut: "The fire has gone out, or choked.",
	Refuelled: "Fuel was added.", LidOpened: "The lid was opened: readings of the next minutes mean little.", LidClosed: "The lid was off until now.",
	Vents: "How the vents stand from now on.", LitCoals: "So many coals were poured or added, lit.", UnlitCoals: "So many coals were laid on, unlit.",
	CoalsOut: "So many burning coals were taken out, or a share of all of them.", AshCleared: "The ash was swept out from under the coals.", Wind: "The wind from now on.", Rain: "It rains from now on; over: it has stopped.", NoFuel: "No fuel is left to add.", OvenOff: "The kitchen oven went off: what is in it cools.",

	On: "It was put on.", Wrapped: "It was wrapped, or is left bare: none.", ToOven: "It goes on cooking in the kitchen oven, at a temperature.",
	Pulled: "It was taken off, done; of several pieces one alone: one, first, second, small, big.", Boxed: "It was put into the cooler or the oven to wait, or where the plan has it.", Counter: "It is done, and stands without heat.",
	Stopped: "It was taken off the heat before it was done.", Chilled: "It went into the refrigerator or on ice.", Restarted: "It is back on the heat.",

	Served: "It is on the table; of no dish, the whole meal.", ServingMoved: "People eat at another time.", DishAdded: "A dish was added, as JSON.", DishCancelled: "The dish is no longer wanted.",
}
