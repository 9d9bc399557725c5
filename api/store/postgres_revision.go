package store

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"example.com/cookday/api"
)

// Newest returns the last revision.
func (p *Postgres) Newest(ctx context.Context, id string) (r api.Revision, err error) {
	var at int64
	var whole []byte
	if err := p.pool.QueryRow(ctx, "SELECT newest, changed_at, whole FROM plan WHERE id = $1", text(id)).Scan(&r.Number, &at, &whole); err != nil {
		return r, toldByPostgres(ctx, err)
	}
	r.At = time.UnixMilli(at).UTC()
	r.JSON, err = unpack(whole, packedAlone, nil)
	return r, err
}

// Revision returns the one with that number.
func (p *Postgres) Revision(ctx context.Context, id string, number int) (api.Revision, error) {
	if number < 0 {
		return api.Revision{}, api.ErrNotFound
	}
	return last(oneOf(p.history(ctx, id, number-1, 1)))
}

// History returns revisions after a number.
func (p *Postgres) History(ctx context.Context, id string, after, most int) ([]api.Revision, error) {
	list, err := p.history(ctx, id, after, most)
	if err != nil || len(list) > 0 {
		return list, err
	}
	if _, err := p.Plan(ctx, id); err != nil { // none after that number, or no plan
		return nil, err
	}
	return list, nil
}

// history unpacks from the last revision that is packed alone.
func (p *Postgres) history(ctx context.Context, id string, after, most int) ([]api.Revision, error) {
	rows, err := p.pool.Query(ctx, `SELECT number, kept_at, packing, json FROM revision WHERE plan_id = $1 AND number <= $2 AND number >=
		(SELECT max(number) FROM revision WHERE plan_id = $1 AND packing <> 2 AND number <= $3) ORDER BY number`, text(id), after+most, max(after+1, 0))
	if err != nil {
		return nil, toldByPostgres(ctx, err)
	}
	var before []byte
	all, err := pgx.CollectRows(rows, func(row pgx.CollectableRow) (r api.Revision, err error) {
		var at int64
		var packing int
		if err := row.Scan(&r.Number, &at, &packing, &r.JSON); err != nil {
			return r, err
		}
		r.At = time.UnixMilli(at).UTC()
		r.JSON, err = unpack(r.JSON, packing, before)
		before = r.JSON
		return r, err
	})
	if err != nil {
		return nil, toldByPostgres(ctx, err)
	}
	list := []api.Revision{}
	for _, r := range all {
		if r.Number > after {
			list = append(list, r)
		}
	}
	return list, nil
}

// Readings returns the log.
func (p *Postgres) Readings(ctx context.Context, id string) ([]api.Reading, error) {
	// The plan comes with every row, and alone if it has no readings.
	rows, err := p.pool.Query(ctx, "SELECT coalesce(revision, 0), json FROM plan LEFT JOIN reading ON plan_id = id WHERE id = $1 ORDER BY ordinal", text(id))
	if err != nil {
		return nil, toldByPostgres(ctx, err)
	}
	all, err := pgx.CollectRows(rows, func(row pgx.CollectableRow) (r api.Reading, err error) {
		return r, row.Scan(&r.Revision, &r.JSON)
	})
	if err != nil {
		return nil, toldByPostgres(ctx, err)
	}
	if len(all) == 0 {
		return nil, api.ErrNotFound
	}
	list := []api.Reading{}
	for _, r := range all {
		if r.JSON != nil {
			list = append(list, r)
		}
	}
	return list, nil
}
