package planner_test

import (
	"context"
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"go.yaml.in/yaml/v3"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

// What a remedy prints is written into the request as a cook would write it, line by line, and
// leads to the day that it tells of.
func TestWhatRemediesPrintIsWhatTheyPromise(t *testing.T) {
	const head = "serve: {date: \"2027-07-03\", time: \"18:00\", tz: America/Chicago}\nguests: 20\ngrill: {kind: kettle, diameter: 22 in}\n"
	for name, day := range map[string]string{
		"two dishes too many": head + "dishes:\n  - {cut: brisket, weight: 14 lb}\n  - {cut: chicken, count: 3}\n  - {cut: spare-ribs, count: 4}\n  - {cut: burger, count: 20}\n",
		"too many ribs":       head + "dishes:\n  - {cut: brisket, weight: 14 lb}\n  - {cut: spare-ribs, count: 4}\n  - {cut: burger, count: 20}\n",
		"a cooler too short":  head + "dishes:\n  - {cut: pork-butt, weight: 8 lb, level: 225 F, wrap: none}\n",
		"nobody to light it":  head + "quiet: [{from: \"20:00\", to: \"14:00\"}]\ndishes:\n  - {cut: brisket, weight: 12 lb}\n",
	} {
		t.Run(name, func(t *testing.T) {
			p := madeOf(t, day)
			if len(p.Remedies) == 0 {
				t.Fatal("nothing helps")
			}
			for _, rem := range p.Remedies {
				if rem.Write == "" {
					t.Errorf("%s: no line to write", rem.Text)
					continue
				}
				q := madeOf(t, writtenInto(t, day, rem.Write))
				if !q.Feasible || math.Abs(q.Chance.All-rem.Chance) > 0.005 || !q.ServeAt.Equal(rem.ServeAt) {
					t.Errorf("%s Written %q: feasible %t, eat %s, %.2f sure; told were %s and %.2f", rem.Text, rem.Write, q.Feasible, q.ServeAt, q.Chance.All, rem.ServeAt, rem.Chance)
				}
			}
		})
	}
}

func madeOf(t *testing.T, day string) schedule.Plan {
	t.Helper()
	r, err := schedule.Read([]byte(day))
	if err != nil {
		t.Fatalf("%v\n%s", err, day)
	}
	p, err := planner.Make(context.Background(), r)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// writtenInto writes the lines of a remedy into a request.
func writtenInto(t *testing.T, day, lines string) string {
	t.Helper()
	for _, line := range entriesOf(lines) {
		var doc map[string]any
		if err := yaml.Unmarshal([]byte(day), &doc); err != nil {
			t.Fatal(err)
		}
		r, err := schedule.Read([]byte(day))
		if err != nil {
			t.Fatal(err)
		}
		dishes := doc["dishes"].([]any)
		at := -1
		for i, d := range r.Dishes { // the longest name that fits
			if strings.HasPrefix(line, d.Name+", ") && (at < 0 || len(d.Name) > len(r.Dishes[at].Name)) {
				at = i
			}
		}
		into, field := doc, line
		if at >= 0 {
			into, field = dishes[at].(map[string]any), strings.TrimPrefix(line, r.Dishes[at].Name+", ")
		}
		switch more, adds := strings.CutPrefix(line, "one more dish, "); {
		case adds:
			doc["dishes"] = append(dishes, inYAML(t, more))
		case field == "without the dish":
			doc["dishes"] = slices.Delete(dishes, at, at+1)
		case strings.HasPrefix(field, "without "):
			delete(into, strings.TrimPrefix(field, "without "))
		default:
			for k, v := range inYAML(t, "{"+field+"}").(map[string]any) {
				into[k] = v
			}
		}
		text, err := json.Marshal(doc)
		if err != nil {
			t.Fatal(err)
		}
		day = string(text)
	}
	return day
}

func inYAML(t *testing.T, text string) (v any) {
	t.Helper()
	if err := yaml.Unmarshal([]byte(text), &v); err != nil {
		t.Fatalf("%s: %v", text, err)
	}
	return v
}

// entriesOf parts what is written at each "; " that is not within brackets.
func entriesOf(lines string) []string {
	var out []string
	depth, from := 0, 0
	for i, c := range lines {
		switch c {
		case '{', '[':
			depth++
		case '}', ']':
			depth--
		case ';':
			if depth == 0 {
				out, from = append(out, strings.TrimSpace(lines[from:i])), i+1
			}
		}
	}
	return append(out, strings.TrimSpace(lines[from:]))
}
