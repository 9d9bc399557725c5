package fire

import (
	"fmt"
	"math"
	"testing"
)

func need(hours float64, w Weather) Need {
	return Need{Slices: []Slice{{hours * 60, w}}, First: true}
}

// Common practice, no source: about 75 unlit briquettes with about 10 lit on their edge for six hours in the low band,
// size of the kettle not said (22.5 in taken). 10 % is "about".
func TestSixHoursLowAgainstPractice(t *testing.T) {
	b := kettle(22.5).Plan(Fire{Banked, fahrenheit(250)}, need(6, mildCalm))
	t.Logf("lay %d, of them %d lit; practice 85 and 10", b.Lay.Count, b.Light.Count)
	if math.Abs(float64(b.Lay.Count)/85-1) > 0.10 || math.Abs(float64(b.Light.Count)-10) > 2 {
		t.Errorf("lay %d with %d lit, practice 85 with 10", b.Lay.Count, b.Light.Count)
	}
	if len(b.TopUps) != 0 || len(b.Shortfalls) != 0 || b.SureMinutes < 360-1e-6 {
		t.Errorf("does not last its six hours: %+v", b)
	}
}

// Common practice, no source: a fuse of two rows, two more on top, one on top of those, a gap of 8 in, 5-7 lit, burns
// 8-10 h on a 22 in kettle; by its length 12-15 h are told of, too. Logged ones went 6 to 18 (testdata/fuel_logs_kettle.csv).
func TestRingAgainstPractice(t *testing.T) {
	b := kettle(22).Plan(Fire{Ring, fahrenheit(250)}, need(12, mildCalm))
	t.Logf("%s, %d steps, %.2f m, %d pieces, %.1f h", b.Ring.Section, b.Ring.Steps, b.Ring.ArcM, b.Lay.Count, b.LastsMinutes/60)
	if b.Ring.Section.String() != "2-2-1" || b.Light.Count < 5 || b.Light.Count > 7 {
		t.Errorf("section %s with %d lit", b.Ring.Section, b.Light.Count)
	}
	if b.LastsMinutes < 8*60 || b.LastsMinutes > 15*60 {
		t.Errorf("lasts %.1f h, practice 8-10 h, or 12-15 h", b.LastsMinutes/60)
	}
	if b.Ring.ArcM > b.Ring.MostM+1e-9 {
		t.Errorf("fuse of %.2f m on %.2f m of edge", b.Ring.ArcM, b.Ring.MostM)
	}
}

// A hungrier fire gets a thicker fuse, and a thicker fuse does not last longer at its own heat.
func TestFuseThicknessSetsTheHeat(t *testing.T) {
	g, last := kettle(22.5), 0
	for _, levelF := range []float64{150, 180, 212, 225, 250, 275} {
		b := g.Plan(Fire{Ring, fahrenheit(levelF)}, need(3, mildCalm))
		if n := b.Ring.Section.perStep(); n < last {
			t.Errorf("%.0f F: section %s is thinner than a cooler fire's", levelF, b.Ring.Section)
		} else {
			last = n
		}
	}
	for _, s := range sections { // a front's speed does not depend on the thickness
		hours := g.ringKg(s) / (float64(s.perStep()) * stepsPerHour * briquetteKg)
		if hours < 8 || hours > 15 { // as above; the edge of a wider fuse is a little shorter
			t.Errorf("%s burns %.1f h at its own heat", s, hours)
		}
	}
}

// Common practice, no source: a full lit chimney for hot; above 450 F or lid off a fill lasts 45-60 min.
func TestHotAndSearFires(t *testing.T) {
	g := kettle(22.5)
	hot := g.Plan(Fire{Spread, fahrenheit(400)}, need(0.5, mildCalm))
	if f := hot.Light.ChimneyFills; f < 0.75 || f > 1 {
		t.Errorf("%.2f of a chimney for a hot fire, practice says a full one", f)
	}
	long := g.Plan(Fire{TwoZone, fahrenheit(350)}, need(3, mildCalm))
	for i, top := range long.TopUps {
		if !top.Lit || top.AtMinute != float64(60*(i+1)) || top.LeadMinutes != 20 {
			t.Errorf("top-up %d of a hot fire: %+v", i, top)
		}
	}
	sear := g.Plan(Fire{Heap, fahrenheit(550)}, need(1.5, mildCalm))
	if math.Abs(sear.Expected.ChimneyFills-2) > 1e-9 || len(sear.TopUps) != 1 {
		t.Errorf("90 min of searing: %.2f fills, %d top-ups", sear.Expected.ChimneyFills, len(sear.TopUps))
	}
}

