package ahead_test

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/unit"
)

const aheadBrisket = "{name: Brisket, cut: brisket, weight: 12 lb, ready: day-before}"
const fewBurgers = "{name: Burgers, cut: burger, weight: 6 oz, count: 4}"

func TestCookedAheadWarmedInTheOven(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+plantest.Oven170+plantest.Sleep, aheadBrisket, fewBurgers))
	if !p.Feasible || p.Ahead == nil || p.Ahead.Plan == nil {
		t.Fatalf("feasible %v, ahead %v, findings %v", p.Feasible, p.Ahead, p.Findings)
	}
	plantest.Judge(t, *p.Ahead.Plan)
	// Quiet from 23:00: chilled by 20:00, with two hours to look after it.
	if got := p.Ahead.ChillAt.Format("Mon 15:04"); got != "Fri 20:00" {
		t.Errorf("chilled by %s", got)
	}
	a := p.Ahead.Dishes[0]
	// 12 lb less 43 % (kitchen.yaml) are 3.1 kg.
	if a.Place != schedule.PlaceOven || a.CookedKg < 3 || a.CookedKg > 3.2 || a.Minutes.Late > safety.ReheatWithinMinutes {
		t.Errorf("%+v", a)
	}
	var kinds []string
	for _, s := range p.Steps {
		if strings.Contains(s.Text, "Brisket") && s.At.After(p.Ahead.ChillAt.Add(-time.Hour)) {
			kinds = append(kinds, string(s.Kind))
		}
	}
	if got := strings.Join(kinds, " "); got != "to-oven take-off serve" {
		t.Errorf("steps: %s", got)
	}
	// What is done is cut and chilled once it has rested (usda_danger_zone: 2 h), whatever
	// the hour by which a slow one must be.
	off, cut := plantest.Step(t, p, schedule.StepTakeOff, ""), plantest.Step(t, p, schedule.StepSlice, "")
	if rest := cut.At.Sub(off.At); rest < 15*time.Minute || rest > 2*time.Hour || !strings.Contains(cut.Text, "Chill it at once") {
		t.Errorf("off at %v, cut at %v: %s", off.At, cut.At, cut.Text)
	}
	for _, code := range []string{"chill-fast", "reheat", "no-partial-cooking", "leftovers-days", "flare-on-opening"} {
		found := false
		for _, c := range p.Cautions {
			found = found || c.Code == code
		}
		if !found {
			t.Errorf("caution %s is missing", code)
		}
	}
	if f, ok := plantest.Finding(p, "ahead-portions"); !ok || !strings.Contains(f.Text, "no thicker than") {
		t.Errorf("findings %v", p.Findings)
	}
}

func TestCookedAheadWarmedOnTheGrate(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+plantest.Sleep, aheadBrisket, fewBurgers))
	if !p.Feasible {
		t.Fatalf("findings %v", p.Findings)
	}
	d := p.Dishes[0]
	// fda_3_403_11: 165 F, within 2 h.
	if d.Cut != day.ParcelCut || d.TargetC < unit.FToC(165)-0.01 || d.Batches[0].Stages[0].Minutes.Late > safety.ReheatWithinMinutes {
		t.Errorf("%+v", d)
	}
}

// Where the oven does all there is to do that day, the plan is that of the day before.
func TestCookedAheadAlone(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+plantest.Oven170, aheadBrisket))
	if p.Ahead == nil || p.Ahead.Plan != nil || len(p.Steps) == 0 || p.ServeAt != p.Ahead.ChillAt {
		t.Fatalf("ahead %+v", p.Ahead)
	}
	if got := plans.TableAt(p).Format("Mon 15:04"); got != "Sat 18:00" {
		t.Errorf("on the table at %s", got)
	}
}

func TestCookingAheadIsRefusedWhereItMakesNoSense(t *testing.T) {
	for _, c := range []struct{ rest, dish, path string }{
		{"", "{name: Burgers, cut: burger, weight: 6 oz, ready: day-before}", "dishes[0].ready"},
		{"earliest: \"06:00\"\n", aheadBrisket, "earliest"},
		{"", "{name: Brisket, cut: brisket, weight: 12 lb, ready: day-before, earliest: \"06:00\"}", "dishes[0].earliest"},
	} {
		r, err := schedule.Read([]byte(plantest.Evening(plantest.Kettle22+c.rest, c.dish)))
		if err != nil {
			t.Fatal(err)
		}
		var refused *schedule.InputError
		if _, err := planner.Make(context.Background(), r); !errors.As(err, &refused) || refused.Faults[0].Path != c.path {
			t.Errorf("%s: %v", c.path, err)
		}
	}
}

func TestCookingAheadIsARemedy(t *testing.T) {
	// Brunch at ten, and nobody up before seven: an invented day.
	p := plantest.Plan(t, "format: 1\nserve: {date: 2027-07-03, time: \"10:00\", tz: America/Chicago}\n"+plantest.Kettle22+plantest.Oven170+
		"quiet: [{from: \"22:00\", to: \"07:00\"}]\ndishes:\n  - {name: Brisket, cut: brisket, weight: 12 lb, hold: [insulated-box], level: 275 F}\n")
	if p.Feasible {
		t.Fatal("the day can be had")
	}
	for _, r := range p.Remedies {
		if r.Code == "day-before" {
			return
		}
	}
	t.Errorf("remedies %v", p.Remedies)
}

// A plan of two days survives its own JSON.
func TestCookedAheadAsJSON(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+plantest.Oven170, aheadBrisket, fewBurgers))
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	back, err := schedule.ReadPlan(text)
	if err != nil {
		t.Fatal(err)
	}
	again, err := json.Marshal(back)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(text, again) || back.Ahead == nil || back.Ahead.Plan == nil {
		t.Error("the plan comes back another one")
	}
	plantest.Judge(t, back)
	plantest.Judge(t, *back.Ahead.Plan)
}

// A mild day that nobody gave is doubted in winter, on each side of the equator, and only there.
func TestAMildDayIsDoubtedInWinter(t *testing.T) {
	for _, c := range []struct {
		date, tz string
		doubted  bool
	}{
		{"2027-12-19", "America/Chicago", true}, {"2027-07-03", "America/Chicago", false},
		{"2027-02-06", "Europe/Berlin", true}, {"2027-02-06", "Europe/Dublin", true}, {"2027-07-03", "Europe/Dublin", false},
		{"2027-07-03", "Australia/Sydney", true}, {"2027-12-19", "Australia/Sydney", false},
		{"2027-12-19", "America/Phoenix", false},
	} {
		document := strings.NewReplacer("2027-07-03", c.date, "America/Chicago", c.tz).Replace(plantest.Evening(plantest.Kettle22, fewBurgers))
		p := plantest.Plan(t, document)
		if f, doubted := plantest.Finding(p, "assumed-mild"); doubted != c.doubted {
			t.Errorf("%s, %s: %v", c.date, c.tz, f)
		}
		document = strings.Replace(document, "dishes:", "weather: {air: 30 F}\ndishes:", 1)
		if f, doubted := plantest.Finding(plantest.Plan(t, document), "assumed-mild"); doubted {
			t.Errorf("%s, %s, at 30 F: %v", c.date, c.tz, f)
		}
	}
}
