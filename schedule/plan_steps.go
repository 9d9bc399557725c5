package schedule

import (
	"time"
)

// Step is one thing to do or to expect.
type Step struct {
	ID       string    `json:"id"` // stays the same through revisions
	At       time.Time `json:"at"`
	Window   Window    `json:"window"`
	Kind     StepKind  `json:"kind"`
	Dish     string    `json:"dish,omitempty"` // id of the dish
	Batch    int       `json:"batch,omitempty"`
	Phase    int       `json:"phase,omitempty"`
	Attended bool      `json:"attended"`
	Minutes  float64   `json:"minutes"` // of hands
	CoreC    float64   `json:"core_c,omitempty"`
	GrateC   float64   `json:"grate_c,omitempty"`
	Done     bool      `json:"done,omitempty"` // in the past of a revision
	Text     string    `json:"text"`
	Why      string    `json:"why"`
}

// Why a measurement comes before a dish is served.
const (
	WhyMayBeOver = "it may be outside the published limits"
	WhyNotShown  = "nobody read it at what it must have shown"
)

// Decides says whether a step is the measurement that clears a dish or condemns it: before it the dish
// is not served.
func (s Step) Decides() bool {
	return s.Kind == StepLook && (s.Why == WhyMayBeOver || s.Why == WhyNotShown)
}

// StepKind says what a step is about. New kinds may come: pass over what you do not know.
type StepKind string

// Kinds of step.
const (
	StepThaw        StepKind = "thaw"
	StepSalt        StepKind = "salt" // the dry brine of the evening before
	StepTakeOut     StepKind = "take-out"
	StepLayFire     StepKind = "lay-fire"
	StepLight       StepKind = "light"
	StepFireReady   StepKind = "fire-ready"
	StepSetVents    StepKind = "set-vents"
	StepPutOn       StepKind = "put-on"
	StepStallBegins StepKind = "stall-begins"
	StepWrap        StepKind = "wrap"
	StepStallEnds   StepKind = "stall-ends"
	StepLook        StepKind = "look"
	StepCheckFire   StepKind = "check-fire"
	StepRefuel      StepKind = "refuel"
	StepBeforeSleep StepKind = "before-sleep" // what is seen to before people sleep beside a fire
	StepWaking      StepKind = "waking"       // the first look after it
	StepChangeFire  StepKind = "change-fire"
	StepProbesOut   StepKind = "probes-out"
	StepFlip        StepKind = "flip"
	StepIndoors     StepKind = "indoors" // from a fire that fails into the kitchen oven, to go on cooking
	StepTakeOff     StepKind = "take-off"
	StepRest        StepKind = "rest"
	StepBox         StepKind = "box"
	StepToOven      StepKind = "to-oven"
	StepCheckOven   StepKind = "check-oven" // before a night that something is in the oven, and on waking
	StepHold        StepKind = "hold"
	StepSear        StepKind = "sear"
	StepSlice       StepKind = "slice"
	StepChill       StepKind = "chill" // what is eaten another day, into the refrigerator
	StepServe       StepKind = "serve"
	StepCloseDown   StepKind = "close-down"
)

// Severity says how grave a finding or a caution is.
type Severity string

// Severities of findings and cautions.
const (
	Info    Severity = "info"
	Warning Severity = "caution"
	Danger  Severity = "danger"
)

// Finding is something the plan's owner must know.
type Finding struct {
	Code     string   `json:"code"`
	Severity Severity `json:"severity"`
	Path     string   `json:"path,omitempty"` // of the request's field it comes from; in a revision also log, or provenance.model
	Dishes   []string `json:"dishes,omitempty"`
	Rules    []string `json:"rules,omitempty"` // of a clash: what stands in the way
	Text     string   `json:"text"`
	Steer    *Steer   `json:"steer,omitempty"` // of the fire: what to do about it, in figures
	Source   string   `json:"source,omitempty"`
}

// Remedy is a change that would mend a finding, computed and priced. Of a first plan it
// changes the request, and [Request.With] takes its edits. Of a revision it is something
// to do now: each edit is one entry more for the log.
type Remedy struct {
	Code    string     `json:"code"`
	For     string     `json:"for"` // code of the finding
	Text    string     `json:"text"`
	Price   string     `json:"price"`           // in the cook's words
	Write   string     `json:"write,omitempty"` // the edits of a request as lines to write
	Edits   []Edit     `json:"edits"`           // of the request, or of the log in a revision
	LightAt *time.Time `json:"light_at,omitempty"`
	ServeAt time.Time  `json:"serve_at"`
	Chance  float64    `json:"chance"` // of all dishes together
	Cost    int        `json:"cost"`   // of the plan it leads to, in the solver's units
}

// Chances of a day below which it is likelier to fail than to hold, and below which it is no
// answer where there is a better (assumptions). LongOdds is from where on a sheet says it.
const (
	LongOdds = 0.6
	BadBet   = 0.5
	Hopeless = 0.25
)

// Edit sets one field of a request. In a remedy of a revision its path is "log" and its
// value an entry of the log, which [Edit.Entry] gives for planner.Revise. [Request.With]
// refuses such an edit.
type Edit struct {
	Path  string `json:"path"`  // as in faults: dishes[0].level; the index after the last adds an entry
	Value string `json:"value"` // JSON; null leaves the field out or takes the entry away
}

// Caution is a warning that goes with every output it applies to.
type Caution struct {
	Code     string   `json:"code"`
	Severity Severity `json:"severity"`
	Text     string   `json:"text"`
	Source   string   `json:"source,omitempty"`
}
