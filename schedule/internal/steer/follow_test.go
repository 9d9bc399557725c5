package steer

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/cookday/schedule/internal/fire"
)

func calm(airC float64) func(float64) fire.Weather {
	return func(float64) fire.Weather { return fire.Weather{AirC: airC} }
}

func poured(lit, unlit float64) Begin {
	return Begin{Seed: 1, Grill: simKettle(), Layout: fire.Banked, Weather: calm(21), Lit: lit, Unlit: unlit, Top: 0.25, Bottom: 0.25}
}

func met(top, bottom float64) Begin {
	return Begin{Seed: 1, Grill: simKettle(), Layout: fire.Banked, Weather: calm(21), MidCook: true, Unlit: 60, Top: top, Bottom: bottom}
}

func read(minute, f float64) Event { return Event{Minute: minute, Kind: Grate, C: toC(f)} }

func set(minute, top, bottom float64) Event {
	return Event{Minute: minute, Kind: VentsSet, Top: top, Bottom: bottom}
}

func drawEvents(t *rapid.T) []Event {
	var out []Event
	for range rapid.IntRange(1, 25).Draw(t, "entries") {
		e := Event{Minute: float64(rapid.IntRange(0, 60).Draw(t, "minute")) * 5, Kind: rapid.SampledFrom([]Kind{Grate, Grate, Gauge, LidOff, LidOn, Lit, Unlit, CoalsOut, AshCleared, Meat, Wind, VentsSet, Out}).Draw(t, "kind"), Top: -1, Bottom: -1}
		switch e.Kind {
		case Grate, Gauge:
			e.C = rapid.Float64Range(-30, 550).Draw(t, "c")
		case CoalsOut:
			e.Count = rapid.SampledFrom([]float64{0.5, 0.95, 1, 20, 500}).Draw(t, "out")
		case Lit, Unlit:
			e.Count = float64(rapid.IntRange(1, 1000).Draw(t, "count"))
		case Meat:
			e.Kg = rapid.Float64Range(0, 30).Draw(t, "kg")
		case Wind:
			e.WindMS = rapid.Float64Range(0, 60).Draw(t, "wind")
		case VentsSet:
			e.Top, e.Bottom = rapid.Float64Range(-1, 1).Draw(t, "top"), rapid.Float64Range(-1, 1).Draw(t, "bottom")
		}
		out = append(out, e)
	}
	return out
}

func drawBegin(t *rapid.T) Begin {
	b := poured(rapid.Float64Range(0, 100).Draw(t, "lit"), rapid.Float64Range(0, 300).Draw(t, "unlit"))
	b.MidCook = rapid.Bool().Draw(t, "met")
	b.Grill.Deep = rapid.Bool().Draw(t, "deep")
	b.VentsUnsure = rapid.Bool().Draw(t, "unsure")
	b.Layout = rapid.SampledFrom([]fire.Layout{fire.Banked, fire.Ring, fire.Spread}).Draw(t, "layout")
	b.Seed = rapid.Uint64().Draw(t, "seed")
	return b
}

// Equal logs give equal answers to the last bit, and in which order the entries of one minute stand means nothing.
func TestEqualLogsEqualAnswers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, events := drawBegin(t), drawEvents(t)
		want := Want{LevelC: rapid.Float64Range(90, 230).Draw(t, "level")}
		first := fmt.Sprintf("%+v", Follow(b, events, 310).Advise(want))
		other := rapid.Permutation(events).Draw(t, "order")
		if second := fmt.Sprintf("%+v", Follow(b, append(other, events[0]), 310).Advise(want)); second != first {
			t.Fatalf("%s\nthen\n%s", first, second)
		}
	})
}

