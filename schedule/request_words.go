package schedule

// ReadyDayBefore is the word of a dish that is cooked the day before, chilled, and
// warmed again for the table.
const ReadyDayBefore = "day-before"

// Kinds of grill.
const (
	GrillKettle = "kettle" // round, with a lid; wants Diameter
	GrillBox    = "box"    // rectangular grate; wants Width and Depth
	GrillOther  = "other"  // described by its zones; gets no charcoal advice

	// GrillUpright has its coals at the bottom and grates one above another; it wants Diameter, or Width and Depth, and
	// lays its coals in one way only.
	GrillUpright = "upright"
)

// Kinds of fuel.
const (
	FuelBriquettes = "briquettes"
	FuelLump       = "lump"
)

// What a piece is wrapped in.
const (
	WrapFoil  = "foil"
	WrapPaper = "paper"
	WrapNone  = "none"
)

// Ways of holding a finished piece, gentlest first.
const (
	HoldNone    = "none"
	HoldCounter = "counter"
	HoldTent    = "tent"
	HoldBox     = "insulated-box"
	HoldOven    = "oven"
	HoldGrill   = "grill" // on the grate over a dying fire
)

// What was done to a piece before it is cooked, as its label says or the cook knows.
const (
	PrepInjected   = "injected" // with a solution; basted too
	PrepStuffed    = "stuffed"
	PrepRolled     = "rolled" // or boned and tied
	PrepTenderised = "tenderised"
	PrepBrined     = "brined"
	PrepSalt       = "salt" // not yet: the plan has it salted the evening before
)

// How a dish ends.
const (
	FinishSear = "sear" // over the hot coals
	FinishNone = "none" // as it cooked, also where its cut is usually seared
)

// Words of a request for the insulated box.
const (
	BoxGood  = "good"
	BoxUsual = "usual"
	BoxSmall = "small"
)

// Words of a request for where a dish cooks.
const (
	ZoneDirect   = "direct"   // over the coals
	ZoneIndirect = "indirect" // beside them
)

// Words of a request for how racks of ribs lie.
const (
	LiesFlat     = "flat"
	LiesHalved   = "halved"
	LiesStanding = "standing" // in an upright rack, which stands on the grate
	LiesRolled   = "rolled"   // loosely, on a skewer
)

// Bands of heat, in the trade's words.
const (
	BandLow  = "low"
	BandHot  = "hot"
	BandSear = "sear"
)

// The words that a field may have, as messages and schemas list them.
var (
	grillKinds = []string{GrillKettle, GrillBox, GrillUpright, GrillOther}
	fuels      = []string{FuelBriquettes, FuelLump}
	boxKinds   = []string{BoxGood, BoxUsual, BoxSmall}
	wraps      = []string{WrapFoil, WrapPaper, WrapNone}
	holds      = []string{HoldNone, HoldCounter, HoldTent, HoldBox, HoldOven, HoldGrill}
	preps      = []string{PrepInjected, PrepStuffed, PrepRolled, PrepTenderised, PrepBrined, PrepSalt}
	finishes   = []string{FinishSear, FinishNone}
	zones      = []string{ZoneIndirect, ZoneDirect}
	waysToLie  = []string{LiesFlat, LiesHalved, LiesStanding, LiesRolled}
	readies    = []string{ReadyDayBefore}
	assumables = []string{AssumedWeight, AssumedCount, AssumedLarger}
)
