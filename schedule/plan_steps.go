package schedule

import (
	"time"
)

// Step is one thing to do or to expect.
type Step struct {
	ID       string    `json:"id"` // stays the same through revisions
	At       time.Time `json:"at"`
	Window   Window    `json:"window"`
	Kind     string    `json:"kind"`
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

// Kinds of step.
const (
	StepThaw        = "thaw"
	StepTakeOut     = "take-out"
	StepLayFire     = "lay-fire"
	StepLight       = "light"
	StepFireReady   = "fire-ready"
	StepSetVents    = "set-vents"
	StepPutOn       = "put-on"
	StepStallBegins = "stall-begins"
	StepWrap        = "wrap"
	StepStallEnds   = "stall-ends"
	StepLook        = "look"
	StepCheckFire   = "check-fire"
	StepRefuel      = "refuel"
	StepChangeFire  = "change-fire"
	StepProbesOut   = "probes-out"
	StepFlip        = "flip"
	StepTakeOff     = "take-off"
	StepRest        = "rest"
	StepBox         = "box"
	StepToOven      = "to-oven"
	StepHold        = "hold"
	StepSear        = "sear"
	StepSlice       = "slice"
	StepServe       = "serve"
	StepCloseDown   = "close-down"
)

// Severities of findings and cautions.
const (
	Info    = "info"
	Warning = "caution"
	Danger  = "danger"
)

// Finding is something the plan's owner must know.
type Finding struct {
	Code     string   `json:"code"`
	Severity string   `json:"severity"`
	Path     string   `json:"path,omitempty"` // of the request's field it comes from
	Dishes   []string `json:"dishes,omitempty"`
	Rules    []string `json:"rules,omitempty"` // of a clash: what stands in the way
	Text     string   `json:"text"`
	Source   string   `json:"source,omitempty"`
}

// Remedy is a change of the request that would mend a finding, computed and priced.
type Remedy struct {
	Code    string     `json:"code"`
	For     string     `json:"for"` // code of the finding
	Text    string     `json:"text"`
	Price   string     `json:"price"` // in the cook's words
	Edits   []Edit     `json:"edits"` // of the request
	LightAt *time.Time `json:"light_at,omitempty"`
	ServeAt time.Time  `json:"serve_at"`
	Chance  float64    `json:"chance"` // of all dishes together
	Cost    int        `json:"cost"`   // of the plan it leads to, in the solver's units
}

// Edit sets one field of a request.
type Edit struct {
	Path  string `json:"path"`  // as in faults: dishes[0].level; the index after the last adds an entry
	Value string `json:"value"` // JSON; null leaves the field out or takes the entry away
}

// Caution is a warning that goes with every output it applies to.
type Caution struct {
	Code     string `json:"code"`
	Severity string `json:"severity"`
	Text     string `json:"text"`
	Source   string `json:"source,omitempty"`
}
