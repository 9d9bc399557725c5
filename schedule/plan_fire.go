package schedule

import (
	"time"
)

// Phase is a stretch in which one layout of coals burns at one grate temperature.
type Phase struct {
	Number    int       `json:"number"` // from 1
	Layout    string    `json:"layout"`
	Band      string    `json:"band"`
	LevelC    float64   `json:"level_c"`
	GaugeC    float64   `json:"gauge_c"` // what the lid gauge is likely to show
	From      time.Time `json:"from"`    // the grate is ready
	To        time.Time `json:"to"`
	SetupFrom time.Time `json:"setup_from"`      // lighting or the change begins
	Relit     bool      `json:"relit,omitempty"` // the fire before is out by then: it is lit anew
	Zones     []Zone    `json:"zones"`
	Burn      *Burn     `json:"burn,omitempty"` // nil for a grill without charcoal
	Build     string    `json:"build"`          // how to build it, the cook's words
	Vents     string    `json:"vents"`
	TopOpen   float64   `json:"top_open,omitempty"` // share of the top vent open to start from
	LowOpen   float64   `json:"low_open,omitempty"` // share of the bottom vent
	LidOff    bool      `json:"lid_off,omitempty"`
}

// Zone is a part of the grate in a phase.
type Zone struct {
	Name     string  `json:"name"`
	Direct   bool    `json:"direct,omitempty"`
	LevelC   float64 `json:"level_c"`
	AreaM2   float64 `json:"area_m2"`   // of the grate that every zone has
	UsableM2 float64 `json:"usable_m2"` // by the rule of room for large pieces, on all of its grates
	DiscsM2  float64 `json:"discs_m2"`  // by the rule of room for small discs

	Grates []Grate `json:"grates,omitempty"` // from below, where it has several
}

// Grate is one of several one above another.
type Grate struct {
	Name   string  `json:"name"`
	AreaM2 float64 `json:"area_m2"`
}

// Burn is the fuel of a phase.
type Burn struct {
	MassKg       float64  `json:"mass_kg"` // expected
	LowKg        float64  `json:"low_kg"`
	HighKg       float64  `json:"high_kg"`
	Lay          int      `json:"lay"`   // briquettes to lay at the start (0 for lump)
	Light        int      `json:"light"` // of them lit
	LayKg        float64  `json:"lay_kg"`
	LightKg      float64  `json:"light_kg"`
	Chimneys     float64  `json:"chimneys"`        // chimney fills to light
	LastsMinutes float64  `json:"lasts_minutes"`   // untended
	Rows         string   `json:"rows,omitempty"`  // cross-section of a ring
	ArcM         float64  `json:"arc_m,omitempty"` // its length
	Count        int      `json:"count,omitempty"` // briquettes expected to burn
	BuyKg        float64  `json:"buy_kg"`          // for this phase
	BuyCount     int      `json:"buy_count,omitempty"`
	Chunks       int      `json:"chunks,omitempty"` // of wood
	Refuels      []Refuel `json:"refuels,omitempty"`
	LeftKg       float64  `json:"left_kg,omitempty"` // expected to lie there at the end: it counts at a change of fire
}

// Refuel is a top-up within a phase.
type Refuel struct {
	Window Window  `json:"window"`
	Count  int     `json:"count,omitempty"`
	MassKg float64 `json:"mass_kg"`
	Lit    bool    `json:"lit"`
}

// Fuel is the charcoal of the day.
type Fuel struct {
	Kind     string  `json:"kind"`
	MassKg   float64 `json:"mass_kg"` // expected
	LowKg    float64 `json:"low_kg"`
	HighKg   float64 `json:"high_kg"`
	Count    int     `json:"count,omitempty"` // briquettes, expected
	BuyKg    float64 `json:"buy_kg"`
	BuyCount int     `json:"buy_count,omitempty"`
	Chunks   int     `json:"chunks"` // of smoking wood
	Text     string  `json:"text"`
}
