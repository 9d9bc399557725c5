package store

import (
	"context"
	"database/sql"
	"errors"
	"math"
	"time"

	"example.com/cookday/api"
)

// milli is an instant as it is kept; zero is 0.
func milli(t time.Time) int64 {
	if t.IsZero() {
		return 0
	}
	return t.UnixMilli()
}

// never is when a mark is due that has nothing to tell, until its plan changes.
const never = math.MaxInt64

func milliOrNever(t time.Time) int64 {
	if t.IsZero() {
		return never
	}
	return t.UnixMilli()
}

func ofMilli(n int64) time.Time {
	if n == 0 || n == never {
		return time.Time{}
	}
	return time.UnixMilli(n).UTC()
}

// OpenWay makes a way known, and gives a mark to the plans that are still to be served.
func (f *File) OpenWay(ctx context.Context, way string, from time.Time) error {
	return f.inTransaction(ctx, func(tx *sql.Tx) error {
		err := one(tx.ExecContext(ctx, "INSERT INTO way (name) VALUES (?) ON CONFLICT DO NOTHING", way))
		if err != nil {
			if errors.Is(err, api.ErrNotFound) { // it is known
				return nil
			}
			return err
		}
		rows, err := tx.QueryContext(ctx, "SELECT id FROM plan WHERE serve_at > ?", from.UnixMilli())
		if err != nil {
			return err
		}
		ids, err := texts(rows)
		for _, id := range ids {
			if err == nil {
				err = addMarks(ctx, tx, "name = ?", id, from.UnixMilli(), way)
			}
		}
		return err
	})
}

// addMarks gives a plan its marks for some ways. An earlier plan of that id may have left
// one that is not told to its end.
func addMarks(ctx context.Context, tx *sql.Tx, ways, id string, from int64, values ...any) error {
	_, err := tx.ExecContext(ctx, "INSERT INTO mark (way, topic, plan_id, from_at) SELECT name, ?, ?, ? FROM way WHERE "+ways+
		" ON CONFLICT (way, topic) DO UPDATE SET plan_id = excluded.plan_id, revision = 0, place = -1, next_at = 0, changes = changes + 1",
		append([]any{api.TopicOf(id), id, from}, values...)...)
	return err
}

// dueMarks are those that are to be looked at: due, not to be tried later, and leased to
// nobody. What lies further ahead than a clock can have meant is taken for over.
const dueMarks = `way = ?1 AND next_at <= ?2 AND retry_at NOT BETWEEN ?2 + 1 AND ?2 + ?4 AND lease_until NOT BETWEEN ?2 + 1 AND ?3`

// longestRetry is more than anybody waits between two tries.
const longestRetry = time.Hour

const markColumns = "way, topic, coalesce(plan_id, ''), revision, place, from_at, next_at, retry_at, tries, since_at, fault, changes"

// TakeMarks leases marks that are due.
func (f *File) TakeMarks(ctx context.Context, way string, l api.Lease, most int) (list []api.Mark, err error) {
	now, until := l.Now.UnixMilli(), l.Until.UnixMilli()
	var any bool // a look that finds nothing writes nothing
	err = f.read.QueryRowContext(ctx, "SELECT EXISTS (SELECT 1 FROM mark WHERE "+dueMarks+")", way, now, until, longestRetry.Milliseconds()).Scan(&any)
	if err != nil || !any {
		return nil, told(err)
	}
	err = f.inTransaction(ctx, func(tx *sql.Tx) error {
		list = nil
		rows, err := tx.QueryContext(ctx, "UPDATE mark SET owner = ?5, lease_until = ?3 WHERE (way, topic) IN (SELECT way, topic FROM mark WHERE "+dueMarks+
			" ORDER BY next_at LIMIT ?6) RETURNING "+markColumns, way, now, until, longestRetry.Milliseconds(), l.Owner, most)
		if err != nil {
			return err
		}
		defer rows.Close()
		for rows.Next() {
			var m api.Mark
			var from, next, retry, since int64
			if err := rows.Scan(&m.Way, &m.Topic, &m.Plan, &m.Revision, &m.Place, &from, &next, &retry, &m.Tries, &since, &m.Fault, &m.Changes); err != nil {
				return err
			}
			m.From, m.Next, m.Retry, m.Since = ofMilli(from), ofMilli(next), ofMilli(retry), ofMilli(since)
			list = append(list, m)
		}
		return rows.Err()
	})
	return list, err
}

