package steer

import (
	"testing"

	"example.com/cookday/schedule/internal/fire"
)

// chilled is a fire that stood near its level, got cold food at minute 90, and was read so many minutes later.
func chilled(wantF, kg float64, vents Vents, reads ...[2]float64) *Fire {
	b := Begin{Seed: 7, Grill: simKettle(), Layout: fire.Banked, Lit: 12, Unlit: 90, PourMinute: 15, Top: vents.Top, Bottom: vents.Bottom,
		Weather: func(float64) fire.Weather { return fire.Weather{AirC: 15} }}
	log := []Event{{Minute: 70, Kind: Grate, C: toC(wantF - 12)}, {Minute: 88, Kind: Grate, C: toC(wantF - 8)}, {Minute: 90, Kind: Meat, Kg: kg}}
	until := 90.0
	for _, r := range reads {
		until = 90 + r[0]
		log = append(log, Event{Minute: until, Kind: Grate, C: toC(r[1])})
	}
	return Follow(b, log, until)
}

// The dip after cold food is foreseen and left alone, as the sheet has it ("15 to 40 °F for up to two hours, don't chase
// it"); what is no dip is not.
func TestTheDipOfColdFoodIsLeft(t *testing.T) {
	half := Vents{1. / 2, 1. / 4}
	for _, c := range []struct {
		name  string
		want  float64
		kg    float64
		vents Vents
		reads [][2]float64
		leave bool
	}{
		{"a butt, 38 under after half an hour", 250, 3.4, half, [][2]float64{{32, 212}}, true},
		{"two butts, 31 under after 45 min", 250, 7.3, half, [][2]float64{{45, 219}}, true},
		{"a chuck roast, 27 under after half an hour", 275, 1.8, half, [][2]float64{{30, 248}}, true},
		{"a flat, 35 under after 20 min", 275, 2.5, half, [][2]float64{{20, 240}}, true},
		{"a butt, 70 under", 250, 3.4, half, [][2]float64{{32, 180}}, false},
		{"nothing that is felt, 40 under", 250, 0.4, half, [][2]float64{{20, 222}, {32, 210}}, false},
		{"a butt, and it sinks on after an hour", 250, 3.4, Vents{1. / 4, 1. / 4}, [][2]float64{{40, 226}, {65, 219}, {80, 211}}, false},
	} {
		a := chilled(c.want, c.kg, c.vents, c.reads...).Advise(Want{LevelC: toC(c.want)})
		more := a.Do == Move && a.To.Top+a.To.Bottom > a.From.Top+a.From.Bottom
		if c.leave && (a.Do != Leave || a.Why != ColdLoad) || !c.leave && !more && a.Do == Leave && a.InDip {
			t.Errorf("%s: %v to %+v, why %v, in the dip %t", c.name, a.Do, a.To, a.Why, a.InDip)
		}
	}
}
