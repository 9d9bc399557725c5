package safety

import (
	"fmt"
	"math"
	"testing"
)

// finished is a piece on a warm day, in a room of 70 °F: what the rows below change.
func finished(p Piece, c Category, coreF float64, place HoldPlace) Finished {
	return Finished{Piece: p, Category: c, CoreC: celsius(coreF), Place: place, AirC: celsius(84), BoxAirC: celsius(70), RestMin: 30}
}

// The table of safety: what a piece may wait in each place, in minutes from the take-off,
// if its outer layer were above 140 °F for 150 min.
func TestHoldFor(t *testing.T) {
	hotDay := func(f Finished) Finished { f.AirC = celsius(95); return f }
	frail := func(f Finished) Finished { f.Frail = true; return f }
	prep := func(f Finished, p Prep) Finished { f.Prep = p; return f }
	oven := func(f Finished, setF float64) Finished { f.OvenC = celsius(setF); return f }
	roasted := func(f Finished) Finished { f.ByRoast = true; return f }
	cases := []struct {
		name          string
		f             Finished
		kind          HoldKind
		served, eaten float64
	}{
		// One clock: on the table an hour, eaten two hours after 140 °F.
		{"brisket in a box", finished(Shoulder, Beef, 203, InBox), HoldOuterAbove, 210, 270},
		{"brisket in a box, above 90 °F", hotDay(finished(Shoulder, Beef, 203, InBox)), HoldOuterAbove, 180, 210},
		{"ribs in a box: 3 hr", finished(Ribs, Pork, 198, InBox), HoldOuterAbove, 180, 240},
		{"sliced butt, not at 195 °F", finished(Shoulder, Pork, 185, InBox), HoldOuterAbove, 150, 210},
		{"just at 195 °F", finished(Shoulder, Pork, 195, InBox), HoldOuterAbove, 210, 270},
		{"injected: no whole muscle", prep(finished(Shoulder, Pork, 203, InBox), Prep{Injected: true}), HoldOuterAbove, 150, 210},
		{"rolled: no whole muscle", prep(finished(Shoulder, Pork, 203, InBox), Prep{Rolled: true}), HoldOuterAbove, 150, 210},
		{"stuffed: no box", prep(finished(Shoulder, Pork, 203, InBox), Prep{Stuffed: true}), HoldNone, 0, 0},
		{"brisket in an oven: no added time", oven(finished(Shoulder, Beef, 203, InOven), 170), HoldOuterAbove, 150, 210},
		// Tent and counter: 2 hr from the take-off in all.
		{"brisket under a tent", finished(Shoulder, Beef, 203, InOpen), HoldByClock, 60, 120},
		{"roast under a tent", finished(Joint, Beef, 130, InOpen), HoldByClock, 60, 120},
		{"roast under a tent, above 90 °F", hotDay(finished(Joint, Beef, 130, InOpen)), HoldByClock, 30, 60},
		// Frail guests: the outer layer only, at least the rest.
		{"frail guests, box", frail(finished(Shoulder, Beef, 203, InBox)), HoldOuterAbove, 150, 210},
		{"frail guests, tent", frail(finished(Joint, Beef, 145, InOpen)), HoldOuterAbove, 60, 120},
		// Birds: tent 30 min; box 2 hr from 10 lb, 1 hr others; oven 2 hr; no added time.
		{"chicken under a tent", finished(Bird, Poultry, 165, InOpen), HoldOuterAbove, 30, 90},
		{"chicken in a box", finished(Bird, Poultry, 165, InBox), HoldOuterAbove, 60, 120},
		{"turkey in a box", finished(Turkey, Poultry, 165, InBox), HoldOuterAbove, 120, 180},
		{"turkey in an oven", oven(finished(Turkey, Poultry, 165, InOven), 200), HoldOuterAbove, 120, 180},
		{"chicken in an oven", oven(finished(Bird, Poultry, 175, InOven), 200), HoldOuterAbove, 120, 180},
		// The 130 °F oven: intact beef and lamb, core and setting less 10 °F at 130 °F.
		{"roast in an oven", roasted(oven(finished(Joint, Beef, 130, InOven), 140)), HoldRoastOven, 240, 300},
		{"an oven too cool", roasted(oven(finished(Joint, Beef, 130, InOven), 139)), HoldByClock, 60, 120},
		{"a roast that never saw 130 °F", roasted(oven(finished(Joint, Lamb, 125, InOven), 170)), HoldByClock, 60, 120},
		{"not cooked by the rule", oven(finished(Joint, Beef, 130, InOven), 170), HoldByClock, 60, 120},
		{"pork is no beef", roasted(oven(finished(Joint, Pork, 135, InOven), 170)), HoldByClock, 60, 120},
		{"a loin that is above 140 °F throughout", oven(finished(Joint, Pork, 145, InOven), 170), HoldOuterAbove, 150, 210},
		{"the same in an oven that may fall below", oven(finished(Joint, Pork, 145, InOven), 145), HoldByClock, 60, 120},
		{"rolled is not intact", roasted(prep(oven(finished(Joint, Beef, 145, InOven), 145), Prep{Rolled: true})), HoldByClock, 60, 120},
		{"frail guests get no 130 °F oven", frail(roasted(oven(finished(Joint, Beef, 135, InOven), 140))), HoldOuterAbove, 150, 210},
		// Small pieces wait 30 min at the most, in an oven.
		{"burger", finished(Portion, Ground, 160, InOpen), HoldNone, 0, 0},
		{"burger in an oven", oven(finished(Portion, Ground, 160, InOven), 200), HoldOuterAbove, 30, 90},
		{"rare steak in an oven", oven(finished(Portion, Beef, 130, InOven), 200), HoldNone, 0, 0},
		{"cubes in a box", finished(Portion, Pork, 165, InBox), HoldNone, 0, 0},
	}
	for _, x := range cases {
		r := HoldFor(x.f)
		c := r.Clock(150)
		if r.Kind != x.kind || !near(c.Served, x.served) || !near(c.Eaten, x.eaten) || Document(r.Source) == "" || r.Sentence() == "" {
			t.Errorf("%s: %+v, %+v", x.name, r, c)
		}
		if c.Hot > c.Served {
			t.Errorf("%s: claimed hot for %v min, served within %v", x.name, c.Hot, c.Served)
		}
	}
}

