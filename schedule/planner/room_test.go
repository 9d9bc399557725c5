package planner_test

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
	"pgregory.net/rapid"
)

// Three racks of baby backs on a 22 in kettle (reports r2, r6, r10, r12 of room.csv: flat they are tight, standing they
// are easy): planned as asked, one load, one fire, and told how to lay them.
func TestThreeRacksOnAKettle(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22, "{name: Ribs, cut: baby-backs, weight: 2.25 lb, count: 3, lies: standing}"))
	if !p.Feasible || len(p.Dishes[0].Batches) != 1 || len(p.Phases) != 1 {
		t.Fatalf("feasible %t: %v", p.Feasible, p.Findings)
	}
	if _, tight := plantest.Finding(p, "tight"); tight || p.Dishes[0].Batches[0].Pieces[0].Lies != "standing" {
		t.Errorf("%+v", p.Findings)
	}
	if on := stepTexts(p, schedule.StepPutOn); !strings.Contains(on, "Stand the racks on edge in an upright rack.") {
		t.Error(on)
	}
	p = plantest.Plan(t, plantest.Evening(plantest.Kettle22, "{name: Ribs, cut: baby-backs, weight: 2.25 lb, count: 3}"))
	if f, tight := plantest.Finding(p, "tight"); !p.Feasible || !tight || !strings.Contains(f.Text, "Let the ends overlap a little") {
		t.Errorf("flat: feasible %t, %v", p.Feasible, p.Findings)
	}
}

// Two racks with four halves, or with a chicken, on a 22 in kettle: planned as asked, on one fire, the racks beside the
// coals.
func TestRibsAndChickenAreNotRefusedOverRoom(t *testing.T) {
	for _, bird := range []string{"{name: Halves, cut: chicken-half, weight: 1.75 lb, count: 4}", "{name: Chicken, cut: chicken, weight: 4 lb}"} {
		p := plantest.Plan(t, plantest.Evening(plantest.Kettle22, "{name: Ribs, cut: st-louis-ribs, weight: 2.75 lb, count: 2}", bird))
		if !p.Feasible || len(p.Phases) != 1 {
			t.Errorf("%s: %v", bird, p.Findings)
		}
	}
}

// No cliff in whole plans: as three racks grow they go on at once easily, then tightly, then not at once, and never back.
func TestRacksGrowWithoutACliff(t *testing.T) {
	last, seen := 2, map[int]bool{}
	for lb := 1.4; lb < 3.45; lb += 0.2 {
		p := plantest.Plan(t, plantest.Evening(plantest.Kettle22, fmt.Sprintf("{name: Ribs, cut: baby-backs, weight: %.1f lb, count: 3}", lb)))
		now := 0
		if p.Feasible && len(p.Dishes[0].Batches) == 1 {
			now = 2
			if _, tight := plantest.Finding(p, "tight"); tight {
				now = 1
			}
		}
		if now > last || last == 2 && now == 0 {
			t.Errorf("%.1f lb: %d after %d (2 easy, 1 tight, 0 not at once)", lb, now, last)
		}
		last, seen[now] = now, true
	}
	if len(seen) != 3 {
		t.Errorf("the weights show %v only", seen)
	}
}

// A brisket longer than the grate is bent, and the step says so; grates one above another get pieces by the order of
// levels: what comes off last and is done at most lies lowest.
func TestLongBrisketAndLevels(t *testing.T) {
	p := plantest.Plan(t, plantest.Days["long brisket"])
	if on := stepTexts(p, schedule.StepPutOn); !strings.Contains(on, "bend it over a can") {
		t.Error(on)
	}
	p = plantest.Plan(t, plantest.Days["two levels"])
	on := stepTexts(p, schedule.StepPutOn)
	if !strings.Contains(on, "bottom grate") || !strings.Contains(on, "top grate") {
		t.Error(on)
	}
	p = plantest.Plan(t, plantest.Days["raised"])
	if on := stepTexts(p, schedule.StepPutOn); !strings.Contains(on, "3 on the main grate, 2 on the raised grate. The raised grate runs hotter") {
		t.Error(on)
	}
}

// Raw meat hangs over nothing that comes off sooner or is done at less: chickens below the butts, and on when those are
// raw no more. Where levels cannot part two dishes, and one grate does not take them, the day is refused.
func TestRawDripsOnNothingThatIsDoneSooner(t *testing.T) {
	tower := func(dishes ...string) schedule.Plan {
		return plantest.Plan(t, plantest.Evening("grill: {kind: upright, diameter: 18.5 in, levels: 2}", dishes...))
	}
	p := tower("{name: Butts, cut: pork-butt, weight: 8 lb, count: 2}", "{name: Chickens, cut: chicken, weight: 4 lb, count: 3}")
	if !p.Feasible {
		t.Fatal(p.Findings)
	}
	for _, b := range p.Dishes[0].Batches {
		for _, piece := range b.Pieces {
			if piece.Grate != 2 {
				t.Errorf("a butt on grate %d", piece.Grate)
			}
		}
	}
	for _, piece := range p.Dishes[1].Batches[0].Pieces {
		if piece.Grate != 1 {
			t.Errorf("a chicken on grate %d", piece.Grate)
		}
	}
	if p := tower("{name: Chops, cut: pork-chop, weight: 10 oz, count: 6}", "{name: Halves, cut: chicken-half, weight: 1.75 lb, count: 4}"); p.Feasible {
		t.Errorf("chops and chicken were parted: %v", stepTexts(p, schedule.StepPutOn))
	}
}

