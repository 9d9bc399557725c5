package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"time"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"

	"example.com/cookday/api"
)

// File keeps plans in one file of an SQL database. Beside it stand two more while it
// is open (-wal and -shm), which belong to it.
type File struct {
	write *sql.DB // one connection: writers wait for each other here and not in the database
	read  *sql.DB
}

// readers is how many calls may read at once; a read takes tens of microseconds.
const readers = 4

// OpenFile opens a file of plans, or makes it, readable for its owner only. The
// error says in a sentence what is wrong: a directory that does not exist, a file of
// another kind or of a newer program.
func OpenFile(ctx context.Context, path string) (*File, error) {
	made, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o600)
	if err != nil {
		return nil, fmt.Errorf("the plans cannot be kept: %w", err)
	}
	if err := made.Close(); err != nil {
		return nil, err
	}
	f := &File{}
	// FULL: a commit returns once the log is on the disk, so that what was acknowledged
	// survives a loss of power too.
	f.write, err = open(path, "_txlock=immediate", "_pragma=journal_mode(WAL)", "_pragma=synchronous(FULL)", "_pragma=secure_delete(ON)")
	if err != nil {
		return nil, err
	}
	f.write.SetMaxOpenConns(1)
	if err := migrate(ctx, f.write, path); err != nil {
		f.write.Close()
		return nil, err
	}
	if f.read, err = open(path, "_pragma=query_only(ON)"); err != nil {
		f.write.Close()
		return nil, err
	}
	f.read.SetMaxOpenConns(readers)
	f.read.SetMaxIdleConns(readers)
	return f, nil
}

func open(path string, options ...string) (*sql.DB, error) {
	absolute, err := filepath.Abs(path)
	if err != nil {
		return nil, err
	}
	name := url.URL{Scheme: "file", Path: absolute} // escapes what a path may contain
	options = append([]string{"_pragma=busy_timeout(5000)", "_pragma=foreign_keys(ON)"}, options...)
	return sql.Open("sqlite", name.String()+"?"+strings.Join(options, "&"))
}

// Create keeps a new plan.
func (f *File) Create(ctx context.Context, id string, first api.Revision) error {
	return f.inTransaction(ctx, func(tx *sql.Tx) error {
		_, err := tx.ExecContext(ctx, "INSERT INTO plan (id) VALUES (?)", id)
		var known *sqlite.Error
		if errors.As(err, &known) && known.Code() == sqlite3.SQLITE_CONSTRAINT_PRIMARYKEY {
			return api.ErrExists
		}
		if err != nil {
			return err
		}
		return addRevision(ctx, tx, id, first)
	})
}

func addRevision(ctx context.Context, tx *sql.Tx, id string, r api.Revision) error {
	_, err := tx.ExecContext(ctx, "INSERT INTO revision (plan_id, number, kept_at, json) VALUES (?, ?, ?, ?)", id, r.Number, r.At.UnixMilli(), r.JSON)
	return err
}

// inTransaction does all of the work or nothing.
func (f *File) inTransaction(ctx context.Context, work func(*sql.Tx) error) error {
	tx, err := f.write.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	defer tx.Rollback() // does nothing after a commit
	if err := work(tx); err != nil {
		return err
	}
	return tx.Commit()
}

// Newest returns the last revision.
func (f *File) Newest(ctx context.Context, id string) (api.Revision, error) {
	return scanRevision(f.read.QueryRowContext(ctx, "SELECT number, kept_at, json FROM revision WHERE plan_id = ? ORDER BY number DESC LIMIT 1", id))
}

// Revision returns the one of that number.
func (f *File) Revision(ctx context.Context, id string, number int) (api.Revision, error) {
	return scanRevision(f.read.QueryRowContext(ctx, "SELECT number, kept_at, json FROM revision WHERE plan_id = ? AND number = ?", id, number))
}