// PutMark keeps a mark that is leased.
func (f *File) PutMark(ctx context.Context, m api.Mark, l api.Lease, dead ...api.DeadLetter) error {
	until := l.Until.UnixMilli()
	if !l.Until.After(l.Now) {
		until = 0
	}
	return f.inTransaction(ctx, func(tx *sql.Tx) error {
		err := one(tx.ExecContext(ctx, `UPDATE mark SET revision = ?, place = ?, next_at = CASE WHEN changes = ? THEN ? ELSE 0 END,
			retry_at = ?, tries = ?, since_at = ?, fault = ?, lease_until = ? WHERE way = ? AND topic = ? AND owner = ?`,
			m.Revision, m.Place, m.Changes, milliOrNever(m.Next), milli(m.Retry), m.Tries, milli(m.Since), m.Fault, until, m.Way, m.Topic, l.Owner))
		if errors.Is(err, api.ErrNotFound) {
			return api.ErrConflict
		}
		for _, d := range dead {
			if err == nil {
				err = bury(ctx, tx, d)
			}
		}
		return err
	})
}

func bury(ctx context.Context, tx *sql.Tx, d api.DeadLetter) error {
	_, err := tx.ExecContext(ctx, "INSERT INTO dead_letter (way, topic, event, due_at, buried_at, tries, fault) VALUES (?, ?, ?, ?, ?, ?, ?)",
		d.Way, d.Topic, d.Event, milli(d.Due), milli(d.Buried), d.Tries, d.Fault)
	if err == nil {
		_, err = tx.ExecContext(ctx, "DELETE FROM dead_letter WHERE way = ?1 AND ordinal <= (SELECT ordinal FROM dead_letter WHERE way = ?1 ORDER BY ordinal DESC LIMIT 1 OFFSET ?2)", d.Way, api.MostDead)
	}
	return err
}

// DropMark forgets a mark of a plan that is gone.
func (f *File) DropMark(ctx context.Context, way, topic string) error {
	return f.inTransaction(ctx, func(tx *sql.Tx) error {
		return one(tx.ExecContext(ctx, "DELETE FROM mark WHERE way = ? AND topic = ? AND plan_id IS NULL", way, topic))
	})
}

// DeadLetters lists what was given up.
func (f *File) DeadLetters(ctx context.Context, most int) (list []api.DeadLetter, err error) {
	rows, err := f.read.QueryContext(ctx, "SELECT way, topic, event, due_at, buried_at, tries, fault FROM dead_letter ORDER BY ordinal DESC LIMIT ?", most)
	if err != nil {
		return nil, told(err)
	}
	defer rows.Close()
	for rows.Next() {
		var d api.DeadLetter
		var due, buried int64
		if err := rows.Scan(&d.Way, &d.Topic, &d.Event, &due, &buried, &d.Tries, &d.Fault); err != nil {
			return nil, err
		}
		d.Due, d.Buried = ofMilli(due), ofMilli(buried)
		list = append(list, d)
	}
	return list, told(rows.Err())
}

// Waiting counts what was tried in vain and is tried again.
func (f *File) Waiting(ctx context.Context) (map[string]int, error) {
	rows, err := f.read.QueryContext(ctx, "SELECT way, count(*) FROM mark WHERE tries > 0 GROUP BY way")
	if err != nil {
		return nil, told(err)
	}
	defer rows.Close()
	counts := map[string]int{}
	for rows.Next() {
		var way string
		var n int
		if err := rows.Scan(&way, &n); err != nil {
			return nil, err
		}
		counts[way] = n
	}
	return counts, told(rows.Err())
}
