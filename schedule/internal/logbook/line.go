package logbook

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// Reader turns rows into entries of one day.
type Reader struct {
	day    Day
	before time.Time // the entry before; zero for none
	added  []Dish
	faults *strict.FaultList
}

// NewReader reads the log of a day; what is wrong with it goes into the list.
func NewReader(day Day, faults *strict.FaultList) *Reader { return &Reader{day: day, faults: faults} }

// Entry is what a row says; false where it cannot be read.
func (r *Reader) Entry(row Row) (Entry, bool) {
	before := r.faults.Len()
	e := Entry{Line: row.line, Kind: Kind(row.kind)}
	fault := func(field, format string, args ...any) {
		r.faults.AddLine(row.path+field, row.line, format, args...)
	}
	at, sentence := r.instant(row.time, r.fromHere)
	if sentence != "" {
		fault("time", "%s %s", r.timeAsWritten(row.time), sentence)
	}
	e.At = at
	if !at.IsZero() && sentence == "" {
		r.before = at
	}
	form, known := e.Kind.Form()
	if !known {
		if do := Emergency([]string{row.dish, row.kind, row.value}); do != "" {
			fault("kind", "%s. And then: %s is no kind of line", do, say.Quoted(row.kind))
			return e, false
		}
		fault("kind", "%s is not known; there are %s", say.Quoted(row.kind), say.Listed(KindNames(), "and"))
		return e, false
	}
	if form.OfDish || e.Kind.Meals() && row.dish != "" {
		id, ok := r.dishID(row.dish)
		if several := r.alike(row.dish); len(several) > 1 {
			fault("dish", "%s may be %s: write more of the name", say.Quoted(row.dish), say.Listed(several, "or"))
		} else if !ok && row.dish == "" {
			fault("dish", "say which dish: %s", say.Listed(r.dishNames(), "or"))
		} else if !ok {
			fault("dish", "%s is no dish of this plan; there are %s", say.Quoted(row.dish), say.Listed(r.dishNames(), "and"))
		}
		e.Dish = id
	} else if row.dish != "" && !strings.EqualFold(row.dish, "grill") && e.Kind != Oven { // the oven in which it is
		fault("dish", "%s is written for the grill: leave the dish empty, not %s", row.kind, say.Quoted(row.dish))
	}
	r.value(&e, form.Carries, row.value, fault)
	if r.faults.Len() > before {
		return e, false
	}
	return e, true
}

// value reads what the entry carries.
func (r *Reader) value(e *Entry, what Carries, text string, fault func(field, format string, args ...any)) {
	switch {
	case what == CarriesTemperature, what == CarriesMaybeTemperature && text != "":
		if sentence := temperatureOf(e, text); sentence != "" {
			fault("value", "%s", sentence)
		}
	case what == CarriesWrap:
		if text != "" && text != wrapFoil && text != wrapPaper && text != wrapNone {
			fault("value", "%s is no wrap; write foil, paper, none for a piece that is left bare, or leave it empty", say.Quoted(text))
		}
		e.Value = text
	case what == CarriesPlace:
		place, ok := heldText(text)
		if !ok {
			fault("value", "%s is no place where food waits hot; write cooler, oven, or leave it empty", say.Quoted(text))
		}
		e.Value = place
	case what == CarriesInstant:
		at, sentence := r.servingOf(text, e.At)
		if sentence != "" {
			fault("value", "%s %s", say.Quoted(text), sentence)
		}
		e.Value = at.Format(time.RFC3339)
	case what == CarriesDish:
		r.newDish(e, text, fault)
	case what == CarriesVents, what == CarriesCount, what == CarriesAmount, what == CarriesSpeed:
		value, sentence := fireValue(what, text)
		if sentence != "" {
			fault("value", "%s", sentence)
		}
		e.Value = value
	default:
		if at, ok := r.saidWhen(*e, text); ok {
			e.At, text = at, ""
		}
		value, sentence := e.Kind.remark(text)
		if sentence != "" {
			fault("value", "%s", sentence)
		}
		e.Value = value
	}
}

// temperatureOf reads a temperature, and behind it the place of a piece where it was read.
func temperatureOf(e *Entry, text string) (sentence string) {
	if k := strings.LastIndexByte(text, ' '); k > 0 && e.Kind.ofPlace() && placeOf(text[k+1:]) != "" {
		e.Value, text = placeOf(text[k+1:]), text[:k]
	}
	t, err := unit.ParseTemperature(text)
	if err != nil {
		return err.Error()
	}
	if float64(t) < ColdestReadingC || float64(t) > HottestReadingC {
		return fmt.Sprintf("%s is no temperature of a cook day; write it as 152 F or 67 C", say.Quoted(text))
	}
	e.C = float64(t)
	return ""
}

func (k Kind) ofPlace() bool { return k == Core || k == Coldest }

// What a piece may be wrapped in.
const (
	wrapFoil  = "foil"
	wrapPaper = "paper"
	wrapNone  = "none" // it is left bare
)

// Readings outside these are slips of the pen or of the unit, degC.
const (
	ColdestReadingC = -40
	HottestReadingC = 600
)

// newDish reads a dish that is added to the menu. Its id is written into the
// entry, so that it does not depend on the dishes before it.
func (r *Reader) newDish(e *Entry, text string, fault func(field, format string, args ...any)) {
	dish, err := r.day.NewDish(text)
	if err != nil {
		fault("value", `is no dish: %s; write it as {"cut": "burger", "weight": "6 oz", "count": 4}`, err)
		return
	}
	r.added = append(r.added, dish)
	e.Dish, e.Value = dish.ID, text
}

func (r *Reader) dishNames() []string {
	var names []string
	for _, d := range r.named() {
		if !slices.Contains(names, d.ID) {
			names = append(names, d.ID)
		}
	}
	return names
}

func (r *Reader) within(t time.Time) (time.Time, string) {
	if t.Before(r.day.First) || t.After(r.day.Last) {
		return t, "is outside the days of this plan: " + r.dated(r.day.First) + " to " + r.dated(r.day.Last)
	}
	return t, ""
}

// dated is an instant in a cook's words, with its date.
func (r *Reader) dated(t time.Time) string {
	return r.day.Units.Date(t.In(r.day.Loc)) + ", " + r.day.Units.Clock(t.In(r.day.Loc))
}

// timeAsWritten is the time of a row as a message names it: one for machines in a cook's words.
func (r *Reader) timeAsWritten(text string) string {
	if t, err := time.Parse(time.RFC3339, text); err == nil {
		return r.dated(t)
	}
	return say.Quoted(text)
}
