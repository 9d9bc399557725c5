package store

import (
	"context"
	"errors"
	"time"

	"github.com/jackc/pgx/v5"

	"example.com/cookday/api"
)

// giveMarks gives a plan its marks for some ways. An earlier plan of that id may have left
// one that is not told to its end.
const (
	giveMarks = "INSERT INTO mark (way, topic, plan_id, from_at) SELECT name, $1, $2, $3 FROM way"
	markAgain = " ON CONFLICT (way, topic) DO UPDATE SET plan_id = excluded.plan_id, revision = 0, place = -1, next_at = 0, changes = mark.changes + 1"
)

// OpenWay makes a way known, and gives a mark to the plans that are still to be served.
// Plans that are being made are waited for.
func (p *Postgres) OpenWay(ctx context.Context, way string, from time.Time) error {
	var known bool
	err := p.pool.QueryRow(ctx, "SELECT EXISTS (SELECT 1 FROM way WHERE name = $1)", way).Scan(&known)
	if err != nil || known {
		return toldByPostgres(ctx, err)
	}
	return p.inTransaction(ctx, "", func(tx pgx.Tx) error {
		done, err := tx.Exec(ctx, "INSERT INTO way (name) VALUES ($1) ON CONFLICT DO NOTHING", way)
		if err != nil || done.RowsAffected() == 0 {
			return err
		}
		rows, err := tx.Query(ctx, "SELECT id FROM plan WHERE serve_at > $1", from.UnixMilli())
		if err != nil {
			return err
		}
		ids, err := pgx.CollectRows(rows, pgx.RowTo[string])
		if err != nil {
			return err
		}
		var b pgx.Batch
		for _, id := range ids {
			b.Queue(giveMarks+" WHERE name = $4"+markAgain, api.TopicOf(id), id, from.UnixMilli(), way)
		}
		return tx.SendBatch(ctx, &b).Close()
	})
}

// dueInPostgres are the marks that are to be looked at, as dueMarks are.
const dueInPostgres = `way = $1 AND next_at <= $2 AND retry_at NOT BETWEEN $2 + 1 AND $2 + $4 AND lease_until NOT BETWEEN $2 + 1 AND $3`

// TakeMarks leases marks that are due. Those that another process takes in the same moment
// are passed over.
func (p *Postgres) TakeMarks(ctx context.Context, way string, l api.Lease, most int) ([]api.Mark, error) {
	now, until, retry := l.Now.UnixMilli(), l.Until.UnixMilli(), longestRetry.Milliseconds()
	var any bool // a look that finds nothing writes nothing
	err := p.pool.QueryRow(ctx, "SELECT EXISTS (SELECT 1 FROM mark WHERE "+dueInPostgres+")", way, now, until, retry).Scan(&any)
	if err != nil || !any {
		return nil, toldByPostgres(ctx, err)
	}
	rows, err := p.pool.Query(ctx, "UPDATE mark SET owner = $5, lease_until = $3 WHERE (way, topic) IN (SELECT way, topic FROM mark WHERE "+dueInPostgres+
		" ORDER BY next_at LIMIT $6 FOR UPDATE SKIP LOCKED) RETURNING "+markColumns, way, now, until, retry, l.Owner, most)
	if err != nil {
		return nil, toldByPostgres(ctx, err)
	}
	list, err := pgx.CollectRows(rows, func(row pgx.CollectableRow) (m api.Mark, err error) {
		var from, next, retry, since int64
		err = row.Scan(&m.Way, &m.Topic, &m.Plan, &m.Revision, &m.Place, &from, &next, &retry, &m.Tries, &since, &m.Fault, &m.Changes)
		m.From, m.Next, m.Retry, m.Since = ofMilli(from), ofMilli(next), ofMilli(retry), ofMilli(since)
		return m, err
	})
	return list, toldByPostgres(ctx, err)
}

// PutMark keeps a mark that is leased.
func (p *Postgres) PutMark(ctx context.Context, m api.Mark, l api.Lease, dead ...api.DeadLetter) error {
	until := l.Until.UnixMilli()
	if !l.Until.After(l.Now) {
		until = 0
	}
	return p.inTransaction(ctx, "", func(tx pgx.Tx) error {
		err := changed(tx.Exec(ctx, `UPDATE mark SET revision = $1, place = $2, next_at = CASE WHEN changes = $3 THEN $4::bigint ELSE 0 END,
			retry_at = $5, tries = $6, since_at = $7, fault = $8, lease_until = $9 WHERE way = $10 AND topic = $11 AND owner = $12`,
			m.Revision, m.Place, m.Changes, milliOrNever(m.Next), milli(m.Retry), m.Tries, milli(m.Since), text(m.Fault), until, m.Way, m.Topic, l.Owner))
		if errors.Is(err, api.ErrNotFound) {
			return api.ErrConflict
		}
		for _, d := range dead {
			if err == nil {
				err = buryInPostgres(ctx, tx, d)
			}
		}
		return err
	})
}

func buryInPostgres(ctx context.Context, tx pgx.Tx, d api.DeadLetter) error {
	_, err := tx.Exec(ctx, "INSERT INTO dead_letter (way, topic, event, due_at, buried_at, tries, fault) VALUES ($1, $2, $3, $4, $5, $6, $7)",
		d.Way, d.Topic, d.Event, milli(d.Due), milli(d.Buried), d.Tries, text(d.Fault))
	if err == nil {
		_, err = tx.Exec(ctx, "DELETE FROM dead_letter WHERE way = $1 AND ordinal <= (SELECT ordinal FROM dead_letter WHERE way = $1 ORDER BY ordinal DESC LIMIT 1 OFFSET $2)", d.Way, api.MostDead)
	}
	return err
}

// DropMark forgets a mark of a plan that is gone.
func (p *Postgres) DropMark(ctx context.Context, way, topic string) error {
	return p.inTransaction(ctx, "", func(tx pgx.Tx) error {
		return changed(tx.Exec(ctx, "DELETE FROM mark WHERE way = $1 AND topic = $2 AND plan_id IS NULL", way, topic))
	})
}

// DeadLetters lists what was given up.
func (p *Postgres) DeadLetters(ctx context.Context, most int) ([]api.DeadLetter, error) {
	rows, err := p.pool.Query(ctx, "SELECT way, topic, event, due_at, buried_at, tries, fault FROM dead_letter ORDER BY ordinal DESC LIMIT $1", most)
	if err != nil {
		return nil, toldByPostgres(ctx, err)
	}
	list, err := pgx.CollectRows(rows, func(row pgx.CollectableRow) (d api.DeadLetter, err error) {
		var due, buried int64
		err = row.Scan(&d.Way, &d.Topic, &d.Event, &due, &buried, &d.Tries, &d.Fault)
		d.Due, d.Buried = ofMilli(due), ofMilli(buried)
		return d, err
	})
	return list, toldByPostgres(ctx, err)
}

// Waiting counts what was tried in vain and is tried again.
func (p *Postgres) Waiting(ctx context.Context) (map[string]int, error) {
	rows, err := p.pool.Query(ctx, "SELECT way, count(*) FROM mark WHERE tries > 0 GROUP BY way")
	if err != nil {
		return nil, toldByPostgres(ctx, err)
	}
	counts, way, n := map[string]int{}, "", 0
	_, err = pgx.ForEachRow(rows, []any{&way, &n}, func() error { counts[way] = n; return nil })
	return counts, toldByPostgres(ctx, err)
}
