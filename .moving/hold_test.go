package schedule

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/unit"
)

func fahrenheit(c float64) float64 { return unit.Temperature(c).Fahrenheit() }

// cooked is a piece at its take-off from a grate, and a calm day to hold it on.
func cooked(t *testing.T, name string, lb, grateF, pullF float64) (*day, way) {
	t.Helper()
	c, ok := cut.Find(name)
	if !ok {
		t.Fatalf("no cut %s", name)
	}
	it := &item{cut: c}
	w := way{pullC: celsius(pullF), levelC: celsius(grateF), state: new(heat.Sim)}
	w.state.Start(it.body(float64(unit.FromPounds(lb))), heat.Grate(w.levelC, heat.CalmDay()))
	if got := w.state.RunTo(w.pullC, longestCookS); got != heat.Reached {
		t.Fatalf("%s: %v", name, got)
	}
	d := &day{air: fire.Weather{AirC: roomC}, night: fire.Weather{AirC: roomC}}
	d.req.Oven = &Oven{Hold: unit.FromFahrenheit(170)}
	return d, w
}

// The records of cooldown.csv against the pessimistic end of a hold. Pieces and
// starts that a record does not print are assumed as it is told: a shoulder of
// 8 lb from a grate at 250 F, out at 203 F. What must hold: where a record had
// fallen to 140 F, the plan does not still claim it. The errors of the core at the
// expected end are written down.
func TestHoldsAgainstRecords(t *testing.T) {
	file, err := os.Open("internal/heat/testdata/cooldown.csv")
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
		"turkey_cool_class":      {"turkey-breast", 8, 325, 186, HoldCounter},
		"box_informal":           {"pork-butt", 8, 250, 203, HoldBox},
		"box_informal_2":         {"pork-butt", 8, 250, 203, HoldBox},
		"box_general":            {"pork-butt", 8, 250, 200, HoldBox},
		"roast_chicken_informal": {"chicken", 4.5, 350, 149, HoldTent},
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
		d, w := cooked(t, p.cut, p.lb, p.grateF, p.pullF)
		if strings.Contains(r[3], "95 F") {
			d.night.AirC = celsius(95) // air is the lesser of room and night: the room decides, to the safe side
		}
		s := *w.state
		s = follow(&s, d.course(w, p.method, 1, 0, expectedEnd)).after(hours * 60)
		core := fahrenheit(heat.ProbeCoreC(w.pullC, s.CoreC()))
		limit := d.hotFor(w, p.method, 1, 0)
		t.Logf("%-22s %5.2f h: core %3.0f F, recorded %3.0f (error %+3.0f); outer claimed above 140 F for %.1f h", r[0], hours, core, recorded, core-recorded, limit/60)
		if recorded <= 140 && limit >= hours*60 {
			t.Errorf("%s: above 140 F claimed for %.1f h, recorded %g F at %g h", r[0], limit/60, recorded, hours)
		}
		// The boxes are off by -18 to +5 F, the bare turkey breast by +29: it cools too
		// slowly here. The chicken's record begins at 149 F some time after the oven; here it
		// is taken off then and rises first, which explains most of the +56.
		worst := map[string]float64{"turkey_cool_class": 30, "roast_chicken_informal": 57}[r[0]]
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
	d, w := cooked(t, "pork-butt", 8, 250, 203)
	hot := func(in heat.Surroundings) float64 {
		s := *w.state
		return course{{0, in}}.untilOuterBelow(&s, safety.DangerHighC)
	}
	last := math.Inf(1)
	for u := heat.BoxVeryGoodWM2K; u <= heat.BoxPoorWM2K; u += 0.25 {
		m := hot(heat.Boxed(roomC, u))
		if m > last {
			t.Errorf("%g W/(m2 K) holds %.0f min, a better box %.0f", u, m, last)
		}
		last = m
	}
	last = 0
	for n := 1; n <= 8; n++ {
		poor, usual := d.hotFor(w, HoldBox, n, 0), hot(heat.Boxed(roomC, boxWM2K(n, expectedEnd)))
		if poor < last-1e-9 || poor > usual {
			t.Errorf("%d pieces: %.0f min, fewer %.0f, expected %.0f", n, poor, last, usual)
		}
		last = poor
	}
}

