package store

import (
	"context"
	"strings"
	"time"

	"github.com/jackc/pgx/v5"

	"example.com/cookday/api"
)

func scanPostgres(row pgx.Row) (r api.Record, err error) {
	var made, changed, serve int64
	var notBefore *int64
	err = row.Scan(&r.ID, &r.Feed, &r.Key, &r.Body, &made, &changed, &r.Newest, &r.Name, &r.Feasible, &serve, &notBefore, &r.Trial)
	r.Made, r.Changed, r.Serve = time.UnixMilli(made).UTC(), time.UnixMilli(changed).UTC(), time.UnixMilli(serve).UTC()
	if notBefore != nil {
		r.NotBefore = time.UnixMilli(*notBefore).UTC()
	}
	return r, err
}

// text is what a column of texts can hold: no zero byte, and UTF-8.
func text(t string) string {
	return strings.ReplaceAll(strings.ToValidUTF8(t, "\ufffd"), "\x00", "\ufffd")
}

// Create keeps a new plan. Whoever makes a way known waits for it, or is waited for: a
// plan must not fall between.
func (p *Postgres) Create(ctx context.Context, r api.Record, first api.Revision) error {
	whole, err := pack(first.JSON, nil)
	if err != nil {
		return err
	}
	at := first.At.UnixMilli()
	return p.inTransaction(ctx, r.ID, func(tx pgx.Tx) error {
		var b pgx.Batch
		b.Queue("LOCK TABLE way IN SHARE MODE")
		b.Queue(`INSERT INTO plan (id, feed, key, body, made_at, changed_at, newest, name, feasible, serve_at, not_before, trial, whole)
			VALUES ($1, $2, $3, $4, $5, $5, $6, $7, $8, $9, $10, $11, $12)`,
			r.ID, optional(r.Feed), optional(r.Key), optional(r.Body), at, first.Number, text(r.Name), r.Feasible, r.Serve.UnixMilli(), optionalInstant(r.NotBefore), r.Trial, whole)
		b.Queue("INSERT INTO revision (plan_id, number, kept_at, packing, json) VALUES ($1, $2, $3, $4, $5)", r.ID, first.Number, at, packedAlone, whole)
		b.Queue(giveMarks+" WHERE true"+markAgain, api.TopicOf(r.ID), r.ID, int64(0))
		return tx.SendBatch(ctx, &b).Close()
	})
}

func (p *Postgres) record(ctx context.Context, where, value string) (api.Record, error) {
	r, err := scanPostgres(p.pool.QueryRow(ctx, "SELECT "+columns+" FROM plan WHERE "+where+" = $1", text(value)))
	return r, toldByPostgres(ctx, err)
}

// Plan returns what is kept of a plan.
func (p *Postgres) Plan(ctx context.Context, id string) (api.Record, error) {
	return p.record(ctx, "id", id)
}

// ByFeed finds the plan of a feed.
func (p *Postgres) ByFeed(ctx context.Context, feed string) (api.Record, error) {
	return p.record(ctx, "feed", feed)
}

// ByKey finds the plan that was made with a key.
func (p *Postgres) ByKey(ctx context.Context, key string) (api.Record, error) {
	return p.record(ctx, "key", key)
}

// List returns plans, the newest first.
func (p *Postgres) List(ctx context.Context, before string, most int) ([]api.Record, error) {
	rows, err := p.pool.Query(ctx, "SELECT "+columns+" FROM plan WHERE $1 = '' OR made < (SELECT made FROM plan WHERE id = $1) ORDER BY made DESC LIMIT $2", text(before), most)
	if err != nil {
		return nil, toldByPostgres(ctx, err)
	}
	list, err := pgx.CollectRows(rows, func(row pgx.CollectableRow) (api.Record, error) { return scanPostgres(row) })
	return list, toldByPostgres(ctx, err)
}

// SetFeed gives a plan another feed.
func (p *Postgres) SetFeed(ctx context.Context, id, feed string) error {
	return p.inTransaction(ctx, id, func(tx pgx.Tx) error {
		return changed(tx.Exec(ctx, "UPDATE plan SET feed = $1 WHERE id = $2", optional(feed), id))
	})
}

// Append adds readings and their revision. The plan is locked first: of those that come
// at once one is faster.
func (p *Postgres) Append(ctx context.Context, id string, readings [][]byte, next api.Revision, f api.Facts) error {
	whole, err := pack(next.JSON, nil)
	if err != nil {
		return err
	}
	return p.inTransaction(ctx, id, func(tx pgx.Tx) error {
		packed, packing, err := p.packedNext(ctx, tx, id, next, whole)
		if err != nil {
			return err
		}
		var b pgx.Batch
		b.Queue("INSERT INTO revision (plan_id, number, kept_at, packing, json) VALUES ($1, $2, $3, $4, $5)", id, next.Number, next.At.UnixMilli(), packing, packed)
		b.Queue("UPDATE plan SET changed_at = $2, newest = $3, name = $4, feasible = $5, serve_at = $6, not_before = $7, trial = $8, whole = $9 WHERE id = $1",
			id, next.At.UnixMilli(), next.Number, text(f.Name), f.Feasible, f.Serve.UnixMilli(), optionalInstant(f.NotBefore), f.Trial, whole)
		b.Queue("UPDATE mark SET next_at = 0, changes = changes + 1 WHERE plan_id = $1", id)
		for _, reading := range readings {
			b.Queue("INSERT INTO reading (plan_id, ordinal, revision, json) SELECT $1, coalesce(max(ordinal) + 1, 0), $2, $3 FROM reading WHERE plan_id = $1", id, next.Number, reading)
		}
		return tx.SendBatch(ctx, &b).Close()
	})
}

// packedNext locks a plan and packs its next revision against the newest one, or as it is
// packed alone now and then.
func (p *Postgres) packedNext(ctx context.Context, tx pgx.Tx, id string, next api.Revision, whole []byte) (packed []byte, packing int, err error) {
	var number int
	var before []byte
	if err := tx.QueryRow(ctx, "SELECT newest, whole FROM plan WHERE id = $1 FOR UPDATE", id).Scan(&number, &before); err != nil {
		return nil, 0, err
	}
	if next.Number != number+1 {
		return nil, 0, api.ErrConflict
	}
	if packingOf(next.Number) == packedAlone {
		return whole, packedAlone, nil
	}
	against, err := unpack(before, packedAlone, nil)
	if err != nil {
		return nil, 0, err
	}
	packed, err = pack(next.JSON, against)
	return packed, packedAgainst, err
}

// Delete removes a plan.
func (p *Postgres) Delete(ctx context.Context, id string) error {
	return p.inTransaction(ctx, id, func(tx pgx.Tx) error {
		return changed(tx.Exec(ctx, "DELETE FROM plan WHERE id = $1", id))
	})
}

// Expire removes old plans.
func (p *Postgres) Expire(ctx context.Context, before time.Time) (gone []string, err error) {
	err = p.inTransaction(ctx, "", func(tx pgx.Tx) error {
		rows, err := tx.Query(ctx, "DELETE FROM plan WHERE greatest(changed_at, serve_at) < $1 RETURNING id", before.UnixMilli())
		if err != nil {
			return err
		}
		if gone, err = pgx.CollectRows(rows, pgx.RowTo[string]); err != nil {
			return err
		}
		for _, id := range gone {
			if err := p.tell(ctx, tx, id); err != nil {
				return err
			}
		}
		return nil
	})
	return gone, err
}
