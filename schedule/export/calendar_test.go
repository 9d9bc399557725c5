package export

import (
	"bytes"
	"io"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	goical "github.com/emersion/go-ical"

	"example.com/cookday/schedule"
)

// calendarOf writes a calendar and reads it back with a parser that is not ours.
func calendarOf(t *testing.T, p schedule.Plan) *goical.Calendar {
	t.Helper()
	var b bytes.Buffer
	if err := Calendar(&b, p); err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(b.String(), "\r\n") {
		if len(line) > 75 || !utf8.ValidString(line) || strings.ContainsAny(line, "\r\n") {
			t.Errorf("line of %d octets: %q", len(line), line)
		}
	}
	d := goical.NewDecoder(&b)
	cal, err := d.Decode()
	if err != nil {
		t.Fatal(err)
	}
	if _, err := d.Decode(); err != io.EOF {
		t.Errorf("more than one object: %v", err)
	}
	if err := goical.NewEncoder(io.Discard).Encode(cal); err != nil { // checks which properties stand how often
		t.Error(err)
	}
	return cal
}

func text(t *testing.T, c *goical.Component, name string) string {
	t.Helper()
	if prop := c.Props.Get(name); prop != nil && prop.ValueType() != goical.ValueText {
		return prop.Value
	}
	s, err := c.Props.Text(name)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func summaries(t *testing.T, p schedule.Plan) string {
	t.Helper()
	var all []string
	for _, e := range calendarOf(t, p).Events() {
		all = append(all, text(t, e.Component, "SUMMARY"))
	}
	return strings.Join(all, "\n")
}

func TestCalendarTellsTheSameInstants(t *testing.T) {
	p := invented()
	starts := map[string]time.Time{}
	alarms := map[string]int{}
	for _, e := range calendarOf(t, p).Events() {
		at, err := e.DateTimeStart(nil)
		if err != nil {
			t.Fatal(err)
		}
		uid := text(t, e.Component, "UID")
		if _, twice := starts[uid]; twice {
			t.Errorf("UID %s comes twice", uid)
		}
		starts[uid], alarms[uid] = at, len(e.Children)
	}
	for _, s := range p.Steps { // none of them within five minutes of another
		at, told := starts[s.ID]
		if told != s.Attended || told && !at.Equal(s.At) {
			t.Errorf("%s, attended %v: %v, want %v", s.Kind, s.Attended, at, s.At)
		}
		if told && alarms[s.ID] != 1 {
			t.Errorf("%s: %d alarms", s.Kind, alarms[s.ID])
		}
	}
}

// A phone bears it: nothing that happens by itself, no bands of hours, one alarm for what
// comes within five minutes, none for a turn; and every step that needs somebody is told.
func TestCalendarIsForAPhone(t *testing.T) {
	for _, day := range days {
		p := keptPlan(t, day)
		events := calendarOf(t, p).Events()
		told := ""
		for _, e := range events {
			if len(e.Children) > 1 {
				t.Errorf("%s: %d alarms at once", day, len(e.Children))
			}
			if text(t, e.Component, "SUMMARY")[:4] == "Turn" && len(e.Children) > 0 {
				t.Errorf("%s: an alarm for a turn", day)
			}
			told += strings.ToLower(text(t, e.Component, "DESCRIPTION")) + "\n"
		}
		hands := 0
		for _, s := range p.Steps {
			words := strings.ToLower(sentence(s.Text))
			if _, rest, labeled := strings.Cut(words, ": "); labeled {
				words = rest
			}
			if s.Attended && s.Kind != schedule.StepFlip {
				hands++
				if !strings.Contains(told, words) {
					t.Errorf("%s: the calendar lacks %q", day, s.Text)
				}
			}
		}
		if len(events) > hands {
			t.Errorf("%s: %d events for %d things to do", day, len(events), hands)
		}
	}
}

// A title has what decides: which batch, and how hot.
func TestCalendarTitlesHaveTheTemperature(t *testing.T) {
	all := "\n" + summaries(t, keptPlan(t, "party")) + "\n"
	for _, want := range []string{"\nWrap: Brisket, 150 °F\n", "\nTake off: Brisket, 203 °F\n", "Put on: Burgers, batch 1 (6 of 12), 525 °F", "Take off: Chickens, 165 °F; Out of the fridge: Burgers, batch 1 (6 of 12)\n", "\nPour the lit coals\n", "\nCheck the grate: 275 °F\n", "Take off: Chickens, 165 °F", "\nSlice: Brisket; Carve: Chickens\n", "; Serve: Brisket, Chickens and Burgers; Shut the grill down\n"} {
		if !strings.Contains(all, want) {
			t.Errorf("no %q in %s", want, all)
		}
	}
}

// The alarm of what is done once people are up does not wake them before: it rings with it.
// Of every other step it goes five minutes before.
func TestCalendarBreaksNoSleep(t *testing.T) {
	p := keptPlan(t, "overnight")
	if len(p.Quiet) == 0 {
		t.Fatal("nobody sleeps")
	}
	with, before := 0, 0
	for _, e := range calendarOf(t, p).Events() {
		at, err := e.DateTimeStart(nil)
		if err != nil {
			t.Fatal(err)
		}
		for _, alarm := range e.Children {
			lead, err := alarm.Props.Get("TRIGGER").Duration()
			if err != nil {
				t.Fatal(err)
			}
			switch lead {
			case 0:
				with++
			case -5 * time.Minute:
				before++
			default:
				t.Errorf("an alarm at %v", lead)
			}
			for _, q := range p.Quiet {
				if rings := at.Add(lead); !rings.Before(q.From) && rings.Before(q.To) && !at.Before(q.To) {
					t.Errorf("%s at %v rings at %v, while people sleep", text(t, e.Component, "SUMMARY"), at, rings)
				}
			}
		}
	}
	if with == 0 || before == 0 {
		t.Errorf("%d alarms with their steps, %d before: the test looks at too little", with, before)
	}
}

func TestCalendarMovesEventsOnRevision(t *testing.T) {
	uids := func(p schedule.Plan) string {
		var all []string
		for _, e := range calendarOf(t, p).Events() {
			all = append(all, text(t, e.Component, "UID"))
			if got := text(t, e.Component, "SEQUENCE"); got != []string{"0", "1"}[p.Revision] {
				t.Errorf("SEQUENCE %s in revision %d", got, p.Revision)
			}
		}
		return strings.Join(all, "\n")
	}
	first := invented()
	second := invented()
	second.Revision = 1
	second.Steps[5].At = second.Steps[5].At.Add(time.Hour)
	second.Dishes[0].Batches[0].Stages[1].To = second.Steps[5].At
	if uids(first) != uids(second) {
		t.Error("UIDs differ between revisions")
	}
}

func TestCalendarEscapesAndFolds(t *testing.T) {
	p := invented()
	name := `Smoked; "pulled", \n חזה בקר 牛胸肉 🥩` + strings.Repeat("é", 200)
	p.Dishes[0].Name = name + "\r\nBEGIN:VALARM\u202e"
	found := false
	for _, e := range calendarOf(t, p).Events() {
		found = found || strings.HasPrefix(text(t, e.Component, "SUMMARY"), "Put on: "+name+" BEGIN:VALARM")
	}
	if !found {
		t.Error("the name did not survive")
	}
}

// Europe/Berlin went from summer to winter time on 31 October 2027 at 03:00 local,
// 01:00 UTC (last Sunday of October: directive 2000/84/EC).
func TestCalendarOverAClockChange(t *testing.T) {
	p := invented()
	p.TZ = "Europe/Berlin"
	shift := time.Date(2027, 10, 31, 0, 30, 0, 0, time.UTC).Sub(p.Steps[3].At)
	for i := range p.Steps {
		p.Steps[i].At = p.Steps[i].At.Add(shift)
	}
	p.Steps[4].At = p.Steps[3].At.Add(time.Hour) // the same clock again
	for i := range p.Steps {
		p.Steps[i].Window, p.Steps[i].Attended = schedule.Window{}, true
	}
	p.Dishes, p.Phases, p.ServeAt = nil, nil, p.Steps[9].At
	cal := calendarOf(t, p)
	for i, e := range cal.Events() {
		if at, err := e.DateTimeStart(nil); err != nil || !at.Equal(p.Steps[i].At) {
			t.Errorf("step %d: %v, want %v", i, at, p.Steps[i].At)
		}
	}
	var zone []string
	for _, c := range cal.Children {
		for _, o := range c.Children {
			if c.Name == "VTIMEZONE" {
				zone = append(zone, o.Name+" "+text(t, o, "DTSTART")+" "+text(t, o, "TZOFFSETFROM")+" "+text(t, o, "TZOFFSETTO"))
			}
		}
	}
	want := "DAYLIGHT 20270328T020000 +0100 +0200\nSTANDARD 20271031T030000 +0200 +0100"
	if got := strings.Join(zone, "\n"); got != want {
		t.Errorf("zone:\n%s\nwant:\n%s", got, want)
	}
	if sheet := textOf(t, p, Options{}); !strings.Contains(sheet, "2:30 AM CEST") || !strings.Contains(sheet, "2:30 AM CET") ||
		!strings.Contains(sheet, "The clocks go back by 1 hr: 3:00 AM becomes 2:00 AM.") {
		t.Error(sheet)
	}
}

func TestCalendarOfADayWithoutPlan(t *testing.T) {
	p := invented()
	p.Feasible, p.Steps, p.Dishes, p.Phases = false, nil, nil, nil
	events := calendarOf(t, p).Events()
	if len(events) != 1 || !strings.Contains(text(t, events[0].Component, "DESCRIPTION"), "Light an hour earlier") {
		t.Errorf("%v", events)
	}
}
