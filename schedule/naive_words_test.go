package schedule_test

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
)

// Requests of people who never saw the form (invented, written down before anything was
// tried): what is read of them at once, or after the edits that one message led to. What is
// behind "reads" is what each of them meant, worked out by hand; behind "hears" are words that
// the plan has to say of how it was read.
func TestNaiveDays(t *testing.T) {
	if testing.Short() {
		t.Skip("seventy days one after the other start nothing: nothing for the race detector")
	}
	for _, c := range []struct {
		file              string
		days, leastAtOnce int
	}{
		{"naive_words.txt", 40, 21}, // most of the others want the size or the kind of the grill, which nobody can know
		{"naive_more.txt", 31, 24},  // notes, tables, meals and fields of programmers; the others name foods and grills that are not known, or doneness that is not safe
	} {
		t.Run(c.file, func(t *testing.T) { readNaiveDays(t, c.file, c.days, c.leastAtOnce) })
	}
}

func readNaiveDays(t *testing.T, file string, number, leastAtOnce int) {
	chicago, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	now := time.Date(2026, 12, 1, 11, 27, 0, 0, chicago) // a Tuesday
	text, err := os.ReadFile("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	days := strings.Split(string(text), "== ")[1:]
	if len(days) != number {
		t.Fatalf("there are %d days", len(days))
	}
	atOnce := 0
	for _, day := range days {
		name, rest, _ := strings.Cut(day, "\n")
		body, want, _ := strings.Cut(rest, "-- reads\n")
		want, hears, _ := strings.Cut(want, "-- hears\n")
		parts := strings.Split(body, "-- ")
		file := parts[0]
		r, err := schedule.Understand([]byte(file), now)
		if err == nil {
			atOnce++
			if len(parts) > 1 {
				t.Errorf("%s is read at once, and was to ask for %s", name, parts[1])
			}
		}
		for _, edit := range parts[1:] {
			old, right, _ := strings.Cut(strings.TrimSuffix(edit, "\n"), "\n=> ")
			if !strings.Contains(file, old) {
				t.Fatalf("%s: nothing to edit at %q", name, old)
			}
			file = strings.Replace(file, old, strings.ReplaceAll(right, `\n`, "\n"), 1)
		}
		if len(parts) > 1 {
			r, err = schedule.Understand([]byte(file), now)
		}
		if err != nil {
			t.Errorf("%s: not there after %d tries:\n%s\n%v", name, len(parts), file, err)
			continue
		}
		if got := inWords(r); got != strings.Join(strings.Fields(want), " ") {
			t.Errorf("%s\n got %s\nwant %s", name, got, strings.Join(strings.Fields(want), " "))
		}
		for _, said := range strings.Split(strings.TrimSpace(hears), "\n") {
			if !strings.Contains(strings.Join(r.Heard, "\n"), said) {
				t.Errorf("%s: %q is not heard: %q", name, said, r.Heard)
			}
		}
		if hears == "" && len(r.Heard) > 0 {
			t.Errorf("%s: nothing is to be said, and is: %q", name, r.Heard)
		}
	}
	if atOnce < leastAtOnce {
		t.Errorf("%d of %d are read at once", atOnce, len(days))
	}
	t.Logf("%d of %d are read at once", atOnce, len(days))
}

// inWords is what matters of a request, in one line; weights that nobody said are left out.
func inWords(r schedule.Request) string {
	line := fmt.Sprintf("%s %s; %s %.0f cm", r.Serve.Date, r.Serve.Time.HhMm(), r.Grill.Kind, float64(r.Grill.Diameter)*100)
	if r.Guests != nil {
		line += fmt.Sprintf("; %d+%d", r.Guests.Adults, r.Guests.Children)
		if r.Guests.Frail {
			line += " frail"
		}
	}
	if r.Earliest != nil {
		line += "; from " + r.Earliest.Time.HhMm()
	}
	for _, d := range r.Dishes {
		line += fmt.Sprintf("; %d %s", max(d.Count, len(d.Weights)), d.Cut)
		if d.Assumes(schedule.AssumedCount) { // as many as the catalogue has for so many guests
			line = strings.TrimSuffix(line, fmt.Sprintf("%d %s", d.Count, d.Cut)) + d.Cut + " for all"
		}
		if len(d.Weights) > 0 {
			for _, w := range d.Weights {
				line += fmt.Sprintf(" %.2f", float64(w))
			}
			line += " kg"
		} else if c, _ := cut.Find(d.Cut); !d.Assumes(schedule.AssumedWeight) && !(c.Quick() && math.Abs(float64(d.Weight)/c.UsualKg(strings.ToLower(d.Name))-1) < 0.01) {
			line += fmt.Sprintf(" %.2f kg", float64(d.Weight))
		}
		if d.Thickness > 0 {
			line += fmt.Sprintf(" %.1f cm", float64(d.Thickness)*100)
		}
		if d.Target != nil && d.Target.Core != nil {
			line += fmt.Sprintf(" to %.0f F", d.Target.Core.Fahrenheit())
		} else if d.Target != nil {
			line += " " + d.Target.Doneness
		}
		if d.Start != nil && d.Start.Frozen {
			line += " frozen"
		}
		if d.Level != nil {
			line += fmt.Sprintf(" at %.0f F", d.Level.Fahrenheit())
		}
		if d.Wrap != nil {
			line += " in " + d.Wrap.With
		}
		if d.Serve != nil {
			line += " for "
			if d.Serve.Date != nil {
				line += d.Serve.Date.String() + " "
			}
			line += d.Serve.Time.HhMm()
		}
	}
	return line
}
