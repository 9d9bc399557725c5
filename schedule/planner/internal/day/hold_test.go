package day

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/unit"
)

func fahrenheit(c float64) float64 { return unit.Temperature(c).Fahrenheit() }

// cooked is a piece at its take-off from a grate, and a calm day to hold it on.
func cooked(t *testing.T, name string, lb, grateF, pullF float64) (*Day, *Item, Way) {
	t.Helper()
	c, ok := cut.Find(name)
	if !ok {
		t.Fatalf("no cut %s", name)
	}
	it := &Item{Cut: c, Category: safety.Category(c.Food)}
	w := Way{PullC: unit.FToC(pullF), LevelC: unit.FToC(grateF), State: new(heat.Sim)}
	w.State.Start(it.Body(float64(unit.FromPounds(lb))), heat.Grate(w.LevelC, heat.CalmDay()))
	if got := w.State.RunTo(w.PullC, LongestCookS); got != heat.Reached {
		t.Fatalf("%s: %v", name, got)
	}
	d := &Day{Air: fire.Weather{AirC: RoomC}, Night: fire.Weather{AirC: RoomC}}
	d.Req.Oven = &schedule.Oven{Hold: unit.FromFahrenheit(170)}
	return d, it, w
}

// The records of cooldown.csv against the pessimistic end of a hold. Pieces and
// starts that a record does not print are assumed as it is told: a shoulder of
// 8 lb from a grate at 250 F, out at 203 F. What must hold: where a record had
// fallen to 140 F, the plan does not still claim it. The errors of the core at the
// expected end are written down.
func TestHoldsAgainstRecords(t *testing.T) {
	file, err := os.Open("../../../internal/heat/testdata/cooldown.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	pieces := map[string]struct {
		cut               string
		lb, grateF, pullF float64
		method            string
	}{
		"turkey_cool_class":      {"turkey-breast", 8, 325, 186, schedule.HoldCounter},
		"box_informal":           {"pork-butt", 8, 250, 203, schedule.HoldBox},
		"box_informal_2":         {"pork-butt", 8, 250, 203, schedule.HoldBox},
		"box_general":            {"pork-butt", 8, 250, 200, schedule.HoldBox},
		"roast_chicken_informal": {"chicken", 4.5, 350, 149, schedule.HoldTent},
	}
	seen := 0
	for _, r := range rows[1:] {
		hours, err := strconv.ParseFloat(r[6], 64)
		if hours == 0 || err != nil {
			continue // the take-off itself
		}
		recorded, err := strconv.ParseFloat(r[7], 64)
		if err != nil {
			t.Fatal(err)
		}
		p := pieces[r[0]]
		d, it, w := cooked(t, p.cut, p.lb, p.grateF, p.pullF)
		if strings.Contains(r[3], "95 F") {
			d.Night.AirC = unit.FToC(95) // air is the lesser of room and night: the room decides, to the safe side
		}
		s := *w.State
		s = Follow(&s, d.Course(w, Waiting{Method: p.method, Pieces: 1}, ExpectedEnd)).After(hours * 60)
		core := fahrenheit(heat.ProbeCoreC(w.PullC, s.CoreC()))
		limit := d.HoldBy(it, w, Lot{MassKg: float64(unit.FromPounds(p.lb)), Count: 1}, p.method, 0).Hot
		t.Logf("%-22s %5.2f h: core %3.0f F, recorded %3.0f (error %+3.0f); outer claimed above 140 F for %.1f h", r[0], hours, core, recorded, core-recorded, limit/60)
		if recorded <= 140 && limit >= hours*60 {
			t.Errorf("%s: above 140 F claimed for %.1f h, recorded %g F at %g h", r[0], limit/60, recorded, hours)
		}
		// The boxes are off by -17 to +7 F, the bare turkey breast by +35: it cools too
		// slowly here (still air about it, as on the grate). The chicken's record begins at 149 F some time after the oven; here it
		// is taken off then and rises first, which explains most of the +59.
		worst := map[string]float64{"turkey_cool_class": 36, "roast_chicken_informal": 60}[r[0]]
		if math.Abs(core-recorded) > max(worst, 19) {
			t.Errorf("%s: core %.0f F, recorded %.0f: further off than is written down", r[0], core, recorded)
		}
		seen++
	}
	if seen != 8 {
		t.Errorf("%d records", seen)
	}
}

// A better box never cools faster, more pieces never cool faster, and the poor end
// is never later than the expected one.
func TestBetterBoxesHoldLonger(t *testing.T) {
	d, _, w := cooked(t, "pork-butt", 8, 250, 203)
	hot := func(in heat.Surroundings) float64 {
		s := *w.State
		return course{{0, in}}.untilOuterBelow(&s, safety.DangerHighC)
	}
	last := math.Inf(1)
	for u := heat.BoxVeryGoodWM2K; u <= heat.BoxPoorWM2K; u += 0.25 {
		m := hot(heat.Boxed(RoomC, u))
		if m > last {
			t.Errorf("%g W/(m2 K) holds %.0f min, a better box %.0f", u, m, last)
		}
		last = m
	}
	last = 0
	for n := 1; n <= 8; n++ {
		poor, usual := d.HotFor(w, Waiting{Method: schedule.HoldBox, Pieces: n}), hot(heat.Boxed(RoomC, d.boxWM2K(n, ExpectedEnd)))
		if poor < last-1e-9 || poor > usual {
			t.Errorf("%d pieces: %.0f min, fewer %.0f, expected %.0f", n, poor, last, usual)
		}
		last = poor
	}
}

