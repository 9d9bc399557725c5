package api

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

// sse is one server-sent event, read as the standard of HTML says.
type sse struct{ id, kind, data string }

// readEvents reads until the text ends.
func readEvents(text string) (events []sse, comments int) {
	var e sse
	for line := range strings.SplitSeq(text, "\n") {
		field, value, _ := strings.Cut(line, ":")
		value = strings.TrimPrefix(value, " ")
		switch {
		case line == "":
			if e.data != "" {
				events = append(events, e)
			}
			e.kind, e.data = "", ""
		case field == "":
			comments++
		case field == "id":
			e.id = value
		case field == "event":
			e.kind = value
		case field == "data":
			e.data += value
		}
	}
	return events, comments
}

// streamed takes up the stream from its beginning and gives what comes at once.
func streamed(t testing.TB, h http.Handler, clock *testClock) string {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	return listen(t, h, ctx, cancel, "/v1/plans/"+testID+"/stream", "0.0")
}

// listen reads a stream that is cancelled as soon as it goes to sleep: what is due is
// written before that.
func listen(t testing.TB, h http.Handler, ctx context.Context, cancel func(), target, last string) string {
	t.Helper()
	return listenFor(t, h, ctx, cancel, target, last, 100*time.Millisecond)
}

// listenFor hangs up after so long; at once the client gets what is written before it
// sleeps.
func listenFor(t testing.TB, h http.Handler, ctx context.Context, cancel func(), target, last string, long time.Duration) string {
	t.Helper()
	r := httptest.NewRequestWithContext(ctx, http.MethodGet, target, nil)
	if last != "" {
		r.Header.Set("Last-Event-ID", last)
	}
	time.AfterFunc(long, cancel)
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	validate(t, r, nil, answer{w.Result(), w.Body.Bytes()})
	return w.Body.String()
}

// stepPlan is a plan with steps at minutes after noon of a day.
func stepPlan(revision int, minutes map[string]int) schedule.Plan {
	p := schedule.Plan{Format: 1, ID: testID, Revision: revision, Feasible: true, TZ: "UTC", ServeAt: noon(600)}
	for id, m := range minutes {
		p.Steps = append(p.Steps, schedule.Step{ID: id, At: noon(m), Kind: "look", Text: id})
	}
	return p
}

func noon(minutes int) time.Time {
	return time.Date(2027, 7, 3, 12, 0, 0, 0, time.UTC).Add(time.Duration(minutes) * time.Minute)
}

func keptPlan(t testing.TB, p schedule.Plan, at time.Time) Revision {
	t.Helper()
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	return Revision{p.Revision, at, text}
}

func stepsOf(t testing.TB, text string) (ids []string, last string) {
	t.Helper()
	events, _ := readEvents(text)
	for _, e := range events {
		var r Reminder
		if err := json.Unmarshal([]byte(e.data), &r); err != nil {
			t.Fatalf("%q: %v", e.data, err)
		}
		switch e.kind {
		case "step":
			ids = append(ids, r.Step)
		case "revision":
			ids = append(ids, fmt.Sprintf("revision %d", r.Revision))
		}
		last = e.id
	}
	return ids, last
}

func TestStreamResumesOverRevisions(t *testing.T) {
	cfg, clock := testConfig()
	store := cfg.Store.(*mapStore)
	first := stepPlan(0, map[string]int{"a": 10, "b": 20, "c": 30, "d": 40, "z": -30})
	store.revisions[testID] = []Revision{keptPlan(t, first, noon(0))}
	h := New(cfg).Handler()
	stream := func(last string) ([]string, string) {
		ctx, cancel := context.WithCancel(context.Background())
		defer cancel()
		return stepsOf(t, listen(t, h, ctx, cancel, "/v1/plans/"+testID+"/stream", last))
	}
	expect := func(what string, got []string, want ...string) {
		t.Helper()
		if strings.Join(got, " ") != strings.Join(want, " ") {
			t.Errorf("%s: got %v, want %v", what, got, want)
		}
	}
	clock.set(noon(15).Format(time.RFC3339))
	got, fresh := stream("")
	expect("fresh", got)
	got, last := stream("0.0")
	expect("from the beginning", got, "z", "a") // z was overdue when the plan was made
	if fresh != last {
		t.Errorf("a fresh stream is at %s, one that was read at %s", fresh, last)
	}
	clock.set(noon(25).Format(time.RFC3339))
	got, last = stream(last)
	expect("after a", got, "b")
	got, last = stream(last)
	expect("nothing twice", got)
	// At 26 b is moved to 50 and c into the past; a is done.
	second := stepPlan(1, map[string]int{"a": 10, "b": 50, "c": 22, "d": 40})
	second.Steps = append(second.Steps[:0:0], second.Steps...)
	for i := range second.Steps {
		second.Steps[i].Done = second.Steps[i].ID == "a"
	}
	store.revisions[testID] = append(store.revisions[testID], keptPlan(t, second, noon(26)))
	clock.set(noon(27).Format(time.RFC3339))
	got, last = stream(last)
	expect("revision", got, "revision 1", "c")
	clock.set(noon(60).Format(time.RFC3339))
	got, end := stream(last)
	expect("later", got, "d", "b")
	got, _ = stream(end)
	expect("after the end", got)
	got, _ = stream("0.1")
	expect("from long ago", got, "a", "b", "revision 1", "c", "d", "b")
	for _, bad := range []string{"x", "1", "9.0", "0.99", "-1.0", "0.0.0", "99999999999999999999.0"} {
		if a := ask(t, h, http.MethodGet, "/v1/plans/"+testID+"/stream", nil, "Last-Event-ID", bad); a.StatusCode != http.StatusBadRequest {
			t.Errorf("%s: %d", bad, a.StatusCode)
		}
	}
}

