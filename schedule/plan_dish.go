package schedule

import (
	"time"
)

// Places of a stage away from or on the grate.
const (
	PlaceGrate = "grate"
	PlaceOven  = "oven"
)

// Lethality compares the predicted core temperature of a cook and its rest with a
// published table of times and temperatures. It never stands for the minimum.
type Lethality struct {
	Product  string     `json:"product"`            // that the table was published for
	Source   string     `json:"source"`             // key of the publication
	FatPct   float64    `json:"fat_pct,omitempty"`  // of the table's column; poultry only
	TableLog float64    `json:"table_log,omitzero"` // decades of the whole table; 0 where it prints none
	Fraction float64    `json:"fraction"`           // of the table's reduction, 1 at the most
	Reached  bool       `json:"reached"`            // the whole of it
	At       *time.Time `json:"at,omitempty"`       // when
	Text     string     `json:"text"`
}

// DishPlan is what becomes of one dish.
type DishPlan struct {
	ID       string       `json:"id"`
	Name     string       `json:"name"`
	Cut      string       `json:"cut"`
	Count    int          `json:"count"`
	MassKg   float64      `json:"mass_kg"` // of all pieces, raw
	ServeAt  time.Time    `json:"serve_at"`
	TargetC  float64      `json:"target_c,omitempty"`  // core at take-off; 0 for timed items
	Doneness string       `json:"doneness,omitempty"`  // name of the target, if it has one
	MinimumC float64      `json:"minimum_c,omitempty"` // published minimum of the category; 0 if there is none
	Way      string       `json:"way"`                 // how it cooks, in a few words
	Chance   float64      `json:"chance"`              // of being ready at ServeAt
	Probe    string       `json:"probe,omitempty"`     // where the probe goes, how to tell it is done
	Batches  []Batch      `json:"batches"`
	Holds    []HoldAdvice `json:"holds,omitempty"` // gentlest that works first

	Lethality *Lethality `json:"lethality,omitempty"`  // information beside the published minimum
	DoneEarly string     `json:"done_early,omitempty"` // what to do when it is done at the early end
}

// Batch is the pieces of a dish that share the grate at one time.
type Batch struct {
	Number     int         `json:"number"` // from 1
	Pieces     []Piece     `json:"pieces"`
	Chance     float64     `json:"chance"`
	Stages     []Stage     `json:"stages"`
	Milestones []Milestone `json:"milestones"`
	Curve      []Point     `json:"curve,omitempty"`
}

// Piece is one piece of meat and where it lies, from the grate's centre.
// Positions are per phase ordinal; none where no room was found by shape.
type Piece struct {
	MassKg     float64 `json:"mass_kg"`
	ThicknessM float64 `json:"thickness_m"`
	WidthM     float64 `json:"width_m"`
	LengthM    float64 `json:"length_m"`
	AreaM2     float64 `json:"area_m2"` // of the grate it covers
	Disc       bool    `json:"disc,omitempty"`
	Rack       bool    `json:"rack,omitempty"`  // covers a rectangle, else an oval
	Lies       string  `json:"lies,omitempty"`  // halved, standing, rolled or bent; empty for flat
	Grate      int     `json:"grate,omitempty"` // which of several grates of its zone it lies on, from 1 for the lowest
	Spots      []Spot  `json:"spots,omitempty"`
}

// Spot is where a piece, or a half of it, lies in a phase: its centre, metres from the
// grate's centre (x to the right, y away from the cook), turned by AngleDeg, and how long
// and wide it lies there: shorter where it is bent or pushed together.
type Spot struct {
	Phase    int     `json:"phase"` // ordinal of the phase, from 1
	XM       float64 `json:"x_m"`
	YM       float64 `json:"y_m"`
	AngleDeg float64 `json:"angle_deg"`
	LengthM  float64 `json:"length_m,omitempty"`
	WidthM   float64 `json:"width_m,omitempty"`
	Part     int     `json:"part,omitempty"` // 1 or 2 of a piece that is cut in half
}

// StageKind says what a batch goes through in a stage.
type StageKind string

// Kinds of stage.
const (
	StageBare    StageKind = "bare"
	StageWrapped StageKind = "wrapped"
	StageSear    StageKind = "sear"
	StageRest    StageKind = "rest"
	StageHold    StageKind = "hold"
)

