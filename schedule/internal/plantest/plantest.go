// Package plantest makes plans for tests. Whatever it makes has passed the judge.
// Only external tests (package x_test) may import it: it stands in front of the
// planner, and the rooms of the planner cannot see what stands in front of them.
package plantest

import (
	"context"
	"os"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/planner"
)

// Kettle22 is the grill of most invented days.
const Kettle22 = "grill: {kind: kettle, diameter: 22 in}\n"

// Evening is a request for six o'clock on Saturday 3 July 2027, with further fields
// and with dishes in YAML's short form.
func Evening(rest string, dishes ...string) string {
	return "format: 1\nserve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\n" + rest +
		"\ndishes:\n  - " + strings.Join(dishes, "\n  - ") + "\n"
}

// Request reads a request that has no fault.
func Request(t testing.TB, document string) schedule.Request {
	t.Helper()
	r, err := schedule.Read([]byte(document))
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Plan makes the plan of a request, feasible or not, and has it judged as a user does.
func Plan(t testing.TB, document string, how ...planner.Option) schedule.Plan {
	t.Helper()
	p, err := planner.Make(context.Background(), Request(t, document), append(how, planner.Judged())...)
	if err != nil {
		t.Fatal(err) // of a plan that is not sound: every fault, one a line
	}
	Noticed(t, p.Findings)
	return p
}

// Day is the plan of a request that can be had.
func Day(t testing.TB, document string) schedule.Plan {
	t.Helper()
	p := Plan(t, document)
	if !p.Feasible {
		t.Fatalf("not feasible: %v", p.Findings)
	}
	return p
}

// Judge fails the test on every fault that the judge finds in a plan, on every finding that is
// not as grave as its notice, and on orders that do not go together.
func Judge(t testing.TB, p schedule.Plan) {
	t.Helper()
	for _, f := range check.Plan(p) {
		t.Errorf("the judge: %s", f)
	}
	Noticed(t, p.Findings)
	Orders(t, p)
}

// Party is the plan of the example: a brisket, two chickens and twelve burgers on one
// kettle, eaten at six on Saturday 3 July 2027. The path leads to the top of the module.
func Party(t testing.TB, top string) schedule.Plan {
	t.Helper()
	return Day(t, ReadFile(t, top+"/examples/backyard-party/request.yaml"))
}

// Revised is a plan after a log in CSV, at a time in its zone such as
// "2027-07-03 12:00". It is judged.
func Revised(t testing.TB, p schedule.Plan, log, now string) schedule.Plan {
	t.Helper()
	loc, err := time.LoadLocation(p.TZ)
	if err != nil {
		t.Fatal(err)
	}
	at, err := time.ParseInLocation("2006-01-02 15:04", now, loc)
	if err != nil {
		t.Fatal(err)
	}
	entries, err := schedule.ReadLog([]byte(log), p)
	if err != nil {
		t.Fatal(err)
	}
	q, err := planner.Revise(context.Background(), p, entries, at)
	if err != nil {
		t.Fatal(err)
	}
	Judge(t, q)
	return q
}

// ReadFile is the text of a file.
func ReadFile(t testing.TB, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
