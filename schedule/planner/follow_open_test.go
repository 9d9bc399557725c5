package planner_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

// open says whether a reading of the core is asked about, or taken for something else.
func (a answer) open() bool {
	return slices.ContainsFunc(a.Findings, func(f schedule.Finding) bool {
		return strings.HasPrefix(f.Code, "reading-") || strings.HasPrefix(f.Code, "probe-")
	})
}

// shownC is the core that the curve shows at an instant.
func (a answer) shownC(t *testing.T, at time.Time) float64 {
	t.Helper()
	curve := a.Dishes[0].Batches[0].Curve
	for i := 1; i < len(curve); i++ {
		if p, q := curve[i-1], curve[i]; !q.At.Before(at) {
			return p.CoreC + (q.CoreC-p.CoreC)*at.Sub(p.At).Minutes()/q.At.Sub(p.At).Minutes()
		}
	}
	t.Fatal("the curve ends before it")
	return 0
}

// P1, of readings that are not taken for the core: one that is asked about, or is a probe that fell
// out, has a late edge, a chance and a safety clock no better than the coldest one that is taken.
// Too hot ones are left out: what lies in the air of the grill says nothing of the meat. P3: the
// curve passes through what is taken, within 1 F.
func TestAnOpenReadingIsNoBetterThanTheColdestTaken(t *testing.T) {
	s := nightButt(t)
	for _, c := range []struct{ before, read, now string }{
		{"22:00 on;02:00 core 128 F", "04:30", "04:32"},
		{"22:00 on;03:00 core 152 F", "07:00", "07:02"},
	} {
		var coldest *answer
		asked := 0
		for f := 176; f >= 60; f -= 12 {
			a := s.followed(t, fmt.Sprintf("%s;%s core %d F", c.before, c.read, f), c.now)
			if !a.open() {
				if coldest != nil && asked > 0 {
					t.Errorf("%s: %d F is taken, and a warmer one is not", c.read, f)
				}
				coldest = &a
				if core := fahrenheit(a.shownC(t, at(t, dated(c.read)))); math.Abs(core-float64(f)) > 1 {
					t.Errorf("%s: read %d F, the curve shows %.1f", c.read, f, core)
				}
				continue
			}
			asked++
			_, _, least := coldest.left(t)
			_, _, late := a.left(t)
			if least-late > 1.0/60 && a.Chance.All > 0 {
				t.Errorf("%s: %d F is not taken, and late by %.2f h; the coldest that is by %.2f", c.read, f, late, least)
			}
			if a.Chance.All > coldest.Chance.All+0.001 {
				t.Errorf("%s: %d F is not taken, and has %.3f; the coldest that is %.3f", c.read, f, a.Chance.All, coldest.Chance.All)
			}
			if unsafe(coldest.Plan, "d") && !unsafe(a.Plan, "d") {
				t.Errorf("%s: %d F is in no danger, a warmer one is", c.read, f)
			}
		}
		if coldest == nil || asked < 3 {
			t.Errorf("%s: %d of the readings are open: it tests little", c.read, asked)
		}
	}
}

// P11: where core and grate have both fallen the fire is out, the core is taken, and the clock of
// the food runs from the earliest that it may have died, hours before either was read. P12: a core
// that fell alone is asked about, both explanations are said, and the clock is that of the fire
// until it is known.
func TestWhatFellTogetherIsTheFire(t *testing.T) {
	s := nightButt(t)
	const truth = "22:00 on;03:00 core 152 F"
	both := s.followed(t, truth+";07:00 grate 95 F;07:00 core 110 F", "07:02")
	alone := s.followed(t, truth+";07:00 core 110 F", "07:02")
	has := func(a answer, code string) bool {
		return slices.ContainsFunc(a.Findings, func(f schedule.Finding) bool { return f.Code == code && f.Severity == schedule.Danger })
	}
	if !has(both, "fire-died") || both.open() {
		t.Errorf("both fell, and it is %v", both.Findings)
	}
	if core := fahrenheit(both.shownC(t, at(t, dated("07:00")))); math.Abs(core-110) > 1 {
		t.Errorf("both fell: the core is %.1f F", core)
	}
	if has(alone, "fire-died") || !has(alone, "reading-open") {
		t.Errorf("the core fell alone, and it is %v", alone.Findings)
	}
	for _, word := range []string{"either", "fire", "probe"} {
		if !slices.ContainsFunc(alone.Findings, func(f schedule.Finding) bool { return f.Code == "reading-open" && strings.Contains(f.Text, word) }) {
			t.Errorf("the core fell alone: %q is not said: %v", word, alone.Findings)
		}
	}
	clock := map[string]int{}
	for name, a := range map[string]answer{"both": both, "alone": alone} {
		if !unsafe(a.Plan, "d") {
			t.Errorf("%s: in no danger", name)
		}
		clock[name] = heatlessMinutes(a.Plan)
	}
	if clock["both"] < 200 || clock["alone"] < clock["both"] { // of 240 since the last proof of heat, less what the grate takes to cool
		t.Errorf("minutes without heat: both fell %d, the core alone %d", clock["both"], clock["alone"])
	}
}
