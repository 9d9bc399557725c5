package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Ways to break a file: each is answered with its path and exit code 2.
func TestBrokenRequests(t *testing.T) {
	swap := func(old, new string) string {
		if !strings.Contains(lunch, old) {
			t.Fatalf("%q is not in the request", old)
		}
		return strings.Replace(lunch, old, new, 1)
	}
	tests := []struct{ name, request, want string }{
		{"empty", "", "standard input: "},
		{"blank", "\n\n", "standard input: "},
		{"10 MB", lunch + strings.Repeat("# more and more\n", 10<<20/16), "standard input: "},
		{"not YAML", "format: [1\n", "standard input: "},
		{"trailing text", lunch + "---\nformat: 1\n", ""},
		{"anchor", swap("weight: 4.5 lb", "weight: &w 4.5 lb"), "dishes[0].weight: "},
		{"alias", swap("name: Lunch", "name: &n Lunch\nid: *n"), "name: &n is an anchor; write the value alone (line 2)\nid: *n is an alias; "},
		{"unknown field", swap("name: Lunch", "colour: Lunch"), "colour: "},
		{"unknown cut", swap("chicken-spatchcock", "chicken-spatchcok"), `dishes[0].cut: "chicken-spatchcok" is not in the catalogue; the nearest are chicken-spatchcock, `},
		{"weight without unit", swap("4.5 lb", "4.5"), "dishes[0].weight: "},
		{"0 lb", swap("4.5 lb", "0 lb"), "dishes[0].weight: "},
		{"500 lb", swap("4.5 lb", "500 lb"), "dishes[0].weight: "},
		{"poultry below its minimum", swap("weight: 4.5 lb", "weight: 4.5 lb, target: 150 F"), "dishes[0].target: "},
		{"ground meat below its minimum", swap("cut: chicken-spatchcock, weight: 4.5 lb", "cut: burger, weight: 6 oz, target: 140 F"), "dishes[0].target: "},
		// The clocks of New York went forward at 02:00 on 14 March 2027 and back at
		// 02:00 on 7 November 2027: second Sunday of March, first of November (time-zone data base).
		{"clock gap", swap(`2027-07-03, time: "13:00", tz: America/Chicago`, `2027-03-14, time: "02:30", tz: America/New_York`), "serve.time: "},
		{"clock overlap", swap(`2027-07-03, time: "13:00", tz: America/Chicago`, `2027-11-07, time: "01:30", tz: America/New_York`), "serve.time: "},
		{"unknown zone", swap("America/Chicago", "America/Chicogo"), "serve.tz: "},
		{"no dishes", swap("  - {name: Chicken, cut: chicken-spatchcock, weight: 4.5 lb}\n", ""), "dishes: "},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			for _, command := range []string{"check", "plan"} {
				r := invoke(test.request, command, "-")
				if r.code != exitInput || r.out != "" || !strings.HasPrefix(r.errors, test.want) {
					t.Errorf("%s: exit code %d, output %q, errors %q, want them to begin %q", command, r.code, r.out, r.errors, test.want)
				}
				faults, _, _ := strings.Cut(r.errors, "This would be right:\n")
				for _, line := range strings.Split(strings.TrimSuffix(faults, "\n"), "\n") {
					if path, sentence, ok := strings.Cut(line, ": "); !ok || path == "" || len(sentence) < 10 {
						t.Errorf("%s: %q is not path: sentence", command, line)
					}
				}
			}
		})
	}
}

func TestAllFaultsAtOnceWithTheirLines(t *testing.T) {
	text := strings.NewReplacer("4.5 lb", "4.5", "America/Chicago", "Mars/North", "22 in", "900 in").Replace(lunch)
	r := invoke(text, "check", "-")
	for i, path := range []string{"serve.tz", "grill.diameter", "dishes[0].weight"} {
		line := fmt.Sprintf("(line %d)\n", []int{3, 4, 6}[i])
		if !strings.Contains(r.errors, path+": ") || !strings.Contains(r.errors, line) {
			t.Errorf("%s with %q is not in\n%s", path, line, r.errors)
		}
	}
}

func TestBrokenPlan(t *testing.T) {
	plan := mustRun(t, lunch, "plan", "-", "--format", "json")
	tests := []struct{ name, old, new, want string }{
		{"unknown field", `"feasible": true`, `"feasible": true, "feasable": true`, "feasable: "},
		{"instant that is none", `"serve_at": "2027`, `"serve_at": "27`, "serve_at: "},
		{"request out of range", `"cut": "chicken-spatchcock",`, `"cut": "chick",`, ""},
		{"cut short", plan[len(plan)/2:], "", "standard input: "},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if !strings.Contains(plan, test.old) {
				t.Fatalf("%q is not in the plan", test.old)
			}
			r := invoke(strings.Replace(plan, test.old, test.new, -1), "check", "-")
			if r.code != exitInput || !strings.HasPrefix(r.errors, test.want) {
				t.Errorf("exit code %d, errors %q", r.code, r.errors)
			}
		})
	}
}

// A slip whose meaning is certain is shown set right, the whole dish or field that it is in.
func TestCheckShowsWhatWouldBeRight(t *testing.T) {
	slips := strings.NewReplacer("dishes:", "dishs:", "cut: chicken-spatchcock", "cut: chicken-spatchcok", "kind: kettle", "kind: ketle").Replace(lunch)
	r := invoke(slips, "check", "-")
	_, right, found := strings.Cut(r.errors, "This would be right:\n")
	if r.code != exitInput || !found || strings.TrimSpace(right) != strings.TrimSpace(lunch) { // the whole file
		t.Errorf("exit code %d\n%s", r.code, r.errors)
	}
	slips = strings.Replace(slips, "4.5 lb", "4.5", 1) // which pounds or kilograms it is only the cook knows
	r = invoke(slips, "check", "-")
	if _, right, found = strings.Cut(r.errors, "These lines would be right; the others above still need you:\n"); !found || strings.Contains(right, "cut:") || !strings.Contains(right, "kind: kettle") {
		t.Errorf("in part:\n%s", r.errors)
	}
	file := filepath.Join(t.TempDir(), "lunch.yaml")
	if err := os.WriteFile(file, []byte(strings.Replace(lunch, "dishes:", "dishs:", 1)), 0o600); err != nil {
		t.Fatal(err)
	}
	if r = invoke("", "check", file, "--mend"); r.code != exitFine {
		t.Errorf("mended:\n%s", r.errors)
	}
	if text, err := os.ReadFile(file); err != nil || string(text) != lunch {
		t.Errorf("%v: it is\n%s", err, text)
	}
	if r := invoke(strings.Replace(lunch, "22 in", "40", 1), "check", "-"); r.code != exitInput || strings.Contains(r.errors, "This would") {
		t.Errorf("a guess:\n%s", r.errors)
	}
}
