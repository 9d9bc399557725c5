package schedule

import (
	"slices"
	"time"

	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
)

// FireKinds are the entries that a log of a fire alone may have.
func FireKinds() []EntryKind {
	return []EntryKind{LogAshCleared, LogFireOut, LogGauge, LogGrate, LogLevel, LogLidClosed, LogLidOpened, LogLit, LogLitCoals, LogRefuelled, LogUnlitCoals, LogVents, LogWind}
}

// fireLogDay is the day of clocks without a date: no day matters, only what lies between.
func fireLogDay() time.Time { return time.Date(2000, time.January, 3, 0, 0, 0, 0, time.UTC) }

// ReadFireLog reads a log of a fire that belongs to no plan: the columns time, kind and value, or JSON, as in [ReadLog].
// A clock alone counts on from the entry before it. It comes back in order of time.
func ReadFireLog(data []byte) ([]Entry, error) {
	faults := &strict.FaultList{}
	rows, ok := logRows(data, faults)
	if !ok {
		return nil, inputError(faults)
	}
	if len(rows) > maxEntries {
		faults.Add("", "the log has %d entries; %d are allowed", len(rows), maxEntries)
	}
	r := fireLogReader(rows, faults)
	var out []Entry
	for _, row := range rows {
		if !slices.Contains(FireKinds(), EntryKind(row.kind)) {
			faults.AddLine(row.path+"kind", row.line, "%s is no entry of a fire alone; there are %s", say.Quoted(row.kind), say.Listed(fireKindNames(), "and"))
			continue
		}
		if e, ok := r.entry(row); ok {
			out = append(out, e)
		}
	}
	if len(out) == 0 && faults.Len() == 0 {
		faults.Add("", "the log has no entry")
	}
	if err := inputError(faults); err != nil {
		return nil, err
	}
	return JoinLogs(out, nil), nil
}

// longestFireLog is how long a log of one fire may be, days.
const longestFireLog = 10

// fireLogReader reads from the first date of a log on, or from any day where it has only clocks.
func fireLogReader(rows []logRow, faults *strict.FaultList) *logReader {
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
	return &logReader{plan: Plan{TZ: "UTC"}, loc: time.UTC, first: from.AddDate(0, 0, -1), last: last, from: from, to: last, faults: faults}
}

func fireKindNames() []string {
	var names []string
	for _, k := range FireKinds() {
		names = append(names, string(k))
	}
	return names
}
