package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// What nobody said of the weather is told, and what was said is not.
func TestTheWeatherThatIsAssumedIsTold(t *testing.T) {
	for weather, want := range map[string]string{
		"":                         "the weather, 70 °F, dry and calm",
		"weather: {wind: 8 mph}\n": "the air, 70 °F",
		"weather: {air: 40 F}\n":   "",
		"units: metric\n":          "the weather, 20 °C, dry and calm. Write the forecast as weather: {air: 5 C, wind: 12 km/h}",
	} {
		p := plantest.Day(t, plantest.Evening(plantest.Kettle22+weather, "{cut: chicken, weight: 4 lb}"))
		f, said := plantest.Finding(p, schedule.CodeAssumed)
		if said != (want != "") || !strings.Contains(f.Text, want) {
			t.Errorf("%q: %q, want %q", weather, f.Text, want)
		}
	}
}

// A meal in the small hours is planned, and doubted.
func TestAMealInTheSmallHoursIsDoubted(t *testing.T) {
	for serve, evening := range map[string]string{"01:00": "13:00", "05:30": "17:30", "06:30": "18:30", "00:59": "", "06:31": "", "18:00": ""} {
		p := plantest.Day(t, "serve: {date: 2027-07-03, time: \""+serve+"\", tz: America/Chicago}\n"+plantest.Kettle22+"dishes: [{cut: burger, count: 4}]\n")
		f, said := plantest.Finding(p, schedule.CodeEarlyMeal)
		if said != (evening != "") || said && !strings.Contains(f.Text, `write time: "`+evening+`"`) {
			t.Errorf("%s: %q, want %q", serve, f.Text, evening)
		}
	}
}

// A remedy says the lines to write, and those lines are the request that it leads to.
func TestARemedySaysWhatToWrite(t *testing.T) {
	r, err := schedule.Read([]byte(plantest.Evening(plantest.Kettle22, "{name: Ribs, cut: baby-backs, count: 5}")))
	if err != nil {
		t.Fatal(err)
	}
	p, err := planner.Make(t.Context(), r, planner.Judged())
	if err != nil {
		t.Fatal(err)
	}
	if p.Feasible || len(p.Remedies) == 0 {
		t.Fatal("the day can be had as it is: it tests nothing")
	}
	lies := false
	for _, r := range p.Remedies {
		after := r.Write
		if after == "" {
			t.Errorf("%q says no line", r.Text)
		}
		lies = lies || strings.Contains(after, "lies: standing")
		for _, e := range r.Edits {
			if _, line := e.Line(p.Request); !strings.Contains(after, line) {
				t.Errorf("%q is not in %q", line, after)
			}
		}
	}
	if !lies {
		t.Errorf("no remedy has the racks stand: %v", p.Remedies)
	}
}
