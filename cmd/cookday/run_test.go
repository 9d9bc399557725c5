package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// result is what a command has printed and returned.
type result struct {
	code        int
	out, errors string
}

// invoke runs a command line in this process, with a text as standard input.
func invoke(stdin string, args ...string) result {
	var out, errors bytes.Buffer
	code := runAt(winter, args, strings.NewReader(stdin), &out, &errors)
	return result{code, out.String(), errors.String()}
}

// winter is before the days of the tests.
func winter() time.Time { return time.Date(2027, 1, 2, 12, 0, 0, 0, time.UTC) }

// mustRun is invoke for what has to go well.
func mustRun(t *testing.T, stdin string, args ...string) string {
	t.Helper()
	r := invoke(stdin, args...)
	if r.code != exitFine || r.errors != "" {
		t.Fatalf("cookday %q: exit code %d, errors %q", args, r.code, r.errors)
	}
	return r.out
}

// lunch is a small day that can be done: an invented one.
const lunch = `format: 1
name: Lunch
serve: {date: 2027-07-03, time: "13:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
dishes:
  - {name: Chicken, cut: chicken-spatchcock, weight: 4.5 lb}
`

// crowd is a day that cannot be done: 40 steaks at one instant on one grate of 22 in,
// which holds about a dozen, and a steak does not wait for others.
const crowd = `format: 1
serve: {date: 2027-07-03, time: "13:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
earliest: "12:00"
dishes:
  - {name: Briskets, cut: brisket, weight: 14 lb, count: 6}
`

func file(t *testing.T, name, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestExitCodes(t *testing.T) {
	good, infeasible := file(t, "lunch.yaml", lunch), file(t, "crowd.yaml", crowd)
	plan := file(t, "plan.json", mustRun(t, "", "plan", good, "--format", "json"))
	tests := []struct {
		name string
		args []string
		code int
		err  string // begins the standard error; empty for none at all
	}{
		{"help", []string{"--help"}, exitFine, ""},
		{"no command", nil, exitFine, ""},
		{"plan", []string{"plan", good}, exitFine, ""},
		{"plan that cannot be", []string{"plan", infeasible}, exitInfeasible, ""},
		{"check of a request", []string{"check", good}, exitFine, ""},
		{"check of a plan", []string{"check", plan}, exitFine, ""},
		{"cuts", []string{"cuts"}, exitFine, ""},
		{"cut by capitals", []string{"cuts", "Brisket"}, exitFine, ""},
		{"unknown cut", []string{"cuts", "briskett"}, exitInput, "cut: \"briskett\" is not in the catalogue; the nearest are brisket, "},
		{"unknown command", []string{"plam"}, exitInput, "plam: is no command of cookday; did you mean plan? see cookday --help"},
		{"unknown flag", []string{"plan", "--speed", "9", good}, exitInput, "cookday plan: unknown flag: --speed; "},
		{"unknown format", []string{"plan", good, "--format", "pdf"}, exitInput, `--format: "pdf" is not text, json, csv, ics, svg or html`},
		{"unknown ending of a file", []string{"plan", good, "--out", "sheet.pdf"}, exitInput, "--out: sheet.pdf has an ending that no format has; "},
		{"no folder", []string{"plan", good, "--out", "no/such/folder/sheet.txt"}, exitInput, "no/such/folder/sheet.txt: there is no such folder"},
		{"no number", []string{"amounts", "--adults", "x"}, exitInput, `cookday amounts: --adults: "x" is not a whole number; `},
		{"unknown shell", []string{"completion", "fisch"}, exitInput, "fisch: is no command of cookday"},
		{"unknown picture", []string{"plan", good, "--picture", "cat"}, exitInput, `--picture: "cat" is not timeline, curves or grate`},
		{"unknown table", []string{"plan", good, "--table", "cats"}, exitInput, `--table: "cats" is not steps or dishes`},
		{"no file", []string{"plan"}, exitInput, "cookday plan: FILE is missing; "},
		{"two files", []string{"plan", good, good}, exitInput, "cookday plan: "},
		{"missing file", []string{"check", "nowhere.yaml"}, exitInput, "nowhere.yaml: there is no such file"},
		{"folder", []string{"check", t.TempDir()}, exitInput, "/"},
		{"a plan is not planned", []string{"plan", plan}, exitInput, plan + ": is a plan already; "},
		{"now that is none", []string{"plan", good, "--now", "noonish"}, exitInput, `--now: "noonish" is no time; `},
		{"out into nowhere", []string{"plan", good, "--out", "/nowhere/at/all.txt"}, exitInput, "/nowhere/at/all.txt: "},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			r := invoke("", test.args...)
			if r.code != test.code {
				t.Errorf("exit code %d, want %d; errors %q", r.code, test.code, r.errors)
			}
			if !strings.HasPrefix(r.errors, test.err) || test.err == "" && r.errors != "" {
				t.Errorf("errors %q, want them to begin %q", r.errors, test.err)
			}
			if strings.Contains(r.errors, "goroutine") || strings.Contains(r.errors, "Usage:") {
				t.Errorf("errors show a stack trace or the usage: %q", r.errors)
			}
			if (r.out == "") != (r.code == exitInput) {
				t.Errorf("exit code %d with %d bytes of output", r.code, len(r.out))
			}
		})
	}
}

