package main

import (
	"os"
	"strings"
	"testing"
)

// An invented log of a lunch: the chicken goes on as planned and comes along fast.
const lunchLog = `time,dish,kind,value
11:20,,lit,
11:50,Chicken,on,
12:15,Chicken,core,130 F
`

func TestRevise(t *testing.T) {
	plan := file(t, "plan.json", mustRun(t, lunch, "plan", "-", "--format", "json"))
	out := mustRun(t, lunchLog, "revise", plan, "-", "--now", "12:16")
	for _, want := range []string{"Revision", "[x]", "Now: 12:16 PM."} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in\n%s", want, out)
		}
	}
	revised := file(t, "revised.json", mustRun(t, lunchLog, "revise", plan, "-", "--now", "12:16", "--format", "json"))
	mustRun(t, lunchLog+"12:20,Chicken,core,140 F\n", "revise", revised, "-", "--now", "12:21") // the whole file again, one line longer
}

func TestReviseFaults(t *testing.T) {
	plan := file(t, "plan.json", mustRun(t, lunch, "plan", "-", "--format", "json"))
	tests := []struct {
		name, log string
		args      []string
		want      string
	}{
		{"a log for a day", "", []string{file(t, "log.csv", lunchLog), "-"}, "/"},
		{"both from standard input", "", []string{"-", "-"}, "cookday revise: "},
		{"no readings", "", []string{plan}, "cookday revise: READINGS is missing"},
		{"missing readings", "", []string{plan, "nowhere.csv"}, "nowhere.csv: there is no such file"},
		{"unknown dish", "time,dish,kind,value\n12:00,Goose,on,\n", []string{plan, "-", "--now", "12:16"}, ""},
		{"temperature without unit", "time,dish,kind,value\n12:00,Chicken,core,130\n", []string{plan, "-", "--now", "12:16"}, ""},
	}
	for _, test := range tests {
		r := invoke(test.log, append([]string{"revise"}, test.args...)...)
		if r.code != exitInput || r.out != "" || r.errors == "" || !strings.HasPrefix(r.errors, test.want) {
			t.Errorf("%s: exit code %d, errors %q, want them to begin %q", test.name, r.code, r.errors, test.want)
		}
	}
}

// A log without a line is of a day on which nothing was noted yet.
func TestAnEmptyLogIsNoFault(t *testing.T) {
	day, log := dayInFolder(t)
	for _, text := range []string{"", "\n", "time,dish,kind,value\n"} {
		if err := os.WriteFile(log, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		for _, command := range []string{"now", "revise"} {
			if r := atClock(t, "2027-07-03 12:00", command, day, log); r.code != exitFine {
				t.Errorf("%s with %q: %d %s", command, text, r.code, r.errors)
			}
		}
	}
}

func TestLayouts(t *testing.T) {
	out := mustRun(t, "", "layouts")
	for _, want := range []string{"banked", "ring", "two-zone", "spread", "heap", "no source"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in\n%s", want, out)
		}
	}
}
