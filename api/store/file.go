package store

import (
	"context"
	"database/sql"
	"errors"
	"time"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"

	"example.com/cookday/api"
)

// File keeps plans in one file of an SQL database. Beside it stand two more while it
// is open (-wal and -shm), which belong to it, and one that takes room for the day when
// there is no other (-spare).
type File struct {
	spare string // path

	write *sql.DB // one connection: writers wait for each other here and not in the database
	read  *sql.DB
	watch *sql.DB // one connection, which counts what others write

	byID, byFeed *sql.Stmt // records, for what is asked most often
}

// readers is how many calls may read at once; a read takes tens of microseconds.
const readers = 4

// inTransaction does all of the work or nothing. Where there is no room it empties the
// log beside the file, which may take as much as the file, and tries once more: a full
// disk must let a plan be deleted.
func (f *File) inTransaction(ctx context.Context, work func(*sql.Tx) error) error {
	err := f.once(ctx, work)
	if errors.Is(err, api.ErrFull) && f.empty(ctx) == nil {
		err = f.once(ctx, work)
	}
	return err
}

func (f *File) once(ctx context.Context, work func(*sql.Tx) error) error {
	tx, err := f.write.BeginTx(ctx, nil)
	if err != nil {
		return told(err)
	}
	defer tx.Rollback() // does nothing after a commit
	if err := work(tx); err != nil {
		return told(err)
	}
	return told(tx.Commit())
}

// told says the errors of a disk in the words of package api.
func told(err error) error {
	var known *sqlite.Error
	if !errors.As(err, &known) {
		return err
	}
	switch known.Code() & 0xff { // the rest says more of the same
	case sqlite3.SQLITE_FULL:
		return errors.Join(api.ErrFull, err)
	case sqlite3.SQLITE_READONLY:
		return errors.Join(api.ErrReadOnly, err)
	case sqlite3.SQLITE_CONSTRAINT:
		if known.Code() == sqlite3.SQLITE_CONSTRAINT_PRIMARYKEY || known.Code() == sqlite3.SQLITE_CONSTRAINT_UNIQUE {
			return api.ErrExists
		}
	}
	return err
}

// Delete removes a plan. What it leaves in the file is overwritten with zeros, and
// the write-ahead log, which may have old pages, is emptied; if readers are in the
// way of that, the next deletion or the closing of the file does it.
func (f *File) Delete(ctx context.Context, id string) error {
	return f.freeing(func() error {
		err := f.inTransaction(ctx, func(tx *sql.Tx) error {
			return one(tx.ExecContext(ctx, "DELETE FROM plan WHERE id = ?", id))
		})
		if err != nil {
			return err
		}
		return f.empty(ctx)
	})
}

// empty takes the log beside the file over into it.
func (f *File) empty(ctx context.Context) error {
	_, err := f.write.ExecContext(context.WithoutCancel(ctx), "PRAGMA wal_checkpoint(TRUNCATE)")
	return told(err)
}

// one is not found where no row was changed.
func one(done sql.Result, err error) error {
	if err != nil {
		return err
	}
	if n, err := done.RowsAffected(); err != nil || n == 0 {
		return errors.Join(err, api.ErrNotFound)
	}
	return nil
}

// Expire removes old plans.
func (f *File) Expire(ctx context.Context, before time.Time) (gone []string, err error) {
	err = f.freeing(func() error { return f.expire(ctx, before, &gone) })
	if err != nil || len(gone) == 0 {
		return nil, err
	}
	return gone, f.empty(ctx)
}

func (f *File) expire(ctx context.Context, before time.Time, gone *[]string) error {
	return f.inTransaction(ctx, func(tx *sql.Tx) error {
		rows, err := tx.QueryContext(ctx, "DELETE FROM plan WHERE max(changed_at, serve_at) < ? RETURNING id", before.UnixMilli())
		if err != nil {
			return err
		}
		*gone, err = texts(rows)
		return err
	})
}

func texts(rows *sql.Rows) (list []string, err error) {
	defer rows.Close()
	for rows.Next() {
		var text string
		if err := rows.Scan(&text); err != nil {
			return nil, err
		}
		list = append(list, text)
	}
	return list, rows.Err()
}

// probeBytes are about what a plan takes in the log beside the file.
const probeBytes = 4 * pageBytes

// Ready writes a row: a disk that is full still reads well.
func (f *File) Ready(ctx context.Context) error {
	return f.inTransaction(ctx, func(tx *sql.Tx) error {
		return one(tx.ExecContext(ctx, "UPDATE probe SET room = randomblob(?)", probeBytes))
	})
}

// Changes asks the database, which counts what other connections commit; the writing
// one of this process among them.
func (f *File) Changes(ctx context.Context) (n int64, err error) {
	err = f.watch.QueryRowContext(ctx, "PRAGMA data_version").Scan(&n)
	return n, told(err)
}

// Close ends the use of the file.
func (f *File) Close() error {
	var all []error
	for _, statement := range []*sql.Stmt{f.byID, f.byFeed} {
		if statement != nil {
			all = append(all, statement.Close())
		}
	}
	for _, db := range []*sql.DB{f.watch, f.read, f.write} {
		if db != nil {
			all = append(all, db.Close())
		}
	}
	return errors.Join(all...)
}
