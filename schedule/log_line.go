package schedule

import (
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule/internal/meant"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// logReader turns rows into entries of one plan.
type logReader struct {
	plan        Plan
	loc         *time.Location
	first, last time.Time // every entry lies between
	from, to    time.Time // the cooking and the eating as planned
	before      time.Time // the entry before; zero for none
	added       []Dish
	faults      *strict.FaultList
}

// A log may begin before the plan does, for a cook may, and end after the serving.
const (
	logBefore = 24 * time.Hour
	logAfter  = 30 * time.Hour
)

func newLogReader(p Plan, faults *strict.FaultList) (*logReader, error) {
	loc, err := time.LoadLocation(p.TZ)
	if err != nil {
		return nil, &InputError{Faults: []Fault{{Path: "tz", Sentence: err.Error()}}}
	}
	r := &logReader{plan: p, loc: loc, first: p.ServeAt.Add(-Horizon), last: p.ServeAt.Add(logAfter), faults: faults}
	if len(p.Steps) > 0 {
		r.first = p.Steps[0].At.Add(-logBefore)
	}
	r.from, r.to = cookingFrom(p), p.ServeAt
	if r.from.IsZero() {
		r.from = p.ServeAt
	}
	return r, nil
}

// cookingFrom is when the fire is laid, or the first dish put on.
func cookingFrom(p Plan) time.Time {
	for _, s := range p.Steps { // by time
		if s.Kind == StepLayFire || s.Kind == StepLight || s.Kind == StepPutOn {
			return s.At
		}
	}
	return time.Time{}
}

func (r *logReader) entry(row logRow) (Entry, bool) {
	before := r.faults.Len()
	e := Entry{Line: row.line, Kind: EntryKind(row.kind)}
	fault := func(field, format string, args ...any) {
		r.faults.AddLine(row.path+field, row.line, format, args...)
	}
	at, sentence := r.instant(row.time, r.fromHere)
	if sentence != "" {
		fault("time", "%s %s", say.Quoted(row.time), sentence)
	}
	e.At = at
	if !at.IsZero() && sentence == "" {
		r.before = at
	}
	form, known := e.Kind.form()
	if !known {
		fault("kind", "%s is not known; there are %s", say.Quoted(row.kind), say.Listed(kindNames(), "and"))
		return e, false
	}
	if form.OfDish || e.Kind.meals() && row.dish != "" {
		id, ok := r.dishID(row.dish)
		if several := r.alike(row.dish); len(several) > 1 {
			fault("dish", "%s may be %s: write more of the name", say.Quoted(row.dish), say.Listed(several, "or"))
		} else if !ok && row.dish == "" {
			fault("dish", "say which dish: %s", say.Listed(r.dishNames(), "or"))
		} else if !ok {
			fault("dish", "%s is no dish of this plan; there are %s", say.Quoted(row.dish), say.Listed(r.dishNames(), "and"))
		}
		e.Dish = id
	} else if row.dish != "" && !strings.EqualFold(row.dish, "grill") {
		fault("dish", "%s is written for the grill: leave the dish empty, not %s", row.kind, say.Quoted(row.dish))
	}
	r.value(&e, form.Carries, row.value, fault)
	if r.faults.Len() > before {
		return e, false
	}
	return e, true
}

// value reads what the entry carries.
func (r *logReader) value(e *Entry, what Carries, text string, fault func(field, format string, args ...any)) {
	switch {
	case what == CarriesTemperature, what == CarriesMaybeTemperature && text != "":
		t, err := unit.ParseTemperature(text)
		if err != nil {
			fault("value", "%s", err)
		} else if float64(t) < coldestReadingC || float64(t) > hottestReadingC {
			fault("value", "%s is no temperature of a cook day; write it as 152 F or 67 C", say.Quoted(text))
		}
		e.C = float64(t)
	case what == CarriesWrap && text != "" && text != WrapFoil && text != WrapPaper && text != WrapNone:
		fault("value", "%s is no wrap; write foil, paper, none for a piece that is left bare, or leave it empty", say.Quoted(text))
	case what == CarriesPlace:
		e.Value = heldText(text)
	case what == CarriesInstant:
		at, sentence := r.instant(text, r.fromServing(e.At))
		if sentence != "" {
			fault("value", "%s %s", say.Quoted(text), sentence)
		}
		e.Value = at.Format(time.RFC3339)
	case what == CarriesDish:
		r.newDish(e, text, fault)
	case what == CarriesVents, what == CarriesCount, what == CarriesSpeed:
		value, sentence := fireValue(what, text)
		if sentence != "" {
			fault("value", "%s", sentence)
		}
		e.Value = value
	default:
		e.Value = text
	}
}

// Readings outside these are slips of the pen or of the unit, degC.
const (
	coldestReadingC = -40
	hottestReadingC = 600
)

// newDish reads a dish that is added to the menu. Its id is written into the
// entry, so that it does not depend on the dishes before it.
func (r *logReader) newDish(e *Entry, text string, fault func(field, format string, args ...any)) {
	dish, err := ParseDish(text)
	if err != nil {
		fault("value", `is no dish: %s; write it as {"cut": "burger", "weight": "6 oz", "count": 4}`, err)
		return
	}
	if dish.ID == "" {
		dishes := slices.Concat(r.plan.Request.Dishes, r.added, []Dish{dish})
		fillIDs(dishes)
		dish.ID = dishes[len(dishes)-1].ID
	}
	r.added = append(r.added, dish)
	e.Dish, e.Value = dish.ID, text
}

// ParseDish reads a dish as JSON, by the rules of a request.
func ParseDish(text string) (Dish, error) {
	faults := &strict.FaultList{}
	tree := strict.ParseJSON([]byte(text), faults)
	var dish Dish
	if tree != nil {
		d := newDecoder(faults)
		d.Teach = func(path string) string { return rightLine("dishes[]." + path) }
		d.Meant = func(_, name string, value *strict.Node) strict.Meaning { return meant.Field("dishes[]", name, value) }
		d.dish(&dish)(tree, "")
	}
	return dish, inputError(faults)
}

func (r *logReader) dishNames() []string {
	var names []string
	for _, d := range r.named() {
		if !slices.Contains(names, d.id) {
			names = append(names, d.id)
		}
	}
	return names
}

func (r *logReader) within(t time.Time) (time.Time, string) {
	if t.Before(r.first) || t.After(r.last) {
		say := func(t time.Time) string {
			u := r.plan.Request.Units
			return u.Date(t.In(r.loc)) + ", " + u.Clock(t.In(r.loc))
		}
		return t, "is outside the days of this plan: " + say(r.first) + " to " + say(r.last)
	}
	return t, ""
}
