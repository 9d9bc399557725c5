package api

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"slices"
	"strconv"
	"strings"
	"time"

	"example.com/cookday/schedule"
)

// postReadings adds readings and events to a plan's log and answers with the
// revision they lead to. What the log has already is not added again, so a call may
// be repeated after a broken connection.
func (s *Service) postReadings(c *call) error {
	id, err := c.planOnly()
	if err != nil {
		return err
	}
	got, err := c.parameters("at")
	if err != nil {
		return err
	}
	at, err := instantOf(got, "at")
	if err != nil {
		return err
	}
	data, kind, err := c.body(maxLogSigns, typeJSON, typeCSV)
	if err != nil {
		return err
	}
	f, err := c.formatFor("", false, nil)
	if err != nil {
		return err
	}
	form := formOf(kind, data)
	posted, now, err := s.readLog(c, id, data, at)
	if err == nil {
		err = s.answerChange(c, id, f, func(ctx context.Context, st *state) (*draft, error) { return s.logAdded(ctx, st, posted, now) })
	}
	return form.faults(err)
}

// readLog reads what was posted before the plan's turn comes, so that junk waits for
// nobody and nobody waits for junk.
func (s *Service) readLog(c *call, id string, data []byte, at time.Time) (posted []schedule.Entry, now time.Time, err error) {
	ctx := c.r.Context()
	record, err := s.cfg.Store.Plan(ctx, id)
	if err != nil {
		return nil, now, err
	}
	if err := requireMatch(c.r, record.Newest); err != nil {
		return nil, now, err
	}
	if now, err = s.seenFrom(at, record.Trial); err != nil {
		return nil, now, err
	}
	kept, err := s.cfg.Store.Newest(ctx, id)
	if err != nil {
		return nil, now, err
	}
	err = s.within(ctx, s.gates.ofBody(data), func(context.Context) error {
		var p schedule.Plan
		if err := json.Unmarshal(kept.JSON, &p); err != nil {
			return err
		}
		if len(bytes.TrimSpace(data)) == 0 { // a call brings something, unlike a file that waits for its first line
			return inputProblem(&schedule.InputError{Faults: []schedule.Fault{{Sentence: "the body is empty; a log begins with the line time,dish,kind,value"}}}, false)
		}
		posted, err = s.cfg.Planner.ReadLog(data, p)
		return err
	})
	if err == nil && !record.Trial {
		err = future(posted, now)
	}
	return posted, now, err
}

// seenFrom is the instant to look from: a parameter, or the clock. Far from the clock it
// is a mistake, unless the plan is a trial.
func (s *Service) seenFrom(at time.Time, trial bool) (time.Time, error) {
	now := s.now()
	switch apart := at.Sub(now).Abs(); {
	case at.IsZero():
		return now, nil
	case trial || apart <= maxAhead:
		return at, nil
	}
	return at, problem("clock", fmt.Sprintf("at is %s, and it is %s here: leave it out. To play a day through, plan it as a trial, with POST /v1/plans?trial=true.",
		at.UTC().Format(time.RFC3339), now.UTC().Format(time.RFC3339)))
}

// future refuses entries that have not happened yet, and lets clocks differ a little.
func future(posted []schedule.Entry, now time.Time) error {
	var faults []schedule.Fault
	for i, e := range posted {
		if e.At.After(now.Add(maxAhead)) {
			faults = append(faults, schedule.Fault{Path: fmt.Sprintf("[%d].time", i), Line: e.Line,
				Sentence: fmt.Sprintf("%s is still ahead, it is only %s; log what has happened", e.At.Format(time.RFC3339), now.In(e.At.Location()).Format(time.RFC3339))})
		}
	}
	if len(faults) == 0 {
		return nil
	}
	return &schedule.InputError{Faults: faults}
}

// form is how a log was written.
type form int

const (
	formList  form = iota // of JSON objects
	formOne               // one object
	formTable             // CSV
)

func formOf(kind string, data []byte) form {
	switch {
	case kind == typeCSV:
		return formTable
	case bytes.HasPrefix(bytes.TrimLeft(data, " \t\r\n"), []byte("{")):
		return formOne
	}
	return formList
}

