package schedule

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"
	"time"

	"github.com/rickb777/date"
	"github.com/rickb777/date/clock"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/unit"
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
	Kind            string     `json:"kind"`
	CoreC           float64    `json:"core_c,omitempty"` // left out where it is not modelled
	EarlyMinutes    float64    `json:"early_minutes"`
	ExpectedMinutes float64    `json:"expected_minutes"`
	LateMinutes     float64    `json:"late_minutes"`
	Quantiles       []Quantile `json:"quantiles,omitempty"`
}

// Quantile is the minutes that are enough with a probability.
type Quantile struct {
	Probability float64 `json:"probability"`
	Minutes     float64 `json:"minutes"`
}

// Forecast answers for one piece. Faults of the inquiry are an *[InputError];
// a piece that cannot get to its target at that temperature is an answer with
// Reaches false and the reason.
func Forecast(ctx context.Context, q Inquiry) (Outlook, error) {
	if err := ctx.Err(); err != nil {
		return Outlook{}, err
	}
	d, err := q.day()
	if err != nil {
		return Outlook{}, err
	}
	it := &d.items[0]
	s, err := q.spot(it)
	if err != nil {
		return Outlook{}, err
	}
	if err := d.frozenOutlook(it, s.levelC); err != nil {
		return Outlook{}, err
	}
	o := Outlook{Cut: it.cut.Name, MassKg: it.lots[0].massKg, GrateC: s.levelC, TargetC: it.targetC, Milestones: []OutlookMilestone{}}
	ways := d.outlookWays(it, s)
	if len(ways) == 0 {
		o.Reason = d.neverArrives(it).Text
	} else {
		o.Reaches = true
		d.noteAir("grate", it, ways[0])
		p := &placed{batch: &batch{it: it, number: 1, massKg: o.MassKg, count: it.lots[0].count, ways: ways}, way: ways[0], wrap: math.NaN(), hold: -1}
		switch {
		case p.way.sear:
			p.wrap = 0 // no schedule: seared as soon as it is ready for it
		case p.way.stages() == 2:
			p.wrap = -p.way.first.planned
		}
		o.Way, o.Milestones, o.TargetC = d.wayText(p), d.outlook(p, q.Probabilities), p.way.pullC
	}
	o.Findings = nonNil(d.findings)
	o.Cautions = d.cautions(&Plan{Phases: []Phase{{LevelC: s.levelC, Band: s.band}}}, nil)
	return o, nil
}

// request is of a day with the one dish, served far from any clock that matters.
func (q Inquiry) request() Request {
	r := Request{
		Format: 1, Units: q.Units, Weather: q.Weather, Dishes: []Dish{q.Dish},
		Grill: Grill{Kind: GrillKettle, Diameter: unit.FromInches(22), WaterPan: q.WaterPan},
		Serve: Serve{Date: date.New(2000, time.January, 3), Time: clock.Noon, TZ: "UTC"}, // any day: no clock matters
	}
	if q.Frail {
		r.Guests = &Guests{Adults: 1, Frail: true}
	}
	return r.withDefaults()
}

func (q Inquiry) day() (*day, error) {
	r := q.request()
	if faults := r.validate(); len(faults) > 0 {
		return nil, &InputError{Faults: q.inTheirWords(faults)}
	}
	d, faults := resolve(r)
	if len(faults) > 0 {
		return nil, &InputError{Faults: q.inTheirWords(faults)}
	}
	return d, nil
}

// spot is where the piece cooks: as asked, else where the cut usually does.
func (q Inquiry) spot(it *item) (spot, error) {
	spots := it.spots()
	if len(spots) == 0 {
		return spot{}, inquiryFault("layout", fmt.Sprintf("%s has no place of that kind", it.cut.Name))
	}
	if q.Layout == "" {
		return spots[0], nil
	}
	desc, ok := fire.Describe(fire.Layout(q.Layout))
	if !ok {
		return spot{}, inquiryFault("layout", fmt.Sprintf("%q is no layout; use banked, ring, two-zone, spread or heap", q.Layout))
	}
	direct := desc.Zones[0].Direct
	for _, s := range spots {
		if s.direct == direct || q.Layout == string(fire.TwoZone) {
			return s, nil
		}
	}
	side, other := "beside", "over"
	if direct {
		side, other = other, side
	}
	return spot{}, inquiryFault("layout", fmt.Sprintf("%s cooks %s the coals, and %s is for cooking %s them", it.cut.Title, other, q.Layout, side))
}

// outlookWays is the one way of the inquiry: wrapped as asked or as is the habit.
func (d *day) outlookWays(it *item, s spot) []way {
	ways := d.waysAt(it, it.lots[0], s)
	if len(ways) > 1 { // bare comes first where the cut has a habit of wrapping
		if wraps, _ := it.wraps(); len(wraps) > 0 {
			return ways[1:2]
		}
	}
	return ways
}

// outlook lists the milestones, on to rested, by their expected time: a wrap may
// come before, within or after the stall.
func (d *day) outlook(p *placed, probabilities []float64) []OutlookMilestone {
	var out []OutlookMilestone
	for _, m := range p.moments() {
		if m.kind == MilestonePeak {
			continue
		}
		o := OutlookMilestone{
			Kind: m.kind, CoreC: m.coreC, EarlyMinutes: m.minutes(-zTenth), ExpectedMinutes: m.minutes(0), LateMinutes: m.minutes(zTenth),
		}
		for _, probability := range probabilities {
			o.Quantiles = append(o.Quantiles, Quantile{Probability: probability, Minutes: m.minutes(normalQuantile(probability))})
		}
		out = append(out, o)
	}
	slices.SortStableFunc(out, func(a, b OutlookMilestone) int { return cmp.Compare(a.ExpectedMinutes, b.ExpectedMinutes) })
	return out
}
