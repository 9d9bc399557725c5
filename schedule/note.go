package schedule

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// Note is a line of a log as a cook says it.
type Note struct {
	Entry                   // what it means
	Dish, Kind, Text string // the columns dish, kind and value of its line
}

// ReadNote reads a few words, such as "brisket 152", "brisket wrapped" or "grate 260",
// as one more entry of the log of a plan at an instant. A time of day may come first. A
// number without a unit is in the plan's units; where the other one fits better, that is
// asked back. The error is an *[InputError].
func ReadNote(words []string, p Plan, log []Entry, at time.Time) (Note, error) {
	faults := &strict.FaultList{}
	r, err := newLogReader(p, faults)
	if err != nil {
		return Note{}, err
	}
	if len(log) > 0 {
		r.before = log[len(log)-1].At
	}
	n := noteReader{logReader: r, log: log, at: at}
	row, sentence := n.row(strings.Fields(strings.ToLower(strings.Join(words, " "))))
	if sentence != "" {
		return Note{}, &InputError{Faults: []Fault{{Sentence: sentence}}}
	}
	e, ok := r.entry(row)
	if !ok {
		return Note{}, inputError(faults)
	}
	e.Line = 0
	return Note{Entry: e, Dish: e.Dish, Kind: string(e.Kind), Text: row.value}, nil
}

type noteReader struct {
	*logReader
	log []Entry
	at  time.Time
}

// row is a note as a line of a log; the sentence says what cannot be read.
func (n *noteReader) row(words []string) (logRow, string) {
	row := logRow{time: n.at.Format(time.RFC3339)}
	if len(words) > 0 && (logClock.MatchString(words[0]) || words[0] == "at" && len(words) > 1) {
		words = slices.DeleteFunc(words, func(w string) bool { return w == "at" && w == words[0] })
		row.time, words = words[0], words[1:]
	}
	words, dish, sentence := n.takeDish(words)
	if sentence != "" {
		return row, sentence
	}
	row.dish = dish
	kind, rest, ok := noteKind(words, dish != "")
	if !ok {
		return row, n.unread(words)
	}
	row.kind, row.value = string(kind), strings.Join(rest, " ")
	form, _ := kind.form()
	switch form.Carries {
	case CarriesTemperature, CarriesMaybeTemperature:
		row.value, sentence = n.degrees(kind, dish, row.value)
	case CarriesWrap:
		row.value = strings.TrimPrefix(strings.TrimPrefix(row.value, "in "), "with ")
		if row.value == "bare" {
			row.value = WrapNone
		}
	case CarriesInstant:
		row.value = strings.TrimPrefix(strings.TrimPrefix(row.value, "to "), "at ")
	}
	return row, sentence
}

func (n *noteReader) unread(words []string) string {
	said := strings.Join(words, " ")
	if said == "" {
		return `nothing was said of it: write what was read or done, such as "152", "on", "wrapped" or "off"`
	}
	return fmt.Sprintf(`%s cannot be read; write a dish and what was read or done, such as "brisket 152", "brisket wrapped", "brisket off", or of the grill "grate 260", "lit", "fire out"; dishes are %s`,
		say.Quoted(said), say.Listed(n.dishNames(), "and"))
}

// takeDish takes the name of a dish from the beginning of the words, or from their end.
func (n *noteReader) takeDish(words []string) (rest []string, id, sentence string) {
	for k := len(words) - 1; k > 0; k-- {
		ids := n.alike(strings.Join(words[:k], " "))
		if len(ids) == 1 {
			return words[k:], ids[0], ""
		}
		if _, _, known := noteKind(words, false); len(ids) > 1 && !known {
			return nil, "", fmt.Sprintf("%s may be %s: write more of the name", say.Quoted(strings.Join(words[:k], " ")), say.Listed(ids, "or"))
		}
	}
	for k := 1; k < len(words); k++ {
		if ids := n.alike(strings.Join(words[k:], " ")); len(ids) == 1 {
			if _, _, known := noteKind(words[:k], true); known {
				return words[:k], ids[0], ""
			}
		}
	}
	return words, "", ""
}

