package export

import (
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"io"
	"os"
	"path/filepath"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

// The golden files are invented days. A plan is kept beside its exports, so that these
// tests fail when an export changes and not when the planner does; the flag plans the
// days anew and renews everything:
//
//	go test ./schedule/export -run Golden -update
var update = flag.Bool("update", false, "plan the golden days anew and renew their files")

var days = []string{"small", "party", "overnight", "crowded"}

// keptPlan reads the plan of a day, or makes it anew.
func keptPlan(t testing.TB, day string) schedule.Plan {
	t.Helper()
	path := filepath.Join("testdata", day+".plan.json")
	if *update {
		var b bytes.Buffer
		if err := JSON(&b, freshPlan(t, day)); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, b.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	raw, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	p, err := schedule.ReadPlan(raw)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func freshPlan(t testing.TB, day string) schedule.Plan {
	t.Helper()
	raw, err := os.ReadFile(filepath.Join("testdata", day+".yaml"))
	if err != nil {
		t.Fatal(err)
	}
	r, err := schedule.Read(raw)
	if err != nil {
		t.Fatal(err)
	}
	p, err := planner.Make(context.Background(), r)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// exports are all formats under the ending of their golden file.
var exports = map[string]func(io.Writer, schedule.Plan) error{
	"txt":          func(w io.Writer, p schedule.Plan) error { return Text(w, p, fiveHoursBefore(p)) },
	"brief.txt":    func(w io.Writer, p schedule.Plan) error { o := fiveHoursBefore(p); o.Brief = 3; return Text(w, p, o) },
	"steps.csv":    func(w io.Writer, p schedule.Plan) error { return CSV(w, p, TableSteps) },
	"dishes.csv":   func(w io.Writer, p schedule.Plan) error { return CSV(w, p, TableDishes) },
	"ics":          Calendar,
	"timeline.svg": func(w io.Writer, p schedule.Plan) error { return Timeline(w, p, fiveHoursBefore(p)) },
	"curves.svg":   func(w io.Writer, p schedule.Plan) error { return Curves(w, p, fiveHoursBefore(p)) },
	"grate.svg":    func(w io.Writer, p schedule.Plan) error { return GrateMap(w, p, 0) },
	"html":         func(w io.Writer, p schedule.Plan) error { return Sheet(w, p, fiveHoursBefore(p)) },
}

func fiveHoursBefore(p schedule.Plan) Options { return Options{Now: p.ServeAt.Add(-5 * time.Hour)} }

func exported(t testing.TB, p schedule.Plan, format string) string {
	t.Helper()
	var b bytes.Buffer
	if err := exports[format](&b, p); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestGolden(t *testing.T) {
	for _, day := range days {
		p := keptPlan(t, day)
		for format := range exports {
			path := filepath.Join("testdata", day+"."+format)
			got := exported(t, p, format)
			if got != exported(t, p, format) {
				t.Errorf("%s: two runs differ", path)
			}
			if *update {
				if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if got != string(want) {
				t.Errorf("%s differs at %q", path, firstDifference(got, string(want)))
			}
		}
	}
}

func firstDifference(a, b string) string {
	for i := range a {
		if i >= len(b) || a[i] != b[i] {
			return a[max(0, i-40):min(len(a), i+40)]
		}
	}
	return "its end"
}

// Days planned right now go through every format too, whatever the planner has learnt.
func TestExportsOfFreshPlans(t *testing.T) {
	for _, day := range days {
		p := freshPlan(t, day)
		if !p.Feasible {
			t.Errorf("%s: %v", day, p.Findings)
		}
		for format := range exports {
			if exported(t, p, format) == "" {
				t.Errorf("%s: %s is empty", day, format)
			}
		}
	}
}

func TestJSONComesBack(t *testing.T) {
	for _, day := range days {
		p := keptPlan(t, day)
		var b bytes.Buffer
		if err := JSON(&b, p); err != nil {
			t.Fatal(err)
		}
		if !bytes.HasSuffix(b.Bytes(), []byte("}\n")) {
			t.Error("no newline at the end")
		}
		again, err := schedule.ReadPlan(b.Bytes())
		if err != nil {
			t.Fatal(err)
		}
		first, _ := json.Marshal(p)
		second, _ := json.Marshal(again)
		if !bytes.Equal(first, second) {
			t.Errorf("%s does not come back", day)
		}
	}
}
