package schedule

import (
	"time"
)

// Plan is the answer to a [Request]: what to do when. It is a value; JSON
// numbers are SI with the unit in the name, instants carry the offset of the
// request's time zone. An infeasible day is a Plan too: Feasible is false,
// Steps is empty, Findings and Remedies say why and what would help.
type Plan struct {
	Format     int        `json:"format"` // 1: fields are added, never changed
	ID         string     `json:"id"`
	Revision   int        `json:"revision"` // 0 for a first plan
	Name       string     `json:"name,omitempty"`
	Feasible   bool       `json:"feasible"`
	ServeAt    time.Time  `json:"serve_at"`           // last serving instant
	LightAt    *time.Time `json:"light_at,omitempty"` // first light of the fire
	TZ         string     `json:"tz"`
	Units      string     `json:"units"`
	Chance     Chance     `json:"chance"`
	Dishes     []DishPlan `json:"dishes"`
	Phases     []Phase    `json:"phases"`
	Fuel       *Fuel      `json:"fuel,omitempty"`
	Quiet      []Interval `json:"quiet,omitempty"` // quiet hours that touch the plan
	Steps      []Step     `json:"steps"`
	Findings   []Finding  `json:"findings"`
	Remedies   []Remedy   `json:"remedies"`
	Cautions   []Caution  `json:"cautions"`
	Solution   Solution   `json:"solution"`
	Provenance Provenance `json:"provenance"`
	Changes    []Change   `json:"changes,omitempty"` // what this revision changed, and why
	Request    Request    `json:"request"`
	RevisedAt  *time.Time `json:"revised_at,omitempty"` // the now of a revision; what lies before it is done
	Log        []Entry    `json:"log,omitempty"`        // all readings and events that the revision took in
	Ahead      *Ahead     `json:"ahead,omitempty"`      // what is cooked the day before and warmed again
	Asked      *Request   `json:"asked,omitempty"`      // the request as first planned, where the log has changed it since
}

// Chance says how sure the plan is.
type Chance struct {
	Asked float64 `json:"asked"` // of each dish
	All   float64 `json:"all"`   // that every dish is ready at its serving instant
}

// Interval is a stretch of time [From, To).
type Interval struct {
	From time.Time `json:"from"`
	To   time.Time `json:"to"`
}

// Window is the 10th, 50th and 90th percentile of an instant; the three are
// equal where the plan fixes the instant.
type Window struct {
	Early    time.Time `json:"early"`
	Expected time.Time `json:"expected"`
	Late     time.Time `json:"late"`
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
	Spots      []Spot  `json:"spots,omitempty"`
}

// Spot is where a piece lies in a phase: its centre, metres from the grate's
// centre (x to the right, y away from the cook), turned by AngleDeg.
type Spot struct {
	Phase    int     `json:"phase"` // ordinal of the phase, from 1
	XM       float64 `json:"x_m"`
	YM       float64 `json:"y_m"`
	AngleDeg float64 `json:"angle_deg"`
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
	LimitMinutes float64   `json:"limit_minutes"` // by the rule, pessimistic end
	Until        time.Time `json:"until"`         // if taken off at the early end
	Rule         string    `json:"rule"`
	Text         string    `json:"text"`

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

// Solution says how good the arrangement is.
type Solution struct {
	Status    string `json:"status"` // optimal, feasible, infeasible, unknown
	Proven    bool   `json:"proven"`
	Objective int    `json:"objective"` // tenths of a cost minute
	Hold      int    `json:"hold"`
	Mode      int    `json:"mode"`
	Change    int    `json:"change"`
	Burn      int    `json:"burn"`
	Bound     int    `json:"bound"`
	Nodes     int    `json:"nodes"`
	Stopped   string `json:"stopped,omitempty"` // why the search ended
}

// Provenance says what made the plan.
type Provenance struct {
	Catalogue   string `json:"catalogue"`
	Model       string `json:"model"`
	RequestHash string `json:"request_hash"` // SHA-256 of the canonical request, hex
}

// Change is one difference that a revision made.
type Change struct {
	Step    string   `json:"step,omitempty"` // id
	Kind    StepKind `json:"kind"`
	Dish    string   `json:"dish,omitempty"`
	Minutes float64  `json:"minutes"` // later is positive
	Text    string   `json:"text"`
	Why     string   `json:"why"`
}
