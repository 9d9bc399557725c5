package surprise_test

import (
	"context"
	"math"
	"testing"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/belief"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/surprise"
	"example.com/cookday/schedule/unit"
)

// night is a butt of 9 lb on a grate at 250 F, nine hours after it went on.
func night(t *testing.T, grates ...surprise.Grate) (*surprise.Scene, belief.Stand) {
	t.Helper()
	return after(t, "{cut: pork-butt, weight: 9 lb, level: 250 F, target: 203 F, wrap: none}", 545, grates...)
}

// after is a dish so many minutes after it went on.
func after(t *testing.T, dish string, now float64, grates ...surprise.Grate) (*surprise.Scene, belief.Stand) {
	t.Helper()
	sound, err := day.Examine(plantest.Request(t, plantest.Evening(plantest.Kettle22, dish)))
	if err != nil {
		t.Fatal(err)
	}
	d, err := day.Resolve(sound, day.Options{})
	if err != nil {
		t.Fatal(err)
	}
	a, err := (&arrange.Arranger{Day: d, Effort: arrange.Effort{Nodes: 1, NoClash: true, FirstPlan: true}}).Arrange(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	b := a.Batches[0]
	w := b.Ways[0]
	const outsideC = 21.1
	level := heat.Grate(w.AirC, d.Outdoors)
	journey := func(from, to float64) *belief.Journey {
		j := &belief.Journey{Body: b.It.Body(b.MassKg), Now: now, Past: []belief.Surround{{In: level}}, Ahead: level, Wrapped: math.NaN(), EveryS: 300}
		day.JourneyEndsAs(j, w, b.It.Cut)
		for m := from; m < to; m += 15 { // it cools as a dead grate does
			in := heat.Grate(fire.WarmUp(m+7.5-from, w.AirC, outsideC), d.Outdoors)
			j.Past = append(j.Past, belief.Surround{From: m, In: in})
		}
		if from < to && to < now {
			j.Past = append(j.Past, belief.Surround{From: to, In: level})
		}
		return j
	}
	s := &surprise.Scene{
		Journey: journey(now, now), Without: journey, OutsideC: func(float64) float64 { return outsideC }, Grates: grates, Now: now, Fire: true,
		AirC:     func(float64) float64 { return w.AirC },
		DeadAirC: func(from, m float64) float64 { return fire.WarmUp(m-from, w.AirC, outsideC) },
		DoneC:    w.PullC,
	}
	return s, belief.Stand{Spread: w.Spread, Stalls: b.It.Cut.Style == cut.Tough, Pieces: 1}
}

// A core of 152 F after 5 h, then another after 9 h: how likely the fire died. The
// prototype's figures are of slightly other priors, and stand beside ours; what must hold is
// which side of certain and of nothing each lies on.
func TestHowLikelyTheFireDied(t *testing.T) {
	grate := func(f float64) surprise.Grate {
		return surprise.Grate{Minute: 540, C: unit.FToC(f), LevelC: unit.FToC(250)}
	}
	for _, c := range []struct {
		name        string
		core        float64
		grates      []surprise.Grate
		least, most float64
		prototype   string
	}{
		{"core 110 F, grate 95 F", 110, []surprise.Grate{grate(95)}, 0.8, 1, "93 %"},
		{"core 110 F, no grate", 110, nil, 0.1, 0.9, "25 %"},
		{"core 110 F, grate 248 F", 110, []surprise.Grate{grate(248)}, surprise.AliveFrom, 0.3, "1 %, rebuilt fires apart"},
		{"core 158 F, no grate", 158, nil, 0, 0.2, "4 %"},
	} {
		s, stand := night(t, c.grates...)
		readings := []surprise.Reading{{Minute: 300, CoreC: unit.FToC(152)}, {Minute: 540, CoreC: unit.FToC(c.core)}}
		_, verdicts, err := surprise.Judge(context.Background(), s, stand, readings)
		if err != nil {
			t.Fatal(err)
		}
		dead := 0.0
		var since surprise.Since
		for _, v := range verdicts {
			if v.Index == 1 {
				dead, since = v.Chance(surprise.Fire), v.Since
			}
		}
		t.Logf("%s: dead %.1f %% (prototype %s), since %.1f h, earliest %.1f h", c.name, 100*dead, c.prototype, since.Mean/60, since.Earliest/60)
		if dead < c.least || dead > c.most {
			t.Errorf("%s: dead %.3f, want %.3f to %.3f", c.name, dead, c.least, c.most)
		}
	}
}
