package schedule

import (
	"example.com/cookday/schedule/internal/logbook"
	"example.com/cookday/schedule/internal/strict"
)

// FireKinds are the entries that a log of a fire alone may have.
func FireKinds() []EntryKind {
	var all []EntryKind
	for _, k := range logbook.FireKinds() {
		all = append(all, EntryKind(k))
	}
	return all
}

// ReadFireLog reads a log of a fire that belongs to no plan: the columns time, kind and value, or JSON, as in [ReadLog].
// A clock alone counts on from the entry before it. It comes back in order of time.
func ReadFireLog(data []byte) ([]Entry, error) {
	faults := &strict.FaultList{}
	rows, ok := logbook.Rows(data, newDecoder(faults).Decoder)
	if !ok {
		return nil, inputError(faults)
	}
	if len(rows) > logbook.MaxEntries {
		faults.Add("", "the log has %d entries; %d are allowed", len(rows), logbook.MaxEntries)
	}
	r := logbook.FireReader(rows, faults)
	var out []Entry
	for _, row := range rows {
		if e, ok := r.FireEntry(row); ok {
			out = append(out, entryOf(e))
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