func scanRevision(row interface{ Scan(...any) error }) (api.Revision, error) {
	var r api.Revision
	var at int64
	err := row.Scan(&r.Number, &at, &r.JSON)
	if errors.Is(err, sql.ErrNoRows) {
		return r, api.ErrNotFound
	}
	r.At = time.UnixMilli(at).UTC()
	return r, err
}

// History returns all revisions.
func (f *File) History(ctx context.Context, id string) ([]api.Revision, error) {
	rows, err := f.read.QueryContext(ctx, "SELECT number, kept_at, json FROM revision WHERE plan_id = ? ORDER BY number", id)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var list []api.Revision
	for rows.Next() {
		r, err := scanRevision(rows)
		if err != nil {
			return nil, err
		}
		list = append(list, r)
	}
	if err := rows.Err(); err != nil {
		return nil, err
	}
	if len(list) == 0 {
		return nil, api.ErrNotFound
	}
	return list, nil
}

// Readings returns the log.
func (f *File) Readings(ctx context.Context, id string) ([][]byte, error) {
	// The plan comes with every row, and alone if it has no readings.
	rows, err := f.read.QueryContext(ctx, "SELECT reading.json FROM plan LEFT JOIN reading ON reading.plan_id = plan.id WHERE plan.id = ? ORDER BY ordinal", id)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	list, found := [][]byte{}, false
	for rows.Next() {
		var reading []byte
		if err := rows.Scan(&reading); err != nil {
			return nil, err
		}
		found = true
		if reading != nil {
			list = append(list, reading)
		}
	}
	if err := rows.Err(); err != nil {
		return nil, err
	}
	if !found {
		return nil, api.ErrNotFound
	}
	return list, nil
}

// Append adds readings and their revision.
func (f *File) Append(ctx context.Context, id string, readings [][]byte, next api.Revision) error {
	return f.inTransaction(ctx, func(tx *sql.Tx) error {
		var newest sql.NullInt64
		var count int
		err := tx.QueryRowContext(ctx, "SELECT (SELECT max(number) FROM revision WHERE plan_id = ?1), (SELECT count(*) FROM reading WHERE plan_id = ?1)", id).Scan(&newest, &count)
		switch {
		case err != nil:
			return err
		case !newest.Valid:
			return api.ErrNotFound
		case int64(next.Number) != newest.Int64+1:
			return api.ErrConflict
		}
		if err := addRevision(ctx, tx, id, next); err != nil {
			return err
		}
		for i, reading := range readings {
			if _, err := tx.ExecContext(ctx, "INSERT INTO reading (plan_id, ordinal, revision, json) VALUES (?, ?, ?, ?)", id, count+i, next.Number, reading); err != nil {
				return err
			}
		}
		return nil
	})
}

// Delete removes a plan. What it leaves in the file is overwritten with zeros, and
// the write-ahead log, which may have old pages, is emptied; if readers are in the
// way of that, the next deletion or the closing of the file does it.
func (f *File) Delete(ctx context.Context, id string) error {
	err := f.inTransaction(ctx, func(tx *sql.Tx) error {
		done, err := tx.ExecContext(ctx, "DELETE FROM plan WHERE id = ?", id)
		if err != nil {
			return err
		}
		if n, err := done.RowsAffected(); err != nil || n == 0 {
			return errors.Join(err, api.ErrNotFound)
		}
		return nil
	})
	if err != nil {
		return err
	}
	_, err = f.write.ExecContext(context.WithoutCancel(ctx), "PRAGMA wal_checkpoint(TRUNCATE)")
	return err
}

// Ready says whether the database answers.
func (f *File) Ready(ctx context.Context) error {
	var one int
	return f.read.QueryRowContext(ctx, "SELECT EXISTS (SELECT 1 FROM plan)").Scan(&one)
}

// Close ends the use of the file.
func (f *File) Close() error { return errors.Join(f.read.Close(), f.write.Close()) }
