package logbook

import (
	"slices"
	"time"

	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
)

// FireKinds are the entries that a log of a fire alone may have.
func FireKinds() []Kind {
	return []Kind{AshCleared, CoalsOut, FireOut, Gauge, Grate, Level, LidClosed, LidOpened, Lit, LitCoals, Refuelled, UnlitCoals, Vents, Wind}
}

// fireLogDay is the day of clocks without a date: no day matters, only what lies between.
func fireLogDay() time.Time { return time.Date(2000, time.January, 3, 0, 0, 0, 0, time.UTC) }

// FireEntry is what a row says of a fire alone; false where it cannot be read.
func (r *Reader) FireEntry(row Row) (Entry, bool) {
	if !slices.Contains(FireKinds(), Kind(row.kind)) {
		r.faults.AddLine(row.path+"kind", row.line, "%s is no entry of a fire alone; there are %s", say.Quoted(row.kind), say.Listed(fireKindNames(), "and"))
		return Entry{}, false
	}
	return r.Entry(row)
}

// longestFireLog is how long a log of one fire may be, days.
const longestFireLog = 10

// FireReader reads from the first date of a log on, or from any day where it has only clocks.
func FireReader(rows []Row, faults *strict.FaultList) *Reader {
	from := fireLogDay()
	for _, row := range rows {
		if len(row.time) < len(time.DateOnly) {
			continue
		}
		if day, err := time.Parse(time.DateOnly, row.time[:len(time.DateOnly)]); err == nil && (from.Equal(fireLogDay()) || day.Before(from)) {
			from = day
		}
	}
	last := from.AddDate(0, 0, longestFireLog)
	day := Day{Loc: time.UTC, First: from.AddDate(0, 0, -1), Last: last, From: from, To: last}
	return NewReader(day, faults)
}

func fireKindNames() []string {
	var names []string
	for _, k := range FireKinds() {
		names = append(names, string(k))
	}
	return names
}
