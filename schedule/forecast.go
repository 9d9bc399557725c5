package schedule

import (
	"time"

	"example.com/cookday/schedule/unit"
	"github.com/rickb777/date"
	"github.com/rickb777/date/clock"
)

// Inquiry asks about one piece at one grate temperature, without a schedule.
type Inquiry struct {
	Dish          Dish        // Cut, Weight, and what else is known; Level is the grate temperature
	Layout        string      // how the coals lie; empty leaves it to the cut
	Weather       Weather     // of the day
	WaterPan      bool        // under the meat
	Frail         bool        // of the guests
	Units         unit.System // of the sentences
	Probabilities []float64   // quantiles wanted besides the window, 0.01 to 0.99
	Own           *OwnGrill   // what cooks taught of the grill; nil for nothing

	written map[string]string // its fields as [ReadInquiry] got them
}

// Outlook is the answer: when the piece reaches what, in minutes from the
// put-on, as 10th, 50th and 90th percentile.
type Outlook struct {
	Cut        string             `json:"cut"`
	MassKg     float64            `json:"mass_kg,omitempty"`
	GrateC     float64            `json:"grate_c"`
	TargetC    float64            `json:"target_c,omitempty"`
	Way        string             `json:"way"`
	Reaches    bool               `json:"reaches"`
	Reason     string             `json:"reason"` // why not, or empty
	Milestones []OutlookMilestone `json:"milestones"`
	Findings   []Finding          `json:"findings"`
	Cautions   []Caution          `json:"cautions"`
}

// OutlookMilestone is one instant of an Outlook, minutes from the put-on.
type OutlookMilestone struct {
	Kind            MilestoneKind `json:"kind"`
	CoreC           float64       `json:"core_c,omitempty"` // left out where it is not modelled
	EarlyMinutes    float64       `json:"early_minutes"`
	ExpectedMinutes float64       `json:"expected_minutes"`
	LateMinutes     float64       `json:"late_minutes"`
	Quantiles       []Quantile    `json:"quantiles,omitempty"`
}

// Quantile is the minutes that are enough with a probability.
type Quantile struct {
	Probability float64 `json:"probability"`
	Minutes     float64 `json:"minutes"`
}

// Request is of a day with the one dish, served far from any clock that matters.
func (q Inquiry) Request() Request {
	r := Request{
		Format: 1, Units: q.Units, Weather: q.Weather, Dishes: []Dish{q.Dish},
		Grill: Grill{Kind: GrillKettle, Diameter: unit.FromInches(22), WaterPan: q.WaterPan, Own: q.Own},
		Serve: Serve{Date: date.New(2000, time.January, 3), Time: clock.Noon, TZ: "UTC"}, // any day: no clock matters
	}
	if q.Frail {
		r.Guests = &Guests{Adults: 1, Frail: true}
	}
	return r.WithDefaults()
}