// A day that is past is planned for whoever looks back, and said to be past.
func TestADayThatIsPast(t *testing.T) {
	name := file(t, "lunch.yaml", lunch)
	before, after := atClock(t, "2027-07-03 13:00", "plan", name), atClock(t, "2027-07-03 13:01", "plan", name)
	if !strings.Contains(before.errors, "the fire of this plan is lit at") || strings.Contains(before.errors, "serve") && !strings.Contains(before.errors, "Move serve") || before.code != exitFine {
		t.Errorf("while it is eaten: %q", before.errors)
	}
	if early := atClock(t, "2027-07-02 13:00", "plan", name); early.errors != "" || early.out != before.out {
		t.Errorf("the day before: %q", early.errors)
	}
	if want := name + ": serve: Saturday, July 3, 2027, 1:00 PM is past; this is how that day would have gone\n"; after.errors != want || after.code != exitFine || after.out != before.out {
		t.Errorf("%q, exit code %d", after.errors, after.code)
	}
}

// A thaw that had to begin before now is told: whoever has not begun plans from now on, and
// that plan is another.
func TestAThawThatIsPast(t *testing.T) {
	turkey := "serve: {date: 2027-07-03, time: \"15:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 22 in}\ndishes: [{name: Turkey, cut: turkey, weight: 14 lb, start: frozen}]\n"
	name := file(t, "turkey.yaml", turkey)
	if early := atClock(t, "2027-06-28 13:00", "plan", name); early.errors != "" {
		t.Errorf("days before: %q", early.errors)
	}
	late := atClock(t, "2027-07-01 12:30", "plan", name)
	line := `earliest: {date: 2027-07-01, time: "12:30"}`
	if !strings.Contains(late.errors, "Turkey had to begin to thaw by") || !strings.Contains(late.errors, line) {
		t.Fatalf("two days before: %q", late.errors)
	}
	if again := atClock(t, "2027-07-01 12:30", "plan", file(t, "now.yaml", line+"\n"+turkey)); again.errors != "" || !strings.Contains(again.out, "cold water") {
		t.Errorf("with the line that is told: %q\n%s", again.errors, again.out)
	}
}

func TestInfeasiblePlanSaysWhy(t *testing.T) {
	r := invoke(crowd, "plan", "-")
	for _, want := range []string{"This day won't work", "Why not"} {
		if !strings.Contains(r.out, want) {
			t.Errorf("%q is not in\n%s", want, r.out)
		}
	}
	if r := invoke(crowd, "plan", "-", "--format", "json"); r.code != exitInfeasible || !strings.Contains(r.out, `"feasible": false`) {
		t.Errorf("exit code %d, output %.300s", r.code, r.out)
	}
}

func TestFaultOfTheProgramIsOneLine(t *testing.T) {
	r := invoke("", "cuts")
	var errors bytes.Buffer
	code := run([]string{"cuts"}, nil, brokenWriter{}, &errors)
	if r.code != exitFine || code != exitFault || strings.Count(errors.String(), "\n") != 1 {
		t.Errorf("exit code %d, errors %q", code, errors.String())
	}
	errors.Reset()
	code = run([]string{"cuts"}, nil, panickyWriter{}, &errors)
	if code != exitFault || strings.Count(errors.String(), "\n") != 1 {
		t.Errorf("exit code %d, errors %q", code, errors.String())
	}
}

// brokenWriter fails as a full disk does.
type brokenWriter struct{}

func (brokenWriter) Write([]byte) (int, error) { return 0, os.ErrClosed }

// panickyWriter stands for a slip in the program.
type panickyWriter struct{}

func (panickyWriter) Write([]byte) (int, error) { panic("slip") }
