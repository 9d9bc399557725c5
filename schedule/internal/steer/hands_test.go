package steer

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/unit"
)

// seen is a kettle's fire met in mid cook under vents, looked at as told.
func seen(top, bottom float64, events ...Event) *Fire {
	b := Begin{Seed: 1, Grill: simKettle(), Layout: fire.Banked, MidCook: true, Unlit: 60, Top: top, Bottom: bottom,
		Weather: func(float64) fire.Weather { return fire.Weather{AirC: 21} }}
	return Follow(b, events, events[len(events)-1].Minute)
}

func shows(minute, f float64) Event { return Event{Minute: minute, Kind: Grate, C: (f - 32) / 1.8} }

func wants(f float64) Want { return Want{LevelC: (f - 32) / 1.8} }

// gridOf calls do with every wish, opening and reading of a grid.
func gridOf(do func(name string, wantF, top, bottom, showsF float64)) {
	for _, want := range []float64{225, 250, 300, 350} {
		for _, v := range []Vents{{1. / 8, 1. / 4}, {1. / 4, 1. / 4}, {1. / 2, 1. / 4}, {1. / 2, 1. / 2}, {1, 1. / 2}} {
			for off := -60.0; off <= 60; off += 15 {
				do(fmt.Sprintf("%.0f wanted, %.0f shown, top %.2f, bottom %.2f", want, want+off, v.Top, v.Bottom), want, v.Top, v.Bottom, want+off)
			}
		}
	}
}

func TestAGrateInItsBandIsLeftAlone(t *testing.T) {
	gridOf(func(name string, want, top, bottom, f float64) {
		if math.Abs(f-want) > 25 {
			return
		}
		if a := seen(top, bottom, shows(0, f)).Advise(wants(want)); a.Do == Move {
			t.Errorf("%s: %v -> %v", name, a.From, a.To)
		}
	})
}

func TestNoMoveOnAMoveThatIsNotFelt(t *testing.T) {
	gridOf(func(name string, want, top, bottom, f float64) {
		moved := Event{Minute: 61, Kind: VentsSet, Top: top, Bottom: bottom}
		if a := seen(1./3, bottom, shows(0, f+10), shows(60, f+5), moved, shows(68, f)).Advise(wants(want)); a.Do == Move {
			t.Errorf("%s, 7 min after a move: %v -> %v", name, a.From, a.To)
		}
	})
}

// Nor towards where the grate is too far already, nor by more than a step.
func TestMovesAreInProportion(t *testing.T) {
	gridOf(func(name string, want, top, bottom, f float64) {
		a := seen(top, bottom, shows(0, f)).Advise(wants(want))
		if a.Do != Move {
			return
		}
		less := a.To.Top < a.From.Top || a.To.Bottom < a.From.Bottom
		if less != (f > want) {
			t.Errorf("%s: %v -> %v points away", name, a.From, a.To)
		}
		most := 3.0
		if math.Abs(f-want) >= farF {
			most = 4
		}
		if !withinFactor(a.From.Top, a.To.Top, most) || !withinFactor(a.From.Bottom, a.To.Bottom, most) {
			t.Errorf("%s: %v -> %v is more than a step", name, a.From, a.To)
		}
	})
}

// With food over the fire both vents shut put it out: they are opened, and the wider the cooler it is.
func TestShutVentsAreOpenedTheWiderTheCooler(t *testing.T) {
	for _, want := range []float64{225, 250, 300, 350} {
		air := 0.0
		for f := want + 60; f >= 140; f -= 10 {
			a := seen(0, 0, shows(0, f)).Advise(wants(want))
			if a.Do != Move || a.To.Top < leastTop || a.To.Bottom <= 0 {
				t.Errorf("%.0f wanted, %.0f shown, both shut: %v %v", want, f, a.Do, a.To)
				continue
			}
			if now := a.To.Top + a.To.Bottom; now < air {
				t.Errorf("%.0f wanted: at %.0f it opens less than at %.0f", want, f, f+10)
			} else {
				air = now
			}
		}
	}
}

// What stays far too cool under open vents does not come back by itself, nor does it want air.
func TestOpenAndCoolIsNotOnItsWayBack(t *testing.T) {
	for f := 150.0; f <= 205; f += 10 {
		a := seen(1, 1, shows(0, f), shows(30, f+1)).Advise(wants(250))
		if a.Do == Leave || a.Do == Move || a.Why == ComingRight || a.Why == PassesBy {
			t.Errorf("%.0f °F under open vents: %s, %s", f, a.Do, a.Why)
		}
	}
}

// A fire does much in half an hour: no probe is blamed for it.
func TestTimeExplainsAReading(t *testing.T) {
	for _, c := range []struct{ was, is, after float64 }{{345, 342, 120}, {215, 300, 25}, {250, 340, 30}} {
		if a := seen(1./2, 1./2, shows(0, c.was), shows(c.after, c.is)).Advise(wants(350)); a.Do == ReadAgain {
			t.Errorf("%.0f, and %.0f %.0f min later: read again", c.was, c.is, c.after)
		}
	}
	if a := seen(1./2, 1./2, shows(0, 350), shows(30, 348), shows(36, 250)).Advise(wants(350)); a.Do != ReadAgain {
		t.Errorf("100 °F down in 6 min untouched: %s", a.Do)
	}
}

// Where the bottom is the fine control it is moved alone: the top is closed only when the bottom has no more to give.
func TestABottomSteeredGrillKeepsItsTop(t *testing.T) {
	gridOf(func(name string, want, top, bottom, f float64) {
		w := wants(want)
		w.SteerBottom = true
		a := seen(max(top, leastTopWhere), bottom, shows(0, f), shows(20, f)).Advise(w)
		topMoves, bottomMoves := !sameMark(a.From.Top, a.To.Top), !sameMark(a.From.Bottom, a.To.Bottom)
		if a.Do == Move && topMoves && (bottomMoves || f > want && bottom > 1./16) {
			t.Errorf("%s: %v -> %v", name, a.From, a.To)
		}
	})
}

// One look at a fire that was poured a quarter of an hour ago and more never slams a vent: by a factor of four at most within 100 F, of three within 60.
func TestOneLookAtAYoungFireDoesNotSlam(t *testing.T) {
	for _, since := range []float64{15, 20, 30, 45, 50} {
		for _, v := range []Vents{{1, 1}, {0.5, 0.5}, {0.5, 0.25}, {0.25, 0.25}} {
			for off := 26.0; off < 100; off += 6 {
				b := poured(15, 100)
				b.Top, b.Bottom = v.Top, v.Bottom
				a := Follow(b, []Event{read(since, 250+off)}, since).Advise(wants(250))
				most := 4.0
				if off < 60 {
					most = 3
				}
				if !withinFactor(v.Top, a.To.Top, most) || !withinFactor(v.Bottom, a.To.Bottom, most) {
					t.Errorf("%.0f min, %.0f F above: from %+v to %+v", since, off, v, a.To)
				}
			}
		}
	}
}

// A top vent that stands lower than it may with food on is opened though it is too hot, and the reason is that.
func TestTheLeastTopVentIsTheReason(t *testing.T) {
	b := poured(60, 40)
	b.Top, b.Bottom = 1./16, 1./16
	a := Follow(b, []Event{read(90, 315)}, 90).Advise(wants(250))
	if text := a.Tell(unit.US).Sentences(); a.To.Top < leastTop-1e-9 || !strings.Contains(text, "eighth or more, also where it is too hot") || strings.Contains(text, "below 250") {
		t.Errorf("%+v: %s", a.To, text)
	}
}
