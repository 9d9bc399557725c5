package steer

import (
	"strings"
	"testing"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/unit"
)

// What a fire lacks by what was done to it: no ash in the first hours, no more coals on those that were added just now, and more of
// them at once where few are lit under open vents.
func TestWhatAFireLacks(t *testing.T) {
	smoker := fire.Grill{Kind: fire.Upright, DiameterM: 22 * 0.0254}
	for _, c := range []struct {
		name       string
		grill      fire.Grill
		wantF      float64
		lit, unlit float64
		log        []Event
		at         float64
		do         Do
		why        Why
	}{
		{"few lit at the pour", smoker, 325, 37, 13, []Event{{Minute: 45, Kind: Grate, C: toC(268)}}, 46, AddLit, Cool},
		{"a bird, an hour after the pour", simKettle(), 375, 105, 0, []Event{{Minute: 40, Kind: Grate, C: toC(355)}, {Minute: 50, Kind: Meat, Kg: 2}, {Minute: 65, Kind: Grate, C: toC(322)}}, 66, Leave, ColdLoad},
		{"lit coals ten minutes ago", simKettle(), 350, 60, 0, []Event{{Minute: 60, Kind: Grate, C: toC(300)}, {Minute: 80, Kind: Grate, C: toC(275)}, {Minute: 84, Kind: Lit, Count: 30}, {Minute: 94, Kind: Grate, C: toC(268)}}, 94, Leave, LitLately},
		{"75 min after the pour", simKettle(), 350, 60, 0, []Event{{Minute: 60, Kind: Grate, C: toC(300)}, {Minute: 80, Kind: Grate, C: toC(275)}, {Minute: 90, Kind: Grate, C: toC(262)}}, 90, AddLit, Spent},
		{"all open, 50 under, two hours after the pour", simKettle(), 250, 15, 60, []Event{{Minute: 120, Kind: Grate, C: toC(214)}, {Minute: 135, Kind: Grate, C: toC(200)}}, 135, AddLit, Cool},
		{"both vents shut over food", simKettle(), 375, 100, 0, []Event{{Minute: 50, Kind: Grate, C: toC(360)}, {Minute: 60, Kind: Meat, Kg: 2}, {Minute: 75, Kind: VentsSet}, {Minute: 95, Kind: Grate, C: toC(240)}}, 96, Move, VentsShut},
	} {
		b := Begin{Seed: 3, Grill: c.grill, Layout: fire.Banked, Lit: c.lit, Unlit: c.unlit, PourMinute: 15, Top: 1, Bottom: 1, Weather: func(float64) fire.Weather { return fire.Weather{AirC: 20} }}
		log := append([]Event{{Minute: 16, Kind: VentsSet, Top: 1, Bottom: 1}}, c.log...)
		a := Follow(b, log, c.at).Advise(Want{LevelC: toC(c.wantF), SteerBottom: c.grill.Kind == fire.Upright})
		text := a.Tell(unit.US).Sentences()
		if a.Do != c.do || a.Why != c.why && c.do == Leave || strings.Contains(text, "ash") || a.Do == AddLit && a.Count%5 != 0 {
			t.Errorf("%s: %v %d, why %v: %s", c.name, a.Do, a.Count, a.Why, text)
		}
	}
}

// Long after the coals that were laid are burnt by their law: what is below its band is fed, at every heat; what still holds its level is left,
// and the cook is told that the coals count as nearly gone.
func TestABurntDownFireIsFed(t *testing.T) {
	for _, c := range []struct{ wantF, vents, since, lit, unlit float64 }{{275, 1. / 2, 480, 15, 60}, {250, 1. / 4, 660, 12, 70}, {250, 1. / 4, 720, 12, 100}} {
		for off := -75.0; off <= 20; off += 5 {
			b := Begin{Seed: 3, Grill: simKettle(), Layout: fire.Banked, Lit: c.lit, Unlit: c.unlit, Top: c.vents, Bottom: c.vents, Weather: func(float64) fire.Weather { return fire.Weather{AirC: 20} }}
			f := Follow(b, []Event{{Minute: c.since, Kind: Grate, C: toC(c.wantF + off)}}, c.since)
			if !f.burntDown() {
				t.Fatalf("%+v: not burnt down", c)
			}
			a := f.Advise(Want{LevelC: toC(c.wantF)})
			if fed := a.Do == AddLit || a.Do == AddUnlit; off < -26 && !fed || off > -24 && (fed || !a.Ending) {
				t.Errorf("%+v, %.0f F off: %v, ending %v: %s", c, off, a.Do, a.Ending, a.Tell(unit.US).Sentences())
			}
		}
	}
}

// A roast far above its level is not told a mark that lets it fall below it, whatever else is known; and so far above with food on that
// it may burn, nobody is sent to the vents first.
func TestAHotFireIsNotChoked(t *testing.T) {
	for _, wantF := range []float64{350, 375, 450} {
		for off := 30.0; off <= 100; off += 10 {
			for _, since := range []float64{30, 45, 90} {
				b := Begin{Seed: 3, Grill: simKettle(), Layout: fire.TwoZone, Lit: 90, Top: 1, Bottom: 1, Weather: func(float64) fire.Weather { return fire.Weather{AirC: 20} }}
				a := Follow(b, []Event{{Minute: since, Kind: Grate, C: toC(wantF + off)}}, since).Advise(Want{LevelC: toC(wantF)})
				if a.To.Top < 1./3-1e-9 || a.To.Bottom < 1./2-1e-9 {
					t.Errorf("%.0f F, %.0f above, %.0f min: %+v", wantF, off, since, a.To)
				}
			}
		}
	}
	b := met(1, 1)
	f := Follow(b, []Event{read(60, 600)}, 60)
	if a := f.Advise(Want{LevelC: toC(250)}); a.Do != LookFirst || !strings.Contains(a.Tell(unit.US).Sentences(), "Never water") {
		t.Errorf("600 F for 250: %s", a.Tell(unit.US).Sentences())
	}
	if a := f.Advise(Want{LevelC: toC(250), NoFood: true}); a.Do == LookFirst {
		t.Error("without food nothing burns")
	}
	if a := Follow(b, []Event{read(60, 600), read(66, 595)}, 66).Advise(Want{LevelC: toC(250)}); a.Do == LookFirst {
		t.Error("two looks agree, and it is still not believed")
	}
}
