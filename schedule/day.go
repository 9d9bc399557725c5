package schedule

import (
	"slices"
	"time"

	"github.com/rickb777/date"
	"github.com/rickb777/date/clock"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/sequence"
	"example.com/cookday/schedule/unit"
)

// horizon is how long before the last serving instant a plan may begin. Two
// days hold the slowest brisket at the asked chance with its rest.
const horizon = 48 * time.Hour

// mildDay is what a request without weather gets.
var mildDay = unit.FromFahrenheit(70)

// defaultHumidity is the relative humidity of a day that says nothing.
const defaultHumidity = 0.5

// day is a resolved request: clocks are minutes before the last serving
// instant, the grill and the weather are what the models take.
type day struct {
	req      Request
	loc      *time.Location
	end      time.Time  // the last serving instant: minute 0
	silence  []Interval // what quietIntervals found
	quiet    []sequence.Span
	earliest int
	z        float64 // standard normal quantile of the asked chance
	frail    bool
	grill    fire.Grill
	air      fire.Weather  // by day
	night    fire.Weather  // the coolest of the day
	outdoors heat.Outdoors // what the meat feels of it
	items    []item
	findings []Finding
	effort
}

// effort is how hard the solver tries. The zero value is a full plan's.
type effort struct {
	budget  int  // nodes; 0 stands for the solver's own
	noClash bool // do not look for the reason of an infeasible day
	purse   *purse
	memo    *memo    // simulated cooks; shared by plans made one after another
	part    bool     // of a longer request: the guests are counted there
	probe   bool     // only whether the day can be had: no plan is written
	chill   bool     // what is served is cut and chilled, for another day
	lifted  []string // rules that do not bind: nothing is planned so, only asked
}

// resolve turns a validated request with its defaults into a day.
func resolve(req Request) (*day, []Fault) {
	loc, err := req.Location()
	if err != nil {
		return nil, []Fault{{Path: "serve.tz", Sentence: err.Error()}}
	}
	return resolveIn(req, loc)
}

// resolveIn is resolve where the time zone of the request is at hand: reading it
// takes longer than all the rest.
func resolveIn(req Request, loc *time.Location) (*day, []Fault) {
	d := &day{req: req, loc: loc, z: normalQuantile(req.Confidence)}
	d.frail = req.Guests != nil && req.Guests.Frail
	d.end = d.wall(req.Serve.Date, req.Serve.Time)
	for _, dish := range req.Dishes {
		if at := d.clock(dish.Serve); dish.Serve != nil && at.After(d.end) {
			d.end = at
		}
	}
	d.earliest = int(horizon.Minutes())
	if req.Earliest != nil {
		d.earliest = min(d.earliest, d.minute(d.clock(req.Earliest)))
	}
	d.quiet = d.quietSpans()
	d.resolveWeather()
	d.grill = resolveGrill(req.Grill)
	faults := d.resolveItems()
	return d, faults
}

// wall is an instant on the wall clock of the request.
func (d *day) wall(on date.Date, at clock.Clock) time.Time {
	y, m, n := on.Date()
	return time.Date(y, m, n, at.Hours(), at.Minutes(), 0, 0, d.loc)
}

// clock is the instant of c, on the day of serving if c has no date of its own;
// nil stands for the main serving instant.
func (d *day) clock(c *Clock) time.Time {
	switch {
	case c == nil:
		return d.wall(d.req.Serve.Date, d.req.Serve.Time)
	case c.Date != nil:
		return d.wall(*c.Date, c.Time)
	}
	return d.wall(d.req.Serve.Date, c.Time)
}

// at is the instant u minutes before the last serving.
func (d *day) at(u float64) time.Time {
	return d.end.Add(-time.Duration(u * float64(time.Minute))).Round(time.Minute)
}

// minute is the inverse of at, rounded down to the later whole minute.
func (d *day) minute(t time.Time) int { return int(d.end.Sub(t) / time.Minute) }

// daysAhead is how long before its horizon a plan may have steps: a week thaws the
// largest turkey.
const daysAhead = 8

// quietIntervals are the quiet hours from the first possible step to the last
// serving, worked out once.
func (d *day) quietIntervals() []Interval {
	if len(d.req.Quiet) == 0 || d.silence != nil {
		return d.silence
	}
	first, last := date.NewAt(d.end.Add(-horizon-daysAhead*24*time.Hour).In(d.loc)), date.NewAt(d.end.In(d.loc))
	all := make([]Interval, 0, (int(last.Sub(first))+1)*len(d.req.Quiet))
	for on := first; !on.After(last); on = on.Add(1) {
		for _, q := range d.req.Quiet {
			until := on
			if q.To <= q.From {
				until = on.Add(1)
			}
			all = append(all, Interval{From: d.wall(on, q.From), To: d.wall(until, q.To)})
		}
	}
	d.silence = all
	return all
}

// quietSpans are the same in minutes before the last serving. An instant t is
// quiet if From <= t < To, and minutes run the other way.
func (d *day) quietSpans() []sequence.Span {
	var spans []sequence.Span
	for _, q := range d.quietIntervals() {
		s := sequence.Span{From: d.minute(q.To) + 1, To: d.minute(q.From) + 1}
		if s.To > 0 && s.From < s.To && s.From <= int(horizon.Minutes()) {
			spans = append(spans, sequence.Span{From: max(s.From, 0), To: s.To})
		}
	}
	return spans
}

func (d *day) resolveWeather() {
	w := d.req.Weather
	air := mildDay
	if w.Air != nil {
		air = *w.Air
	}
	night := air
	if w.Night != nil {
		night = *w.Night
	}
	d.air = fire.Weather{AirC: float64(air), WindMS: float64(w.Wind), AltitudeM: float64(w.Altitude), Rain: w.Rain, Sheltered: w.Sheltered}
	d.night = d.air
	d.night.AirC = min(float64(air), float64(night))
	humidity := defaultHumidity
	if w.Humidity != nil {
		humidity = float64(*w.Humidity)
	}
	d.outdoors = heat.Outdoors{AirC: float64(air), RelativeHumidity: humidity, AltitudeM: float64(w.Altitude), WaterPan: d.req.Grill.WaterPan}
}

func resolveGrill(g Grill) fire.Grill {
	out := fire.Grill{
		Kind: fire.Kind(g.Kind), DiameterM: float64(g.Diameter), WidthM: float64(g.Width), DepthM: float64(g.Depth),
		Fuel: fire.Fuel(g.Fuel), GaugeOffsetK: float64(g.GaugeOffset), WaterPan: g.WaterPan,
	}
	for _, z := range g.Zones {
		out.OtherZones = append(out.OtherZones, fire.OtherZone{
			Name: z.Name, AreaM2: float64(z.Width) * float64(z.Depth),
			MinC: float64(z.Min), MaxC: float64(z.Max), Direct: z.Direct,
		})
	}
	return out
}

// find notes a finding, once.
func (d *day) find(f Finding) {
	i := slices.IndexFunc(d.findings, func(o Finding) bool { return o.Code == f.Code && o.Text == f.Text })
	if i < 0 {
		d.findings = append(d.findings, f)
		return
	}
	for _, id := range f.Dishes { // two dishes may have one name
		if o := &d.findings[i]; !slices.Contains(o.Dishes, id) {
			o.Dishes = append(slices.Clone(o.Dishes), id)
		}
	}
}

// clockOf is an instant as a request writes it, with its date.
func clockOf(t time.Time) Clock {
	on := date.NewAt(t)
	return Clock{Date: &on, Time: clock.New(t.Hour(), t.Minute(), 0, 0)}
}
