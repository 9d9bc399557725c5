package planner_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/internal/testbed"
)

// directCuts are the catalogue's names for the foods of the rows, each with a usual
// weight of a piece (common practice, no source); a thickness of the row comes over it.
var directCuts = map[string][2]string{
	"steak": {"steak", "0.9 lb"}, "skirt steak": {"steak", "0.9 lb"}, "flank steak": {"steak", "1.75 lb"}, "burger": {"burger", "6 oz"},
	"pork chop": {"pork-chop", "0.6 lb"}, "lamb chop": {"lamb-chop", "0.35 lb"}, "chicken breast, boneless": {"chicken-breast", "7 oz"},
	"fish fillet or steak": {"fish-fillet", "0.4 lb"}, "pork tenderloin": {"pork-tenderloin", "1 lb"},
}

// inches is the middle of a size such as "1 to 1 1/2 in" or "3/4 in, 1.5-2 lb".
func inches(size string) (middle float64, ok bool) {
	thick, _, _ := strings.Cut(size, ",")
	thick, ok = strings.CutSuffix(thick, " in")
	if !ok {
		return 0, false
	}
	ends := strings.Split(strings.ReplaceAll(thick, " to ", "-"), "-")
	for _, end := range ends {
		for _, part := range strings.Fields(end) {
			over, under, isFraction := strings.Cut(part, "/")
			if !isFraction {
				under = "1"
			}
			a, err := strconv.ParseFloat(over, 64)
			b, err2 := strconv.ParseFloat(under, 64)
			if err != nil || err2 != nil {
				return 0, false
			}
			middle += a / b / float64(len(ends))
		}
	}
	return middle, true
}

// overTheCoals is the take-off that the forecast gives for a row.
func overTheCoals(t *testing.T, r testbed.Row, known [2]string) schedule.OutlookMilestone {
	t.Helper()
	grateF := (r.Number(t, "grate_f_min") + r.Number(t, "grate_f_max")) / 2
	fields := []string{"cut", known[0], "weight", known[1], "grate", fmt.Sprintf("%g F", grateF), "target", r["done_f"] + " F", "layout", "spread"}
	if thick, ok := inches(r["size"]); ok {
		fields = append(fields, "thickness", fmt.Sprintf("%g in", thick))
	}
	return plantest.Milestone(plantest.Ask(t, fields...), schedule.MilestoneTakeOff)
}

// Published minutes over the coals (guides, magazines, forums, sites, producers, as each
// row says) at a high and a medium heat. Grills differ, and a row gives a range. 16 % and
// 18 of 20 were had when this was written down.
func TestDirectHeatAgainstPublishedTimes(t *testing.T) {
	const mostWrong, leastInside, widened = 0.23, 13, 0.15
	chops := []string{"steak", "burger", "pork chop", "lamb chop"} // not whole flanks and skirts, which are no slabs
	asked, without, inside, ofChops, wrong := 0, 0, 0, 0, 0.0
	for _, r := range testbed.Rows(t, "testdata/direct.csv") {
		if m := r["method"]; m != "direct high" && m != "direct medium" || r["grate_f_min"] == "" || r["total_min"] == "" {
			continue
		}
		known, ok := directCuts[r["food"]]
		if !ok { // the catalogue has no such cut
			without++
			continue
		}
		got := overTheCoals(t, r, known).ExpectedMinutes
		low, high := r.Number(t, "total_min"), r.Number(t, "total_max")
		asked, wrong = asked+1, wrong+math.Abs(got/((low+high)/2)-1)
		t.Logf("%-25s %-21s %-13s %5.1f min, published %g-%g (%s)", r["food"], r["size"], r["method"], got, low, high, r["source"])
		if slices.Contains(chops, r["food"]) {
			ofChops++
			if got >= low*(1-widened) && got <= high*(1+widened) {
				inside++
			}
		}
	}
	if asked != 27 || without != 7 || ofChops != 20 {
		t.Fatalf("%d rows asked, %d of them steaks, chops and burgers, %d without a cut; want 27, 20 and 7", asked, ofChops, without)
	}
	wrong /= float64(asked)
	t.Logf("mean error against the middle %.1f %%, %d of %d steaks, chops and burgers inside", 100*wrong, inside, ofChops)
	if !(wrong <= mostWrong) || inside < leastInside {
		t.Errorf("mean error %.1f %%, want at most %.0f %%; %d of %d inside, want %d", 100*wrong, 100*mostWrong, inside, ofChops, leastInside)
	}
}

// How hot the coals are decides how long a steak takes: from 350 to 550 F each step of
// 100 F saves a minute or more, early, expected and late (common practice, no source).
func TestHotterCoalsCookASteakSooner(t *testing.T) {
	var last schedule.OutlookMilestone
	for i, grate := range []string{"350 F", "450 F", "550 F"} {
		off := plantest.Milestone(plantest.Ask(t, "cut", "steak", "weight", "0.9 lb", "thickness", "1.5 in", "target", "130 F", "layout", "spread", "grate", grate), schedule.MilestoneTakeOff)
		t.Logf("%s: %.1f, %.1f, %.1f min", grate, off.EarlyMinutes, off.ExpectedMinutes, off.LateMinutes)
		if off.Kind == "" {
			t.Fatalf("%s: no take-off", grate)
		}
		if i > 0 && !(off.EarlyMinutes <= last.EarlyMinutes-1 && off.ExpectedMinutes <= last.ExpectedMinutes-1 && off.LateMinutes <= last.LateMinutes-1) {
			t.Errorf("%s: %.1f, %.1f, %.1f min, 100 F cooler %.1f, %.1f, %.1f", grate, off.EarlyMinutes, off.ExpectedMinutes, off.LateMinutes, last.EarlyMinutes, last.ExpectedMinutes, last.LateMinutes)
		}
		last = off
	}
}

