package planner_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// Many callers at once get the answers that one caller gets: plans, revisions and forecasts
// share nothing but tables that are made once. Under the race detector this is what the planner
// is run for (.ci/run); its other tests call it one at a time.
func TestManyCallersAtOnce(t *testing.T) {
	days, err := filepath.Glob("testdata/nights/*.yaml")
	if err != nil || len(days) < 6 {
		t.Fatal(len(days), err)
	}
	days = days[:6]

	answer := func(day string) (string, error) {
		r, err := schedule.Read([]byte(plantest.ReadFile(t, day)))
		if err != nil {
			return "", err
		}
		p, err := planner.Make(t.Context(), r)
		if err != nil {
			return "", err
		}
		log, err := schedule.ReadLog([]byte(plantest.ReadFile(t, strings.TrimSuffix(day, "yaml")+"csv")), p)
		if err != nil {
			return "", err
		}
		q, err := planner.Revise(t.Context(), p, log, log[len(log)-1].At.Add(time.Hour))
		if err != nil {
			return "", err
		}
		var out bytes.Buffer
		err = json.NewEncoder(&out).Encode([]any{p, q})
		return out.String(), err
	}

	const callers = 8
	got := make([][]string, callers)
	faults := make(chan error, callers)
	var all sync.WaitGroup
	for c := range callers {
		got[c] = make([]string, len(days))
		all.Go(func() {
			for k := range days {
				k = (k + c) % len(days) // two callers on the same day, and others beside them
				said, err := answer(days[k])
				if err != nil {
					faults <- fmt.Errorf("%s: %w", days[k], err)
					return
				}
				got[c][k] = said
			}
		})
	}
	all.Wait()
	close(faults)
	for err := range faults {
		t.Fatal(err)
	}
	for k := range days {
		want, err := answer(days[k])
		if err != nil {
			t.Fatal(err)
		}
		for c := range callers {
			if got[c][k] != want {
				t.Errorf("%s: caller %d got another answer than one alone", days[k], c)
			}
		}
	}
}
