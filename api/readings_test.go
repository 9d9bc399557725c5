package api

import (
	"bytes"
	"encoding/json"
	"net/http"
	"strings"
	"testing"
	"time"

	"github.com/emersion/go-ical"

	"example.com/cookday/schedule"
)

// cookLog are the first readings of a brisket that goes slower than planned.
func cookLog(p schedule.Plan) (text string, now time.Time) {
	on := p.Dishes[0].Batches[0].Milestones[0].Window.Expected
	line := func(minutes int, kind, dish, value string) {
		text += on.Add(time.Duration(minutes)*time.Minute).Format(time.RFC3339) + "," + dish + "," + kind + "," + value + "\r\n"
	}
	text = "time,dish,kind,value\r\n"
	line(-60, "lit", "", "")
	line(0, "on", p.Dishes[0].ID, "")
	line(60, "core", p.Dishes[0].ID, "70 °F")
	line(120, "core", p.Dishes[0].ID, "96 °F")
	line(180, "core", p.Dishes[0].ID, "118 °F")
	return text, on.Add(181 * time.Minute)
}

func TestReadingsMoveThePlan(t *testing.T) {
	cfg, clock := testConfig()
	h := New(cfg).Handler()
	p := planned(t, h, party(t), asYAML...)
	base := "/v1/plans/" + p.ID
	log, now := cookLog(p)
	clock.set(now.Format(time.RFC3339))
	first := ask(t, h, http.MethodGet, base, nil)
	a := ask(t, h, http.MethodPost, base+"/readings", []byte(log), "Content-Type", "text/csv", "If-Match", first.Header.Get("ETag"))
	if a.StatusCode != http.StatusOK {
		t.Fatalf("%d %s", a.StatusCode, a.body)
	}
	revised, err := schedule.ReadPlan(a.body)
	if err != nil || revised.Revision != 1 || revised.ID != p.ID || len(revised.Changes) == 0 {
		t.Fatalf("revision %d, %d changes, %v", revised.Revision, len(revised.Changes), err)
	}
	before, after := takeOff(t, p), takeOff(t, revised)
	if !after.After(before) {
		t.Errorf("a slow brisket is expected at %s, before the readings at %s", after, before)
	}
	t.Logf("take-off moved from %s to %s", before, after)
	if old := ask(t, h, http.MethodGet, base+"?revision=0", nil); !bytes.Equal(old.body, first.body) {
		t.Error("the readings moved the past")
	}
	again := ask(t, h, http.MethodPost, base+"/readings", []byte(log), "Content-Type", "text/csv")
	if again.StatusCode != http.StatusOK || !bytes.Equal(again.body, a.body) {
		t.Error("the same readings made another revision")
	}
	if stale := ask(t, h, http.MethodPost, base+"/readings", []byte(log), "Content-Type", "text/csv", "If-Match", first.Header.Get("ETag")); stale.StatusCode != http.StatusPreconditionFailed {
		t.Errorf("stale: %d", stale.StatusCode)
	}
	more, _ := json.Marshal([]map[string]string{{"time": now.Format(time.RFC3339), "dish": p.Dishes[0].ID, "kind": "core", "value": "120 °F"}})
	b := ask(t, h, http.MethodPost, base+"/readings?at="+now.Add(time.Minute).UTC().Format("2006-01-02T15:04:05Z"), more, asJSON...)
	if r2, err := schedule.ReadPlan(b.body); err != nil || r2.Revision != 2 || len(r2.Log) != 6 {
		t.Errorf("second posting: %d %v, log of %d", b.StatusCode, err, len(r2.Log))
	}
	if kept, _ := cfg.Store.Readings(t.Context(), p.ID); len(kept) != 6 {
		t.Errorf("%d readings are kept", len(kept))
	}
	compareCalendars(t, p, revised, ask(t, h, http.MethodGet, base+".ics?revision=0", nil).body, ask(t, h, http.MethodGet, base+".ics?revision=1", nil).body)
}

