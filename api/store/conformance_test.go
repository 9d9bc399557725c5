package store

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"example.com/cookday/api"
	"example.com/cookday/api/store/testdb"
)

// Every store passes this suite; one that keeps plans on a disk is opened again too.

type opener func(t *testing.T) api.Store

func TestStores(t *testing.T) {
	stores := map[string]opener{
		"memory": func(*testing.T) api.Store { return NewMemory() },
		"file":   func(t *testing.T) api.Store { return openFile(t, filepath.Join(t.TempDir(), "plans.db")) },
	}
	if testdb.Named() {
		stores["postgres"] = func(t *testing.T) api.Store { return openPostgres(t, testdb.Schema(t)) }
	}
	for name, open := range stores {
		t.Run(name, func(t *testing.T) { conform(t, open) })
	}
}

func conform(t *testing.T, open opener) {
	tests := map[string]func(*testing.T, api.Store){
		"keeps what it was given":     keepsWhatItWasGiven,
		"knows nothing of others":     knowsNothingOfOthers,
		"adds both or neither":        addsBothOrNeither,
		"deletes everything":          deletesEverything,
		"keeps its bytes to itself":   keepsItsBytes,
		"gives one of many the place": givesOneOfManyThePlace,
		"stops when told":             stopsWhenTold,
		"keeps many revisions":        keepsManyRevisions,
		"finds by feed and key":       findsByFeedAndKey,
		"lists and expires":           listsAndExpires,
		"marks follow plans":          marksFollowPlans,
		"changes are not missed":      changesAreNotMissed,
		"leases hold":                 leasesHold,
		"tries again":                 triesAgain,
		"buries the dead":             buriesTheDead,
	}
	for name, test := range tests {
		t.Run(name, func(t *testing.T) {
			s := open(t)
			defer s.Close()
			if err := s.Ready(context.Background()); err != nil {
				t.Fatal(err)
			}
			test(t, s)
		})
	}
}

var ctx = context.Background()

func revision(n int) api.Revision {
	at := time.Date(2027, 7, 3, 12, n, 0, 123_000_000, time.UTC)
	return api.Revision{Number: n, At: at, JSON: fmt.Appendf(nil, `{"revision": %d}`, n)}
}

// record is that of a plan whose meal is on the day of its revisions.
func record(id string) api.Record { return api.Record{ID: id, Facts: facts} }

var facts = api.Facts{Name: "Saturday", Feasible: true, Serve: time.Date(2027, 7, 3, 23, 0, 0, 0, time.UTC)}

// log is what a store gave as readings.
func log(list []api.Reading) string {
	var all []string
	for _, r := range list {
		all = append(all, fmt.Sprintf("%d %s", r.Revision, r.JSON))
	}
	return strings.Join(all, ", ")
}

