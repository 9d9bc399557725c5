package schedule

import (
	"bytes"
	"cmp"
	"slices"
	"time"

	"example.com/cookday/schedule/internal/logbook"
	"example.com/cookday/schedule/internal/strict"
)

// Entry is one line of a cook's log: a reading of a thermometer, or something
// that was done or happened.
type Entry struct {
	At    time.Time `json:"time"`
	Dish  string    `json:"dish,omitempty"`   // id of the dish; empty for the grill
	Kind  EntryKind `json:"kind"`             // one of the Log constants
	C     float64   `json:"temp_c,omitempty"` // degC, of kinds that carry a temperature
	Value string    `json:"value,omitempty"`  // what the other kinds carry
	Line  int       `json:"-"`                // of the text it was read from; 0 if unknown
}

// EntryKind says what an entry of a log is.
type EntryKind string

// Kinds of entry that are readings.
const (
	LogCore    EntryKind = "core"    // of the dish, by its probe
	LogColdest EntryKind = "coldest" // of the dish, the coldest place of a probe pushed through all of it
	LogOuter   EntryKind = "outer"   // of the dish, just under its surface, while it is held
	LogGrate   EntryKind = "grate"   // the air beside the meat at grate height
	LogGauge   EntryKind = "gauge"   // the gauge in the lid
	LogOven    EntryKind = "oven"    // the air of the kitchen oven, by a thermometer of its own
)

// Kinds of entry that are events.
const (
	LogLit           EntryKind = "lit"            // the fire, first or again
	LogLevel         EntryKind = "level"          // the cook sets the grate to another level
	LogFireOut       EntryKind = "fire-out"       // the fire has gone out, or choked
	LogRefuelled     EntryKind = "refuelled"      // fuel was added
	LogLidOpened     EntryKind = "lid-opened"     // the readings of the next minutes mean little
	LogLidClosed     EntryKind = "lid-closed"     // it was off until now
	LogVents         EntryKind = "vents"          // as they stand from now on: top 1/4, bottom 1/2
	LogLitCoals      EntryKind = "lit-coals"      // so many were poured or added, lit
	LogUnlitCoals    EntryKind = "unlit-coals"    // so many were laid on, unlit
	LogCoalsOut      EntryKind = "coals-out"      // so many burning ones were taken out, or a share of all: 1/2
	LogAshCleared    EntryKind = "ash-cleared"    // the ash was swept out from under the coals
	LogWind          EntryKind = "wind"           // as it blows from now on: 12 mph, or calm
	LogRain          EntryKind = "rain"           // it rains from now on; with over, it has stopped
	LogNoFuel        EntryKind = "no-fuel"        // none is left to add, until some is
	LogOvenOff       EntryKind = "oven-off"       // the kitchen oven went off
	LogOn            EntryKind = "on"             // the dish was put on
	LogWrapped       EntryKind = "wrapped"        // in the value, foil or paper, or none: it is left bare
	LogToOven        EntryKind = "to-oven"        // goes on cooking in the kitchen oven at a temperature
	LogPulled        EntryKind = "pulled"         // taken off, done
	LogBoxed         EntryKind = "boxed"          // put where it is held: into a cooler or an oven, or where the plan has it
	LogCounter       EntryKind = "counter"        // done, and stands without heat
	LogStopped       EntryKind = "stopped"        // taken off the heat before it was done
	LogChilled       EntryKind = "chilled"        // into the refrigerator or on ice
	LogRestarted     EntryKind = "restarted"      // back on the heat
	LogServed        EntryKind = "served"         // the dish is on the table; of no dish, the meal
	LogServingMoved  EntryKind = "serving-moved"  // to the clock in the value
	LogDishAdded     EntryKind = "dish-added"     // the value is the dish as JSON
	LogDishCancelled EntryKind = "dish-cancelled" // no longer wanted
)

// ReadLog reads a cook's log for a plan: CSV with the header
// time,dish,kind,value, or a JSON array of objects with these names, or one such
// object. A time is
// RFC 3339 or a clock of the plan's time zone on the plan's days, "04:15", with
// a date before it where that is needed. Temperatures are text with a unit,
// "152 °F". Dishes go by their id or name. All faults come as one *[InputError],
// with their lines. An empty document is a log in which nothing was noted yet.
func ReadLog(data []byte, p Plan) ([]Entry, error) {
	if len(bytes.TrimSpace(data)) == 0 {
		return nil, nil // nothing was noted yet
	}
	faults := &strict.FaultList{}
	rows, ok := logbook.Rows(data, newDecoder(faults).Decoder)
	if !ok {
		return nil, inputError(faults)
	}
	if len(rows) > logbook.MaxEntries {
		faults.Add("", "the log has %d entries; %d are allowed", len(rows), logbook.MaxEntries)
		return nil, inputError(faults)
	}
	day, err := logDay(p)
	if err != nil {
		return nil, err
	}
	r := logbook.NewReader(day, faults)
	var out []Entry
	var read []logbook.Entry
	for _, row := range rows {
		if e, ok := r.Entry(row); ok {
			read = append(read, e)
			out = append(out, entryOf(e))
		}
	}
	r.Misplaced(read)
	if err := inputError(faults); err != nil {
		return nil, err
	}
	return out, nil
}

// JoinLogs is the whole log in order of time. An entry that is there already is
// taken once, so that a cook may hand in the whole file again with every line
// that is added.
func JoinLogs(old, more []Entry) []Entry {
	out := slices.Concat(old, more)
	for i := range out {
		out[i].Line = 0
	}
	if !slices.IsSortedFunc(out, Entry.compare) { // a line more at its end is the rule
		slices.SortStableFunc(out, Entry.compare)
	}
	return slices.CompactFunc(out, func(a, b Entry) bool { return a.compare(b) == 0 })
}

// compare orders entries by time, and then by all that they say.
func (e Entry) compare(o Entry) int {
	if at := e.At.Compare(o.At); at != 0 {
		return at
	}
	return cmp.Or(cmp.Compare(e.Dish, o.Dish), cmp.Compare(e.Kind, o.Kind), cmp.Compare(e.C, o.C), cmp.Compare(e.Value, o.Value))
}
