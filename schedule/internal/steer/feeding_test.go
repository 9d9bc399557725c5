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
