package schedule_test

import (
	"context"
	"encoding/json"
	"maps"
	"math"
	"net/url"
	"slices"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/unit"
)

// Whatever one piece is asked of, in the names and texts of a query: faults, or an
// answer whose windows are in order and whose texts have no broken numbers.
func FuzzInquiry(f *testing.F) {
	for _, query := range []string{
		"cut=brisket&weight=12 lb&grate=250 F&wrap=foil@150F&probability=0.5,0.9&air=-40 C&humidity=0 %",
		"cut=turkey&weight=13.6 kg&start=frozen&altitude=6000 m&units=metric&water-pan=true",
		"cut=steak&weight=14 oz&thickness=50 mm&target=final@130F&finish=sear&layout=two-zone",
		"cut=corn&count=500", "cut=salmon-fillet&weight=1 kg&prep=brined&target=medium&start=28 F&grate=900 F",
		"cut=baby-backs&weight=1 lb&grate=150 F&wrap=paper@0m&layout=ring", "air=-0", "cut=steak&weight=-0 g",
	} {
		f.Add(query)
	}
	f.Fuzz(func(t *testing.T, query string) {
		values, err := url.ParseQuery(query)
		if err != nil {
			return
		}
		fields := map[string]string{}
		for name := range values {
			fields[name] = values.Get(name)
		}
		q, err := schedule.ReadInquiry(fields)
		if err != nil {
			faulty(t, err, slices.Collect(maps.Values(fields))...)
			return
		}
		o, err := schedule.Forecast(context.Background(), q)
		if err != nil {
			faulty(t, err, slices.Collect(maps.Values(fields))...)
			return
		}
		text, err := json.Marshal(o)
		if err != nil {
			t.Fatal(err)
		}
		clean(t, "forecast", string(text))
		last := schedule.OutlookMilestone{}
		for _, m := range o.Milestones {
			if !(m.EarlyMinutes >= 0 && m.EarlyMinutes <= m.ExpectedMinutes && m.ExpectedMinutes <= m.LateMinutes) {
				t.Errorf("%s at %g, %g, %g min", m.Kind, m.EarlyMinutes, m.ExpectedMinutes, m.LateMinutes)
			}
			if m.ExpectedMinutes < last.ExpectedMinutes-1e-9 {
				t.Errorf("%s at %g min, %s before it at %g", m.Kind, m.ExpectedMinutes, last.Kind, last.ExpectedMinutes)
			}
			last = m
		}
		if o.Reaches == (o.Reason != "") || o.Reaches == (len(o.Milestones) == 0) {
			t.Errorf("reaches %v for the reason %q with %d milestones", o.Reaches, o.Reason, len(o.Milestones))
		}
	})
}

// Whatever guests and cuts: faults, or amounts that feed them.
func FuzzAmounts(f *testing.F) {
	f.Add(16, 6, "brisket,chicken-spatchcock,corn")
	f.Add(1, 0, "burger")
	f.Add(math.MaxInt, math.MinInt, "")
	f.Add(0, 1, "turkey,turkey,buns,=1+1")
	f.Fuzz(func(t *testing.T, adults, children int, cuts string) {
		all, err := schedule.Amounts(schedule.Guests{Adults: adults, Children: children}, strings.Split(cuts, ","))
		if err != nil {
			faulty(t, err)
			return
		}
		for _, a := range all {
			if a.Count < 1 || !(a.PieceKg > 0 && a.CookedKg > 0 && a.CookedKg <= a.MassKg) || a.MassKg < a.Eaters*a.ServingKg*(1-1e-6) {
				t.Errorf("%+v", a)
			}
			clean(t, "amount", a.Text(unit.US)+a.Text(unit.Metric))
		}
	})
}

// faulty wants faults of the input, each with something to say. What was written may
// be repeated in them.
func faulty(t *testing.T, err error, written ...string) {
	t.Helper()
	bad, ok := err.(*schedule.InputError)
	if !ok || len(bad.Faults) == 0 {
		t.Fatalf("no faults of the input: %v", err)
	}
	for _, f := range bad.Faults {
		if f.Sentence == "" {
			t.Errorf("a fault without a word: %+v", f)
		}
		rest := f.Sentence
		for _, text := range written {
			if text != "" {
				rest = strings.TrimPrefix(rest, text)
			}
		}
		clean(t, "fault", strings.Join(unquoted(rest), ""))
	}
}

// unquoted are the parts of a sentence outside of quotation marks, where what a
// stranger wrote is repeated.
func unquoted(sentence string) []string {
	var parts []string
	for i, part := range strings.Split(sentence, `"`) {
		if i%2 == 0 {
			parts = append(parts, part)
		}
	}
	return parts
}