// The open stand evens the heat out to about 170 F and never spends the line.
func TestOpenStandBeforeTheBox(t *testing.T) {
	d, w := cooked(t, "pork-butt", 8, 250, 203)
	c, _ := cut.Find("pork-butt")
	p := &placed{batch: &batch{it: &item{cut: c}, count: 1}, way: w}
	o := d.holdOptions(p.it, w, 1)[1]
	if o.method != HoldBox || o.vent != ventLeast {
		t.Fatalf("option %+v", o)
	}
	long := d.vented(p, o, 30)
	if long.vent < 30 || long.vent > ventMost {
		t.Errorf("stands %g min", long.vent)
	}
	s := *w.state
	s.Change(standing(w, roomC, expectedEnd))
	s.RunFor(long.vent * 60)
	t.Logf("stands %g min: mean %.0f F, outer %.0f F, core %.0f F; then good for %.0f min in all", long.vent, fahrenheit(s.MeanC()), fahrenheit(s.OuterC()), fahrenheit(s.CoreC()), long.minutes)
	if s.OuterC() < ventOuterC {
		t.Errorf("outer layer at %.0f F after the stand", fahrenheit(s.OuterC()))
	}
	if tight := d.vented(p, o, o.minutes); tight.vent != ventLeast {
		t.Errorf("stands %g min where the hold needs every minute", tight.vent)
	}
}

func TestGrillHoldDiesAtThePoorEnd(t *testing.T) {
	d, w := cooked(t, "brisket", 12, 250, 203)
	w.with = WrapFoil
	poor := d.hotFor(w, HoldGrill, 1, 0)
	s := *w.state
	usual := d.course(w, HoldGrill, 1, 0, expectedEnd).untilOuterBelow(&s, safety.DangerHighC)
	t.Logf("over a dying fire: %.1f h, %.1f h at the poor end", usual/60, poor/60)
	if !(poor > 0 && poor < usual) {
		t.Errorf("%.0f min at the poor end, %.0f expected", poor, usual)
	}
}

func TestPlannedHoldSaysWhatIsLeftAtTheTable(t *testing.T) {
	p := partyPlan(t)
	for _, dish := range p.Dishes {
		for _, h := range dish.Holds {
			if h.OuterLowC > h.OuterC || h.Chosen && h.CoreC > 0 && len(h.Course) == 0 {
				t.Errorf("%s: %+v", dish.Name, h)
			}
			for _, q := range h.Course {
				if q.At.After(dish.ServeAt) {
					t.Errorf("%s: a hold at %v, served at %v", dish.Name, q.At, dish.ServeAt)
				}
			}
		}
	}
	if p.Dishes[0].DoneEarly == "" {
		t.Error("nothing on a brisket done early")
	}
}

// What may not be held stands no longer than the published clock, and a plan in which it
// may have to says so (usda_danger_zone: 2 h, 1 h above 90 F).
func TestWhatHasNoHoldStandsByTheClock(t *testing.T) {
	for weather, hours := range map[string]float64{"weather: {air: 70 F}\n": 2, "weather: {air: 95 F}\n": 1} {
		for _, c := range []string{"pork-belly, weight: 5 lb", "brisket, weight: 12 lb", "spare-ribs, weight: 3.3 lb"} {
			p := planOf(t, evening(kettle22+weather, "{cut: "+c+", hold: [none]}"))
			sound(t, p)
			if !p.Feasible {
				continue
			}
			early := p.ServeAt.Sub(stepOf(&p, StepTakeOff, p.Dishes[0].ID).Window.Early).Hours()
			if _, told := findingOf(p, codeHoldShort); early > hours+0.5 && !told {
				t.Errorf("%s: off %.1f h before it is served on a fast day, and nothing says so", c, early)
			}
			if f, _ := findingOf(p, codeHoldShort); strings.Contains(f.Text, "until about 17:45") {
				t.Errorf("%s: %s", c, f.Text)
			}
		}
	}
}