// The night in a low fire: quiet from one hour after it is ready, for 6.5 h.
func TestUntendedNight(t *testing.T) {
	night := []Span{{60, 60 + 6.5*60}}
	plan := func(g Grill, f Fire, w Weather) Burn {
		n := need(14, w)
		n.Untended = night
		return g.Plan(f, n)
	}
	cold := Weather{AirC: 0, WindMS: 6}
	for _, b := range []Burn{
		plan(kettle(22.5), Fire{Banked, fahrenheit(225)}, mildCalm),
		plan(kettle(14.5), Fire{Ring, fahrenheit(250)}, cold),
	} {
		for _, top := range b.TopUps {
			if top.AtMinute > night[0].FromMinute && top.AtMinute < night[0].ToMinute {
				t.Errorf("top-up at minute %.0f of the night", top.AtMinute)
			}
		}
	}
	if b := plan(kettle(22.5), Fire{Banked, fahrenheit(225)}, mildCalm); len(b.Shortfalls) != 0 {
		t.Errorf("a full basket should last the night: %+v", b.Shortfalls)
	}
	b := plan(kettle(14.5), Fire{Ring, fahrenheit(250)}, cold)
	if len(b.Shortfalls) != 1 || b.Shortfalls[0].Code != CannotLast || b.Shortfalls[0].ShortMinutes <= 0 {
		t.Fatalf("a small kettle on a cold windy night: %+v", b.Shortfalls)
	}
	s := b.Shortfalls[0]
	if math.Abs(s.OutMinute+s.ShortMinutes-night[0].ToMinute) > 1e-6 || s.CanLastMinutes() >= 6.5*60 {
		t.Errorf("%+v can last %.0f", s, s.CanLastMinutes())
	}
}

// A top-up that would fall just inside the night is made before it.
func TestTopUpComesBeforeTheNight(t *testing.T) {
	g, f := kettle(22.5), Fire{Banked, fahrenheit(250)}
	free := g.Plan(f, need(14, mildCalm))
	at := free.TopUps[0].AtMinute
	n := need(14, mildCalm)
	n.Untended = []Span{{at - 60, at + 120}}
	b := g.Plan(f, n)
	if len(b.Shortfalls) != 0 || b.TopUps[0].AtMinute != at-60 {
		t.Errorf("moved to %v, short %v; freely at %.0f", b.TopUps, b.Shortfalls, at)
	}
}

func ExampleGrill_Plan() {
	g := Grill{Kind: Kettle, DiameterM: 0.5715, Fuel: Briquettes}
	night := Slice{Minutes: 8 * 60, Weather: Weather{AirC: 12}}
	morning := Slice{Minutes: 4 * 60, Weather: Weather{AirC: 20, WindMS: 3}}
	b := g.Plan(Fire{Banked, 121}, Need{Slices: []Slice{night, morning}, First: true})
	fmt.Printf("%s: lay %d, light %d of them\n", b.Holder, b.Lay.Count, b.Light.Count)
	for _, t := range b.TopUps {
		fmt.Printf("after %.1f h add %d\n", t.AtMinute/60, t.Add.Count)
	}
	fmt.Printf("burns about %d, between %d and %d; buy %.1f kg\n", b.Expected.Count, b.Low.Count, b.High.Count, b.Buy.MassKg)
	// Output:
	// basket: lay 126, light 14 of them
	// after 7.6 h add 64
	// burns about 146, between 73 and 291; buy 5.4 kg
}

func ExampleGaugeC() {
	g := Grill{Kind: Kettle, DiameterM: 0.56, GaugeOffsetK: 22} // typed at 250 F on the grate, 70 F in the air
	fmt.Printf("%.0f C\n", GaugeC(g, 107, 21))
	// Output: 126 C
}

// Filled to the limit, a basket outlasts a fuse on 22.5 in, and a colder night shortens either.
func TestLongestMinutes(t *testing.T) {
	g := kettle(22.5)
	for _, l := range []Layout{Banked, Ring} {
		mild, cold := g.LongestMinutes(Fire{l, 121}, mildCalm), g.LongestMinutes(Fire{l, 121}, Weather{AirC: -5, WindMS: 5})
		t.Logf("%s: %.0f min in mild, %.0f min in cold windy air", l, mild, cold)
		if cold >= mild || mild < 5*60 {
			t.Errorf("%s: %.0f min mild, %.0f min cold", l, mild, cold)
		}
	}
}
