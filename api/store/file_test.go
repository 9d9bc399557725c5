package store

import (
	"bytes"
	"database/sql"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/cookday/api"
)

func openFile(t *testing.T, path string) *File {
	t.Helper()
	f, err := OpenFile(ctx, path)
	must(t, err)
	return f
}

func TestFileIsOpenedAgain(t *testing.T) {
	// Characters that mean something in the address of a database.
	path := filepath.Join(t.TempDir(), "my plans? 100% #1.db")
	f := openFile(t, path)
	must(t, f.Create(ctx, record("a"), revision(0)))
	must(t, f.Append(ctx, "a", [][]byte{[]byte("r")}, revision(1), facts))
	must(t, f.Close())
	f = openFile(t, path)
	defer f.Close()
	if r, err := f.Newest(ctx, "a"); err != nil || !same(r, revision(1)) {
		t.Errorf("%v %v", r, err)
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("mode %v %v", info.Mode(), err)
	}
}

func TestFileIsAsItShouldBe(t *testing.T) {
	f := openFile(t, filepath.Join(t.TempDir(), "plans.db"))
	defer f.Close()
	for pragma, want := range map[string]string{"page_size": "32768", "journal_mode": "wal", "synchronous": "2", "foreign_keys": "1", "secure_delete": "1", "integrity_check": "ok"} {
		var got string
		must(t, f.write.QueryRow("PRAGMA "+pragma).Scan(&got))
		if got != want {
			t.Errorf("%s is %s, want %s", pragma, got, want)
		}
	}
	must(t, f.Create(ctx, record("a"), revision(0)))
	must(t, f.Append(ctx, "a", [][]byte{[]byte("r")}, revision(1), facts))
	for _, change := range []string{"UPDATE revision SET json = x'00'", "UPDATE reading SET json = x'00'"} {
		if _, err := f.write.Exec(change); err == nil || !strings.Contains(err.Error(), "never changed") {
			t.Errorf("%s: %v", change, err)
		}
	}
	if _, err := f.read.Exec("DELETE FROM plan"); err == nil {
		t.Error("a reader could delete")
	}
}

func TestFilesThatAreRefused(t *testing.T) {
	dir := t.TempDir()
	newer := filepath.Join(dir, "newer.db")
	f := openFile(t, newer)
	_, err := f.write.Exec("PRAGMA user_version = 99")
	must(t, err)
	must(t, f.Close())
	foreign := filepath.Join(dir, "foreign.db")
	db, err := sql.Open("sqlite", foreign)
	must(t, err)
	_, err = db.Exec("CREATE TABLE song (title TEXT)")
	must(t, err)
	must(t, db.Close())
	text := filepath.Join(dir, "text.db")
	must(t, os.WriteFile(text, bytes.Repeat([]byte("no database\n"), 100), 0o600))
	for path, want := range map[string]string{
		newer:                                 "was written by a newer cookday",
		foreign:                               "is a database of another program",
		text:                                  "cannot be used to keep plans",
		filepath.Join(dir, "nowhere", "a.db"): "no such file or directory",
		dir:                                   "is a directory",
	} {
		if _, err := OpenFile(ctx, path); err == nil || !strings.Contains(err.Error(), want) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: %v, want a sentence with %q", filepath.Base(path), err, want)
		}
	}
	if left, err := os.ReadFile(text); err != nil || len(left) != 1200 {
		t.Error("a foreign file was changed")
	}
}

// TestDeletionLeavesNothing looks for the bytes of a plan in every file of the store.
func TestDeletionLeavesNothing(t *testing.T) {
	dir := t.TempDir()
	f := openFile(t, filepath.Join(dir, "plans.db"))
	defer f.Close()
	secret := []byte("grandmother's marinade")
	long := api.Revision{JSON: bytes.Repeat(secret, 4000)} // many pages, so that some overflow
	must(t, f.Create(ctx, record("a"), long))
	must(t, f.Create(ctx, record("b"), revision(0)))
	long.Number = 1
	must(t, f.Append(ctx, "a", [][]byte{secret}, long, facts))
	if n := occurrences(t, dir, secret); n == 0 {
		t.Fatal("the search finds nothing even before the deletion")
	}
	must(t, f.Delete(ctx, "a"))
	if n := occurrences(t, dir, secret); n != 0 {
		t.Errorf("%d traces are left", n)
	}
}

func occurrences(t *testing.T, dir string, what []byte) (n int) {
	must(t, filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		n += bytes.Count(data, what)
		return err
	}))
	return n
}

func TestManyProcessesMayOpenAtOnce(t *testing.T) {
	for range 8 { // four at once used to fail in one of thirty tries
		openAtOnce(t, filepath.Join(t.TempDir(), "plans.db"), 8)
	}
}

func openAtOnce(t *testing.T, path string, processes int) {
	t.Helper()
	done := make(chan error, processes)
	for range cap(done) {
		go func() {
			f, err := OpenFile(ctx, path)
			if err == nil {
				err = f.Close()
			}
			done <- err
		}()
	}
	for range cap(done) {
		must(t, <-done)
	}
}