func takeOff(t *testing.T, p schedule.Plan) time.Time {
	t.Helper()
	for _, m := range p.Dishes[0].Batches[0].Milestones {
		if m.Kind == schedule.MilestoneTakeOff {
			return m.Window.Expected
		}
	}
	t.Fatal("no take-off")
	return time.Time{}
}

// compareCalendars checks that a revision updates events instead of doubling them:
// the same UIDs for the same steps, SEQUENCE up, starts at the instants of the plan.
func compareCalendars(t *testing.T, first, second schedule.Plan, one, two []byte) {
	t.Helper()
	a, b := events(t, one), events(t, two)
	shared := 0
	for i, p := range []schedule.Plan{first, second} {
		found := []map[string]*ical.Component{a, b}[i]
		for _, s := range p.Steps {
			for uid, e := range found {
				if !strings.Contains(uid, s.ID) {
					continue
				}
				at, err := (&ical.Event{Component: e}).DateTimeStart(time.UTC)
				if err != nil || !at.Equal(s.At.Truncate(time.Minute)) && at.Sub(s.At).Abs() > time.Minute { // the calendar rounds to minutes
					t.Errorf("%s of %s is at %s in the calendar, at %s in the plan (%v)", s.Kind, s.Dish, at, s.At, err)
				}
				if a[uid] != nil && b[uid] != nil {
					shared++
				}
				if n := e.Props.Get(ical.PropSequence); n == nil || n.Value != []string{"0", "1"}[i] {
					t.Errorf("%s has the sequence %v in revision %d", uid, n, i)
				}
			}
		}
	}
	if shared < len(first.Steps)/2 {
		t.Errorf("only %d of %d steps keep their UID", shared, len(first.Steps))
	}
}

// TestCalendarOverAClockChange: the clocks of Chicago go forward at 2:00 on 2027-03-14
// (second Sunday of March, Energy Policy Act of 2005), in the middle of this cook.
func TestCalendarOverAClockChange(t *testing.T) {
	cfg, _ := testConfig()
	h := New(cfg).Handler()
	p := plannedTrial(t, h, []byte(strings.NewReplacer("2027-07-03", "2027-03-14", "18:00", "11:00", `"burger"`, `"brisket"`, "6 oz", "12 lb", `"count": 4`, `"count": 1`).Replace(burgers)), asJSON...)
	if !p.Steps[0].At.Before(time.Date(2027, 3, 14, 8, 0, 0, 0, time.UTC)) {
		t.Fatalf("the cook begins at %s, after the change", p.Steps[0].At)
	}
	found := events(t, ask(t, h, http.MethodGet, "/v1/plans/"+p.ID+".ics", nil).body)
	chicago, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	own := 0
	for _, s := range p.Steps {
		matched := !s.Attended // what happens by itself is in no calendar
		for uid, e := range found {
			at, err := (&ical.Event{Component: e}).DateTimeStart(chicago)
			if err != nil {
				t.Fatal(err)
			}
			if strings.Contains(uid, s.ID) {
				own++
				matched = true
				if at.Sub(s.At).Abs() > time.Minute { // the calendar rounds to minutes
					t.Errorf("%s is at %s in the calendar, at %s in the plan", s.Kind, at, s.At)
				}
			}
			matched = matched || !at.After(s.At.Add(time.Minute)) && s.At.Sub(at) < 6*time.Minute // told with what came within five minutes
		}
		if !matched {
			t.Errorf("%s at %s is not in the calendar", s.Kind, s.At)
		}
	}
	if own < 8 {
		t.Errorf("only %d steps have an entry of their own", own)
	}
}

func events(t *testing.T, text []byte) map[string]*ical.Component {
	t.Helper()
	cal, err := ical.NewDecoder(bytes.NewReader(text)).Decode()
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]*ical.Component{}
	for _, c := range cal.Children {
		if c.Name == ical.CompEvent {
			uid := c.Props.Get(ical.PropUID).Value
			if found[uid] != nil {
				t.Errorf("two events have the UID %s", uid)
			}
			found[uid] = c
		}
	}
	return found
}

