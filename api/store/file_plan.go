package store

import (
	"context"
	"database/sql"
	"errors"
	"strings"
	"time"

	"example.com/cookday/api"
)

// columns are those of a record, as scanRecord takes them.
const columns = "id, coalesce(feed, ''), coalesce(key, ''), coalesce(body, ''), made_at, changed_at, newest, name, feasible, serve_at, not_before, trial"

func scanRecord(row interface{ Scan(...any) error }) (r api.Record, err error) {
	var made, changed, serve int64
	var notBefore sql.NullInt64
	err = row.Scan(&r.ID, &r.Feed, &r.Key, &r.Body, &made, &changed, &r.Newest, &r.Name, &r.Feasible, &serve, &notBefore, &r.Trial)
	if errors.Is(err, sql.ErrNoRows) {
		return r, api.ErrNotFound
	}
	r.Made, r.Changed, r.Serve = time.UnixMilli(made).UTC(), time.UnixMilli(changed).UTC(), time.UnixMilli(serve).UTC()
	if notBefore.Valid {
		r.NotBefore = time.UnixMilli(notBefore.Int64).UTC()
	}
	return r, told(err)
}

// optional is NULL for nothing.
func optional(text string) any {
	if text == "" {
		return nil
	}
	return text
}

func optionalInstant(t time.Time) any {
	if t.IsZero() {
		return nil
	}
	return t.UnixMilli()
}

// Create keeps a new plan.
func (f *File) Create(ctx context.Context, r api.Record, first api.Revision) error {
	whole, err := pack(first.JSON, nil)
	if err != nil {
		return err
	}
	return f.inTransaction(ctx, func(tx *sql.Tx) error {
		_, err := tx.ExecContext(ctx, `INSERT INTO plan (id, made, feed, key, body, made_at, changed_at, newest, name, feasible, serve_at, not_before, trial, whole)
			VALUES (?, (SELECT coalesce(max(made), 0) + 1 FROM plan), ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
			r.ID, optional(r.Feed), optional(r.Key), optional(r.Body), first.At.UnixMilli(), first.At.UnixMilli(), first.Number,
			r.Name, r.Feasible, r.Serve.UnixMilli(), optionalInstant(r.NotBefore), r.Trial, whole)
		if err == nil {
			err = addRevision(ctx, tx, r.ID, first, whole, nil)
		}
		if err == nil {
			err = addMarks(ctx, tx, "true", r.ID, 0)
		}
		return err
	})
}

// addRevision keeps a revision packed against the one before, or as it is packed alone
// where there is none, and now and then.
func addRevision(ctx context.Context, tx *sql.Tx, id string, r api.Revision, whole, before []byte) (err error) {
	packed, packing := whole, packedAlone
	if before != nil && packingOf(r.Number) == packedAgainst {
		packing = packedAgainst
		packed, err = pack(r.JSON, before)
	}
	if err == nil {
		_, err = tx.ExecContext(ctx, "INSERT INTO revision (plan_id, number, kept_at, json, packing) VALUES (?, ?, ?, ?, ?)", id, r.Number, r.At.UnixMilli(), packed, packing)
	}
	return err
}

// Plan returns what is kept of a plan.
func (f *File) Plan(ctx context.Context, id string) (api.Record, error) {
	return scanRecord(f.byID.QueryRowContext(ctx, id))
}

// ByFeed finds the plan of a feed.
func (f *File) ByFeed(ctx context.Context, feed string) (api.Record, error) {
	return scanRecord(f.byFeed.QueryRowContext(ctx, feed))
}

// ByKey finds the plan that was made with a key.
func (f *File) ByKey(ctx context.Context, key string) (api.Record, error) {
	return scanRecord(f.read.QueryRowContext(ctx, "SELECT "+columns+" FROM plan WHERE key = ?", key))
}

// List returns plans, the newest first.
func (f *File) List(ctx context.Context, before string, most int) ([]api.Record, error) {
	query, values := "SELECT "+columns+" FROM plan WHERE made < (SELECT made FROM plan WHERE id = ?) ORDER BY made DESC LIMIT ?", []any{before, most}
	if before == "" {
		query, values = strings.Replace(query, "WHERE made < (SELECT made FROM plan WHERE id = ?)", "", 1), values[1:]
	}
	rows, err := f.read.QueryContext(ctx, query, values...)
	if err != nil {
		return nil, told(err)
	}
	defer rows.Close()
	list := []api.Record{}
	for rows.Next() {
		r, err := scanRecord(rows)
		if err != nil {
			return nil, err
		}
		list = append(list, r)
	}
	return list, told(rows.Err())
}

// SetFeed gives a plan another feed.
func (f *File) SetFeed(ctx context.Context, id, feed string) error {
	return f.inTransaction(ctx, func(tx *sql.Tx) error {
		return one(tx.ExecContext(ctx, "UPDATE plan SET feed = ? WHERE id = ?", optional(feed), id))
	})
}

// Append adds readings and their revision.
func (f *File) Append(ctx context.Context, id string, readings [][]byte, next api.Revision, facts api.Facts) error {
	whole, err := pack(next.JSON, nil)
	if err != nil {
		return err
	}
	return f.inTransaction(ctx, func(tx *sql.Tx) error {
		before, err := newest(ctx, tx, id)
		if err != nil {
			return err
		}
		if next.Number != before.Number+1 {
			return api.ErrConflict
		}
		if err := addRevision(ctx, tx, id, next, whole, before.JSON); err != nil {
			return err
		}
		_, err = tx.ExecContext(ctx, "UPDATE plan SET changed_at = ?, newest = ?, name = ?, feasible = ?, serve_at = ?, not_before = ?, trial = ?, whole = ? WHERE id = ?",
			next.At.UnixMilli(), next.Number, facts.Name, facts.Feasible, facts.Serve.UnixMilli(), optionalInstant(facts.NotBefore), facts.Trial, whole, id)
		if err == nil {
			_, err = tx.ExecContext(ctx, "UPDATE mark SET next_at = 0, changes = changes + 1 WHERE plan_id = ?", id)
		}
		if err != nil {
			return err
		}
		return addReadings(ctx, tx, id, next.Number, readings)
	})
}

func addReadings(ctx context.Context, tx *sql.Tx, id string, revision int, readings [][]byte) error {
	if len(readings) == 0 {
		return nil
	}
	var count int
	if err := tx.QueryRowContext(ctx, "SELECT coalesce(max(ordinal) + 1, 0) FROM reading WHERE plan_id = ?", id).Scan(&count); err != nil {
		return err
	}
	for i, reading := range readings {
		if _, err := tx.ExecContext(ctx, "INSERT INTO reading (plan_id, ordinal, revision, json) VALUES (?, ?, ?, ?)", id, count+i, revision, reading); err != nil {
			return err
		}
	}
	return nil
}
