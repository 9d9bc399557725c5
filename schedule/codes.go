package schedule

// Codes of the findings that make a day infeasible for reasons of its dishes.
const (
	CodeClash        = "clash"
	CodeNoRoom       = "no-room"
	CodeNeverArrives = "never-arrives"
)

// Why a reading is not believed.
const (
	ProbeInAir   = "probe-in-air"   // it shows the air of the grill, or the grate
	ProbeFellOut = "probe-fell-out" // it shows the air outside
	ProbeHot     = "probe-hot"      // warmer than the meat can be by now
	ProbeCold    = "probe-cold"     // colder than it should be
	ReadingOpen  = "reading-open"   // a fire that died, or something harmless: not known yet
	ReadingUnit  = "reading-unit"   // Celsius typed as Fahrenheit, or back
	ReadingOther = "reading-other"  // it fits another dish

	ReadingSettled = "reading-settled" // it was open, and what was measured after it settled it
	FrozenMiddle   = "frozen-middle"
	WentOnWarm     = "went-on-warm"
)

// What readings show of a piece that cooks.
const (
	Plateau = "plateau"  // it stands near its target
	LowHeat = "low-heat" // the air beside a raw piece is too cool

	RawBeside = "raw-beside" // raw meat went on beside what is partly cooked

	SlowCook   = "slow-cook"   // slower than nearly all such cooks
	HoldRead   = "hold-read"   // the readings of a hold say until when it lasts
	OnNotTold  = "on-not-told" // taken as put on, as planned
	StandsOpen = "stands-open" // done, and on a counter; or taken off before it was
	HeatLost   = "heat-lost"   // it was without heat for a while, and is in heat again
	LineLeft   = "line-left"   // a line of the log cannot be read
	PastTarget = "past-target" // it is at its target, or past it
	OffUndone  = "off-undone"  // it came off below what it must have shown
	OffUnread  = "off-unread"  // and so it may have: nobody read it then
	Leftovers  = "leftovers"   // it was served: what is left of it has a deadline
	LidWasOff  = "lid-was-off" // for so long that the meat had no heat
	Sparks     = "sparks"      // the wind takes embers along
	InTheRain  = "in-the-rain" // it rains on a fire
	NoFuel     = "no-fuel"     // none is left for what the fire wants
	OwnFault   = "own-fault"   // the plan breaks a rule of its own, and the log is sound
	CoolOven   = "cool-oven"   // raw meat is in an oven that does not cook it
	FireRelit  = "fire-relit"  // it was lit again, and nobody told that it was out
)

const CodeNoRemedy = "no-remedy"

// CodeHoldShort is the finding of a dish that may be done too early to be held.
const CodeHoldShort = "hold-short"

// Codes of a piece that may not be ready.
const (
	Late      = "late"        // expected after its serving
	MayBeLate = "may-be-late" // expected before it, but not at the asked chance
	NeverDone = "never-done"  // not done within a day as things stand
)

// Early is the code of a piece that will have to wait for long.
const Early = "early"

// CodeAssumed is the finding of what was left out of the dishes and taken from the catalogue.
const CodeAssumed = "assumed"

// CodeHeard is the finding of how a cook's own words were read.
const CodeHeard = "heard"

// CodeEarlyMeal is the finding of a meal in the small hours, which may be an evening without its PM.
const CodeEarlyMeal = "early-meal"

// CodeHotter is the finding of a tough cut that cooks hotter than it usually does, with the reason.
const CodeHotter = "hotter"

// CodeOvenDries is the finding of what is held in an oven too hot, and for long.
const CodeOvenDries = "oven-dries"
