package planner_test

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/internal/testbed"
)

// scenarioPlans are the plans of the scenarios, by their beginning words in the file.
var scenarioPlans = []struct{ begins, serve, dishes string }{
	{"one whole brisket 12 lb bare at 250 F", "14:00", "{id: d, name: Brisket, cut: brisket, weight: 12 lb, level: 250 F, wrap: none, target: 203 F}"},
	{"one whole brisket 12 lb bare at 237 F", "14:00", "{id: d, name: Brisket, cut: brisket, weight: 12 lb, level: 237 F, wrap: none, target: 203 F}"},
	{"one pork butt 8 lb bare at 250 F", "16:00", "{id: d, name: Pork butt, cut: pork-butt, weight: 8 lb, level: 250 F, wrap: none, target: 200 F}"},
	{"one pork butt 8 lb foil from 160 F", "16:00", "{id: d, name: Pork butt, cut: pork-butt, weight: 8 lb, level: 250 F, wrap: {with: foil, from: 160 F}, target: 200 F}"},
	{"butt 8 lb and brisket 12 lb", "18:00", "{id: d, name: Pork butt, cut: pork-butt, weight: 8 lb, level: 250 F, wrap: none, target: 200 F}\n  - {id: brisket, name: Brisket, cut: brisket, weight: 12 lb, level: 250 F, wrap: none, target: 203 F}"},
	{"rib roast 8 lb at 250 F", "18:00", "{id: d, name: Rib roast, cut: rib-roast-bone-in, weight: 8 lb, level: 250 F, target: 130 F, finish: none}"},
	{"two butts 8 lb each", "16:00", "{id: d, name: Pork butts, cut: pork-butt, weight: 8 lb, count: 2, level: 250 F, wrap: none, target: 200 F}"},
}

// ovenIn is the oven of the rows whose steps are those of a plan that begins at 22:00, as it
// does where an oven keeps what is done early.
var ovenIn = map[string]string{"S02": anOven, "S03": anOven, "S39": anOven, "S41": anOven, "S47": anOven}

const anOven = "oven: {hold: 170 F}\n"

// scenario is a row of the file with its plan.
type scenario struct {
	row  map[string]string
	plan schedule.Plan
}

func scenarios(t *testing.T) map[string]scenario {
	t.Helper()
	made := map[string]schedule.Plan{}
	out := map[string]scenario{}
	for _, row := range testbed.Rows(t, "testdata/logs/follow_scenarios.csv") {
		for _, s := range scenarioPlans {
			if !strings.HasPrefix(row["plan"], s.begins) {
				continue
			}
			key := s.begins + ovenIn[row["id"]]
			if _, ok := made[key]; !ok {
				made[key] = plantest.Plan(t, fmt.Sprintf("format: 1\nserve: {date: 2027-07-04, time: \"%s\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 26 in}\n%squiet: []\ndishes:\n  - %s\n", s.serve, ovenIn[row["id"]], s.dishes))
			}
			out[row["id"]] = scenario{row, made[key]}
		}
		if out[row["id"]].row == nil {
			t.Errorf("%s: no plan for %q", row["id"], row["plan"])
		}
	}
	return out
}

// dated gives a clock its day: the evening is that before the meal.
func dated(clock string) string {
	if clock >= "19:00" {
		return "2027-07-03 " + clock
	}
	return "2027-07-04 " + clock
}

// logOf is a log in words, "22:00 on;02:00 core 128 F", as the CSV of a log.
func logOf(words string) string {
	out := "time,dish,kind,value\n"
	for _, line := range strings.Split(words, ";") {
		f := strings.Fields(line)
		at, kind, rest := dated(f[0]), f[1], f[2:]
		dish, dishes := "", []string{"d"}
		if len(rest) > 0 && rest[0] == "both" {
			dishes, rest = []string{"d", "brisket"}, nil
		}
		if len(rest) > 0 && rest[0] == "butt" {
			rest = rest[1:]
		}
		if len(rest) > 2 && strings.HasPrefix(rest[2], "(piece") {
			rest = rest[:2]
		}
		for _, form := range schedule.EntryForms() {
			if string(form.Kind) != kind {
				continue
			}
			if !form.OfDish {
				dishes = []string{dish}
			}
		}
		for _, d := range dishes {
			out += fmt.Sprintf("%s,%s,%s,%s\n", at, d, kind, strings.Join(rest, " "))
		}
	}
	return out
}

// followed is the revision of a scenario by a log in words.
func (s scenario) followed(t testing.TB, words, now string) answer {
	t.Helper()
	p := s.plan
	q := plantest.Revised(t, p, logOf(words), dated(now))
	return answer{q}
}

// answer is a revision as the scenarios look at it.
type answer struct{ schedule.Plan }

// left are the hours to the take-off.
func (a answer) left(t testing.TB) (early, expected, late float64) {
	w := plantest.TakeOff(t, a.Plan, "d")
	hours := func(at time.Time) float64 { return at.Sub(*a.RevisedAt).Hours() }
	return hours(w.Early), hours(w.Expected), hours(w.Late)
}

