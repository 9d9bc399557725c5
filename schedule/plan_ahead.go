package schedule

import (
	"time"
)

// Ahead is what is cooked the day before, chilled, and warmed again. The steps of
// both days stand in the plan that has it.
type Ahead struct {
	Plan    *Plan       `json:"plan,omitempty"` // of the day before; nil where the plan that has this is of that day itself
	Request Request     `json:"request"`        // of both days, as it came
	ChillAt time.Time   `json:"chill_at"`       // by when everything is cut and chilled
	Dishes  []AheadDish `json:"dishes"`
}

// AheadDish is one dish between the two days.
type AheadDish struct {
	Dish              string     `json:"dish"` // id
	Name              string     `json:"name"`
	CookedKg          float64    `json:"cooked_kg"`           // after what cooking takes
	PortionM          float64    `json:"portion_m"`           // the thickest that chills in time
	ChillFirstMinutes float64    `json:"chill_first_minutes"` // from 135 to 70 F (57 to 21 degC), pessimistic end
	ChillMinutes      float64    `json:"chill_minutes"`       // from 135 to 41 F (57 to 5 degC)
	Place             string     `json:"place"`               // of the warming: oven or grate
	CoreC             float64    `json:"core_c"`              // to be reached
	From              *time.Time `json:"from,omitempty"`      // into the oven
	Minutes           Minutes    `json:"minutes,omitzero"`    // in the oven; on the grate it is a dish of the plan
}
