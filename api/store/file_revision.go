package store

import (
	"context"
	"database/sql"
	"errors"
	"time"

	"example.com/cookday/api"
)

// querier is a database or a transaction.
type querier interface {
	QueryContext(ctx context.Context, query string, args ...any) (*sql.Rows, error)
	QueryRowContext(ctx context.Context, query string, args ...any) *sql.Row
}

// Newest returns the last revision.
func (f *File) Newest(ctx context.Context, id string) (api.Revision, error) {
	r, err := newest(ctx, f.read, id)
	return r, told(err)
}

func newest(ctx context.Context, db querier, id string) (api.Revision, error) {
	var r api.Revision
	var at int64
	var whole []byte
	err := db.QueryRowContext(ctx, "SELECT newest, changed_at, whole FROM plan WHERE id = ?", id).Scan(&r.Number, &at, &whole)
	switch {
	case errors.Is(err, sql.ErrNoRows):
		return r, api.ErrNotFound
	case err != nil:
		return r, err
	case whole == nil: // of the schema before, and not changed since
		return last(oneOf(history(ctx, db, id, r.Number-1, 1)))
	}
	r.At = time.UnixMilli(at).UTC()
	r.JSON, err = unpack(whole, packedAlone, nil)
	return r, err
}

func oneOf(list []api.Revision, err error) ([]api.Revision, error) {
	if err == nil && len(list) == 0 {
		err = api.ErrNotFound
	}
	return list, err
}

func last(list []api.Revision, err error) (api.Revision, error) {
	if err != nil {
		return api.Revision{}, err
	}
	return list[len(list)-1], nil
}

// Revision returns the one of that number.
func (f *File) Revision(ctx context.Context, id string, number int) (api.Revision, error) {
	if number < 0 {
		return api.Revision{}, api.ErrNotFound
	}
	r, err := last(oneOf(history(ctx, f.read, id, number-1, 1)))
	return r, told(err)
}

// History returns revisions after a number.
func (f *File) History(ctx context.Context, id string, after, most int) ([]api.Revision, error) {
	list, err := history(ctx, f.read, id, after, most)
	if err != nil || len(list) > 0 {
		return list, told(err)
	}
	if _, err := f.Plan(ctx, id); err != nil { // none after that number, or no plan
		return nil, err
	}
	return list, nil
}

// history unpacks from the last revision that is packed alone, or not at all.
func history(ctx context.Context, db querier, id string, after, most int) ([]api.Revision, error) {
	rows, err := db.QueryContext(ctx, `SELECT number, kept_at, packing, json FROM revision WHERE plan_id = ?1 AND number <= ?2 AND number >=
		(SELECT max(number) FROM revision WHERE plan_id = ?1 AND packing <> 2 AND number <= ?3) ORDER BY number`, id, after+most, max(after+1, 0))
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	list := []api.Revision{}
	var before []byte
	for rows.Next() {
		var r api.Revision
		var at int64
		var packing int
		if err := rows.Scan(&r.Number, &at, &packing, &r.JSON); err != nil {
			return nil, err
		}
		if r.JSON, err = unpack(r.JSON, packing, before); err != nil {
			return nil, err
		}
		r.At, before = time.UnixMilli(at).UTC(), r.JSON
		if r.Number > after {
			list = append(list, r)
		}
	}
	return list, rows.Err()
}

// Readings returns the log.
func (f *File) Readings(ctx context.Context, id string) ([]api.Reading, error) {
	// The plan comes with every row, and alone if it has no readings.
	rows, err := f.read.QueryContext(ctx, "SELECT coalesce(revision, 0), json FROM plan LEFT JOIN reading ON plan_id = id WHERE id = ? ORDER BY ordinal", id)
	if err != nil {
		return nil, told(err)
	}
	defer rows.Close()
	list, found := []api.Reading{}, false
	for rows.Next() {
		var r api.Reading
		if err := rows.Scan(&r.Revision, &r.JSON); err != nil {
			return nil, told(err)
		}
		found = true
		if r.JSON != nil {
			list = append(list, r)
		}
	}
	if err := rows.Err(); err != nil {
		return nil, told(err)
	}
	if !found {
		return nil, api.ErrNotFound
	}
	return list, nil
}