// TestFollowScenarios holds every scenario of the file against what any sane answer must
// and must not say, by its steps, findings, chances and windows.
func TestFollowScenarios(t *testing.T) {
	all := scenarios(t)
	passed := 0
	for id, s := range all {
		look := sane[id]
		if look == nil {
			t.Errorf("%s: %s: nothing looks at it", id, s.row["title"])
			continue
		}
		if t.Run(id, func(t *testing.T) { look(t, s) }) {
			passed++
		}
	}
	t.Logf("%d of %d scenarios", passed, len(all))
	if len(all) != 41 {
		t.Errorf("%d scenarios in the file", len(all))
	}
}

// logged is the answer to the scenario's own log.
func (s scenario) logged(t testing.TB) answer { return s.followed(t, s.row["log"], s.row["now"]) }

// without is the answer without some lines of the log.
func (s scenario) without(t testing.TB, lines ...string) answer {
	words := s.row["log"]
	for _, l := range lines {
		cut := strings.Replace(words, ";"+l, "", 1)
		if cut == words {
			t.Fatalf("no line %q", l)
		}
		words = cut
	}
	return s.followed(t, words, s.row["now"])
}

func (a answer) has(code string) bool { _, ok := plantest.Finding(a.Plan, code); return ok }

// says whether a finding of one of some codes has all of some words.
func (a answer) says(words string, codes ...string) bool {
	for _, f := range a.Findings {
		if slices.Contains(codes, f.Code) && strings.Contains(f.Text, words) {
			return true
		}
	}
	return false
}

// wants a finding of a code, with words in it.
func (a answer) wants(t *testing.T, code string, words ...string) {
	t.Helper()
	f, ok := plantest.Finding(a.Plan, code)
	if !ok {
		t.Errorf("no finding %s among %v", code, a.codes())
	}
	for _, w := range words {
		if ok && !strings.Contains(f.Text, w) {
			t.Errorf("%s without %q: %s", code, w, f.Text)
		}
	}
}

// lacks findings of some codes.
func (a answer) lacks(t *testing.T, codes ...string) {
	t.Helper()
	for _, f := range a.Findings {
		if slices.Contains(codes, f.Code) {
			t.Errorf("%s: %s", f.Code, f.Text)
		}
	}
}

func (a answer) codes() (out []string) {
	for _, f := range a.Findings {
		out = append(out, f.Code)
	}
	return out
}

// remains wants the expected rest between two figures of hours.
func (a answer) remains(t *testing.T, least, most float64) {
	t.Helper()
	if _, x, _ := a.left(t); x < least || x > most {
		t.Errorf("still %.2f h, want %.2f to %.2f", x, least, most)
	}
}

// served says whether a step to come brings the first dish to the table.
func (a answer) served() bool {
	for _, s := range a.Steps {
		if !s.Done && (s.Kind == schedule.StepSlice && s.Dish == "d" || s.Kind == schedule.StepServe && !strings.Contains(s.Text, "Do not serve")) {
			return true
		}
	}
	return false
}

// unserved wants no step that leads to eating, and no chance of the asked size.
func (a answer) unserved(t *testing.T) {
	t.Helper()
	if a.served() {
		t.Error("a step leads to eating")
	}
	if a.Chance.All > 0.5 {
		t.Errorf("the chance of dinner is %.2f", a.Chance.All)
	}
}

// first is the first step to come of a kind.
func (a answer) first(kind schedule.StepKind) schedule.Step {
	for _, s := range a.Steps {
		if s.Kind == kind && !s.Done {
			return s
		}
	}
	return schedule.Step{}
}

// curveAt is the core of the shown curve at an instant, by its two nearest points.
func (a answer) curveAt(t *testing.T, at time.Time) float64 {
	t.Helper()
	points := a.Dishes[0].Batches[0].Curve
	for i := 1; i < len(points); i++ {
		if p, q := points[i-1], points[i]; !q.At.Before(at) {
			return p.CoreC + at.Sub(p.At).Minutes()/q.At.Sub(p.At).Minutes()*(q.CoreC-p.CoreC)
		}
	}
	t.Fatal("the curve ends before that")
	return 0
}

// clockIn is the first clock time in a text after some words.
func clockIn(t *testing.T, text, after string) time.Duration {
	t.Helper()
	_, rest, _ := strings.Cut(text, after)
	m := regexp.MustCompile(`([0-9]{1,2}):([0-9]{2})(?: ([AP]M))?`).FindStringSubmatch(rest)
	if m == nil {
		t.Fatalf("no time after %q in %q", after, text)
	}
	h, _ := strconv.Atoi(m[1])
	if m[3] != "" {
		h %= 12
	}
	if m[3] == "PM" {
		h += 12
	}
	min, _ := strconv.Atoi(m[2])
	return time.Duration(h)*time.Hour + time.Duration(min)*time.Minute
}

// between wants a clock between two others, "01:00" and "03:30".
func between(t *testing.T, what string, got time.Duration, least, most string) {
	t.Helper()
	of := func(s string) time.Duration { return clockIn(t, s, "") }
	if got < of(least) || got > of(most) {
		t.Errorf("%s at %v, want %s to %s", what, got, least, most)
	}
}
