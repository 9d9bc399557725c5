package check

import (
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/safety"
)

// facts are what the request says, read afresh.
type facts struct {
	req    schedule.Request
	loc    *time.Location
	grill  fire.Grill
	quiet  []schedule.Interval // merged, by time
	nights []schedule.Interval // those for sleep, merged
	frail  bool
	dishes []dishFacts // one for each dish of the plan
}

// dishFacts pairs a dish of the plan with its line of the request.
type dishFacts struct {
	path     string
	plan     *schedule.DishPlan
	ask      *schedule.Dish
	cut      cut.Cut
	category safety.Category
	prep     safety.Prep
	serve    time.Time // when it must be ready: travel taken off
	rest     float64   // least minutes off the heat before serving
	travel   float64   // minutes on the way to the table
}

// batchFacts is a batch with the stages that cook.
type batchFacts struct {
	*schedule.Batch
	path    string
	dish    *dishFacts
	cooking []schedule.Stage
}

// learn reads the request. Without a sound one, and its dishes in the plan, no
// other rule can be judged.
func (c *checker) learn() {
	c.rule = "request"
	req := c.plan.Request.WithDefaults()
	for _, f := range req.Validate() {
		c.fault("request."+f.Path, "%s", f.Sentence)
	}
	if len(c.faults) > 0 {
		return
	}
	loc, err := time.LoadLocation(req.Serve.TZ)
	if err != nil {
		c.fault("request.serve.tz", "%s", err)
		return
	}
	c.facts = facts{req: req, loc: loc, grill: grillFacts(req.Grill), frail: req.Guests != nil && req.Guests.Frail}
	c.rule = "dishes"
	c.pairDishes()
	if len(c.faults) == 0 {
		hours := c.hours()
		c.facts.quiet = c.facts.quietHours(c.plan.ServeAt, hours)
		c.facts.nights = c.facts.quietHours(c.plan.ServeAt, forSleep(hours))
		c.yesterday()
	}
}

func (c *checker) pairDishes() {
	req, plan := c.facts.req.Dishes, c.plan.Dishes
	if len(req) != len(plan) {
		c.fault("dishes", "the plan has %d dishes, the request %d; each dish of the request is in the plan once", len(plan), len(req))
		return
	}
	for i := range plan {
		path := fmt.Sprintf("dishes[%d]", i)
		if plan[i].ID != req[i].ID || plan[i].Cut != req[i].Cut {
			c.fault(path, "is %s (%s) where the request has %s (%s)", plan[i].ID, plan[i].Cut, req[i].ID, req[i].Cut)
			return
		}
		c.facts.dishes = append(c.facts.dishes, c.facts.dish(path, &plan[i], &req[i]))
	}
}

func (f facts) dish(path string, plan *schedule.DishPlan, ask *schedule.Dish) dishFacts {
	entry, _ := cut.Find(ask.Cut)
	ask.Finish = f.req.FinishOf(*ask)
	d := dishFacts{path: path, plan: plan, ask: ask, cut: entry, category: safety.Category(entry.Food), prep: safety.PrepOf(slices.Concat(ask.Prep, entry.Prep)), serve: f.clockAt(ask.Serve)}
	if ask.Travel != nil {
		d.serve = d.serve.Add(-time.Duration(*ask.Travel).Truncate(time.Minute))
		d.travel = time.Duration(*ask.Travel).Minutes()
	}
	d.rest = entry.Rest.MinMinutes
	if ask.Rest != nil {
		d.rest = time.Duration(*ask.Rest).Minutes()
	}
	if !d.timed() {
		d.rest = math.Max(d.rest, safety.MinimumFor(d.category, d.prep).RestMinutes)
	}
	return d
}

func (d *dishFacts) timed() bool { return d.cut.Style == cut.Timed }

// lay is a piece as it lies on the grate.
func (f *facts) lay(d *dishFacts, massKg float64) fire.Laid {
	l, w := d.cut.Footprint(massKg, float64(d.ask.Thickness))
	t, _, _ := d.cut.Dimensions(massKg, float64(d.ask.Thickness))
	r := fire.Raw{Footprint: fire.Footprint{LengthM: l, WidthM: w, Disc: d.cut.Disc, Rack: d.cut.Rack}, ThicknessM: t, Bends: d.cut.Bends()}
	switch {
	case d.cut.Thin():
		r.Fill = fire.FillThin
	case d.cut.FlatBird():
		r.Fill = fire.FillFlat
	case d.cut.Foiled():
		r.Fill = fire.FillFoil
	}
	return fire.Lay(r, fire.Lie(d.ask.Lies), f.grill.ReachM())
}