// faults lets the faults of an entry point into the body as it was written. In a table
// the place goes into the sentence: a pointer is for JSON only.
func (f form) faults(err error) error {
	var input *schedule.InputError
	if !errors.As(err, &input) || f == formList {
		return err
	}
	faults := slices.Clone(input.Faults)
	for i, fault := range faults {
		path := strings.TrimPrefix(fault.Path, "[0].")
		if f == formOne {
			faults[i].Path = path
			continue
		}
		if _, column, found := strings.Cut(fault.Path, ": "); found {
			path = column
		} else if _, column, found := strings.Cut(fault.Path, "]."); found {
			path = column
		}
		fault.Path = path
		faults[i] = schedule.Fault{Sentence: fault.String(), Line: fault.Line}
	}
	return &schedule.InputError{Faults: faults}
}

// LogEntry is an entry of a plan's log as it is listed.
type LogEntry struct {
	ID        int                `json:"id"`
	Time      time.Time          `json:"time"`
	Dish      string             `json:"dish"` // its id; "" for the grill
	Kind      schedule.EntryKind `json:"kind"`
	TempC     *float64           `json:"temp_c"` // null for kinds without a temperature
	Value     string             `json:"value"`
	Revision  int                `json:"revision"` // that it led to
	Withdrawn bool               `json:"withdrawn"`
}

// getReadings lists the log.
func (s *Service) getReadings(c *call) error {
	id, err := c.planOnly()
	if err != nil {
		return err
	}
	if _, err := c.parameters(); err != nil {
		return err
	}
	rows, err := s.cfg.Store.Readings(c.r.Context(), id)
	if err != nil {
		return err
	}
	log, err := logOf(rows)
	if err != nil {
		return err
	}
	list := make([]LogEntry, len(log))
	for i, l := range log {
		list[i] = LogEntry{ID: l.id, Time: l.At, Dish: l.Dish, Kind: l.Kind, Value: l.Value, Revision: l.revision, Withdrawn: l.withdrawn}
		if l.C != 0 || l.Value == "" && carriesTemperature(l.Kind) {
			list[i].TempC = &l.C
		}
	}
	return c.sendJSON(http.StatusOK, map[string][]LogEntry{"entries": list})
}

func carriesTemperature(k schedule.EntryKind) bool {
	return slices.ContainsFunc(schedule.EntryForms(), func(f schedule.EntryForm) bool { return f.Kind == k && f.Carries == schedule.CarriesTemperature })
}

// deleteReading withdraws an entry: a wrong time, a wrong dish, a probe in the wrong
// piece. The entry stays listed.
func (s *Service) deleteReading(c *call) error {
	id, err := c.planOnly()
	if err != nil {
		return err
	}
	if _, err := c.parameters(); err != nil {
		return err
	}
	number, err := strconv.ParseUint(c.param("entry"), 10, 31)
	if err != nil {
		return problem("not-found", "The log has no such entry; GET the readings for their ids.")
	}
	f, err := c.formatFor("", false, nil)
	if err != nil {
		return err
	}
	return s.answerChange(c, id, f, func(ctx context.Context, st *state) (*draft, error) { return s.withdrawn(ctx, st, int(number)) })
}

func (s *Service) withdrawn(ctx context.Context, st *state, number int) (*draft, error) {
	k := slices.IndexFunc(st.log, func(l logged) bool { return l.id == number })
	if k < 0 {
		return nil, problem("not-found", "The log has no such entry; GET the readings for their ids.")
	}
	if st.log[k].withdrawn {
		return nil, nil
	}
	row, err := json.Marshal(withdrawal{number})
	if err != nil {
		return nil, err
	}
	st.log[k].withdrawn = true
	d := &draft{facts: st.record.Facts, rows: [][]byte{row}}
	log := standing(st.log)
	d.plan, err = s.revised(ctx, st.plan, log, s.now(), d.facts)
	return d, placed(err, log, nil)
}
