package schedule

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/safety"
)

const oven170 = "oven: {hold: 170 F}\n"

const aheadBrisket = "{name: Brisket, cut: brisket, weight: 12 lb, ready: day-before}"
const fewBurgers = "{name: Burgers, cut: burger, weight: 6 oz, count: 4}"

// The thickest portion chills within both stages (fda_3_501_14: 135 to 70 F in 2 h,
// to 41 F in 6 h) at the poor end; the next size on a cook's grid does not.
func TestThickestPortionIsTheLargestThatChills(t *testing.T) {
	thickness, report := thickestPortion()
	t.Logf("%.0f mm: 70 F after %.0f min, 41 F after %.0f min", thickness*1000, report.FirstMinutes, report.WholeMinutes)
	if thickness < leastPortionM || report.FirstMinutes > 120 || report.WholeMinutes > 360 {
		t.Errorf("%.0f mm: %+v", thickness*1000, report)
	}
	next, err := safety.JudgeCooling(chill(thickness+portionGridM, poorEnd))
	if err != nil || next.Kind != safety.CoolingOutside {
		t.Errorf("%.0f mm: %v, %v", (thickness+portionGridM)*1000, next.Kind, err)
	}
}

// Smaller portions never chill slower, and never warm slower.
func TestSmallerPortionsChillAndWarmFaster(t *testing.T) {
	chilled, hot := 0.0, 0.0
	for mm := 10.0; mm <= 80; mm += 5 {
		samples := chill(mm/1000, poorEnd)
		if m := samples[len(samples)-1].Minute; m < chilled {
			t.Errorf("%g mm is cold after %.0f min, thinner after %.0f", mm, m, chilled)
		} else {
			chilled = m
		}
		var s heat.Sim
		s.Start(layer(mm/1000, heat.RefrigeratorC), heat.WarmOven(reheatOvenC))
		s.RunTo(safety.ReheatMinimum().CoreC, longestCookS)
		if m := s.ElapsedS(); m < hot {
			t.Errorf("%g mm is hot after %.0f s, thinner after %.0f", mm, m, hot)
		} else {
			hot = m
		}
	}
}

func TestCookedAheadWarmedInTheOven(t *testing.T) {
	p := planOf(t, evening(kettle22+oven170+sleep, aheadBrisket, fewBurgers))
	sound(t, p)
	if !p.Feasible || p.Ahead == nil || p.Ahead.Plan == nil {
		t.Fatalf("feasible %v, ahead %v, findings %v", p.Feasible, p.Ahead, p.Findings)
	}
	sound(t, *p.Ahead.Plan)
	// Quiet from 23:00: chilled by 20:00, with two hours to look after it.
	if got := p.Ahead.ChillAt.Format("Mon 15:04"); got != "Fri 20:00" {
		t.Errorf("chilled by %s", got)
	}
	a := p.Ahead.Dishes[0]
	// 12 lb less 43 % (kitchen.yaml) are 3.1 kg.
	if a.Place != PlaceOven || a.CookedKg < 3 || a.CookedKg > 3.2 || a.Minutes.Late > safety.ReheatWithinMinutes {
		t.Errorf("%+v", a)
	}
	var kinds []string
	for _, s := range p.Steps {
		if strings.Contains(s.Text, "Brisket") && s.At.After(p.Ahead.ChillAt.Add(-time.Hour)) {
			kinds = append(kinds, s.Kind)
		}
	}
	if got := strings.Join(kinds, " "); got != "serve to-oven take-off serve" {
		t.Errorf("steps: %s", got)
	}
	// What is done is cut and chilled once it has rested (usda_danger_zone: 2 h), whatever
	// the hour by which a slow one must be.
	off, cut := stepOf(&p, StepTakeOff, ""), stepOf(&p, StepSlice, "")
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
	if f, ok := findingOf(p, "ahead-portions"); !ok || !strings.Contains(f.Text, "no thicker than") {
		t.Errorf("findings %v", p.Findings)
	}
}

func TestCookedAheadWarmedOnTheGrate(t *testing.T) {
	p := planOf(t, evening(kettle22+sleep, aheadBrisket, fewBurgers))
	sound(t, p)
	if !p.Feasible {
		t.Fatalf("findings %v", p.Findings)
	}
	d := p.Dishes[0]
	// fda_3_403_11: 165 F, within 2 h.
	if d.Cut != parcelCut || d.TargetC < celsius(165)-0.01 || d.Batches[0].Stages[0].Minutes.Late > safety.ReheatWithinMinutes {
		t.Errorf("%+v", d)
	}
}

// Where the oven does all there is to do that day, the plan is that of the day before.
func TestCookedAheadAlone(t *testing.T) {
	p := planOf(t, evening(kettle22+oven170, aheadBrisket))
	sound(t, p)
	if p.Ahead == nil || p.Ahead.Plan != nil || len(p.Steps) == 0 || p.ServeAt != p.Ahead.ChillAt {
		t.Fatalf("ahead %+v", p.Ahead)
	}
	if got := p.tableAt().Format("Mon 15:04"); got != "Sat 18:00" {
		t.Errorf("on the table at %s", got)
	}
}

func TestCookingAheadIsRefusedWhereItMakesNoSense(t *testing.T) {
	for _, c := range []struct{ rest, dish, path string }{
		{"", "{name: Burgers, cut: burger, weight: 6 oz, ready: day-before}", "dishes[0].ready"},
		{"earliest: \"06:00\"\n", aheadBrisket, "earliest"},
		{"", "{name: Brisket, cut: brisket, weight: 12 lb, ready: day-before, earliest: \"06:00\"}", "dishes[0].earliest"},
	} {
		r, err := Read([]byte(evening(kettle22+c.rest, c.dish)))
		if err != nil {
			t.Fatal(err)
		}
		var refused *InputError
		if _, err := Make(context.Background(), r); !errors.As(err, &refused) || refused.Faults[0].Path != c.path {
			t.Errorf("%s: %v", c.path, err)
		}
	}
}

func TestCookingAheadIsARemedy(t *testing.T) {
	// Brunch at ten, and nobody up before seven: an invented day.
	p := planOf(t, "format: 1\nserve: {date: 2027-07-03, time: \"10:00\", tz: America/Chicago}\n"+kettle22+oven170+
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
	p := planOf(t, evening(kettle22+oven170, aheadBrisket, fewBurgers))
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	back, err := ReadPlan(text)
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
	sound(t, back)
	sound(t, *back.Ahead.Plan)
}