func TestReadingsThatAreRefused(t *testing.T) {
	cfg, _ := testConfig()
	h := New(cfg).Handler()
	p := planned(t, h, party(t), asYAML...)
	target := "/v1/plans/" + p.ID + "/readings"
	for name, c := range map[string]struct {
		body, kind string
		status     int
		says       string
	}{
		"no reading":   {"hello", "text/csv", 400, "column"},
		"unknown kind": {"time,dish,kind,value\n04:15,,sung,\n", "text/csv", 400, `"line":2`},
		"other dish":   {`[{"time": "04:15", "dish": "goose", "kind": "core", "value": "150 °F"}]`, typeJSON, 400, `"pointer":"/0/dish"`},
		"one object":   {`{"time": "04:15", "dish": "goose", "kind": "core", "value": "150 °F"}`, typeJSON, 400, `"pointer":"/dish"`},
		"no unit":      {`[{"time": "04:15", "dish": "brisket", "kind": "core", "value": "150"}]`, typeJSON, 400, `"pointer":"/0/value"`},
		"YAML":         {"- time: 04:15", typeYAML, 415, "Content-Type"},
		"empty":        {"", typeJSON, 400, "empty"},
	} {
		a := ask(t, h, http.MethodPost, target, []byte(c.body), "Content-Type", c.kind)
		if a.StatusCode != c.status || !strings.Contains(string(a.body), c.says) {
			t.Errorf("%s: %d %s", name, a.StatusCode, a.body)
		}
	}
	if a := ask(t, h, http.MethodPost, target, []byte("[]"), asJSON...); a.StatusCode != http.StatusOK {
		t.Errorf("an empty log: %d %s", a.StatusCode, a.body)
	}
	if a := ask(t, h, http.MethodPost, target+"?at=yesterday", []byte("[]"), asJSON...); a.StatusCode != http.StatusBadRequest {
		t.Errorf("at=yesterday: %d", a.StatusCode)
	}
}

func TestDue(t *testing.T) {
	cfg, clock := testConfig()
	h := New(cfg).Handler()
	p := planned(t, h, party(t), asYAML...)
	base := "/v1/plans/" + p.ID + "/due"
	// Looking from step to step without a gap sees every step once, in order.
	var seen []string
	at := p.Steps[0].At.Add(-time.Minute)
	for end := p.ServeAt.Add(24 * time.Hour); at.Before(end); at = at.Add(90 * time.Minute) {
		a := ask(t, h, http.MethodGet, base+"?within=90m&at="+at.UTC().Format(time.RFC3339), nil)
		var d Due
		if err := json.Unmarshal(a.body, &d); err != nil || a.StatusCode != http.StatusOK {
			t.Fatalf("%d %s", a.StatusCode, a.body)
		}
		for _, r := range d.Due {
			seen = append(seen, r.Step)
			if r.MinutesUntil < 0 || r.MinutesUntil > 90 {
				t.Errorf("%+v", r)
			}
		}
		if len(d.Due) > 0 && d.NextAt != nil && d.NextAt.Before(at) {
			t.Errorf("next at %s, asked at %s", d.NextAt, at)
		}
	}
	if len(seen) != len(p.Steps) {
		t.Errorf("%d steps were seen of %d", len(seen), len(p.Steps))
	}
	for i := range seen {
		if seen[i] != p.Steps[i].ID {
			t.Errorf("step %d is %s, want %s", i, seen[i], p.Steps[i].ID)
			break
		}
	}
	clock.set(p.Steps[3].At.Add(time.Second).Format(time.RFC3339))
	var d Due
	if err := json.Unmarshal(ask(t, h, http.MethodGet, base, nil).body, &d); err != nil || d.NowText == "" || d.NextText == "" || len(d.Cautions) == 0 || d.WithinMinutes != 15 {
		t.Errorf("%+v %v", d, err)
	}
	for _, query := range []string{"?at=18:00", "?within=x", "?within=P8D", "?within=-5m", "?x=1", "?at=2027-07-03T18:00:00+05:00"} { // + is a blank in a query
		if a := ask(t, h, http.MethodGet, base+query, nil); a.StatusCode != http.StatusBadRequest {
			t.Errorf("%s: %d", query, a.StatusCode)
		}
	}
}
