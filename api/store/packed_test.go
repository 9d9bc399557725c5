package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.com/cookday/api"
)

// long is a revision of some size of which little changes from number to number.
func long(n int) api.Revision {
	dice := rand.New(rand.NewPCG(7, 7))
	r := revision(n)
	steps := make([]string, 200)
	for i := range steps {
		steps[i] = fmt.Sprintf("step %d at %d", i, dice.Uint64())
	}
	steps[n%len(steps)] = fmt.Sprintf("moved by revision %d", n)
	r.JSON, _ = json.Marshal(map[string]any{"revision": n, "steps": steps})
	return r
}

// keepsManyRevisions: each comes back byte for byte, alone and in pages, across those that
// are packed alone.
func keepsManyRevisions(t *testing.T, s api.Store) {
	const many = 2*packEvery + 10
	must(t, s.Create(ctx, record("a"), long(0)))
	for n := 1; n < many; n++ {
		must(t, s.Append(ctx, "a", nil, long(n), facts))
	}
	for _, n := range []int{0, 1, packEvery - 1, packEvery, packEvery + 1, 2 * packEvery, many - 1} {
		if r, err := s.Revision(ctx, "a", n); err != nil || !same(r, long(n)) {
			t.Errorf("revision %d: %v", n, err)
		}
	}
	for _, page := range []int{1, 7, packEvery, many, many + 5} {
		next := 0
		for {
			list, err := s.History(ctx, "a", next-1, page)
			must(t, err)
			if len(list) == 0 {
				break
			}
			for _, r := range list {
				if !same(r, long(next)) {
					t.Fatalf("page of %d: revision %d is not what was kept", page, next)
				}
				next++
			}
		}
		if next != many {
			t.Errorf("pages of %d end at %d of %d", page, next, many)
		}
	}
	if r, err := s.Newest(ctx, "a"); err != nil || !same(r, long(many-1)) {
		t.Errorf("newest: %v", err)
	}
}

func findsByFeedAndKey(t *testing.T, s api.Store) {
	a, b := record("a"), record("b")
	a.Feed, a.Key, a.Body, a.NotBefore, a.Trial = "feed-a", "key-a", "body-a", revision(0).At, true
	must(t, s.Create(ctx, a, revision(0)))
	must(t, s.Create(ctx, b, revision(0)))
	for what, clash := range map[string]api.Record{"feed": {ID: "c", Feed: "feed-a"}, "key": {ID: "c", Key: "key-a"}, "id": {ID: "a"}} {
		if err := s.Create(ctx, clash, revision(0)); !errors.Is(err, api.ErrExists) {
			t.Errorf("a second %s: %v", what, err)
		}
	}
	for what, find := range map[string]func() (api.Record, error){
		"id": func() (api.Record, error) { return s.Plan(ctx, "a") }, "feed": func() (api.Record, error) { return s.ByFeed(ctx, "feed-a") },
		"key": func() (api.Record, error) { return s.ByKey(ctx, "key-a") },
	} {
		r, err := find()
		want := a
		want.Made, want.Changed = revision(0).At, revision(0).At
		if err != nil || r != want {
			t.Errorf("by %s: %+v, want %+v, %v", what, r, want, err)
		}
	}
	for _, none := range []string{"", "feed-b"} {
		if _, err := s.ByFeed(ctx, none); !errors.Is(err, api.ErrNotFound) {
			t.Errorf("feed %q: %v", none, err)
		}
		if _, err := s.ByKey(ctx, none); !errors.Is(err, api.ErrNotFound) {
			t.Errorf("key %q: %v", none, err)
		}
	}
	must(t, s.SetFeed(ctx, "a", ""))
	if _, err := s.ByFeed(ctx, "feed-a"); !errors.Is(err, api.ErrNotFound) {
		t.Errorf("a revoked feed: %v", err)
	}
	must(t, s.SetFeed(ctx, "b", "feed-a"))
	if err := s.SetFeed(ctx, "a", "feed-a"); !errors.Is(err, api.ErrExists) {
		t.Errorf("another plan's feed: %v", err)
	}
	if err := s.SetFeed(ctx, "c", "x"); !errors.Is(err, api.ErrNotFound) {
		t.Errorf("feed of no plan: %v", err)
	}
	later := facts
	later.Name, later.Feasible, later.NotBefore = "Sunday", false, time.Time{}
	must(t, s.Append(ctx, "a", nil, revision(1), later))
	if r, err := s.Plan(ctx, "a"); err != nil || r.Facts != later || r.Newest != 1 || !r.Changed.Equal(revision(1).At) || !r.Made.Equal(revision(0).At) {
		t.Errorf("%+v %v", r, err)
	}
}

func listsAndExpires(t *testing.T, s api.Store) {
	var want []string
	for i := range 5 {
		id := fmt.Sprint("plan ", i)
		r := record(id)
		r.Serve = facts.Serve.Add(time.Duration(i) * time.Hour)
		must(t, s.Create(ctx, r, revision(0)))
		want = append([]string{id}, want...)
	}
	var got []string
	for before := ""; ; {
		list, err := s.List(ctx, before, 2)
		must(t, err)
		if len(list) == 0 {
			break
		}
		for _, r := range list {
			got, before = append(got, r.ID), r.ID
		}
	}
	if strings.Join(got, ",") != strings.Join(want, ",") {
		t.Errorf("listed %v, want %v", got, want)
	}
	gone, err := s.Expire(ctx, facts.Serve.Add(90*time.Minute))
	if err != nil || len(gone) != 2 {
		t.Errorf("gone: %v %v", gone, err)
	}
	if gone, err = s.Expire(ctx, revision(0).At); err != nil || len(gone) != 0 {
		t.Errorf("changed after that: %v %v", gone, err)
	}
	if list, err := s.List(ctx, "", 10); err != nil || len(list) != 3 {
		t.Errorf("left: %v %v", list, err)
	}
}

