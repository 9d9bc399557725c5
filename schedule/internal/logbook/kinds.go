package logbook

// Kind says what an entry is: schedule.EntryKind.
type Kind string

// Kinds of entry that are readings.
const (
	Core    Kind = "core"    // of the dish, by its probe
	Coldest Kind = "coldest" // of the dish, the coldest place of a probe pushed through all of it
	Outer   Kind = "outer"   // of the dish, just under its surface, while it is held
	Grate   Kind = "grate"   // the air beside the meat at grate height
	Gauge   Kind = "gauge"   // the gauge in the lid
	Oven    Kind = "oven"    // the air of the kitchen oven, by a thermometer of its own
)

// Kinds of entry that are events.
const (
	Lit           Kind = "lit"            // the fire, first or again
	Level         Kind = "level"          // the cook sets the grate to another level
	FireOut       Kind = "fire-out"       // the fire has gone out, or choked
	Refuelled     Kind = "refuelled"      // fuel was added
	LidOpened     Kind = "lid-opened"     // the readings of the next minutes mean little
	LidClosed     Kind = "lid-closed"     // it was off until now
	Vents         Kind = "vents"          // as they stand from now on: top 1/4, bottom 1/2
	LitCoals      Kind = "lit-coals"      // so many were poured or added, lit
	UnlitCoals    Kind = "unlit-coals"    // so many were laid on, unlit
	CoalsOut      Kind = "coals-out"      // so many burning ones were taken out, or a share of all: 1/2
	AshCleared    Kind = "ash-cleared"    // the ash was swept out from under the coals
	Wind          Kind = "wind"           // as it blows from now on: 12 mph, or calm
	Rain          Kind = "rain"           // it rains from now on; with over, it has stopped
	NoFuel        Kind = "no-fuel"        // none is left to add, until some is
	OvenOff       Kind = "oven-off"       // the kitchen oven went off
	On            Kind = "on"             // the dish was put on
	Wrapped       Kind = "wrapped"        // in the value, foil or paper, or none: it is left bare
	ToOven        Kind = "to-oven"        // goes on cooking in the kitchen oven at a temperature
	Pulled        Kind = "pulled"         // taken off, done
	Boxed         Kind = "boxed"          // put where it is held: into a cooler or an oven, or where the plan has it
	Counter       Kind = "counter"        // done, and stands without heat
	Stopped       Kind = "stopped"        // taken off the heat before it was done
	Chilled       Kind = "chilled"        // into the refrigerator or on ice
	Restarted     Kind = "restarted"      // back on the heat
	Served        Kind = "served"         // the dish is on the table; of no dish, the meal
	ServingMoved  Kind = "serving-moved"  // to the clock in the value
	DishAdded     Kind = "dish-added"     // the value is the dish as JSON
	DishCancelled Kind = "dish-cancelled" // no longer wanted
)
