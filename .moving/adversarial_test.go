package schedule

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"
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
		evening(kettle22, strings.Split(strings.Repeat("{cut: burger, weight: 6 oz, count: 2};", 39)+"{cut: hot-dog, weight: 2 oz}", ";")...),
		outcome{finding: "too-many-batches"},
	},
	"forty-one dishes": {
		evening(kettle22, strings.Split(strings.Repeat("{cut: burger, weight: 6 oz};", 40)+"{cut: hot-dog, weight: 2 oz}", ";")...),
		outcome{fault: "dishes"},
	},
	"400 burgers on 14 in": {
		evening("grill: {kind: kettle, diameter: 14 in}", "{cut: burger, weight: 6 oz, count: 400}"),
		outcome{finding: "too-many-batches"},
	},
	"serving in 20 minutes": {
		evening(kettle22+"earliest: \"17:40\"", "{cut: burger, weight: 6 oz, count: 4}"),
		outcome{finding: "clash"},
	},
	"midnight": {
		strings.Replace(evening(kettle22, "{cut: burger, weight: 6 oz, count: 4}"), "18:00", "00:00", 1),
		outcome{feasible: true},
	},
	"29 February": {
		strings.Replace(evening(kettle22, "{cut: burger, weight: 6 oz, count: 4}"), "2027-07-03", "2028-02-29", 1),
		outcome{feasible: true},
	},
	"29 February of another year": {
		strings.Replace(evening(kettle22, "{cut: burger, weight: 6 oz, count: 4}"), "2027-07-03", "2027-02-29", 1),
		outcome{fault: "serve.date"},
	},
	"a time zone that does not exist": {
		strings.Replace(evening(kettle22, "{cut: burger, weight: 6 oz, count: 4}"), "America/Chicago", "Atlantis/Capital", 1),
		outcome{fault: "serve.tz"},
	},
	"4,000 m": {
		evening(kettle22+"weather: {altitude: 4000 m}\noven: {hold: 170 F}", "{cut: pork-butt, weight: 6 lb, level: 275 F}"),
		outcome{feasible: true, finding: "thin-air"},
	},
	"-25 C": {
		evening(kettle22+"weather: {air: -25 C, wind: 10 m/s}\noven: {hold: 170 F}", "{cut: pork-butt, weight: 6 lb, level: 275 F}"),
		outcome{feasible: true},
	},
	"a 30 lb turkey": {
		evening(kettle22+"oven: {hold: 170 F}", "{cut: turkey, weight: 30 lb, start: 34 F}"),
		outcome{feasible: true},
	},
	"a steak of 2 mm": {
		evening(kettle22, "{cut: steak, thickness: 2 mm}"),
		outcome{fault: "dishes[0].thickness"},
	},
	"a target above what the grate can give": {
		evening(kettle22, "{cut: brisket, weight: 12 lb, target: 210 F, level: 225 F}"),
		outcome{finding: "never-arrives"},
	},
}

func TestHostileDays(t *testing.T) {
	for name, day := range hostileDays {
		t.Run(name, func(t *testing.T) {
			r, err := Read([]byte(day.document))
			var p Plan
			if err == nil {
				p, err = Make(context.Background(), r)
			}
			if bad, ok := err.(*InputError); ok != (day.want.fault != "") {
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
			if faults := Check(p); len(faults) > 0 {
				t.Errorf("the plan is not sound: %v", faults)
			}
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
		document := fmt.Sprintf("format: 1\nserve: {date: %s, time: \"12:00\", tz: %s}\n%soven: {hold: 170 F}\ndishes:\n  - {cut: pork-butt, weight: 8 lb, level: 225 F, wrap: none}\n", c.date, c.tz, kettle22)
		p := planOf(t, document)
		if !p.Feasible {
			t.Fatalf("%v: %v", c, p.Findings)
		}
		off := Window{}
		for _, m := range p.Dishes[0].Batches[0].Milestones {
			if m.Kind == MilestoneTakeOff {
				off = m.Window
			}
		}
		on := p.Dishes[0].Batches[0].Stages[0].From
		plain := planOf(t, strings.Replace(document, c.date, "2027-06-20", 1))
		var same time.Duration
		for _, m := range plain.Dishes[0].Batches[0].Milestones {
			if m.Kind == MilestoneTakeOff {
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
	r, err := Read([]byte(evening("grill: {kind: kettle, diameter: 26 in}\noven: {hold: 170 F}", dishes...)))
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(context.Background(), time.Millisecond)
	defer cancel()
	if _, err := Make(ctx, r); err == nil {
		t.Error("a plan came in a millisecond: the day is too easy for this test")
	} else if err != context.DeadlineExceeded {
		t.Errorf("error %v, want the context's", err)
	}
}