// Stage is a stretch of a batch's day as it is planned, that is with each stage
// of cooking taken at the asked chance: From and To are instants of the plan,
// Minutes the 10th, 50th and 90th percentile of the stage alone.
type Stage struct {
	Kind    StageKind `json:"kind"`
	From    time.Time `json:"from"`
	To      time.Time `json:"to"`
	Minutes Minutes   `json:"minutes"`
	Phase   int       `json:"phase,omitempty"`    // ordinal of the first phase it cooks in, from 1; 0 away from the grate
	PhaseTo int       `json:"phase_to,omitempty"` // ordinal of the last one
	Zone    string    `json:"zone,omitempty"`     // on the grate
	Place   string    `json:"place,omitempty"`    // grate, oven, insulated-box, tent, counter
	Direct  bool      `json:"direct,omitempty"`
	LevelC  float64   `json:"level_c,omitempty"` // of the air beside the meat
	With    string    `json:"with,omitempty"`    // foil or paper
	CoreC   float64   `json:"core_c,omitempty"`  // at the end, expected
	Flips   int       `json:"flips,omitempty"`
	AreaM2  float64   `json:"area_m2,omitempty"` // of the zone that the batch covers
}

// Minutes is a spread of a length of time: 10th, 50th, 90th percentile.
type Minutes struct {
	Early    float64 `json:"early"`
	Expected float64 `json:"expected"`
	Late     float64 `json:"late"`
}

// MilestoneKind says which instant of a batch a milestone is.
type MilestoneKind string

// Kinds of milestone.
const (
	MilestoneOn          MilestoneKind = "on"
	MilestoneStallBegins MilestoneKind = "stall-begins"
	MilestoneWrap        MilestoneKind = "wrap"
	MilestoneStallEnds   MilestoneKind = "stall-ends"
	MilestoneTakeOff     MilestoneKind = "take-off"
	MilestonePeak        MilestoneKind = "peak" // of the carry-over
	MilestoneRested      MilestoneKind = "rested"
	MilestoneServe       MilestoneKind = "serve"
)

// Milestone is an instant in the life of a batch.
type Milestone struct {
	Kind   MilestoneKind `json:"kind"`
	CoreC  float64       `json:"core_c,omitempty"` // expected at that instant; 0 where it is not modelled
	Window Window        `json:"window"`
}

// Point is a sample of a predicted curve at the expected pace.
type Point struct {
	At    time.Time `json:"at"`
	CoreC float64   `json:"core_c"`
	LowC  float64   `json:"low_c"`  // 10th percentile
	HighC float64   `json:"high_c"` // 90th percentile
}

// HoldAdvice says how a finished batch waits, and how long.
type HoldAdvice struct {
	Method       string    `json:"method"`
	Chosen       bool      `json:"chosen"`
	LimitMinutes float64   `json:"limit_minutes"` // from the take-off until it is on the table: by the rule, pessimistic end
	Until        time.Time `json:"until"`         // if taken off at the early end
	Rule         string    `json:"rule"`
	Text         string    `json:"text"`

	HotMinutes   float64 `json:"hot_minutes,omitempty"` // above 140 F throughout until then; 0 where that is not claimed
	EatenMinutes float64 `json:"eaten_minutes"`         // eaten or chilled by then
	OvenC        float64 `json:"oven_c,omitempty"`      // what the oven is set to
	BoxMinutes   float64 `json:"box_minutes,omitempty"` // before a night in the oven it may wait so long in a box

	VentMinutes float64     `json:"vent_minutes,omitempty"` // open, before it is shut in
	CoreC       float64     `json:"core_c,omitempty"`       // at the table, taken off when expected; 0 where it is not modelled
	OuterC      float64     `json:"outer_c,omitempty"`      // the outer layer then
	OuterLowC   float64     `json:"outer_low_c,omitempty"`  // the same at the pessimistic end
	Course      []HoldPoint `json:"course,omitempty"`       // of the chosen way, from the take-off
}

// HoldPoint is a sample of a predicted hold.
type HoldPoint struct {
	At     time.Time `json:"at"`
	CoreC  float64   `json:"core_c"`  // what a probe in the middle shows
	OuterC float64   `json:"outer_c"` // just under the surface
	LowC   float64   `json:"low_c"`   // the same at the pessimistic end
}