// Drawn days on grills with several grates: each plan is held against every rule of the judge.
func TestDrawnDaysOnSeveralGratesAreSound(t *testing.T) {
	feasible, stacked, days := 0, 0, 0
	rapid.Check(t, func(t *rapid.T) {
		draw := func(label string, of ...string) string { return rapid.SampledFrom(of).Draw(t, label) }
		grill := draw("grill", "{kind: upright, diameter: 14.5 in}", "{kind: upright, diameter: 18.5 in, levels: 3}", "{kind: upright, width: 24 in, depth: 14 in, levels: 4}",
			"{kind: kettle, diameter: 22 in, raised: true}", "{kind: box, width: 30 in, depth: 20 in, raised: true}", "{kind: upright, diameter: 22.5 in}")
		text := "grill: " + grill + draw("oven", "", "\noven: {hold: 170 F}")
		var dishes []string
		for i := range rapid.IntRange(1, 3).Draw(t, "dishes") {
			dish := draw("dish", "cut: pork-butt, weight: 7 lb", "cut: brisket, weight: 13 lb", "cut: chicken, weight: 4 lb", "cut: chicken-half, weight: 1.75 lb",
				"cut: baby-backs, weight: 2.25 lb, lies: standing", "cut: spare-ribs, weight: 3.25 lb", "cut: st-louis-ribs, weight: 2.75 lb, lies: rolled",
				"cut: baby-backs, weight: 2 lb, lies: halved, wrap: foil", "cut: sausage, weight: 4 oz", "cut: beans-pan, weight: 3 lb", "cut: turkey, weight: 12 lb", "cut: salmon-side, weight: 2.5 lb")
			dishes = append(dishes, fmt.Sprintf("{name: Dish %d, %s, count: %d}", i+1, dish, rapid.IntRange(1, 4).Draw(t, "count")))
		}
		r, err := schedule.Read([]byte(plantest.Evening(text, dishes...)))
		if err != nil {
			t.Fatal(err)
		}
		p, err := planner.Make(context.Background(), r, planner.Judged())
		if err != nil {
			t.Fatal(err)
		}
		if days++; p.Feasible {
			feasible++
		}
		if slices.ContainsFunc(p.Dishes, func(d schedule.DishPlan) bool {
			return slices.ContainsFunc(d.Batches, func(b schedule.Batch) bool {
				return slices.ContainsFunc(b.Pieces, func(q schedule.Piece) bool { return q.Grate > 1 })
			})
		}) {
			stacked++
		}
	})
	if t.Logf("%d days, %d with a plan, %d of them on more than one grate", days, feasible, stacked); stacked*10 < days {
		t.Errorf("%d of %d days use a second grate", stacked, days)
	}
}

// A tenth of a pound changes no fire of these days: the room's edge is soft.
func TestATenthOfAPoundChangesNoFire(t *testing.T) {
	for _, day := range []string{
		"{name: Ribs, cut: baby-backs, weight: %.1f lb, count: 3}", "{name: Butts, cut: pork-butt, weight: %.1f lb, count: 2}",
		"{name: Brisket, cut: brisket, weight: %.1f lb}",
	} {
		base := map[string]float64{"Ribs": 2.1, "Butts": 8, "Brisket": 12}[day[7:strings.Index(day, ",")]]
		var first string
		for i := range 3 {
			p := plantest.Plan(t, plantest.Evening(plantest.Kettle22, fmt.Sprintf(day, base+0.1*float64(i))))
			fires := ""
			for _, ph := range p.Phases {
				fires += ph.Layout + " "
			}
			if i == 0 {
				first = fires
			}
			if fires != first || fires == "" {
				t.Errorf(day+": fires %q, then %q", base+0.1*float64(i), first, fires)
			}
		}
	}
}

// The side away from the coals is larger over one fire than over another: pieces are parted
// among its grates by the fire that they lie over. Before, by the first fire on offer, and
// the judge found the main grate over full.
func TestGratesAreThoseOfTheFireThatBurns(t *testing.T) {
	for racks := 3; racks <= 5; racks++ {
		p := plantest.Plan(t, fmt.Sprintf(`
serve: {date: 2027-12-04, time: "18:00", tz: America/Chicago}
guests: 8
grill: {kind: kettle, diameter: 22 in, raised: true}
oven: {}
dishes:
  - {cut: baby-backs, count: %d, weight: 2.3 lb, prep: []}
  - {cut: chicken-thigh, count: 8, prep: []}
  - {cut: corn, count: 8}
`, racks))
		plantest.Judge(t, p)
		if racks < 5 && !p.Feasible {
			t.Errorf("%d racks: %v", racks, p.Findings)
		}
	}
}