func TestGrillHoldDiesAtThePoorEnd(t *testing.T) {
	d, _, w := cooked(t, "brisket", 12, 250, 203)
	w.With = schedule.WrapFoil
	dying := Waiting{Method: schedule.HoldGrill, Pieces: 1}
	poor := d.HotFor(w, dying)
	s := *w.State
	usual := d.Course(w, dying, ExpectedEnd).untilOuterBelow(&s, safety.DangerHighC)
	t.Logf("over a dying fire: %.1f h, %.1f h at the poor end", usual/60, poor/60)
	if !(poor > 0 && poor < usual) {
		t.Errorf("%.0f min at the poor end, %.0f expected", poor, usual)
	}
}

func hours(m float64) string { return strconv.FormatFloat(m/60, 'f', 2, 64) }

// An 8 lb butt in a usual box is eaten within 5.5 h, a 12 lb brisket within 6 h (limits of
// the rules of safety; practice expects about 5.1 and 5.4 h), two butts later than one, and
// a good box counts only once a hold of it was measured.
func TestHoldsOfBoxes(t *testing.T) {
	butt, brisket := float64(unit.FromPounds(8)), float64(unit.FromPounds(12))
	d, it, w := cooked(t, "pork-butt", 8, 250, 203)
	eaten := func(n int, b *schedule.Box) float64 {
		d.Req.Box = b
		o := d.HoldBy(it, w, Lot{MassKg: butt, Count: n}, schedule.HoldBox, 0)
		t.Logf("butts of 8 lb, %d: above 140 F for %s h, on the table within %s, eaten within %s", n, hours(o.Hot), hours(o.Minutes), hours(o.Eaten))
		return o.Eaten
	}
	one := eaten(1, nil)
	if one > 5.5*60 {
		t.Errorf("an 8 lb butt within %s h", hours(one))
	}
	if two := eaten(2, nil); two <= one {
		t.Errorf("two butts within %s h, one within %s", hours(two), hours(one))
	}
	logged := &schedule.BoxHold{After: unit.Duration(6 * time.Hour), Core: unit.FromFahrenheit(160)}
	good, small := &schedule.Box{Kind: schedule.BoxGood}, &schedule.Box{Kind: schedule.BoxSmall}
	if named := eaten(1, good); named != one {
		t.Errorf("a box that is only called good: %s h, a usual one %s", hours(named), hours(one))
	}
	good.Logged = logged
	if shown := eaten(1, good); shown <= one {
		t.Errorf("a box that was shown to be good: %s h, a usual one %s", hours(shown), hours(one))
	}
	good.Logged.Core = unit.FromFahrenheit(145) // what a usual one shows then (H8)
	if shown := eaten(1, good); shown != one {
		t.Errorf("a box that was shown to be usual: %s h, a usual one %s", hours(shown), hours(one))
	}
	if less := eaten(1, small); less >= one {
		t.Errorf("a small box: %s h, a usual one %s", hours(less), hours(one))
	}
	d, it, w = cooked(t, "brisket", 12, 250, 203)
	o := d.HoldBy(it, w, Lot{MassKg: brisket, Count: 1}, schedule.HoldBox, 0)
	t.Logf("brisket of 12 lb: above 140 F for %s h, on the table within %s, eaten within %s", hours(o.Hot), hours(o.Minutes), hours(o.Eaten))
	if o.Eaten > 6*60 {
		t.Errorf("a 12 lb brisket within %s h", hours(o.Eaten))
	}
}

// How long a box keeps grows with the piece and with the number of pieces, and with a better
// box. Warmer air shortens nothing below 90 F nor above it, and crossing it halves the clock.
func TestHoldsOfBoxesAreMonotone(t *testing.T) {
	for _, c := range []struct {
		name        string
		least, most float64
	}{{"pork-butt", 4, 12}, {"brisket", 8, 18}, {"pork-picnic", 5, 10}} {
		eaten := func(lb, airF float64, n int, box string) float64 {
			d, it, w := cooked(t, c.name, lb, 250, 203)
			d.Air.AirC, d.Night.AirC = unit.FToC(airF), unit.FToC(airF)
			if box != "" {
				d.Req.Box = &schedule.Box{Kind: schedule.BoxSmall}
			}
			return d.HoldBy(it, w, Lot{MassKg: float64(unit.FromPounds(lb)), Count: n}, schedule.HoldBox, 0).Eaten
		}
		last := 0.0
		for lb := c.least; lb <= c.most; lb++ {
			now := eaten(lb, 70, 1, "")
			if now < last {
				t.Errorf("%s: %s h at %.0f lb, %s at a pound less", c.name, hours(now), lb, hours(last))
			}
			if small := eaten(lb, 70, 1, "small"); small > now {
				t.Errorf("%s of %.0f lb: %s h in a small box, %s in a usual one", c.name, lb, hours(small), hours(now))
			}
			last = now
		}
		last = 0
		for n := 1; n <= 4; n++ {
			now := eaten(c.least, 70, n, "")
			if now < last {
				t.Errorf("%d of %s: %s h, one less %s", n, c.name, hours(now), hours(last))
			}
			last = now
		}
		for _, side := range [][]float64{{20, 40, 60, 70, 80, 89}, {91, 95, 100, 110}} {
			last = 0
			for _, air := range side {
				now := eaten(c.least, air, 1, "")
				if now < last {
					t.Errorf("%s in air of %.0f F: %s h, in cooler air %s", c.name, air, hours(now), hours(last))
				}
				last = now
			}
		}
		if below, above := eaten(c.least, 89, 1, ""), eaten(c.least, 91, 1, ""); above >= below {
			t.Errorf("%s: %s h in air of 91 F, %s in 89", c.name, hours(above), hours(below))
		}
	}
}