// clockAt is a clock of the request; nil is the main serving instant.
func (f facts) clockAt(k *schedule.Clock) time.Time {
	on, at := f.req.Serve.Date, f.req.Serve.Time
	if k != nil {
		at = k.Time
		if k.Date != nil {
			on = *k.Date
		}
	}
	y, m, d := on.Date()
	return time.Date(y, m, d, at.Hours(), at.Minutes(), 0, 0, f.loc)
}

// quietHours are those of four days up to an instant, merged where they touch.
func (f facts) quietHours(end time.Time, hours []schedule.Quiet) []schedule.Interval {
	var all []schedule.Interval
	y, m, d := end.In(f.loc).Date()
	for back := 4; back >= -1; back-- {
		for _, q := range hours {
			from := time.Date(y, m, d-back, q.From.Hours(), q.From.Minutes(), 0, 0, f.loc)
			to := time.Date(y, m, d-back, q.To.Hours(), q.To.Minutes(), 0, 0, f.loc)
			if q.To <= q.From {
				to = time.Date(y, m, d-back+1, q.To.Hours(), q.To.Minutes(), 0, 0, f.loc)
			}
			all = append(all, schedule.Interval{From: from, To: to})
		}
	}
	slices.SortFunc(all, func(a, b schedule.Interval) int { return a.From.Compare(b.From) })
	var merged []schedule.Interval
	for _, q := range all {
		if n := len(merged); n > 0 && !q.From.After(merged[n-1].To) {
			if q.To.After(merged[n-1].To) {
				merged[n-1].To = q.To
			}
			continue
		}
		merged = append(merged, q)
	}
	return merged
}

// quietAt is the quiet stretch that an instant lies in.
func (f facts) quietAt(t time.Time) (schedule.Interval, bool) {
	for _, q := range f.quiet {
		if !t.Before(q.From) && t.Before(q.To) {
			return q, true
		}
	}
	return schedule.Interval{}, false
}

func grillFacts(g schedule.Grill) fire.Grill {
	out := fire.Grill{
		Kind: fire.Kind(g.Kind), Fuel: fire.Fuel(g.Fuel), WaterPan: g.WaterPan, GaugeOffsetK: float64(g.GaugeOffset),
		DiameterM: float64(g.Diameter), WidthM: float64(g.Width), DepthM: float64(g.Depth),
		Raised: g.Raised, Levels: g.Levels,
	}
	if out.Kind == fire.Upright {
		out.OtherZones = []fire.OtherZone{out.UprightZone()}
	}
	for _, z := range g.Zones {
		out.OtherZones = append(out.OtherZones, fire.OtherZone{
			Name: z.Name, AreaM2: float64(z.Width) * float64(z.Depth), MinC: float64(z.Min), MaxC: float64(z.Max), Direct: z.Direct,
		})
	}
	return out
}

// batches are all batches that cook at all.
func (c *checker) batches() []batchFacts {
	var out []batchFacts
	for i := range c.facts.dishes {
		d := &c.facts.dishes[i]
		for j := range d.plan.Batches {
			b := batchFacts{Batch: &d.plan.Batches[j], path: fmt.Sprintf("%s.batches[%d]", d.path, j), dish: d}
			for _, s := range b.Stages {
				if cooks(s.Kind) {
					b.cooking = append(b.cooking, s)
				}
			}
			if len(b.cooking) > 0 {
				out = append(out, b)
			}
		}
	}
	return out
}

func cooks(kind schedule.StageKind) bool {
	return kind == schedule.StageBare || kind == schedule.StageWrapped || kind == schedule.StageSear
}

// on and off are the planned instants of a batch; gap is the planned time from
// the take-off to serving, pause the rest before a sear, minutes.
func (b *batchFacts) on() time.Time { return b.cooking[0].From }

func (b *batchFacts) off() time.Time { return b.cooking[len(b.cooking)-1].To }

func (b *batchFacts) gap() float64 { return minutesBetween(b.off(), b.dish.serve) }

func (b *batchFacts) pause() float64 {
	sum := 0.0
	for i := 1; i < len(b.cooking); i++ {
		sum += math.Max(minutesBetween(b.cooking[i-1].To, b.cooking[i].From), 0)
	}
	return sum
}