// Frail guests have the rest that a piece needs, hot or not.
func TestFrailGuestsWaitForTheRest(t *testing.T) {
	f := finished(Joint, Beef, 145, InOpen)
	f.Frail = true
	if c := HoldFor(f).Clock(5); c.Served != 30 || c.Hot != 5 {
		t.Errorf("rests 30 min, hot for 5: %+v", c)
	}
}

// 90 °F is not above 90 °F; better in every way is never shorter on each side of it.
func TestHoldClockIsMonotone(t *testing.T) {
	f := finished(Shoulder, Beef, 203, InBox)
	f.AirC = celsius(90)
	if c := HoldFor(f).Clock(150); c.Served != 210 {
		t.Errorf("at 90 °F on the table within %v min", c.Served)
	}
	last := HoldClock{}
	for hot := 0.0; hot < 600; hot += 7 {
		c := HoldFor(f).Clock(hot)
		if c.Served < last.Served || c.Eaten < last.Eaten || c.Served > 8*60 {
			t.Errorf("hot for %v min: %+v, before %+v", hot, c, last)
		}
		last = c
	}
}

// Birds lose 0.25 (chickens) or 0.14 (turkeys) of what they are above the air in an hour:
// 165 °F in a room of 70 °F is at 140 °F after ln(95/70)/0.25 hr = 73 min, and 131 min. Beside
// a box in the cold, 20 °F, after ln(145/120)/0.25 hr = 45 min, and 81 min.
func TestBirdsCoolAsMeasured(t *testing.T) {
	for _, x := range []struct {
		p          Piece
		airF, want float64
	}{{Bird, 70, 60}, {Turkey, 70, 120}, {Bird, 20, 45.4}, {Turkey, 20, 81.1}} {
		f := finished(x.p, Poultry, 165, InBox)
		f.BoxAirC = celsius(x.airF)
		if got := HoldFor(f).Clock(600).Served; math.Abs(got-x.want) > 0.1 {
			t.Errorf("%s, %v °F: %v min, want %v", x.p, x.airF, got, x.want)
		}
	}
}

func TestJudgeHold(t *testing.T) {
	box := HoldFor(finished(Shoulder, Beef, 203, InBox))
	oven := HoldFor(func() Finished { f := finished(Shoulder, Beef, 203, InOven); f.OvenC = celsius(170); return f }())
	clock := HoldFor(finished(Joint, Beef, 130, InOpen))
	falling := []Sample{{600, celsius(180)}, {840, celsius(140)}, {900, celsius(130)}}
	cases := []struct {
		name  string
		rule  HoldRule
		outer []Sample
		until float64
		ends  bool
	}{
		// A straight fall from 180 °F passes 140 °F at minute 840, ten minutes a 1.67 °F.
		{"falls through 140 °F", oven, falling, 840, true},
		// 180 to 130 °F in 100 min, a degree in two minutes: 40 degrees are 80 min.
		{"between two samples", oven, []Sample{{0, celsius(180)}, {100, celsius(130)}}, 80, true},
		{"only just below", oven, []Sample{{0, celsius(150)}, {100, celsius(139.9)}}, 1000 / 10.1, true},
		{"ends above", oven, falling[:2], 840, false},
		{"starts below", oven, falling[2:], 900, true},
		{"a box has its clock after it", box, falling, 900, false},
		{"and no longer: 2 hr", box, []Sample{{0, celsius(180)}, {100, celsius(130)}, {300, celsius(120)}}, 120, true},
		{"below from the first, nobody knows since when", box, falling[2:], 900, true},
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
	if _, err := JudgeHold(oven, nil); err == nil {
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
		// From 20 to 160 °F in 140 min, a minute for each degree: 100 of them count.
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
		{Lamb, Prep{Rolled: true}}, {Pork, Prep{Boned: true}}, {Poultry, Prep{Stuffed: true}}, {Poultry, Prep{}}, {Beef, Prep{Tenderised: true}}}
	for _, x := range warned {
		f, ok := d.Finding(x.c, x.p)
		if !ok || f.Source != NoSource || f.OverMinutes != 60 {
			t.Errorf("%v: %+v", x, f)
		}
	}
	for _, x := range []piece{{Beef, Prep{}}, {Pork, Prep{Brined: true}}, {Vegetable, Prep{}}} {
		if f, ok := d.Finding(x.c, x.p); ok {
			t.Errorf("%v: %+v", x, f)
		}
	}
	var short DangerClock
	short.Spend(240, celsius(40), celsius(140))
	if f, ok := short.Finding(Ground, Prep{}); ok {
		t.Errorf("4 hr exactly: %+v", f)
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
	// A brisket off at 95 degC on a warm day, in a box.
	r := HoldFor(Finished{Piece: Shoulder, Category: Beef, CoreC: 95, Place: InBox, AirC: 29, BoxAirC: 21})
	fmt.Println(r.Kind, r.Sentence())
	// Output: outer-above From when the meat just under its surface falls to 140 °F (60 °C) it is on the table within 1 hr, and eaten or chilled within 2 hr; 8 hr in all at the most. What took longer than 1 hr is not kept.
}