// Whatever the log says, figures are figures, ranges are in order, and no advice goes below the marks of safety, shuts a
// vent, or moves one on a reading that cannot be trusted.
func TestAdviceOfAnyLogIsSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := Want{LevelC: rapid.Float64Range(90, 230).Draw(t, "level"), SteerBottom: rapid.Bool().Draw(t, "bottom"), NoFood: rapid.Bool().Draw(t, "no food")}
		f := Follow(drawBegin(t), drawEvents(t), 310)
		a := f.Advise(want)
		for _, r := range []Range{a.Now, a.In15, a.In30} {
			if math.IsNaN(r.Middle) || math.IsInf(r.Middle, 0) || r.Low > r.Middle || r.Middle > r.High {
				t.Fatalf("range %+v of %+v", r, a)
			}
		}
		if a.To != a.From && (a.To.Top < 1./8-1e-9 || a.To.Bottom < 1./16-1e-9) {
			t.Fatalf("vents to %+v", a.To)
		}
		if want.SteerBottom && a.Do == Move && a.To.Top < 1./4-1e-9 {
			t.Fatalf("the bottom steers, and the top goes to %v", a.To.Top)
		}
		if a.Trust != Trusted && a.To != a.From {
			t.Fatalf("trust %d, and vents from %+v to %+v", a.Trust, a.From, a.To)
		}
		if a.LookMinutes < 1 || a.LookMinutes > lookLast+lidAgainIn || a.Count < 0 || a.Count > mostLit {
			t.Fatalf("%+v", a)
		}
	})
}

// Heating up after the light is foreseen: no sinking, no dying, no more coals.
func TestHeatingUpIsForeseen(t *testing.T) {
	b := poured(10, 90)
	for _, f := range []float64{120, 150, 180} {
		a := Follow(b, []Event{read(6, f)}, 6).Advise(Want{LevelC: toC(250)})
		if a.Reach != WithinReach || a.Do == AddLit || a.Why == Cool && a.Do == Leave || a.In30.Middle < a.Now.Middle {
			t.Errorf("%v F six minutes after the pour: %+v", f, a)
		}
	}
}

// A gauge is never taken for the grate until both were looked at once; then it is.
func TestGaugeIsNoGrate(t *testing.T) {
	gauge := func(m, f float64) Event { return Event{Minute: m, Kind: Gauge, C: toC(f)} }
	want := Want{LevelC: toC(250)}
	log := []Event{gauge(0, 320), gauge(30, 318), gauge(60, 321), gauge(90, 319)}
	a := Follow(met(0.5, 0.5), log, 90).Advise(want)
	if a.Do != HoldProbe || a.Figures() || a.To != a.From || a.Direction != -1 {
		t.Errorf("the gauge alone: %+v", a)
	}
	both := append(slices.Clone(log), read(91, 252))
	f := Follow(met(0.5, 0.5), both, 91)
	if a = f.Advise(want); a.Do != Leave || a.GaugeAtLevelLowC != 0 {
		t.Errorf("one look at both: %+v", a)
	}
	low, high := f.gaugeAt(toC(250))
	if toF(low) < 285 || toF(high) > 345 {
		t.Errorf("one look leaves the gauge at %.0f to %.0f F for 250 F", toF(low), toF(high))
	}
}

// One advice from a log of 60 entries takes at most 30 ms on a quiet core; here it must be below ten times that.
func BenchmarkAdvice(b *testing.B) {
	var log []Event
	for k := range 30 {
		log = append(log, read(float64(20*k), 250+10*math.Sin(float64(k))), set(float64(20*k+1), 0.25, []float64{0.25, 0.5}[k%2]))
	}
	for b.Loop() {
		Follow(met(0.25, 0.25), log, 600).Advise(Want{LevelC: toC(250)})
	}
}

// Coals that were taken out of a fire that runs hot are gone: it is foretold cooler, by a half
// more than by five, and never hotter than without.
func TestCoalsTakenOutCool(t *testing.T) {
	in30 := func(out float64) float64 {
		log := []Event{read(60, 330), read(75, 345)}
		if out > 0 {
			log = append(log, Event{Minute: 76, Kind: CoalsOut, Count: out})
		}
		return Follow(poured(60, 30), log, 76).Advise(Want{LevelC: toC(250)}).In30.Middle
	}
	all, five, half, most := in30(0), in30(5), in30(0.5), in30(55)
	if !(most < half && half < five && five < all) || all-half < 5 { // a half shows beyond what a reading is off by
		t.Errorf("in 30 min %.0f degC, less 5 coals %.0f, less a half %.0f, less 55 coals %.0f", all, five, half, most)
	}
}
