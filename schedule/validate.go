package schedule

import (
	"slices"
	"strings"
	"time"
	"unicode"

	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// Validate finds every fault of a request with its defaults filled in. What it
// lets pass has a meaning; whether it can be cooked is for the planner to say.
func (r Request) Validate() []Fault { return r.ValidateIn(nil) }

// ValidateIn is Validate where the time zone of the request may be at hand: reading
// it takes longer than all the rest.
func (r Request) ValidateIn(known *time.Location) []Fault { return faultsOf(r.faults(known)) }

func (r Request) faults(known *time.Location) []strict.Fault {
	v := &validator{r: r, units: r.Units, known: known}
	if r.Units != unit.US && r.Units != unit.Metric {
		v.faults.Add("units", "%s must be us or metric", say.Quoted(string(r.Units)))
		v.units = unit.US
	}
	v.head()
	v.serve()
	v.grill()
	v.oven()
	v.box()
	v.weather()
	v.quiet()
	v.layout("layout", v.r.Layout)
	if r.Earliest != nil {
		v.before("earliest", *r.Earliest, v.lastServing())
	}
	v.dishes()
	v.happened()
	return v.faults.Faults
}

// validator looks at one request.
type validator struct {
	r       Request
	units   unit.System    // of the sentences
	known   *time.Location // perhaps that of the request
	loc     *time.Location // nil if the time zone is a fault
	serveAt time.Time      // zero if the serving instant is a fault
	faults  strict.FaultList
}

const (
	maxName = 120 // characters; a line on a sheet
	maxID   = 64  // characters; a part of an address
)

func (v *validator) head() {
	if v.r.Format != knownFormat {
		v.faults.Add("format", "%d is not known; this program reads format %d", v.r.Format, knownFormat)
	}
	v.id("id", v.r.ID)
	v.name("name", v.r.Name)
	if c := v.r.Confidence; !(c >= 0.5 && c <= 0.99) {
		v.faults.Add("confidence", "%v must lie between 0.5 and 0.99; 0.9 is nine days in ten", c)
	}
	if g := v.r.Guests; g != nil {
		v.count("guests.adults", g.Adults)
		v.count("guests.children", g.Children)
	}
}

func (v *validator) count(path string, n int) {
	const most = 10_000 // more than one grate feeds
	if n < 0 || n > most {
		v.faults.Add(path, "%d must be a number of people from 0 to %d", n, most)
	}
}

// name looks at a text that ends up on sheets, in calendars and in pictures.
func (v *validator) name(path, text string) {
	switch {
	case len([]rune(text)) > maxName:
		v.faults.Add(path, "%s is too long; at most %d characters are allowed", say.Quoted(text), maxName)
	case strings.IndexFunc(text, unicode.IsControl) >= 0:
		v.faults.Add(path, "%s contains a line break or another control character; write one plain line", say.Quoted(text))
	case text != "" && strings.TrimSpace(text) == "":
		v.faults.Add(path, "%s is blank; give a name or leave the field out", say.Quoted(text))
	}
}

// id looks at a text that ends up in addresses and in the ids of steps.
func (v *validator) id(path, text string) {
	odd := strings.IndexFunc(text, func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && !strings.ContainsRune("-_", r)
	})
	switch {
	case odd >= 0:
		v.faults.Add(path, "%s must be of letters, digits, - and _ only", say.Quoted(text))
	case len([]rune(text)) > maxID:
		v.faults.Add(path, "%s is too long; at most %d characters are allowed", say.Quoted(text), maxID)
	}
}

// word refuses what is not one of a few words.
func (v *validator) word(path, text string, allowed ...string) bool {
	if slices.Contains(allowed, text) {
		return true
	}
	if near := say.NearestWord(text, allowed); near != "" {
		known := v.faults.Len()
		v.faults.Add(path, "%s is not known; did you mean %s?", say.Quoted(text), near)
		v.faults.Mended(known, text, near)
	} else {
		v.faults.Add(path, "%s is not known; it must be %s", say.Quoted(text), say.Listed(allowed, "or"))
	}
	return false
}

// words refuses unknown and repeated words of a list.
func (v *validator) words(path string, list []string, allowed ...string) {
	for i, text := range list {
		if v.word(strict.ItemPath(path, i), text, allowed...) && slices.Index(list, text) < i {
			v.faults.Add(strict.ItemPath(path, i), "%s is given twice; once is enough", text)
		}
	}
}

// ranged refuses a value outside least to most, also NaN; text prints one in the
// cook's units.
func ranged[T ~float64](v *validator, path, what string, value, least, most T, text func(T) string) bool {
	if between(value, least, most, text) {
		return true
	}
	v.faults.AddValue(path, text(value), "is not a plausible %s; it must lie between %s and %s", what, text(least), text(most))
	return false
}

// between says whether a value lies in its range, or reads like an end of it: what a
// message names as the most is taken.
func between[T ~float64](value, least, most T, text func(T) string) bool {
	return value >= least && value <= most || text(value) == text(least) || text(value) == text(most)
}

// size is ranged for a length that must be given.
func (v *validator) size(path, what string, value, least, most unit.Length) {
	if value == 0 {
		v.faults.Add(path, "the %s is missing or 0; it must lie between %s and %s", what, v.units.Length(least), v.units.Length(most))
		return
	}
	ranged(v, path, what, value, least, most, v.units.Length)
}

// span refuses a duration that is negative or longer than most.
func (v *validator) span(path string, d unit.Duration, most time.Duration) {
	if d < 0 || time.Duration(d) > most {
		v.faults.AddValue(path, time.Duration(d).String(), "must lie between 0 and %s", v.units.About(most))
	}
}
