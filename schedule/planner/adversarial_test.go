package planner_test

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// outcome is what a hostile or strange request must come to.
type outcome struct {
	fault    string // a fault with this path; "" for none
	feasible bool
	finding  string // a finding with this code; "" for any
}

// hostileDays are days at the edge of sense, each with its expected answer.
var hostileDays = map[string]struct {
	document string
	want     outcome
}{
	"forty dishes": {
		plantest.Evening(plantest.Kettle22, strings.Split(strings.Repeat("{cut: burger, weight: 6 oz, count: 2};", 39)+"{cut: hot-dog, weight: 2 oz}", ";")...),
		outcome{finding: "too-many-batches"},
	},
	"forty-one dishes": {
		plantest.Evening(plantest.Kettle22, strings.Split(strings.Repeat("{cut: burger, weight: 6 oz};", 40)+"{cut: hot-dog, weight: 2 oz}", ";")...),
		outcome{fault: "dishes"},
	},
	"400 burgers on 14 in": {
		plantest.Evening("grill: {kind: kettle, diameter: 14 in}", "{cut: burger, weight: 6 oz, count: 400}"),
		outcome{finding: "too-many-batches"},
	},
	"serving in 20 minutes": {
		plantest.Evening(plantest.Kettle22+"earliest: \"17:40\"", "{cut: burger, weight: 6 oz, count: 4}"),
		outcome{finding: "clash"},
	},
	"midnight": {
		strings.Replace(plantest.Evening(plantest.Kettle22, "{cut: burger, weight: 6 oz, count: 4}"), "18:00", "00:00", 1),
		outcome{feasible: true},
	},
	"29 February": {
		strings.Replace(plantest.Evening(plantest.Kettle22, "{cut: burger, weight: 6 oz, count: 4}"), "2027-07-03", "2028-02-29", 1),
		outcome{feasible: true},
	},
	"29 February of another year": {
		strings.Replace(plantest.Evening(plantest.Kettle22, "{cut: burger, weight: 6 oz, count: 4}"), "2027-07-03", "2027-02-29", 1),
		outcome{fault: "serve.date"},
	},
	"a time zone that does not exist": {
		strings.Replace(plantest.Evening(plantest.Kettle22, "{cut: burger, weight: 6 oz, count: 4}"), "America/Chicago", "Atlantis/Capital", 1),
		outcome{fault: "serve.tz"},
	},
	"4,000 m": {
		plantest.Evening(plantest.Kettle22+"weather: {altitude: 4000 m}\noven: {hold: 170 F}", "{cut: pork-butt, weight: 6 lb, level: 275 F}"),
		outcome{feasible: true, finding: "thin-air"},
	},
	"-25 C": {
		plantest.Evening(plantest.Kettle22+"weather: {air: -25 C, wind: 10 m/s}\noven: {hold: 170 F}", "{cut: pork-butt, weight: 6 lb, level: 275 F}"),
		outcome{feasible: true},
	},
	"a 30 lb turkey": {
		plantest.Evening(plantest.Kettle22+"oven: {hold: 170 F}", "{cut: turkey, weight: 30 lb, start: 34 F}"),
		outcome{feasible: true},
	},
	"a steak of 2 mm": {
		plantest.Evening(plantest.Kettle22, "{cut: steak, thickness: 2 mm}"),
		outcome{fault: "dishes[0].thickness"},
	},
	"a target above what the grate can give": {
		plantest.Evening(plantest.Kettle22, "{cut: brisket, weight: 12 lb, target: 210 F, level: 180 F}"),
		outcome{finding: "never-arrives"},
	},
}

func TestHostileDays(t *testing.T) {
	for name, day := range hostileDays {
		t.Run(name, func(t *testing.T) {
			r, err := schedule.Read([]byte(day.document))
			var p schedule.Plan
			if err == nil {
				p, err = planner.Make(context.Background(), r)
			}
			if bad, ok := err.(*schedule.InputError); ok != (day.want.fault != "") {
				t.Fatalf("error %v, want a fault of %q", err, day.want.fault)
			} else if ok {
				for _, f := range bad.Faults {
					if strings.HasPrefix(f.Path, day.want.fault) {
						return
					}
				}
				t.Fatalf("faults %v, want one of %q", bad.Faults, day.want.fault)
			}
			if p.Feasible != day.want.feasible {
				t.Fatalf("feasible %v, findings %v", p.Feasible, p.Findings)
			}
			if day.want.finding != "" && countFindings(p, day.want.finding) == 0 {
				t.Errorf("findings %v, want %s", p.Findings, day.want.finding)
			}
			plantest.Judge(t, p)
		})
	}
}

// Both clock changes in two zones: minutes that pass are counted, not the hands of
// the clock, so a cook over the change is as long as any other.
func TestACookOverAClockChange(t *testing.T) {
	for _, c := range []struct{ date, tz string }{
		{"2027-03-14", "America/Chicago"}, {"2027-11-07", "America/Chicago"},
		{"2027-03-28", "Europe/Berlin"}, {"2027-10-31", "Europe/Berlin"},
	} {
		document := fmt.Sprintf("format: 1\nserve: {date: %s, time: \"12:00\", tz: %s}\n%soven: {hold: 170 F}\ndishes:\n  - {cut: pork-butt, weight: 8 lb, level: 225 F, wrap: none}\n", c.date, c.tz, plantest.Kettle22)
		p := plantest.Plan(t, document)
		if !p.Feasible {
			t.Fatalf("%v: %v", c, p.Findings)
		}
		off := schedule.Window{}
		for _, m := range p.Dishes[0].Batches[0].Milestones {
			if m.Kind == schedule.MilestoneTakeOff {
				off = m.Window
			}
		}
		on := p.Dishes[0].Batches[0].Stages[0].From
		plain := plantest.Plan(t, strings.Replace(document, c.date, "2027-06-20", 1))
		var same time.Duration
		for _, m := range plain.Dishes[0].Batches[0].Milestones {
			if m.Kind == schedule.MilestoneTakeOff {
				same = m.Window.Expected.Sub(plain.Dishes[0].Batches[0].Stages[0].From)
			}
		}
		if got := off.Expected.Sub(on); got != same {
			t.Errorf("%v: the cook takes %v, on another day %v", c, got, same)
		}
		_, offsetOn := on.Zone()
		_, offsetServe := p.ServeAt.Zone()
		if offsetOn == offsetServe {
			t.Errorf("%v: the cook does not span the change: %s to %s", c, on, p.ServeAt)
		}
	}
}

// A cancelled request lets go of the processor.
func TestCancelDuringTheSearch(t *testing.T) {
	dishes := strings.Split(strings.Repeat("{cut: chicken, weight: 4 lb, count: 2};{cut: spare-ribs, weight: 3 lb, count: 2};", 8)+"{cut: corn, count: 12}", ";")
	r, err := schedule.Read([]byte(plantest.Evening("grill: {kind: kettle, diameter: 26 in}\noven: {hold: 170 F}", dishes...)))
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(context.Background(), time.Millisecond)
	defer cancel()
	if _, err := planner.Make(ctx, r); err == nil {
		t.Error("a plan came in a millisecond: the day is too easy for this test")
	} else if err != context.DeadlineExceeded {
		t.Errorf("error %v, want the context's", err)
	}
}
