package schedule

import (
	"fmt"
	"maps"
	"slices"
	"sort"
	"strconv"
	"strings"

	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// inquiryFields are the names an inquiry may use, on a command line, in a query
// or in a document alike, and how each is read.
var inquiryFields = map[string]func(q *Inquiry, text string) error{
	"cut":       func(q *Inquiry, t string) error { q.Dish.Cut = t; return nil },
	"weight":    func(q *Inquiry, t string) error { return q.Dish.Weight.UnmarshalText([]byte(t)) },
	"thickness": func(q *Inquiry, t string) error { return q.Dish.Thickness.UnmarshalText([]byte(t)) },
	"grate": func(q *Inquiry, t string) error {
		q.Dish.Level = new(unit.Temperature)
		return q.Dish.Level.UnmarshalText([]byte(t))
	},
	"air": func(q *Inquiry, t string) error {
		q.Weather.Air = new(unit.Temperature)
		return q.Weather.Air.UnmarshalText([]byte(t))
	},
	"humidity": func(q *Inquiry, t string) error {
		q.Weather.Humidity = new(unit.Fraction)
		return q.Weather.Humidity.UnmarshalText([]byte(t))
	},
	"altitude":    func(q *Inquiry, t string) error { return q.Weather.Altitude.UnmarshalText([]byte(t)) },
	"layout":      func(q *Inquiry, t string) error { q.Layout = t; return nil },
	"units":       func(q *Inquiry, t string) error { return q.Units.UnmarshalText([]byte(t)) },
	"count":       readCount,
	"wrap":        readWrap,
	"target":      readTarget,
	"start":       readStart,
	"prep":        readPrep,
	"finish":      func(q *Inquiry, t string) error { q.Dish.Finish = t; return nil },
	"water-pan":   func(q *Inquiry, t string) (err error) { q.WaterPan, err = strconv.ParseBool(t); return err },
	"probability": readProbabilities,
}

// InquiryFields lists the names that [ReadInquiry] knows, sorted.
func InquiryFields() []string {
	names := make([]string, 0, len(inquiryFields))
	for name := range inquiryFields {
		names = append(names, name)
	}
	sort.Strings(names)
	return names
}

// ReadInquiry reads an inquiry from named texts: cut "brisket", weight "12 lb",
// grate "250 °F", wrap "foil@150F", "foil@4h", "none" or "usual", target "203 °F"
// or a named doneness, probability "0.5,0.9". All faults come as one *[InputError].
func ReadInquiry(fields map[string]string) (Inquiry, error) {
	q := Inquiry{written: maps.Clone(fields)}
	var faults strict.FaultList
	names := make([]string, 0, len(fields))
	for name := range fields {
		names = append(names, name)
	}
	sort.Strings(names)
	for _, name := range names {
		read, ok := inquiryFields[name]
		if !ok {
			faults.Add(name, "is not a field of a forecast; there are %s", strings.Join(InquiryFields(), ", "))
			continue
		}
		if err := read(&q, fields[name]); err != nil {
			faults.Add(name, "%s", err.Error())
		}
	}
	if q.Dish.Cut == "" {
		faults.Add("cut", "is missing; name a cut of the catalogue, such as brisket")
	}
	if faults.Len() > 0 {
		q.findMore(&faults)
	}
	return q, inputError(&faults)
}

// findMore adds what is wrong with the values of the fields that could be read.
func (q Inquiry) findMore(faults *strict.FaultList) {
	known := faults.Faults
	for _, f := range q.Validate() {
		if !slices.ContainsFunc(known, func(k strict.Fault) bool { return k.Path == f.Path }) {
			faults.Add(f.Path, "%s", f.Sentence)
		}
	}
}

func readCount(q *Inquiry, text string) error {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 {
		return fmt.Errorf("%q is not a number of pieces", text)
	}
	q.Dish.Count = n
	return nil
}

// readPrep reads words with commas between them.
func readPrep(q *Inquiry, text string) error {
	for word := range strings.SplitSeq(text, ",") {
		q.Dish.Prep = append(q.Dish.Prep, asInFormat(strings.TrimSpace(word)))
	}
	return nil
}

// readWrap reads none, usual, foil, foil@150F, foil@4h and the like for paper.
func readWrap(q *Inquiry, text string) error {
	with, at, found := strings.Cut(text, "@")
	with, at = strings.TrimSpace(with), strings.TrimSpace(at)
	switch {
	case text == "usual" || text == "habit":
		return nil
	case !slices.Contains([]string{WrapFoil, WrapPaper, WrapNone}, with) || found && (with == WrapNone || at == ""):
		return fmt.Errorf("%q is no wrap; write none, usual, foil, foil@150F, paper@160F or foil@4h", text)
	}
	w := &Wrap{With: with}
	if found {
		if t, err := unit.ParseTemperature(at); err == nil {
			w.From = &t
		} else if after, err := unit.ParseDuration(at); err == nil {
			u := unit.Duration(after)
			w.After = &u
		} else {
			return fmt.Errorf("%q is no wrap; after the @ comes a core temperature such as 150F or a time such as 4h", text)
		}
	}
	q.Dish.Wrap = w
	return nil
}

// readTarget reads a core temperature, a named doneness, or final@130F.
func readTarget(q *Inquiry, text string) error {
	if peak, ok := strings.CutPrefix(text, "final@"); ok {
		t, err := unit.ParseTemperature(peak)
		q.Dish.Target = &Target{Final: &t}
		return err
	}
	if text != "" && text[0] >= '0' && text[0] <= '9' || strings.HasPrefix(text, "-") {
		t, err := unit.ParseTemperature(text)
		q.Dish.Target = &Target{Core: &t}
		return err
	}
	q.Dish.Target = &Target{Doneness: text}
	return nil
}

func readStart(q *Inquiry, text string) error {
	if text == "frozen" {
		q.Dish.Start = &Start{Frozen: true}
		return nil
	}
	t, err := unit.ParseTemperature(text)
	q.Dish.Start = &Start{Core: t}
	return err
}

// maxProbabilities is how many quantiles an inquiry may want besides the window.
const maxProbabilities = 20

func readProbabilities(q *Inquiry, text string) error {
	if n := 1 + strings.Count(text, ","); n > maxProbabilities {
		return fmt.Errorf("there are %d probabilities; at most %d are allowed", n, maxProbabilities)
	}
	for _, part := range strings.Split(text, ",") {
		p, err := strconv.ParseFloat(strings.TrimSpace(part), 64)
		if err != nil || !(p >= 0.01 && p <= 0.99) {
			return fmt.Errorf("%q is not a list of probabilities from 0.01 to 0.99", text)
		}
		q.Probabilities = append(q.Probabilities, p)
	}
	return nil
}

// inquiryNames says what the fields of a request are called in an inquiry.
var inquiryNames = strings.NewReplacer("dishes[0].", "", "level", "grate", "weather.", "", "wrap.from", "wrap", "wrap.after", "wrap", "start.core", "start", "target.core", "target", "target.final", "target")

// Validate finds every fault of an inquiry, with its own names and values.
func (q Inquiry) Validate() []Fault {
	found := q.Request().faults(nil)
	for i, f := range found {
		found[i] = f.AsWritten(q.written[inquiryNames.Replace(f.Path)])
	}
	return q.InItsWords(faultsOf(found))
}

// InItsWords are faults of the request that an inquiry stands for, with the names of
// the inquiry.
func (q Inquiry) InItsWords(faults []Fault) []Fault {
	out := slices.Clone(faults)
	for i := range out {
		out[i].Path = inquiryNames.Replace(out[i].Path)
	}
	return out
}