// sayings are what cooks say for a kind of entry, longest first where one begins another.
var sayings = []struct {
	words string
	kind  EntryKind
	value string
}{
	{"went on", LogOn, ""}, {"put on", LogOn, ""}, {"is on", LogOn, ""},
	{"left bare", LogWrapped, WrapNone}, {"wrap", LogWrapped, ""},
	{"took off", LogPulled, ""}, {"taken off", LogPulled, ""}, {"came off", LogPulled, ""}, {"off", LogPulled, ""}, {"done", LogPulled, ""},
	{"in the box", LogBoxed, ""}, {"in the cooler", LogBoxed, ""}, {"in cooler", LogBoxed, ""}, {"cooler", LogBoxed, ""}, {"box", LogBoxed, ""},
	{"on the counter", LogCounter, ""},
	{"into the oven", LogToOven, ""}, {"to the oven", LogToOven, ""}, {"in the oven", LogToOven, ""}, {"to oven", LogToOven, ""},
	{"aside", LogStopped, ""}, {"back on", LogRestarted, ""}, {"back", LogRestarted, ""},
	{"in the fridge", LogChilled, ""}, {"fridge", LogChilled, ""},
	{"lit again", LogLit, ""}, {"relit", LogLit, ""}, {"light", LogLit, ""}, {"fire lit", LogLit, ""},
	{"fire is out", LogFireOut, ""}, {"fire out", LogFireOut, ""}, {"fire dead", LogFireOut, ""}, {"went out", LogFireOut, ""},
	{"added fuel", LogRefuelled, ""}, {"added coals", LogRefuelled, ""}, {"refueled", LogRefuelled, ""}, {"fuel", LogRefuelled, ""},
	{"lid opened", LogLidOpened, ""}, {"lid open", LogLidOpened, ""}, {"opened", LogLidOpened, ""},
	{"pit", LogGrate, ""}, {"lid", LogGauge, ""}, {"surface", LogOuter, ""}, {"outside", LogOuter, ""},
	{"dinner", LogServingMoved, ""}, {"serve", LogServingMoved, ""}, {"called off", LogDishCancelled, ""}, {"cancelled", LogDishCancelled, ""},
}

var noteNumber = regexp.MustCompile(`^[-+]?[0-9]+([.,][0-9]+)?\s*(°?\s*[fc])?$`)

// noteKind is the kind of entry that words begin with, and what is left of them. A
// number alone is a core.
func noteKind(words []string, ofDish bool) (EntryKind, []string, bool) {
	if len(words) == 0 {
		return "", nil, false
	}
	if noteNumber.MatchString(strings.Join(words, " ")) {
		return LogCore, words, true
	}
	said := strings.Join(words, " ")
	for _, s := range sayings {
		if said != s.words && !strings.HasPrefix(said, s.words+" ") {
			continue
		}
		form, _ := s.kind.form()
		rest := strings.Fields(strings.TrimPrefix(said, s.words))
		if ofDish && !form.OfDish && s.kind != LogServingMoved || form.Carries == CarriesTemperature && len(rest) == 0 {
			continue
		}
		if s.value != "" {
			rest = []string{s.value}
		}
		return s.kind, rest, true
	}
	if _, ok := EntryKind(words[0]).form(); ok {
		return EntryKind(words[0]), words[1:], true
	}
	return "", nil, false
}

// degrees is a temperature with its unit; the sentence asks back where it is in doubt.
func (n *noteReader) degrees(kind EntryKind, dish, text string) (string, string) {
	if text == "" || !noteNumber.MatchString(text) {
		return text, ""
	}
	if strings.HasSuffix(text, "f") || strings.HasSuffix(text, "c") {
		return strings.ToUpper(text), ""
	}
	value, err := strconv.ParseFloat(strings.ReplaceAll(text, ",", "."), 64)
	if err != nil {
		return text, ""
	}
	own, other := "F", "C"
	ownC, otherC := unit.FToC(value), value
	if n.plan.Request.Units == unit.Metric {
		own, other, ownC, otherC = "C", "F", otherC, ownC
	}
	if !n.doubtful(kind, dish, ownC, otherC) {
		return text + " " + own, ""
	}
	return "", fmt.Sprintf("%s %s does not fit here; %s %s, that is %s, may be meant. Write %s%s or %s%s.",
		text, own, text, other, n.plan.Request.Units.Core(unit.Temperature(otherC)), text, own, text, other)
}

// A temperature is in doubt where it is far from what it should be near, and in the other
// unit would be near it (assumptions).
const farK, nearK, freshHours = 25, 15, 1.5

// coldGrateC is colder than a fire that died hours ago leaves a grate on a summer night:
// a digit may be missing (assumption).
const coldGrateC = 10

// doubtful says whether a number was likely meant in the other unit.
func (n *noteReader) doubtful(kind EntryKind, dish string, ownC, otherC float64) bool {
	if kind == LogGrate && ownC < coldGrateC {
		return true
	}
	if kind != LogCore && kind != LogOuter {
		level, ok := n.levelC()
		return ok && (ownC-level < -2*farK || ownC-level > 2*farK) && otherC-level > -2*nearK && otherC-level < 2*nearK
	}
	if ownC > 105 { // no meat is above boiling
		return true
	}
	var last *Entry
	on := false
	for i, e := range n.log {
		if e.Dish != dish && (dish != "" || len(n.plan.Dishes) > 1) {
			continue
		}
		switch {
		case e.Kind == LogCore:
			last = &n.log[i]
		case e.Kind == LogOn:
			on = n.at.Sub(e.At).Hours() > freshHours
		}
	}
	if last != nil {
		off := ownC - last.C
		return (off < -farK || off > farK) && otherC-last.C > -nearK && otherC-last.C < nearK
	}
	return on && ownC < 25 && otherC > 40
}

// levelC is the planned heat of the fire at the time of the note.
func (n *noteReader) levelC() (float64, bool) {
	level, ok := 0.0, false
	for _, ph := range n.plan.Phases {
		if !ok || !ph.SetupFrom.After(n.at) {
			level, ok = ph.LevelC, true
		}
	}
	return level, ok
}