func same(a, b api.Revision) bool {
	return a.Number == b.Number && a.At.Equal(b.At) && string(a.JSON) == string(b.JSON)
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

func keepsWhatItWasGiven(t *testing.T, s api.Store) {
	must(t, s.Create(ctx, record("a"), revision(0)))
	must(t, s.Append(ctx, "a", [][]byte{[]byte("r0"), []byte("r1")}, revision(1), facts))
	must(t, s.Append(ctx, "a", nil, revision(2), facts))
	must(t, s.Append(ctx, "a", [][]byte{[]byte("r2")}, revision(3), facts))
	newest, err := s.Newest(ctx, "a")
	if err != nil || !same(newest, revision(3)) {
		t.Errorf("newest %v %v", newest, err)
	}
	for n := range 4 {
		if r, err := s.Revision(ctx, "a", n); err != nil || !same(r, revision(n)) {
			t.Errorf("revision %d: %v %v", n, r, err)
		}
	}
	history, err := s.History(ctx, "a", -1, 10)
	if err != nil || len(history) != 4 || !same(history[0], revision(0)) || !same(history[3], revision(3)) {
		t.Errorf("history %v %v", history, err)
	}
	readings, err := s.Readings(ctx, "a")
	if err != nil || log(readings) != "1 r0, 1 r1, 3 r2" {
		t.Errorf("readings %s %v", log(readings), err)
	}
}

func knowsNothingOfOthers(t *testing.T, s api.Store) {
	must(t, s.Create(ctx, record("a"), revision(0)))
	if err := s.Create(ctx, record("a"), revision(0)); !errors.Is(err, api.ErrExists) {
		t.Errorf("twice: %v", err)
	}
	for what, call := range map[string]func() error{
		"newest":    func() error { _, err := s.Newest(ctx, "b"); return err },
		"revision":  func() error { _, err := s.Revision(ctx, "a", 1); return err },
		"below":     func() error { _, err := s.Revision(ctx, "a", -1); return err },
		"history":   func() error { _, err := s.History(ctx, "b", -1, 10); return err },
		"readings":  func() error { _, err := s.Readings(ctx, "b"); return err },
		"append":    func() error { return s.Append(ctx, "b", nil, revision(1), facts) },
		"delete":    func() error { return s.Delete(ctx, "b") },
		"injection": func() error { _, err := s.Newest(ctx, "a' OR '1'='1"); return err },
	} {
		if err := call(); !errors.Is(err, api.ErrNotFound) {
			t.Errorf("%s: %v", what, err)
		}
	}
	if list, err := s.Readings(ctx, "a"); err != nil || list == nil || len(list) != 0 {
		t.Errorf("no readings: %v %v", list, err)
	}
}

func addsBothOrNeither(t *testing.T, s api.Store) {
	must(t, s.Create(ctx, record("a"), revision(0)))
	for _, n := range []int{0, 2, -1} {
		if err := s.Append(ctx, "a", [][]byte{[]byte("r")}, revision(n), facts); !errors.Is(err, api.ErrConflict) {
			t.Errorf("revision %d after 0: %v", n, err)
		}
	}
	readings, err := s.Readings(ctx, "a")
	if err != nil || len(readings) != 0 {
		t.Errorf("a reading of a refused revision stayed: %s %v", log(readings), err)
	}
}

func deletesEverything(t *testing.T, s api.Store) {
	must(t, s.Create(ctx, record("a"), revision(0)))
	must(t, s.Create(ctx, record("b"), revision(0)))
	must(t, s.Append(ctx, "a", [][]byte{[]byte("r")}, revision(1), facts))
	must(t, s.Delete(ctx, "a"))
	if _, err := s.Newest(ctx, "a"); !errors.Is(err, api.ErrNotFound) {
		t.Errorf("still there: %v", err)
	}
	if _, err := s.Newest(ctx, "b"); err != nil {
		t.Errorf("the other one went too: %v", err)
	}
	must(t, s.Create(ctx, record("a"), revision(0)))
	if list, err := s.Readings(ctx, "a"); err != nil || len(list) != 0 {
		t.Errorf("readings of the deleted plan: %s %v", log(list), err)
	}
}

func keepsItsBytes(t *testing.T, s api.Store) {
	given := revision(0)
	must(t, s.Create(ctx, record("a"), given))
	given.JSON[0] = 'x'
	got, err := s.Newest(ctx, "a")
	must(t, err)
	got.JSON[0] = 'y'
	if again, err := s.Newest(ctx, "a"); err != nil || !same(again, revision(0)) {
		t.Errorf("a caller changed the store: %s %v", again.JSON, err)
	}
}

func givesOneOfManyThePlace(t *testing.T, s api.Store) {
	must(t, s.Create(ctx, record("a"), revision(0)))
	var wg sync.WaitGroup
	results := make(chan error, 16)
	for i := range cap(results) {
		wg.Go(func() {
			if i%2 == 0 {
				s.Newest(ctx, "a")
			}
			results <- s.Append(ctx, "a", [][]byte{fmt.Append(nil, i)}, revision(1), facts)
		})
	}
	wg.Wait()
	close(results)
	won := 0
	for err := range results {
		switch {
		case err == nil:
			won++
		case !errors.Is(err, api.ErrConflict):
			t.Error(err)
		}
	}
	if list, err := s.Readings(ctx, "a"); won != 1 || err != nil || len(list) != 1 {
		t.Errorf("%d won, readings %s %v", won, log(list), err)
	}
}

func stopsWhenTold(t *testing.T, s api.Store) {
	ended, cancel := context.WithCancel(ctx)
	cancel()
	if err := s.Create(ended, record("a"), revision(0)); !errors.Is(err, context.Canceled) {
		t.Errorf("create: %v", err)
	}
	if _, err := s.Newest(ctx, "a"); !errors.Is(err, api.ErrNotFound) {
		t.Errorf("was kept all the same: %v", err)
	}
}