// seared is a piece that is finished over the coals: its core before the sear, after it
// and at rest, in F.
type seared struct{ before, after, rested float64 }

// beforeSear finds the core before the sear in the words of the way; it is said in whole
// degrees.
var beforeSear = regexp.MustCompile(`from ([0-9]+) °F seared`)

// searCase is one question after a sear; target and grate are in F.
type searCase struct {
	cut, weight   string
	target, grate int
}

func (c searCase) ask(t *testing.T) seared {
	t.Helper()
	o := plantest.Ask(t, "cut", c.cut, "weight", c.weight, "target", fmt.Sprintf("%d F", c.target), "grate", fmt.Sprintf("%d F", c.grate), "finish", "sear")
	said := beforeSear.FindStringSubmatch(o.Way)
	if said == nil {
		t.Fatalf("%v: no sear in %q, %s", c, o.Way, o.Reason)
	}
	before, _ := strconv.ParseFloat(said[1], 64)
	return seared{
		before: before,
		after:  plantest.Milestone(o, schedule.MilestoneTakeOff).CoreC*1.8 + 32,
		rested: plantest.Milestone(o, schedule.MilestoneRested).CoreC*1.8 + 32,
	}
}

// searPiece is a piece that cooks smoke first and sear at the end.
type searPiece struct {
	cut     string
	weights []string
	targets []int // F
}

func (p searPiece) cases() (all []searCase) {
	for _, weight := range p.weights {
		for _, target := range p.targets {
			for _, grate := range []int{200, 250, 300, 400} {
				all = append(all, searCase{p.cut, weight, target, grate})
			}
		}
	}
	return all
}

var searPieces = []searPiece{
	{"steak", []string{"0.6 lb", "0.9 lb", "2 lb"}, []int{120, 130, 145, 160, 175}},
	{"pork-chop", []string{"0.4 lb", "0.8 lb"}, []int{145, 160, 175}},
	{"lamb-chop", []string{"0.35 lb"}, []int{120, 130, 145, 160, 175}},
	{"tri-tip", []string{"1.5 lb", "2.5 lb", "4 lb"}, []int{120, 130, 145, 160}},
	{"picanha", []string{"2 lb"}, []int{120, 130, 145, 160}},
	{"lamb-rack", []string{"1.5 lb"}, []int{120, 130, 145, 160}},
	{"beef-tenderloin", []string{"4 lb"}, []int{120, 130, 145, 160}},
	{"rib-roast-boneless", []string{"3 lb", "7 lb"}, []int{120, 130, 145, 160}},
	{"rib-roast-bone-in", []string{"4 lb", "10 lb"}, []int{120, 130, 145, 160}},
	{"pork-loin", []string{"4 lb"}, []int{145, 160}},
	{"chicken-half", []string{"1.5 lb", "2.5 lb"}, []int{165, 175}},
	{"chicken-thigh", []string{"6 oz"}, []int{165, 175}},
}

// Searing heats: whatever the piece, its target and the grate before, the core is no
// cooler after the sear than before it, and of what is done at 145 F or less none is
// cooler at rest. Thin pieces that are done at 160 F or more are: there the model has a
// wet face over an open fire give off more than it takes in (a steak of 0.6 lb at 160 F
// loses 3 F in the sear, which is told as none), and the rest cools it further. No cook
// tells of that: it is a fault of the model, recorded here so that it does not grow.
func TestASearNeverCoolsTheCore(t *testing.T) {
	const saidTo, wellDone = 0.5, 160 // F; the core before is said in whole degrees
	const recordedCooler, recordedBy = 34, 19.1
	cases, worst := 0, 0.0
	cooler := map[string]int{}
	for _, p := range searPieces {
		for _, c := range p.cases() {
			s := c.ask(t)
			cases++
			switch {
			case s.after < s.before-saidTo:
				t.Errorf("cooler by a sear: %v, %v", c, s)
			case s.rested < s.before-saidTo && c.target < wellDone:
				t.Errorf("cooler at rest than before the sear: %v, %v", c, s)
			case s.rested < s.before-saidTo:
				cooler[c.cut]++
				worst = math.Max(worst, s.before-s.rested)
			}
		}
	}
	sum := 0
	for _, n := range cooler {
		sum += n
	}
	t.Logf("%d pieces; done at 160 F or more and cooler at rest than before the sear: %d, %v, at worst by %.1f F", cases, sum, cooler, worst)
	if sum > recordedCooler || worst > recordedBy {
		t.Errorf("%d pieces cooler at rest than before the sear, at worst by %.1f F; %d and %.1f F are recorded", sum, worst, recordedCooler, recordedBy)
	}
}
