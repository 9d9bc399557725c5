package planner_test

import (
	"context"
	"encoding/json"
	"maps"
	"net/url"
	"slices"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
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
			plantest.Faulty(t, err, slices.Collect(maps.Values(fields))...)
			return
		}
		o, err := planner.Forecast(context.Background(), q)
		if err != nil {
			plantest.Faulty(t, err, slices.Collect(maps.Values(fields))...)
			return
		}
		text, err := json.Marshal(o)
		if err != nil {
			t.Fatal(err)
		}
		plantest.Clean(t, "forecast", string(text))
		plantest.Noticed(t, o.Findings)
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
