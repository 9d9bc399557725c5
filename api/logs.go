package api

import (
	"context"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
)

// logged is an entry of a plan's log. A row is never changed: a withdrawal is a row of
// its own.
type logged struct {
	schedule.Entry
	id        int // from 1
	revision  int // that it led to
	withdrawn bool
}

// withdrawal is a row that takes back another one.
type withdrawal struct {
	Withdrawn int `json:"withdrawn"`
}

// logOf is the log in rows, withdrawn entries among them.
func logOf(rows []Reading) ([]logged, error) {
	list := make([]logged, 0, len(rows))
	for i, row := range rows {
		var w withdrawal
		l := logged{id: i + 1, revision: row.Revision}
		if err := json.Unmarshal(row.JSON, &w); err != nil {
			return nil, err
		}
		if w.Withdrawn > 0 {
			if k := slices.IndexFunc(list, func(l logged) bool { return l.id == w.Withdrawn }); k >= 0 {
				list[k].withdrawn = true
			}
			continue
		}
		if err := json.Unmarshal(row.JSON, &l.Entry); err != nil {
			return nil, err
		}
		list = append(list, l)
	}
	return list, nil
}

// standing are the entries that were not withdrawn.
func standing(log []logged) []schedule.Entry {
	var list []schedule.Entry
	for _, l := range log {
		if !l.withdrawn {
			list = append(list, l.Entry)
		}
	}
	return list
}

// lookedAt is the instant from which a revision looks ahead: the clock's, or that of the
// newest entry, which may be a little ahead of it. What is in the log already counts
// wherever it lies: a clock that was wrong once must not shut the log for good.
func lookedAt(now time.Time, log []schedule.Entry) time.Time {
	for _, e := range log {
		if e.At.After(now) {
			now = e.At
		}
	}
	return now
}

// logAdded is a plan with more entries in its log; nil if it has all of them.
func (s *Service) logAdded(ctx context.Context, st *state, posted []schedule.Entry, now time.Time) (*draft, error) {
	log := standing(st.log)
	known := map[string]bool{}
	for _, e := range log {
		text, err := json.Marshal(e)
		if err != nil {
			return nil, err
		}
		known[string(text)] = true
	}
	d := &draft{facts: st.record.Facts}
	for _, e := range posted {
		text, err := json.Marshal(e)
		if err != nil {
			return nil, err
		}
		if !known[string(text)] {
			known[string(text)] = true
			log, d.rows = append(log, e), append(d.rows, text)
		}
	}
	if len(d.rows) == 0 {
		return nil, nil
	}
	if rows := st.rows + len(d.rows); rows > maxEntries {
		return nil, problem("log-full", fmt.Sprintf("With these the log would have %d entries; a plan keeps %d. Post fewer: one reading in a few minutes is enough.", rows, maxEntries))
	}
	var err error
	d.plan, err = s.revised(ctx, st.plan, log, now, d.facts)
	return d, placed(err, log, posted)
}

// revised follows a plan through a log.
func (s *Service) revised(ctx context.Context, p schedule.Plan, log []schedule.Entry, now time.Time, facts Facts) (schedule.Plan, error) {
	p.Log = nil // the rows are the log
	now = lookedAt(now, log)
	err := s.within(ctx, s.gates.of(askedOf(&p)), func(ctx context.Context) (err error) {
		p, err = s.cfg.Planner.Revise(ctx, p, log, now, facts.NotBefore)
		return err
	})
	return p, err
}

// placed lets the faults of a log point into what was posted. The planner numbers the
// whole log in its order of time.
func placed(err error, log, posted []schedule.Entry) error {
	input, ok := err.(*schedule.InputError)
	if !ok {
		return err
	}
	joined := schedule.JoinLogs(nil, log)
	faults := slices.Clone(input.Faults)
	for i, f := range faults {
		var n int
		rest, ok := strings.CutPrefix(f.Path, "log")
		if _, err := fmt.Sscanf(rest, "[%d]", &n); !ok || err != nil || n < 0 || n >= len(joined) {
			continue
		}
		_, field, _ := strings.Cut(rest, "]")
		k := slices.IndexFunc(posted, func(e schedule.Entry) bool {
			return e.At.Equal(joined[n].At) && e.Dish == joined[n].Dish && e.Kind == joined[n].Kind && e.C == joined[n].C && e.Value == joined[n].Value
		})
		if k >= 0 {
			faults[i].Path = fmt.Sprintf("[%d]%s", k, field)
		} else {
			faults[i] = schedule.Fault{Sentence: "an entry that the log has already, of " + joined[n].At.Format(time.RFC3339) + ": " + f.Sentence}
		}
	}
	return &schedule.InputError{Faults: faults}
}
