package export

import (
	"math"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

// seared is a day of two steaks that cook beside the coals and are seared over them.
func seared() schedule.Plan {
	p := invented()
	p.Phases, p.Dishes = p.Phases[:1], p.Dishes[:1]
	f := &p.Phases[0]
	area := math.Pi / 4 * float64(p.Request.Grill.Across()) * float64(p.Request.Grill.Across())
	f.Layout, f.Zones = "two-zone", []schedule.Zone{{Name: "indirect", AreaM2: 0.55 * area}, {Name: "direct", Direct: true, AreaM2: 0.45 * area}}
	b := &p.Dishes[0].Batches[0]
	at := b.Stages[0].From
	b.Milestones = b.Milestones[:1]
	b.Stages = []schedule.Stage{
		{Kind: schedule.StageBare, From: at, To: at.Add(time.Hour), Minutes: schedule.Minutes{Expected: 60}, Phase: 1, PhaseTo: 1, Zone: "indirect"},
		{Kind: schedule.StageSear, From: at.Add(time.Hour), To: at.Add(63 * time.Minute), Minutes: schedule.Minutes{Expected: 3}, Phase: 1, PhaseTo: 1, Zone: "direct", Direct: true, Flips: 1}}
	b.Pieces = []schedule.Piece{{LengthM: 0.15, WidthM: 0.1, Spots: []schedule.Spot{{Phase: 1, XM: 0.1}, {Phase: 1, XM: -0.15}}}}
	return p
}

// What is seared on the other side of the same fire is drawn there, in a picture of its own.
func TestSearIsDrawnOverTheCoals(t *testing.T) {
	p := seared()
	v, err := look(p, time.Time{})
	if err != nil {
		t.Fatal(err)
	}
	sittings := v.sittings(p.Phases[0])
	if len(sittings) != 2 {
		t.Fatalf("%d sittings", len(sittings))
	}
	for i, want := range []float64{0.1, -0.15} {
		g := sittings[i].guests[0]
		if spots := v.spots(g, g.batch.Pieces[0], p.Phases[0]); len(spots) != 1 || spots[0].XM != want || g.letter != "A" {
			t.Errorf("sitting %d: %s at %v", i, g.letter, spots)
		}
	}
	if page := exported(t, p, "html"); !strings.Contains(page, "direct, to sear, ") || !strings.Contains(page, "<strong>Fire 1</strong>, later") {
		t.Error("the sheet does not tell of the sear")
	}
}

// Coals at one side end short of the zone beside them.
func TestCoalsStayOnTheirSide(t *testing.T) {
	p := seared()
	picture := exported(t, p, "grate.svg")
	grate := shapes(t, picture, "grate")[0]
	scale := num(t, grate["r"]) / (float64(p.Request.Grill.Across()) / 2)
	for _, zone := range shapes(t, picture, "zone") {
		for _, coals := range shapes(t, picture, "edge") {
			if line, end := startX(t, zone), startX(t, coals); coals["fill"] == "url(#g-coals)" && line-end < coalGapM*scale-0.11 {
				t.Errorf("coals end at %.1f, the zone begins at %.1f", end, line)
			}
		}
	}
	if len(shapes(t, picture, "zone")) == 0 {
		t.Error("no zones")
	}
}

// Food that is said to lie over the coals does.
func TestFoodOverTheCoalsIsDrawnThere(t *testing.T) {
	p := keptPlan(t, "small")
	p.Phases[0].Layout = "spread"
	area := grillArea(p.Request.Grill)
	p.Phases[0].Zones = []schedule.Zone{{Name: "direct", Direct: true, AreaM2: 0.9 * area}}
	picture := exported(t, p, "grate.svg")
	for _, c := range shapes(t, picture, "edge") {
		if c["fill"] != "url(#g-coals)" {
			continue
		}
		if share := math.Pow(num(t, c["r"])/num(t, shapes(t, picture, "grate")[0]["r"]), 2) / 0.9; share < 0.85 || share > 1 {
			t.Errorf("the coals are %.2f of the zone that counts as over them", share)
		}
		return
	}
	t.Error("no coals")
}

// Letters do not touch each other or the mark of the vent, and every batch has one.
func TestLettersStandApart(t *testing.T) {
	for _, day := range days {
		p := keptPlan(t, day)
		v, err := look(p, time.Time{})
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range p.Phases {
			for _, g := range v.sittings(f) {
				m := &grateMap{view: v, svg: &svg{}, phase: f, sitting: g}
				m.draw(p.Request.Grill)
				letters := strings.Split(m.texts.String(), `class="letter"`)
				if len(letters)-1 < len(g.guests) {
					t.Errorf("%s, fire %d: %d letters for %d batches", day, f.Number, len(letters)-1, len(g.guests))
				}
			}
		}
	}
}

// Openings have words, whatever they are.
func TestOpeningsHaveWords(t *testing.T) {
	for share, want := range map[float64]string{0: "shut", 0.0625: "half an eighth", 0.25: "a quarter", 0.67: "two thirds", 1: "open"} {
		if got := openWords(share); got != want {
			t.Errorf("%v is %s, want %s", share, got, want)
		}
	}
}
