package main

import (
	"bufio"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"time"

	"example.com/cookday/api"
)

// exported is a plan as a line of JSON.
type exported struct {
	Format    int                `json:"format"` // 1
	ID        string             `json:"id"`
	Feed      string             `json:"feed,omitempty"`
	Key       string             `json:"key,omitempty"`
	Body      string             `json:"body,omitempty"`
	NotBefore time.Time          `json:"not_before,omitzero"`
	Trial     bool               `json:"trial,omitempty"`
	Revisions []exportedRevision `json:"revisions"`
}

type exportedRevision struct {
	KeptAt   time.Time         `json:"kept_at"`
	Plan     string            `json:"plan"` // the JSON, byte for byte
	Readings []json.RawMessage `json:"readings,omitempty"`
}

const exportFormat = 1

// exportPlans prints all plans, the oldest first.
func exportPlans(ctx context.Context, f api.Store, w io.Writer) error {
	var ids []string
	if err := each(ctx, f, func(r api.Record) error { ids = append(ids, r.ID); return nil }); err != nil {
		return err
	}
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	for _, id := range slices.Backward(ids) {
		x, err := exportPlan(ctx, f, id)
		if errors.Is(err, api.ErrNotFound) { // deleted meanwhile
			continue
		}
		if err == nil {
			err = out.Encode(x)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

func exportPlan(ctx context.Context, f api.Store, id string) (exported, error) {
	r, err := f.Plan(ctx, id)
	if err != nil {
		return exported{}, err
	}
	x := exported{Format: exportFormat, ID: r.ID, Feed: r.Feed, Key: r.Key, Body: r.Body, NotBefore: r.NotBefore, Trial: r.Trial}
	for len(x.Revisions) <= r.Newest {
		list, err := f.History(ctx, id, len(x.Revisions)-1, storePage)
		if err != nil {
			return x, err
		}
		if len(list) == 0 {
			return x, fmt.Errorf("plan %s: revision %d is missing", id, len(x.Revisions))
		}
		for _, v := range list {
			x.Revisions = append(x.Revisions, exportedRevision{KeptAt: v.At, Plan: string(v.JSON)})
		}
	}
	readings, err := f.Readings(ctx, id)
	for _, reading := range readings {
		if reading.Revision < len(x.Revisions) { // newer ones came while this was read
			v := &x.Revisions[reading.Revision]
			v.Readings = append(v.Readings, reading.JSON)
		}
	}
	return x, err
}

// longestLine of an export: a plan with a full log.
const longestLine = 1 << 30

// importPlans keeps the plans of an export that are not there yet.
func importPlans(ctx context.Context, f api.Store, r io.Reader) (kept, known int, err error) {
	lines := bufio.NewScanner(r)
	lines.Buffer(nil, longestLine)
	for n := 1; lines.Scan(); n++ {
		var x exported
		if err := json.Unmarshal(lines.Bytes(), &x); err != nil || x.Format != exportFormat || len(x.Revisions) == 0 {
			return kept, known, fmt.Errorf("line %d is no plan of an export", n)
		}
		switch err := importPlan(ctx, f, x); {
		case errors.Is(err, api.ErrExists):
			known++
		case err != nil:
			return kept, known, fmt.Errorf("line %d: %w", n, err)
		default:
			kept++
		}
	}
	return kept, known, lines.Err()
}

// importPlan keeps one plan, whole or not at all.
func importPlan(ctx context.Context, f api.Store, x exported) error {
	for i, v := range x.Revisions {
		facts, err := factsOf(v.Plan, i)
		if err != nil {
			return err
		}
		facts.NotBefore, facts.Trial = x.NotBefore, x.Trial
		next := api.Revision{Number: i, At: v.KeptAt, JSON: []byte(v.Plan)}
		if i == 0 {
			err = f.Create(ctx, api.Record{ID: x.ID, Feed: x.Feed, Key: x.Key, Body: x.Body, Facts: facts}, next)
			if err != nil {
				return err
			}
			continue
		}
		rows := make([][]byte, len(v.Readings))
		for k, row := range v.Readings {
			rows[k] = row
		}
		if err := f.Append(ctx, x.ID, rows, next, facts); err != nil {
			return errors.Join(err, f.Delete(context.WithoutCancel(ctx), x.ID))
		}
	}
	return nil
}

func factsOf(plan string, number int) (api.Facts, error) {
	var p struct {
		Revision int
		Name     string
		Feasible bool
		ServeAt  time.Time `json:"serve_at"`
	}
	if err := json.Unmarshal([]byte(plan), &p); err != nil || p.Revision != number || p.ServeAt.IsZero() {
		return api.Facts{}, fmt.Errorf("revision %d is no plan", number)
	}
	return api.Facts{Name: p.Name, Feasible: p.Feasible, Serve: p.ServeAt}, nil
}
