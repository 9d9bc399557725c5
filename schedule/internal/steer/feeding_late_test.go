package steer

import (
	"testing"

	"example.com/cookday/schedule/internal/fire"
)

// late is what is advised of a usual kettle that was looked at once, so long after the pour, with both vents as given.
func late(minutes, lit, unlit, vents, readF, wantF float64) Advice {
	b := Begin{Grill: fire.Grill{Kind: fire.Kettle, DiameterM: 22 * 0.0254, Fuel: fire.Briquettes}, Layout: fire.Banked, Lit: lit, Unlit: unlit, Top: vents, Bottom: vents,
		Weather: func(float64) fire.Weather { return fire.Weather{AirC: 21} }}
	events := []Event{{Minute: minutes, Kind: Grate, C: (readF - 32) / 1.8}}
	return Follow(b, events, minutes).Advise(Want{LevelC: (wantF - 32) / 1.8})
}

// TestAirAloneIsNoAnswer: after hours on counted coals a fire that more air would not bring back is fed, or its ash is cleared
// (common practice, no source); earlier its vents are opened.
func TestAirAloneIsNoAnswer(t *testing.T) {
	for _, read := range []float64{195, 205, 215} {
		if a := late(7*60, 12, 110, 1./4, read, 250); a.Do != AddLit && a.Do != ClearAsh {
			t.Errorf("%.0f F of 250 F after 7 h on 122 coals: %v, vents %v", read, a.Do, a.To)
		}
		if a := late(3*60, 12, 110, 1./4, read, 250); a.Do != Move || a.To.Top <= a.From.Top {
			t.Errorf("%.0f F of 250 F after 3 h: %v, vents %v", read, a.Do, a.To)
		}
	}
}