// TestFileOfTheSchemaBefore: a file of the first edition is taken over with all it has.
func TestFileOfTheSchemaBefore(t *testing.T) {
	path := filepath.Join(t.TempDir(), "plans.db")
	db, err := sql.Open("sqlite", path)
	must(t, err)
	text, err := migrations.ReadFile("migrations/0001_plans.sql")
	must(t, err)
	for _, statement := range []string{string(text), "INSERT INTO plan VALUES ('a'), ('b')",
		`INSERT INTO revision VALUES ('a', 0, 1000, CAST('{"name":"Saturday","feasible":true,"serve_at":"2027-07-03T18:00:00-05:00"}' AS BLOB))`,
		`INSERT INTO revision VALUES ('a', 1, 2000, CAST('{"feasible":false,"serve_at":"2027-07-03T19:00:00-05:00"}' AS BLOB))`,
		`INSERT INTO revision VALUES ('b', 0, 3000, CAST('{}' AS BLOB))`,
		`INSERT INTO reading VALUES ('a', 0, 1, CAST('r0' AS BLOB))`,
		fmt.Sprintf("PRAGMA user_version = 1; PRAGMA application_id = %d", applicationID)} {
		_, err := db.Exec(statement)
		must(t, err)
	}
	must(t, db.Close())
	f := openFile(t, path)
	defer f.Close()
	r, err := f.Plan(ctx, "a")
	if err != nil || r.Name != "" || r.Feasible || r.Newest != 1 || r.Made.UnixMilli() != 1000 || r.Changed.UnixMilli() != 2000 || r.Serve.Format(time.RFC3339) != "2027-07-04T00:00:00Z" {
		t.Errorf("%+v %v", r, err)
	}
	if v, err := f.Newest(ctx, "a"); err != nil || v.Number != 1 || !strings.Contains(string(v.JSON), "19:00") {
		t.Errorf("%v %v", v, err)
	}
	must(t, f.Append(ctx, "a", [][]byte{[]byte("r1")}, revision(2), facts))
	history, err := f.History(ctx, "a", -1, 10)
	if err != nil || len(history) != 3 || !strings.Contains(string(history[0].JSON), "Saturday") || !same(history[2], revision(2)) {
		t.Errorf("%v %v", history, err)
	}
	if readings, err := f.Readings(ctx, "a"); err != nil || log(readings) != "1 r0, 2 r1" {
		t.Errorf("%s %v", log(readings), err)
	}
	if list, err := f.List(ctx, "", 10); err != nil || len(list) != 2 || list[0].ID != "b" {
		t.Errorf("%v %v", list, err)
	}
}

// TestDisks: a disk that is full, one that cannot be written, and a file that something
// else has written into.
func TestDisks(t *testing.T) {
	path := filepath.Join(t.TempDir(), "plans.db")
	f := openFile(t, path)
	defer f.Close()
	must(t, f.Create(ctx, record("a"), long(0)))
	must(t, f.Ready(ctx))
	var pages int
	must(t, f.write.QueryRow("PRAGMA page_count").Scan(&pages))
	_, err := f.write.Exec(fmt.Sprintf("PRAGMA max_page_count = %d", pages))
	must(t, err)
	for n := 1; err == nil && n < 1000; n++ {
		err = f.Append(ctx, "a", [][]byte{make([]byte, 10_000)}, long(n), facts)
	}
	if !errors.Is(err, api.ErrFull) {
		t.Errorf("full: %v", err)
	}
	if r, err := f.Newest(ctx, "a"); err != nil || !same(r, long(r.Number)) {
		t.Errorf("after it was full: %v", err)
	}
	_, err = f.write.Exec("PRAGMA query_only = ON")
	must(t, err)
	if err := f.Ready(ctx); !errors.Is(err, api.ErrReadOnly) {
		t.Errorf("read-only: %v", err)
	}
}

func TestACorruptedFileIsSaid(t *testing.T) {
	path := filepath.Join(t.TempDir(), "plans.db")
	f := openFile(t, path)
	must(t, f.Create(ctx, record("a"), long(0)))
	for n := 1; n < 40; n++ {
		must(t, f.Append(ctx, "a", nil, long(n), facts))
	}
	must(t, f.Close())
	data, err := os.ReadFile(path)
	must(t, err)
	for i := pageBytes; i < len(data); i++ { // all but the first page
		data[i] ^= 0x5a
	}
	must(t, os.WriteFile(path, data, 0o600))
	if f, err = OpenFile(ctx, path); err != nil {
		return // said when it is opened
	}
	defer f.Close()
	if _, err := f.Newest(context.Background(), "a"); err == nil || errors.Is(err, api.ErrNotFound) {
		t.Errorf("a corrupted file: %v", err)
	}
}
