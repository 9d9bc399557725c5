package schedule_test

import (
	"errors"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/unit"
)

func TestWithSetsFieldsAndLeavesTheRequestAlone(t *testing.T) {
	r := plantest.Request(t, plantest.Evening(plantest.Kettle22+"quiet: [{from: \"23:00\", to: \"05:30\"}]",
		"{cut: brisket, weight: 12 lb, wrap: {with: foil, from: 160 F}}", "{cut: burger, weight: 6 oz, count: 12}"))
	before := plantest.Request(t, plantest.Evening(plantest.Kettle22+"quiet: [{from: \"23:00\", to: \"05:30\"}]",
		"{cut: brisket, weight: 12 lb, wrap: {with: foil, from: 160 F}}", "{cut: burger, weight: 6 oz, count: 12}"))
	level := unit.FromFahrenheit(275)
	got, err := r.With(
		schedule.NewEdit("dishes[0].level", level),
		schedule.Edit{Path: "dishes[0].wrap.from", Value: `"150 F"`},
		schedule.NewEdit("oven", schedule.Oven{Hold: unit.FromFahrenheit(170)}),
		schedule.NewEdit("quiet", []schedule.Quiet{}),
		schedule.NewEdit("dishes[1]", nil),
		schedule.NewEdit("dishes[1]", schedule.Dish{Cut: "corn", Count: 4}),
	)
	if err != nil {
		t.Fatal(err)
	}
	d := got.Dishes
	if *d[0].Level != level || *d[0].Wrap.From != unit.FromFahrenheit(150) || got.Oven == nil || len(got.Quiet) != 0 || len(d) != 2 || d[1].Cut != "corn" || d[1].ID == "" {
		t.Errorf("%+v", got)
	}
	if *r.Dishes[0].Wrap.From != *before.Dishes[0].Wrap.From || r.Dishes[0].Level != nil || r.Oven != nil || len(r.Quiet) != 1 || len(r.Dishes) != 2 || r.Dishes[1].Cut != "burger" {
		t.Errorf("the request is changed: %+v", r)
	}
}

func TestWithNamesWhatItCannotTake(t *testing.T) {
	r := plantest.Request(t, plantest.Evening(plantest.Kettle22, "{cut: brisket, weight: 12 lb}"))
	for _, x := range []struct{ path, value, says string }{
		{"", "1", "no such field"}, {"dishez[0].level", "1", "no such field"}, {"dishes[0].lvl", "1", "no such field"},
		{"dishes[7].level", "\"250 F\"", "no such entry"}, {"dishes[-1]", "null", "no such entry"}, {"dishes[1].level", "\"250 F\"", "no such entry"},
		{"dishes[0].level", "\"warm\"", "cannot be taken"}, {"dishes[0].count", "1 2", "cannot be taken"}, {"grill", "{\"colour\": 1}", "cannot be taken"},
	} {
		_, err := r.With(schedule.Edit{Path: x.path, Value: x.value})
		bad, ok := errors.AsType[*schedule.InputError](err)
		if !ok || len(bad.Faults) != 1 || bad.Faults[0].Path != x.path || !strings.Contains(bad.Faults[0].Sentence, x.says) {
			t.Errorf("%s = %s: %v, want %s", x.path, x.value, err, x.says)
		}
	}
}

// What a remedy says it asks for is all that it asks for: taken from outside, it gives
// the day that the remedy promises.
func TestARemedyIsTakenByItsEdits(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening("grill: {kind: kettle, diameter: 18 in}\n", "{cut: brisket, weight: 14 lb}", "{cut: burger, weight: 6 oz, count: 24}"))
	if p.Feasible || len(p.Remedies) == 0 {
		t.Fatalf("feasible %v, %d remedies", p.Feasible, len(p.Remedies))
	}
	for _, rem := range p.Remedies {
		r, err := p.Request.With(rem.Edits...)
		if err != nil {
			t.Fatal(err)
		}
		if faults := r.Validate(); len(faults) > 0 {
			t.Errorf("%s: %v", rem.Text, faults)
		}
	}
}

func TestEntryOfAnEdit(t *testing.T) {
	at := time.Date(2027, 7, 3, 11, 5, 0, 0, time.UTC)
	entry := schedule.Entry{At: at, Dish: "brisket", Kind: schedule.LogWrapped, Value: schedule.WrapFoil}
	got, ok := schedule.NewEdit("log", entry).Entry()
	if !ok || !got.At.Equal(at) || got.Dish != entry.Dish || got.Kind != entry.Kind || got.Value != entry.Value {
		t.Errorf("%+v, %t", got, ok)
	}
	if _, ok := schedule.NewEdit("dishes[0].level", "250 F").Entry(); ok {
		t.Error("an edit of a request is an entry of the log")
	}
}
