package schedule

import (
	"slices"
	"time"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/unit"
	"github.com/rickb777/date"
	"github.com/rickb777/date/clock"
)

// Request is what the cook asks for: the menu, the grill, the day. It is a
// value: once made it may be shared between goroutines. [Read] decodes one
// from YAML or JSON; planner.Make refuses one with faults, all of them at once.
type Request struct {
	Format     int         `json:"format"`         // 1
	ID         string      `json:"id,omitempty"`   // optional plan id; without it the plan's id follows from the request
	Name       string      `json:"name,omitempty"` // a title for the sheets
	Serve      Serve       `json:"serve"`
	Guests     *Guests     `json:"guests,omitempty"`
	Grill      Grill       `json:"grill"`
	Oven       *Oven       `json:"oven,omitempty"`
	Box        *Box        `json:"box,omitempty"`
	Weather    Weather     `json:"weather"`
	Quiet      []Quiet     `json:"quiet,omitzero"`      // nil: nothing is said, see [Request.QuietHours]; empty: nobody sleeps
	Overnight  bool        `json:"overnight,omitempty"` // the fire may burn through quiet hours unwatched
	Layout     string      `json:"layout,omitempty"`    // how the coals lie wherever that serves; empty leaves it to the planner
	Confidence float64     `json:"confidence"`          // chance asked for each dish, 0.5 to 0.99; 0 stands for 0.9
	Units      unit.System `json:"units"`               // the language of the texts; empty stands for us
	Earliest   *Clock      `json:"earliest,omitempty"`
	Lit        *Clock      `json:"lit,omitempty"` // the fire burns already, since then
	Dishes     []Dish      `json:"dishes"`
	Heard      []string    `json:"heard,omitempty"` // how words were read that the form does not have; the plan says it
}

// Serve is the main serving instant on the wall clock of TZ.
type Serve struct {
	Date date.Date   `json:"date"`
	Time clock.Clock `json:"time"`
	TZ   string      `json:"tz"` // IANA name
}

// Clock is a wall-clock instant on the day of serving, or on Date if it is set.
// In a file it is "15:00" or {date: 2027-07-02, time: "15:00"}.
type Clock struct {
	Date *date.Date  `json:"date,omitempty"`
	Time clock.Clock `json:"time"`
}

// Guests counts the eaters. In a file it is 24 or {adults: 20, children: 8, frail: true}.
type Guests struct {
	Adults   int  `json:"adults"`
	Children int  `json:"children,omitempty"`
	Frail    bool `json:"frail,omitempty"` // old, very young, pregnant or ill people eat: rules of safety are stricter

	NoneFrail bool `json:"-"` // it was said that nobody is: in a file, frail: false
}

// Grill is the one cooker of the day.
type Grill struct {
	Kind        string          `json:"kind"`
	Diameter    unit.Length     `json:"diameter,omitzero"`
	Width       unit.Length     `json:"width,omitzero"`
	Depth       unit.Length     `json:"depth,omitzero"`
	Fuel        string          `json:"fuel,omitempty"`        // empty stands for briquettes
	GaugeOffset unit.Difference `json:"gauge_offset,omitzero"` // how much more the lid gauge shows than the grate has, at 250 F on a 70 F day
	WaterPan    bool            `json:"water_pan,omitempty"`
	Raised      bool            `json:"raised,omitempty"` // a second grate stands over the side away from the coals
	Levels      int             `json:"levels,omitempty"` // kind upright: grates one above another; 0 stands for 2
	Zones       []GrillZone     `json:"zones,omitempty"`  // kind other only
	Own         *OwnGrill       `json:"own,omitempty"`    // what its cooks taught of it
}

// Across is how far across a round grate is: a little less than the grill's name says.
func (g Grill) Across() unit.Length { return g.Diameter - unit.Length(fire.RimM) }

// Round says whether the grate is: that of a kettle, and of an upright cooker that is no box.
func (g Grill) Round() bool { return g.Kind == GrillKettle || g.Kind == GrillUpright && g.Diameter > 0 }

// GrillZone is a part of the grate of a grill of kind other.
type GrillZone struct {
	Name   string           `json:"name"`
	Width  unit.Length      `json:"width"`
	Depth  unit.Length      `json:"depth"`
	Min    unit.Temperature `json:"min"` // coolest level it can be held at
	Max    unit.Temperature `json:"max"` // hottest
	Direct bool             `json:"direct,omitempty"`
}

// Oven is a kitchen oven to hold or finish in.
type Oven struct {
	Hold    unit.Temperature `json:"hold,omitzero"`      // air temperature for holding; zero stands for 170 F
	StaysOn bool             `json:"stays_on,omitempty"` // it is known not to switch itself off after some hours
}

// Box is the insulated box to hold in. In a file it is usual, or
// {kind: good, logged: {after: 6h, core: 160 F}}.
type Box struct {
	Kind   string   `json:"kind"` // good: thick walls; usual; small: old and just large enough
	Logged *BoxHold `json:"logged,omitempty"`
}

// BoxHold is a hold that was measured: what a probe in the middle of a single wrapped
// shoulder or brisket, boxed at about 200 F, still showed after some hours.
type BoxHold struct {
	After unit.Duration    `json:"after"`
	Core  unit.Temperature `json:"core"`
}

