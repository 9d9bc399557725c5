package schedule

import (
	"time"
)

// Horizon is how long before the last serving instant a plan may begin. Two
// days hold the slowest brisket at the asked chance with its rest.
const Horizon = 48 * time.Hour

// Plan is the answer to a [Request]: what to do when. It is a value; JSON
// numbers are SI with the unit in the name, instants carry the offset of the
// request's time zone. An infeasible day is a Plan too: Feasible is false,
// Steps is empty, Findings and Remedies say why and what would help.
type Plan struct {
	Format     int        `json:"format"` // 1: fields are added, never changed
	ID         string     `json:"id"`
	Revision   int        `json:"revision"` // 0 for a first plan; of a later one 1 more than its Log has entries, not a count of calls
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
	Night      *Night     `json:"night,omitempty"` // how the night is spent; nil where nobody sleeps, and in plans of older editions
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
