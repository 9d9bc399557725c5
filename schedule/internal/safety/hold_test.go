package safety

import (
	"fmt"
	"math"
	"testing"
)

func TestHoldFor(t *testing.T) {
	cases := []struct {
		name         string
		finishF      float64
		small, roast bool
		airF, ovenF  float64
		kind         HoldKind
		limitF, mins float64
	}{
		{"brisket at 203", 203, false, true, 84, 32, HoldOuterAbove, 140, 0},
		{"just hot enough", 150, false, false, 84, 32, HoldOuterAbove, 140, 0},
		{"rare roast", 130, false, true, 84, 32, HoldByClock, 0, 120},
		{"rare roast, hot day", 130, false, true, 95, 32, HoldByClock, 0, 60},
		{"90 F is not above 90 F", 145, false, false, 90, 32, HoldByClock, 0, 120},
		{"rare roast and a warm oven", 130, false, true, 84, 130, HoldRoastOven, 130, 0},
		{"an oven too cool", 130, false, true, 84, 129, HoldByClock, 0, 120},
		{"a roast that never saw 130", 125, false, true, 84, 170, HoldByClock, 0, 120},
		{"fish in a warm oven", 140, false, false, 84, 170, HoldByClock, 0, 120},
		{"burger", 160, true, false, 84, 170, HoldNone, 0, 0},
	}
	for _, x := range cases {
		r := HoldFor(Finished{CoreC: celsius(x.finishF), Small: x.small, Roast: x.roast, AirC: celsius(x.airF), OvenC: celsius(x.ovenF)})
		limit := 0.0
		if r.LimitC > 0 {
			limit = fahrenheit(r.LimitC)
		}
		if r.Kind != x.kind || !near(limit, x.limitF) || r.LimitMinutes != x.mins || Document(r.Source) == "" || r.Sentence == "" {
			t.Errorf("%s: %+v", x.name, r)
		}
	}
}

func TestJudgeHold(t *testing.T) {
	outer := HoldFor(Finished{CoreC: celsius(203), Roast: true, AirC: celsius(84)})
	clock := HoldFor(Finished{CoreC: celsius(130), Roast: true, AirC: celsius(84)})
	falling := []Sample{{600, celsius(180)}, {840, celsius(140)}, {900, celsius(130)}}
	cases := []struct {
		name  string
		rule  HoldRule
		outer []Sample
		until float64
		ends  bool
	}{
		// A straight fall from 180 F passes 140 F at minute 840, ten minutes a 1.67 F.
		{"falls through 140 F", outer, falling, 840, true},
		// 180 to 130 F in 100 min, a degree in two minutes: 40 degrees are 80 min.
		{"between two samples", outer, []Sample{{0, celsius(180)}, {100, celsius(130)}}, 80, true},
		{"only just below", outer, []Sample{{0, celsius(150)}, {100, celsius(139.9)}}, 1000 / 10.1, true},
		{"ends above", outer, falling[:2], 840, false},
		{"starts below", outer, falling[2:], 900, true},
		{"clock, in time", clock, []Sample{{0, 54}, {120, 40}}, 120, false},
		{"clock, over", clock, []Sample{{0, 54}, {150, 40}}, 120, true},
	}
	for _, x := range cases {
		r, err := JudgeHold(x.rule, x.outer)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(r.UntilMinute-x.until) > 1e-6 || r.Ends != x.ends || (r.Finding != nil) != x.ends {
			t.Errorf("%s: %+v", x.name, r)
		}
	}
	if _, err := JudgeHold(outer, nil); err == nil {
		t.Error("a hold without samples has no answer")
	}
}

func TestDangerClock(t *testing.T) {
	cases := []struct {
		name    string
		samples []Sample
		want    float64
	}{
		{"none", nil, 0},
		{"up through the zone", []Sample{{0, celsius(40)}, {300, celsius(140)}, {600, celsius(203)}}, 300},
		// From 20 to 160 F in 140 min, a minute for each degree: 100 of them count.
		{"across both edges", []Sample{{0, celsius(20)}, {140, celsius(160)}}, 100},
		{"down again", []Sample{{0, celsius(20)}, {140, celsius(160)}, {280, celsius(20)}}, 200},
		{"on the lower edge", []Sample{{0, celsius(40)}, {60, celsius(40)}}, 60},
		{"cold", []Sample{{0, celsius(38)}, {60, celsius(39)}}, 0},
	}
	for _, x := range cases {
		var d DangerClock
		for _, s := range x.samples {
			if err := d.Add(s); err != nil {
				t.Fatal(err)
			}
		}
		if math.Abs(d.Minutes()-x.want) > 1e-6 {
			t.Errorf("%s: %v min, want %v", x.name, d.Minutes(), x.want)
		}
	}
}

func TestDangerWarnsWhereItConcerns(t *testing.T) {
	var d DangerClock
	d.Spend(300, celsius(40), celsius(140))
	warned := []piece{{Ground, Prep{}}, {Sausage, Prep{}}, {GroundPoultry, Prep{}}, {Beef, Prep{Injected: true}},
		{Lamb, Prep{Rolled: true}}, {Pork, Prep{Boned: true}}, {Poultry, Prep{Stuffed: true}}, {Beef, Prep{Tenderised: true}}}
	for _, x := range warned {
		f, ok := d.Finding(x.c, x.p)
		if !ok || f.Source != NoSource || f.OverMinutes != 60 {
			t.Errorf("%v: %+v", x, f)
		}
	}
	for _, x := range []piece{{Beef, Prep{}}, {Pork, Prep{Brined: true}}, {Poultry, Prep{}}, {Vegetable, Prep{}}} {
		if f, ok := d.Finding(x.c, x.p); ok {
			t.Errorf("%v: %+v", x, f)
		}
	}
	var short DangerClock
	short.Spend(240, celsius(40), celsius(140))
	if f, ok := short.Finding(Ground, Prep{}); ok {
		t.Errorf("4 h exactly: %+v", f)
	}
}

func TestBadSamplesAreNamed(t *testing.T) {
	var d DangerClock
	_ = d.Add(Sample{10, 20})
	if err := d.Add(Sample{9, 20}); err == nil {
		t.Error("time ran backwards unnoticed")
	}
	if err := d.Add(Sample{11, math.NaN()}); err == nil {
		t.Error("NaN went in unnoticed")
	}
	for _, bad := range [][]Sample{{{0, 10}, {math.Inf(1), 10}}, {{0, -300}}, {{5, 10}, {4, 10}}} {
		if _, err := JudgeCooling(bad); err == nil {
			t.Errorf("%v went in unnoticed", bad)
		}
	}
}

func ExampleHoldFor() {
	r := HoldFor(Finished{CoreC: 95, Roast: true, AirC: 29}) // a brisket off at 95 degC on a warm day, no oven
	fmt.Println(r.Kind, r.Sentence)
	// Output: outer-above Hold it hot. When the meat just under its surface falls to 140 F (60 °C), serve it or chill it.
}