// TestStreamIsLive goes over a real connection: steps as the clock goes on,
// heartbeats, a revision and a deletion.
func TestStreamIsLive(t *testing.T) {
	cfg, clock := testConfig()
	cfg.Heartbeat = 20 * time.Millisecond
	store := cfg.Store.(*mapStore)
	store.revisions[testID] = []Revision{keptPlan(t, stepPlan(0, map[string]int{"a": 10, "b": 20}), noon(0))}
	clock.set(noon(5).Format(time.RFC3339))
	s := New(cfg)
	server := httptest.NewServer(s.Handler())
	defer server.Close()
	response, err := http.Get(server.URL + "/v1/plans/" + testID + "/stream")
	if err != nil {
		t.Fatal(err)
	}
	defer response.Body.Close()
	lines := bufio.NewScanner(response.Body)
	var seen bytes.Buffer
	until := func(mark string) {
		t.Helper()
		for lines.Scan() {
			seen.WriteString(lines.Text() + "\n")
			if strings.Contains(lines.Text(), mark) {
				return
			}
		}
		t.Fatalf("the stream ended before %q:\n%s", mark, seen.String())
	}
	until("event: plan")
	until(": still here")
	clock.set(noon(11).Format(time.RFC3339))
	until(`"step":"a"`)
	store.Append(context.Background(), testID, nil, keptPlan(t, stepPlan(1, map[string]int{"a": 10, "b": 30}), noon(12)), Facts{})
	s.bell.ring(testID)
	until("event: revision")
	clock.set(noon(31).Format(time.RFC3339))
	until(`"step":"b"`)
	store.Delete(context.Background(), testID)
	s.bell.ring(testID)
	until("event: deleted")
	for lines.Scan() {
		seen.WriteString(lines.Text() + "\n")
	}
	if ids, _ := stepsOf(t, seen.String()); strings.Join(ids, " ") != "a revision 1 b" {
		t.Errorf("got %v", ids)
	}
	if len(s.bell.listeners) != 0 || len(s.places.taken) != 0 || len(s.scores.plans) != 0 {
		t.Error("the stream left something behind")
	}
}

func TestStreamsAreCountedAndEnd(t *testing.T) {
	cfg, clock := testConfig()
	cfg.Streams = 1
	cfg.Store.(*mapStore).revisions[testID] = []Revision{keptPlan(t, stepPlan(0, map[string]int{"a": 10}), noon(0))}
	clock.set(noon(5).Format(time.RFC3339))
	s := New(cfg)
	done := make(chan struct{})
	go func() {
		defer close(done)
		s.Handler().ServeHTTP(httptest.NewRecorder(), httptest.NewRequest(http.MethodGet, "/v1/plans/"+testID+"/stream", nil))
	}()
	for s.taken() == 0 {
		time.Sleep(time.Millisecond)
	}
	if a := ask(t, s.Handler(), http.MethodGet, "/v1/plans/"+testID+"/stream", nil); a.StatusCode != http.StatusServiceUnavailable || a.Header.Get("Retry-After") == "" {
		t.Errorf("second stream: %d", a.StatusCode)
	}
	s.CloseStreams()
	<-done
}
