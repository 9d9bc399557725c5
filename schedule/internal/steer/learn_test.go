package steer

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/cookday/schedule/internal/fire"
)

// watched is a cook of which every quarter of an hour the grate is read, with vents moved twice, on a grill of its own.
func watched(truth fire.Traits, seed uint64) []Event {
	d := dice{state: seed}
	h := simKettle().Hearth(fire.Banked, nil)
	c := fire.Coals{Lit: 12, Unlit: 90}
	var out []Event
	s := simKettle().Setting(fire.Weather{AirC: 21}, 0.5, 0.5, 0)
	for m := 1; m <= 240; m++ {
		switch m {
		case 60:
			s.Top = 0.25
			out = append(out, set(60, 0.25, 0.5))
		case 150:
			s.Bottom = 0.25
			out = append(out, set(150, 0.25, 0.25))
		}
		c = h.Step(&truth, c, &s, 1)
		if m%15 == 0 {
			out = append(out, read(float64(m), 70+1.8*c.RiseK+3*d.normal()))
		}
	}
	return out
}

func watchedBegin(own *Record) Begin {
	b := poured(12, 90)
	b.Top, b.Bottom, b.Own = 0.5, 0.5, own
	return b
}

func learnedFrom(own *Record, events []Event) (Record, bool) {
	return Follow(watchedBegin(own), events, 240).Learned()
}

// steadyF is where a record takes the grate with vents at a quarter.
func steadyF(r *Record) float64 {
	g := simKettle()
	t := r.Traits(g.Usual())
	h := g.Hearth(fire.Banked, nil)
	rise, _ := h.Established(&t, 15, g.Setting(fire.Weather{AirC: 21}, 0.25, 0.25, 0))
	return 70 + 1.8*rise
}

// Three cooks on a leaky grill bring its record near its true level; each is deterministic.
func TestRecordComesNearTheGrill(t *testing.T) {
	truth := simKettle().Usual()
	truth.Gain, truth.Leak = 1.3, 0.26
	g, s := simKettle(), simKettle().Setting(fire.Weather{AirC: 21}, 0.25, 0.25, 0)
	h := g.Hearth(fire.Banked, nil)
	rise, _ := h.Established(&truth, 15, s)
	wantF, usualF := 70+1.8*rise, steadyF(nil)
	var own *Record
	for k := range 3 {
		r, ok := learnedFrom(own, watched(truth, uint64(k)))
		again, _ := learnedFrom(own, watched(truth, uint64(k)))
		if fmt.Sprint(r) != fmt.Sprint(again) || !ok || r.Cooks != k+1 {
			t.Fatalf("cook %d: %v %+v, again %+v", k, ok, r, again)
		}
		own = &r
		t.Logf("after %d cooks: %.0f F at a quarter and a quarter; the truth %.0f, the usual grill %.0f", k+1, steadyF(own), wantF, usualF)
	}
	if off := math.Abs(steadyF(own) - wantF); off > 0.5*math.Abs(usualF-wantF) {
		t.Errorf("still %.0f F off", off)
	}
}

// A fire that ran hotter than another under the same vents never teaches a cooler grill.
func TestHotterLogTeachesHotterGrill(t *testing.T) {
	last := 0.0
	for _, gain := range []float64{0.7, 0.85, 1, 1.15, 1.3} {
		truth := simKettle().Usual()
		truth.Gain = gain
		r, ok := learnedFrom(nil, watched(truth, 7))
		if f := steadyF(&r); !ok || f < last {
			t.Errorf("gain %.2f: %.0f F, cooler than of a cooler fire, %.0f F", gain, f, last)
		} else {
			last = f
		}
	}
}

// A cook that was hardly read, or whose vents nobody moved, teaches nothing.
func TestWhatTeachesNothing(t *testing.T) {
	own := Record{Cooks: 2, Figures: map[string]Figure{"gain": {1.1, 0.1}}}
	for name, events := range map[string][]Event{
		"one reading": {read(60, 250), set(70, 0.25, 0.5), set(90, 0.25, 0.25)},
		"never moved": {read(30, 240), read(60, 250), read(90, 250), read(120, 250), read(150, 250), read(180, 250), read(210, 250)},
		"a broken thermometer": {set(20, 0.25, 0.5), set(40, 0.25, 0.25), read(30, 240), read(50, 500), read(70, 90), read(90, 480), read(110, 120),
			read(130, 510), read(150, 80), read(170, 505)},
	} {
		if r, ok := learnedFrom(&own, events); ok || fmt.Sprint(r) != fmt.Sprint(own) {
			t.Errorf("%s: %+v", name, r)
		}
	}
}

