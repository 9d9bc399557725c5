package belief_test

import (
	"context"
	"fmt"
	"math"
	"testing"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/belief"
	"example.com/cookday/schedule/planner/internal/day"
)

// truthMenu is a menu of every sort of piece that cooks beside the coals. The
// menu is invented; weights are usual ones.
var truthMenu = []string{
	"{cut: brisket, weight: 12 lb, level: 250 F, wrap: none}",
	"{cut: brisket, weight: 10 lb, level: 275 F, wrap: {with: foil, from: 150 F}}",
	"{cut: pork-butt, weight: 8 lb, level: 275 F, wrap: none}",
	"{cut: pork-butt, weight: 8 lb, level: 250 F, wrap: {with: foil, from: 160 F}}",
	"{cut: spare-ribs, weight: 3 lb, level: 250 F, wrap: none}",
	"{cut: chicken-spatchcock, weight: 4.5 lb}",
	"{cut: tri-tip, weight: 2 lb, level: 250 F}",
	"{cut: lamb-leg-bone-in, weight: 6 lb, level: 325 F}",
}

// cook is one way of cooking a piece, as the first plan takes it.
type cook struct {
	name  string
	way   day.Way
	stand belief.Stand
	at    func(now float64) *belief.Journey
}

// cooksOf are the ways beside the coals of the dishes of a menu.
func cooksOf(t testing.TB, menu ...string) []cook {
	t.Helper()
	sound, err := day.Examine(plantest.Request(t, plantest.Evening(plantest.Kettle22+"confidence: 0.9", menu...)))
	if err != nil {
		t.Fatal(err)
	}
	d, err := day.Resolve(sound, day.Options{})
	if err != nil {
		t.Fatal(err)
	}
	cheaply := arrange.Effort{Nodes: 1, NoClash: true, FirstPlan: true} // the answer does not matter, its batches do
	a, err := (&arrange.Arranger{Day: d, Effort: cheaply}).Arrange(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	var out []cook
	for _, b := range a.Batches {
		for i, w := range b.Ways {
			if w.State == nil || w.Direct || b.It.Cut.Style == cut.Timed {
				continue
			}
			out = append(out, cook{
				name: fmt.Sprintf("%s, way %d, %.0f C, %s", b.It.Cut.Name, i, w.LevelC, w.With), way: w,
				stand: belief.Stand{Spread: w.Spread, Stalls: b.It.Cut.Style == cut.Tough, Pieces: 1},
				at:    func(now float64) *belief.Journey { return journeyFor(d, b, w, now) },
			})
		}
	}
	return out
}

// journeyFor is a whole cook as the first plan takes it, at a minute of it.
func journeyFor(d *day.Day, b *arrange.Batch, w day.Way, now float64) *belief.Journey {
	in := heat.Grate(w.AirC, d.Outdoors)
	j := &belief.Journey{Body: b.It.Body(b.MassKg), Now: now, Past: []belief.Surround{{From: 0, In: in}}, Ahead: in, Wrapped: math.NaN(), EveryS: math.Max(w.ModelDone*60/belief.CurveSamples, 5)}
	day.JourneyEndsAs(j, w, b.It.Cut)
	if w.With != "" {
		j.Wrap = belief.WrapAhead{Planned: true, In: day.Covered(in, w.With), CoreC: w.WrapC, Waits: func(m float64) float64 { return m }}
	}
	return j
}

// believed is what is believed at now after readings.
func believed(t testing.TB, c cook, now float64, readings ...belief.Reading) *belief.Belief {
	t.Helper()
	return believedIn(t, c, c.at(now), readings...)
}

// believedIn is the same in a journey of its own.
func believedIn(t testing.TB, c cook, j *belief.Journey, readings ...belief.Reading) *belief.Belief {
	t.Helper()
	b, err := belief.New(context.Background(), j, c.stand, readings)
	if err != nil {
		t.Fatal(err)
	}
	belief.ShareGrate([]*belief.Belief{b}, 1)
	return b
}

// asForetold is the core at a minute if all goes as the first plan has it.
func asForetold(t testing.TB, c cook, minute float64) float64 {
	t.Helper()
	return believed(t, c, 0).CoreC(minute, 0.5)
}

func f(c float64) float64 { return c*1.8 + 32 }
