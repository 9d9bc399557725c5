package plantest

import (
	"errors"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/cookday/schedule"
)

// Terrace is a good request; the tests of what is refused break it in one place each.
const Terrace = `format: 1
name: Saturday on the terrace
serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}
guests: 24
grill: {kind: kettle, diameter: 22 in, fuel: briquettes, gauge_offset: 40 °F}
oven: {hold: 170 °F}
weather: {air: 84 °F, night: 66 °F, humidity: 55%, wind: 8 mph, altitude: 600 ft}
quiet: [{from: "23:00", to: "05:30"}]
confidence: 0.9
units: us
dishes:
  - {name: Brisket, cut: brisket, weight: 12 lb, wrap: {with: foil, from: 150 °F}, hold: [insulated-box, oven]}
  - {name: Chickens, cut: chicken-spatchcock, weight: 4.5 lb, count: 2}
  - {name: Burgers, cut: burger, weight: 6 oz, count: 12}
`

// With is the terrace with one text replaced.
func With(t testing.TB, old, now string) string {
	t.Helper()
	if strings.Count(Terrace, old) != 1 {
		t.Fatalf("%q is not in the terrace exactly once", old)
	}
	return strings.Replace(Terrace, old, now, 1)
}

// Faults are those of an error, which must have some.
func Faults(t testing.TB, err error) []schedule.Fault {
	t.Helper()
	var bad *schedule.InputError
	if !errors.As(err, &bad) || len(bad.Faults) == 0 {
		t.Fatalf("error is %v, want an *InputError with faults", err)
	}
	return bad.Faults
}

// Refused wants exactly one fault, at path, with the word in its sentence.
func Refused(t testing.TB, document, path, word string) {
	t.Helper()
	_, err := schedule.Read([]byte(document))
	faults := Faults(t, err)
	if len(faults) != 1 || faults[0].Path != path || !strings.Contains(faults[0].Sentence, word) {
		t.Errorf("got\n%v\nwant one fault at %q with %q", err, path, word)
	}
	if strings.Contains(err.Error(), "goroutine") || strings.Contains(err.Error(), ".go:") {
		t.Errorf("the cook sees our code: %v", err)
	}
}

// Faulty wants faults of the input, each with something to say. What was written may
// be repeated in them.
func Faulty(t rapid.TB, err error, written ...string) {
	t.Helper()
	bad, ok := err.(*schedule.InputError)
	if !ok || len(bad.Faults) == 0 {
		t.Fatalf("no faults of the input: %v", err)
	}
	for _, f := range bad.Faults {
		if f.Sentence == "" {
			t.Errorf("a fault without a word: %+v", f)
		}
		rest := f.Sentence
		for _, text := range written {
			if text != "" {
				rest = strings.TrimPrefix(rest, text)
			}
		}
		Clean(t, "fault", strings.Join(unquoted(rest), ""))
	}
}

// unquoted are the parts of a sentence outside of quotation marks, where what a
// stranger wrote is repeated.
func unquoted(sentence string) []string {
	var parts []string
	for i, part := range strings.Split(sentence, `"`) {
		if i%2 == 0 {
			parts = append(parts, part)
		}
	}
	return parts
}