// Proven says whether a box is good by what was measured of it.
func (b Box) Proven() bool {
	return b.Logged != nil && float64(b.Logged.Core) >= safety.GoodBoxC(time.Duration(b.Logged.After).Hours())
}

// Weather is the day's weather. What is not given is taken as a mild calm day.
type Weather struct {
	Air       *unit.Temperature `json:"air,omitempty"`   // by day; nil stands for 70 F
	Night     *unit.Temperature `json:"night,omitempty"` // by night; nil stands for Air
	Humidity  *unit.Fraction    `json:"humidity,omitempty"`
	Wind      unit.Speed        `json:"wind,omitzero"`
	Rain      bool              `json:"rain,omitempty"`
	Sheltered bool              `json:"sheltered,omitempty"`
	Altitude  unit.Length       `json:"altitude,omitzero"`
	Hours     []WeatherFrom     `json:"hours,omitempty"` // refines the day
}

// WeatherFrom is the weather from an instant on; what is nil stays as it was.
type WeatherFrom struct {
	From Clock             `json:"from"`
	Air  *unit.Temperature `json:"air,omitempty"`
	Wind *unit.Speed       `json:"wind,omitempty"`
	Rain *bool             `json:"rain,omitempty"`
}

// Quiet is a stretch of every day in which nobody tends anything. From may be
// later than To: then it lasts over midnight.
type Quiet struct {
	From clock.Clock `json:"from"`
	To   clock.Clock `json:"to"`
}

// Dish is one line of the menu.
type Dish struct {
	ID        string            `json:"id,omitempty"`
	Name      string            `json:"name,omitempty"`
	Cut       string            `json:"cut"`
	Weight    unit.Mass         `json:"weight,omitzero"`   // of one piece
	Weights   []unit.Mass       `json:"weights,omitempty"` // of unequal pieces, instead of Weight and Count
	Count     int               `json:"count,omitempty"`   // pieces; 0 stands for 1
	Thickness unit.Length       `json:"thickness,omitzero"`
	Target    *Target           `json:"target,omitempty"`
	Start     *Start            `json:"start,omitempty"`
	Prep      []string          `json:"prep,omitzero"`  // nil: the label was not read; injected, stuffed, rolled, tenderised, brined, salt
	Wrap      *Wrap             `json:"wrap,omitempty"` // nil leaves it to the cut's habit and the planner
	Zone      string            `json:"zone,omitempty"` // direct or indirect
	Lies      string            `json:"lies,omitempty"` // racks of ribs: flat, halved, standing or rolled; empty leaves it to the planner
	Level     *unit.Temperature `json:"level,omitempty"`
	Layout    string            `json:"layout,omitempty"` // how the coals lie under it; empty stands for the request's
	Rest      *unit.Duration    `json:"rest,omitempty"`
	Hold      []string          `json:"hold,omitempty"`   // allowed ways of holding: counter, tent, insulated-box, oven, grill, none
	Finish    string            `json:"finish,omitempty"` // sear
	Serve     *Clock            `json:"serve,omitempty"`
	Earliest  *Clock            `json:"earliest,omitempty"`
	Travel    *unit.Duration    `json:"travel,omitempty"`
	Ready     string            `json:"ready,omitempty"`   // day-before
	Assumed   []string          `json:"assumed,omitempty"` // what was left out and is of the catalogue: weight, count

	WentOn   *Clock     `json:"went_on,omitempty"`  // it is on the fire already, since then
	Measured []Measured `json:"measured,omitempty"` // what was read of it since
}

// ToSalt says whether the plan has a dish salted the evening before: it was asked for, and
// is not salted yet.
func (d Dish) ToSalt() bool {
	return slices.Contains(d.Prep, PrepSalt) && !slices.Contains(d.Prep, PrepBrined) && !slices.Contains(d.Prep, PrepInjected)
}

// Measured is a core temperature that was read of a piece on the fire. A clock of what
// has happened, without a date, is the last such time before the serving.
type Measured struct {
	At   Clock            `json:"at"`
	Core unit.Temperature `json:"core"`
}

// Target is when a piece is done: a core temperature at take-off, a named
// doneness of the cut, or the final peak after carry-over. Exactly one is set.
// In a file it is "203 °F", "medium-rare" or {final: 130 F}.
type Target struct {
	Core     *unit.Temperature `json:"core,omitempty"`
	Doneness string            `json:"doneness,omitempty"`
	Final    *unit.Temperature `json:"final,omitempty"`
}

// Start is the state of a piece when it goes on. In a file it is "38 °F" or frozen.
type Start struct {
	Core   unit.Temperature `json:"core,omitzero"`
	Frozen bool             `json:"frozen,omitempty"`
}

// Wrap asks for a cover from a core temperature (the earliest one, not an
// appointment) or after a time on the grate. In a file it is none or
// {with: foil, from: 150 F} or {with: paper, after: 4h}.
type Wrap struct {
	With  string            `json:"with"`
	From  *unit.Temperature `json:"from,omitempty"`
	After *unit.Duration    `json:"after,omitempty"`
}

// Location is the time zone of the request.
func (r Request) Location() (*time.Location, error) { return time.LoadLocation(r.Serve.TZ) }
