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
)

// pageBytes of a new file: a page takes eleven packed revisions, where one of 4 KiB
// would take one and leave a third of itself empty.
const pageBytes = 32 << 10

// walPages is how long the log beside the file grows before it is taken over: as many
// bytes as the database's own thousand pages of 4 KiB.
const walPages = 128

func open(path string, options ...string) (*sql.DB, error) {
	absolute, err := filepath.Abs(path)
	if err != nil {
		return nil, err
	}
	name := url.URL{Scheme: "file", Path: absolute} // escapes what a path may contain
	options = append([]string{"_pragma=busy_timeout(5000)", "_pragma=foreign_keys(ON)"}, options...)
	return sql.Open("sqlite", name.String()+"?"+strings.Join(options, "&"))
}

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
	// Who changes a file to a log beside it, or closes it last, holds all of it for a
	// moment in which SQLite turns others away without waiting (sqlite.org/wal.html,
	// "Sometimes Queries Return SQLITE_BUSY In WAL Mode").
	var f *File
	err = patiently(ctx, func() error {
		f, err = tryFile(ctx, path)
		return err
	})
	if err != nil {
		return nil, err
	}
	keepSpare(f.spare)
	return f, nil
}

// tryFile opens a file once.
func tryFile(ctx context.Context, path string) (*File, error) {
	f := &File{spare: path + "-spare"}
	if err := f.openWriter(ctx, path); err != nil {
		return nil, errors.Join(err, f.Close())
	}
	if err := f.openReaders(ctx, path); err != nil {
		return nil, errors.Join(err, f.Close())
	}
	return f, nil
}

// openWriter opens the connection that writes, and brings the file to this program's
// schema.
func (f *File) openWriter(ctx context.Context, path string) (err error) {
	// FULL: a commit returns once the log is on the disk, so that what was acknowledged
	// survives a loss of power too.
	f.write, err = open(path, "_txlock=immediate", "_pragma=synchronous(FULL)",
		"_pragma=secure_delete(ON)", fmt.Sprintf("_pragma=wal_autocheckpoint(%d)", walPages))
	if err != nil {
		return err
	}
	f.write.SetMaxOpenConns(1)
	// Both stay with the file; the size of its pages only while there is nothing in it.
	if _, err := f.write.ExecContext(ctx, fmt.Sprintf("PRAGMA page_size = %d; PRAGMA journal_mode = WAL", pageBytes)); err != nil {
		return fmt.Errorf("%s cannot be used to keep plans: %w", path, err)
	}
	return migrate(ctx, f.write, path)
}

func (f *File) openReaders(ctx context.Context, path string) (err error) {
	for _, db := range []**sql.DB{&f.read, &f.watch} {
		if *db, err = open(path, "_pragma=query_only(ON)"); err != nil {
			return err
		}
	}
	f.read.SetMaxOpenConns(readers)
	f.read.SetMaxIdleConns(readers)
	f.watch.SetMaxOpenConns(1)
	for where, statement := range map[string]**sql.Stmt{"id = ?": &f.byID, "feed = ?": &f.byFeed} {
		if *statement, err = f.read.PrepareContext(ctx, "SELECT "+columns+" FROM plan WHERE "+where); err != nil {
			return fmt.Errorf("%s cannot be used to keep plans: %w", path, err)
		}
	}
	return nil
}

// patience is how long a file that another process holds is tried again, and between
// how long pauses.
const patience, pause = 5 * time.Second, 5 * time.Millisecond

// patiently does the work again while another process holds the file. It gives up with
// the last error after five seconds or when the caller does.
func patiently(ctx context.Context, work func() error) error {
	ctx, cancel := context.WithTimeout(ctx, patience)
	defer cancel()
	for {
		err := work()
		var known *sqlite.Error
		if !errors.As(err, &known) || known.Code()&0xff != sqlite3.SQLITE_BUSY {
			return err
		}
		select {
		case <-ctx.Done():
			return err
		case <-time.After(pause):
		}
	}
}
