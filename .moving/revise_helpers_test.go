package schedule

import (
	"context"
	"os"
	"testing"
	"time"
)

// exampleDay is the plan of the example: a brisket, two chickens and twelve
// burgers on one kettle, served at six on Saturday 3 July 2027.
func revisionParty(t testing.TB) Plan {
	t.Helper()
	text, err := os.ReadFile("../examples/backyard-party/request.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return revisionDay(t, string(text))
}

func revisionDay(t testing.TB, text string) Plan {
	t.Helper()
	r, err := Read([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	p, err := Make(context.Background(), r)
	if err != nil {
		t.Fatal(err)
	}
	if !p.Feasible {
		t.Fatalf("not feasible: %v", p.Findings)
	}
	return p
}

// revised is a plan after a log in CSV, at a time in its zone such as "2027-07-03 12:00".
func revised(t testing.TB, p Plan, log, now string) Plan {
	t.Helper()
	loc, err := time.LoadLocation(p.TZ)
	if err != nil {
		t.Fatal(err)
	}
	at, err := time.ParseInLocation("2006-01-02 15:04", now, loc)
	if err != nil {
		t.Fatal(err)
	}
	entries, err := ReadLog([]byte(log), p)
	if err != nil {
		t.Fatal(err)
	}
	q, err := Revise(context.Background(), p, entries, at)
	if err != nil {
		t.Fatal(err)
	}
	return q
}

// stepAt is when the first step of a kind and dish is.
func revisionStep(t testing.TB, p Plan, kind, dish string) time.Time {
	t.Helper()
	for _, s := range p.Steps {
		if s.Kind == kind && s.Dish == dish {
			return s.At
		}
	}
	t.Fatalf("no step %s of %s", kind, dish)
	return time.Time{}
}

// takeOff is the window of a dish's first batch.
func revisionTakeOff(t testing.TB, p Plan, dish string) Window {
	t.Helper()
	for _, d := range p.Dishes {
		if d.ID != dish {
			continue
		}
		for _, m := range d.Batches[0].Milestones {
			if m.Kind == MilestoneTakeOff {
				return m.Window
			}
		}
	}
	t.Fatalf("no take-off of %s", dish)
	return Window{}
}

func revisionFinding(p Plan, code string) (Finding, bool) {
	for _, f := range p.Findings {
		if f.Code == code {
			return f, true
		}
	}
	return Finding{}, false
}

func readTestFile(t testing.TB, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
