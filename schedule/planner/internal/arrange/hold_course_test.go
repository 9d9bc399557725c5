package arrange

import (
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/unit"
)

// cooked is a piece at its take-off from a grate, and a calm day to hold it on.
func cooked(t *testing.T, name string, lb, grateF, pullF float64) (*day.Day, day.Way) {
	t.Helper()
	c, ok := cut.Find(name)
	if !ok {
		t.Fatalf("no cut %s", name)
	}
	it := &day.Item{Cut: c}
	w := day.Way{PullC: unit.FToC(pullF), LevelC: unit.FToC(grateF), State: new(heat.Sim)}
	w.State.Start(it.Body(float64(unit.FromPounds(lb))), heat.Grate(w.LevelC, heat.CalmDay()))
	if got := w.State.RunTo(w.PullC, day.LongestCookS); got != heat.Reached {
		t.Fatalf("%s: %v", name, got)
	}
	d := &day.Day{Air: fire.Weather{AirC: day.RoomC}, Night: fire.Weather{AirC: day.RoomC}}
	d.Req.Oven = &schedule.Oven{Hold: unit.FromFahrenheit(170)}
	return d, w
}

func fahrenheit(c float64) float64 { return unit.Temperature(c).Fahrenheit() }

// The open stand evens the heat out to about 170 F and never spends the line.
func TestOpenStandBeforeTheBox(t *testing.T) {
	resolved, w := cooked(t, "pork-butt", 8, 250, 203)
	c, _ := cut.Find("pork-butt")
	d := &Arranger{Day: resolved}
	p := &Placed{Batch: &Batch{It: &day.Item{Cut: c, Category: safety.Pork}, Count: 1}, Way: w}
	o := d.HoldOptions(p.It, w, p.lot())[1]
	if o.Method != schedule.HoldBox || o.Vent != day.VentLeast {
		t.Fatalf("option %+v", o)
	}
	long := d.Vented(p, o, 30)
	if long.Vent < 30 || long.Vent > day.VentMost {
		t.Errorf("stands %g min", long.Vent)
	}
	s := *w.State
	s.Change(day.Standing(w, day.RoomC, day.ExpectedEnd))
	s.RunFor(long.Vent * 60)
	t.Logf("stands %g min: mean %.0f F, outer %.0f F, core %.0f F; then good for %.0f min in all", long.Vent, fahrenheit(s.MeanC()), fahrenheit(s.OuterC()), fahrenheit(s.CoreC()), long.Minutes)
	if s.OuterC() < day.VentOuterC {
		t.Errorf("outer layer at %.0f F after the stand", fahrenheit(s.OuterC()))
	}
	if tight := d.Vented(p, o, o.Minutes); tight.Vent != day.VentLeast {
		t.Errorf("stands %g min where the hold needs every minute", tight.Vent)
	}
}