// Whatever a log says, a record stays within what a grill can be, and one odd cook moves the level that it foretells by
// less than a new grill's level is unsure.
func TestOneOddLogMovesLittle(t *testing.T) {
	truth := simKettle().Usual()
	var own *Record
	for k := range 3 {
		r, _ := learnedFrom(own, watched(truth, uint64(k)))
		own = &r
	}
	was := steadyF(own)
	worst := 0.0
	rapid.Check(t, func(t *rapid.T) {
		odd := truth
		odd.Gain *= rapid.Float64Range(0.4, 2.5).Draw(t, "gain")
		odd.Leak *= rapid.Float64Range(0.1, 6).Draw(t, "leak")
		events := watched(odd, rapid.Uint64().Draw(t, "seed"))
		for i := range events {
			if events[i].Kind == Grate {
				events[i].C += rapid.SampledFrom([]float64{0, 0, 0, 20, -20}).Draw(t, "slip")
			}
		}
		r, ok := learnedFrom(own, events)
		usual := usualRecord(&Begin{})
		for key, f := range r.Figures {
			if off := math.Abs(math.Log(f.Middle)); off > mostOff*usual[key].Spread+1e-9 || !(f.Spread > 0) || f.Spread > usual[key].Spread+1e-9 {
				t.Fatalf("%s: %+v", key, f)
			}
		}
		if ok {
			worst = max(worst, math.Abs(steadyF(&r)-was))
		}
	})
	t.Logf("one odd cook after three moves the level at a quarter and a quarter by up to %.0f F", worst)
	if worst > 50 { // what a new grill's level is unsure by
		t.Errorf("by %.0f F", worst)
	}
}

// The third cook on a grill is steered better than the first: three days on each grill, the third with and without what
// the two before it taught.
func TestThirdCookIsSteeredBetter(t *testing.T) {
	n := 100
	if *long > 0 {
		n = *long
	} else if testing.Short() {
		t.Skip("grills with three cooks of five hours each")
	}
	first, third := score{}, score{}
	var offFirst, offThird []float64
	d := dice{state: seedOfCooks}
	if *seed != 0 {
		d.state = *seed
	}
	for k := 0; k < n; {
		truth, power := drawTruth(&d, 1)
		days := [3]cook{}
		ok := true
		for i := range days {
			days[i] = drawCook(&d, truth, power)
			ok = ok && days[i].holdable()
		}
		if !ok {
			continue
		}
		k++
		var own *Record
		for i := range 2 {
			_, f := days[i].begin().advised(own)
			if r, taught := f.Learned(); taught {
				own = &r
			}
		}
		a, fa := days[2].begin().advised(nil)
		b, fb := days[2].begin().advised(own)
		first, third = first.plus(a), third.plus(b)
		offFirst, offThird = append(offFirst, fa.foretoldOff()...), append(offThird, fb.foretoldOff()...)
	}
	t.Logf("new grill:  %s; readings foretold to %.1f F", first.told(n), mean(offFirst))
	t.Logf("third cook: %s; readings foretold to %.1f F", third.told(n), mean(offThird))
	t.Logf("third of first: outside %.3f, moves %.3f, foretold %.3f", third.outside/first.outside, third.moves/first.moves, mean(offThird)/mean(offFirst))
	mostOutside, mostMoves := 1.08, 1.08 // so few draws scatter
	if *long > 0 && *seed == 0 {
		mostOutside, mostMoves = thirdOutside, thirdMoves
	}
	if third.outside > mostOutside*first.outside || third.moves > mostMoves*first.moves || mean(offThird) > 1.02*mean(offFirst) {
		t.Error("what was learned does too little")
	}
}

// What was asked for of the third cook on a grill, of the first one's.
const (
	thirdOutside = 0.96
	thirdMoves   = 0.90
)

// foretoldOff is by how much each reading of the first hour was off what was expected, F.
func (f *Fire) foretoldOff() []float64 {
	var out []float64
	for _, r := range f.readings {
		if !r.Deaf && r.Minute < 60 {
			out = append(out, math.Abs(toF(r.C)-toF(r.ExpectedC)))
		}
	}
	return out
}
