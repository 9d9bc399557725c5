package day

import (
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/unit"
	"github.com/rickb777/date"
	"github.com/rickb777/date/clock"
)

func ClockIn(r schedule.Request, c *schedule.Clock, loc *time.Location) time.Time {
	d := Day{Req: r, Loc: loc}
	return d.Clock(c)
}

// mildDay is what a request without weather gets.
var mildDay = unit.FromFahrenheit(70)

// MildDay is the air of a day whose weather nobody said.
func MildDay() unit.Temperature { return mildDay }

// defaultHumidity is the relative humidity of a day that says nothing.
const defaultHumidity = 0.5

// Day is a resolved request: clocks are minutes before the last serving
// instant, the grill and the weather are what the models take.
type Day struct {
	Req      schedule.Request
	Loc      *time.Location
	End      time.Time           // the last serving instant: minute 0
	hours    []schedule.Quiet    // in place of the request's; nil for those
	silence  []schedule.Interval // what quietIntervals found
	Quiet    []Span
	Earliest int
	Z        float64 // standard normal quantile of the asked chance
	Frail    bool
	Grill    fire.Grill
	Air      fire.Weather  // by day
	Night    fire.Weather  // the coolest of the day
	Outdoors heat.Outdoors // what the meat feels of it
	Items    []Item
	Chill    bool // what is served is cut and chilled, for another day
	warms    bool // the oven is wanted for what is warmed in it
	memo     *Memo
}

// Span is a stretch of minutes before the last serving instant: u lies in it if
// From <= u < To.
type Span struct {
	From, To int
	Night    bool // for sleep
}

// wall is an instant on the wall clock of the request.
func (d *Day) wall(on date.Date, at clock.Clock) time.Time {
	y, m, n := on.Date()
	return time.Date(y, m, n, at.Hours(), at.Minutes(), 0, 0, d.Loc)
}

// Clock is the instant of c, on the day of serving if c has no date of its own;
// nil stands for the main serving instant.
func (d *Day) Clock(c *schedule.Clock) time.Time {
	switch {
	case c == nil:
		return d.wall(d.Req.Serve.Date, d.Req.Serve.Time)
	case c.Date != nil:
		return d.wall(*c.Date, c.Time)
	}
	return d.wall(d.Req.Serve.Date, c.Time)
}

// At is the instant u minutes before the last serving.
func (d *Day) At(u float64) time.Time {
	return d.End.Add(-time.Duration(u * float64(time.Minute))).Round(time.Minute)
}

// Minute is the inverse of at, rounded down to the later whole minute.
func (d *Day) Minute(t time.Time) int { return int(d.End.Sub(t) / time.Minute) }

// daysAhead is how long before its horizon a plan may have steps: a week thaws the
// largest turkey.
const daysAhead = 8

func (d *Day) resolveWeather() {
	w := d.Req.Weather
	air := mildDay
	if w.Air != nil {
		air = *w.Air
	}
	night := air
	if w.Night != nil {
		night = *w.Night
	}
	d.Air = fire.Weather{AirC: float64(air), WindMS: float64(w.Wind), AltitudeM: float64(w.Altitude), Rain: w.Rain, Sheltered: w.Sheltered}
	d.Night = d.Air
	d.Night.AirC = min(float64(air), float64(night))
	humidity := defaultHumidity
	if w.Humidity != nil {
		humidity = float64(*w.Humidity)
	}
	d.Outdoors = heat.Outdoors{AirC: float64(air), RelativeHumidity: humidity, AltitudeM: float64(w.Altitude), WaterPan: d.Req.Grill.WaterPan}
}

func resolveGrill(g schedule.Grill) fire.Grill {
	out := fire.Grill{
		Kind: fire.Kind(g.Kind), DiameterM: float64(g.Diameter), WidthM: float64(g.Width), DepthM: float64(g.Depth),
		Fuel: fire.Fuel(g.Fuel), GaugeOffsetK: float64(g.GaugeOffset), WaterPan: g.WaterPan,
		Raised: g.Raised, Levels: g.Levels,
	}
	if out.Kind == fire.Upright {
		out.OtherZones = []fire.OtherZone{out.UprightZone()}
	}
	for _, z := range g.Zones {
		out.OtherZones = append(out.OtherZones, fire.OtherZone{
			Name: z.Name, AreaM2: float64(z.Width) * float64(z.Depth),
			MinC: float64(z.Min), MaxC: float64(z.Max), Direct: z.Direct,
		})
	}
	return out
}

// ClockOf is an instant as a request writes it, with its date.
func ClockOf(t time.Time) schedule.Clock {
	on := date.NewAt(t)
	return schedule.Clock{Date: &on, Time: clock.New(t.Hour(), t.Minute(), 0, 0)}
}
