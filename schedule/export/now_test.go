package export_test

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/export"
	"example.com/cookday/schedule/internal/plantest"
)

// A butt that is late for four in the afternoon: an invented day.
func lateDay(t *testing.T) schedule.Plan {
	t.Helper()
	p := plantest.Plan(t, "format: 1\nserve: {date: 2027-07-04, time: \"16:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 22 in}\n"+
		"dishes:\n  - {id: butt, name: Pork butt, cut: pork-butt, weight: 8 lb, level: 250 °F, wrap: none, target: 200 °F}\n")
	return plantest.Revised(t, p, "time,dish,kind,value\n22:40,butt,on,\n05:00,butt,core,140 °F\n06:20,,refuelled,\n09:00,butt,core,152 °F\n12:00,butt,core,158 °F\n", "2027-07-04 12:05")
}

// before says whether all parts are in a text, in this order.
func inOrder(t *testing.T, text string, parts ...string) {
	t.Helper()
	at := 0
	for _, part := range parts {
		i := strings.Index(text[at:], part)
		if i < 0 {
			t.Fatalf("%q is not in its place in\n%s", part, text)
		}
		at += i + len(part)
	}
}

// Every short form of a day under way carries the chance, the warning and the next steps,
// and the page begins with what to do now.
func TestShortFormsOfADayUnderWay(t *testing.T) {
	p := lateDay(t)
	var now, brief, page bytes.Buffer
	for _, err := range []error{export.Now(&now, p, export.Options{}), export.Text(&brief, p, export.Options{Brief: 3, Now: *p.RevisedAt}), export.Sheet(&page, p, export.Options{})} {
		if err != nil {
			t.Fatal(err)
		}
	}
	inOrder(t, now.String(), "12:05 PM, Sunday", "% that everything", "Do now", "Read the grate first", "Next", "Worries", "At 4:00 PM: ", "What you could do now", "On the fire", "158 °F at 12:00 PM")
	for _, off := range p.Steps {
		if early := off.Window.Early; off.Kind == schedule.StepTakeOff && !off.Done && early.Before(time.Date(2027, 7, 4, 19, 0, 0, 0, time.UTC)) && !strings.Contains(now.String(), "it may be done early") {
			t.Errorf("it may be off at %s, and nothing says to measure it:\n%s", early, now.String())
		}
	}
	inOrder(t, brief.String(), "Eat at ", "% that everything", "! At 4:00 PM: ", "[ ]", "[ ]")
	inOrder(t, strings.ReplaceAll(page.String(), "\u00a0", " "), "<h2>Do now</h2>", "Read the grate first", "<h2>Worries</h2>", "At 4:00 PM: ", "<h2>Next</h2>", "<h2>The meal</h2>", "Eat at", "% that everything", "<h2>On the fire</h2>", "158 °F", "<h2>The day</h2>", "Shopping")
	if strings.Contains(page.String(), "<form") {
		t.Error("a page that nobody serves has a form")
	}
	for line := range strings.Lines(now.String()) {
		if len([]rune(strings.TrimRight(line, "\n"))) > 80 {
			t.Errorf("wider than 80 columns: %s", line)
		}
	}
}

// The calendar tells the instants of the steps and no others: one day, and not the slow one
// beside the ordinary one.
func TestCalendarTellsTheDayOfItsSteps(t *testing.T) {
	p := plantest.Party(t, "../..")
	var b bytes.Buffer
	if err := export.Calendar(&b, p); err != nil {
		t.Fatal(err)
	}
	starts := map[string]bool{}
	for _, s := range p.Steps {
		starts["DTSTART;TZID=America/Chicago:"+s.At.Round(time.Minute).Format("20060102T150405")] = true
	}
	events := 0
	for line := range strings.Lines(b.String()) {
		if line = strings.TrimSpace(line); strings.HasPrefix(line, "DTSTART;TZID") {
			if events++; !starts[line] {
				t.Errorf("%s is the instant of no step", line)
			}
		}
	}
	if events < len(p.Dishes) || events > len(p.Steps)*2/3 {
		t.Errorf("%d entries for %d steps", events, len(p.Steps))
	}
}

// A step that is to be left out has no box to tick and is not what comes next.
func TestWhatIsLeftOutIsNotToBeDone(t *testing.T) {
	p := plantest.Day(t, "serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\ndishes: [{name: Ribs, cut: baby-backs, count: 2, prep: []}]\n")
	p.Steps[0].Text = "Leave this out: nothing is on this fire any more."
	for name, write := range map[string]func(*bytes.Buffer) error{
		"text": func(b *bytes.Buffer) error { return export.Text(b, p, export.Options{Now: p.Steps[0].At}) },
		"ics":  func(b *bytes.Buffer) error { return export.Calendar(b, p) },
	} {
		var b bytes.Buffer
		if err := write(&b); err != nil {
			t.Fatal(err)
		}
		text := b.String()
		if at := strings.Index(text, "Leave this out"); name == "ics" && at >= 0 || at > 0 && strings.Contains(text[strings.LastIndex(text[:at], "\n"):at], "[ ]") {
			t.Errorf("%s: it is to be ticked:\n%s", name, text)
		}
		if strings.Contains(text, "Next      1:00 PM Lay") {
			t.Errorf("it comes next:\n%s", text)
		}
	}
}

// A calendar has its cautions in full twice, as the calendar's own and with the first fire: under each alarm they would hide
// what to do.
func TestACalendarTellsItsCautionsOnce(t *testing.T) {
	var b bytes.Buffer
	if err := export.Calendar(&b, lateDay(t)); err != nil {
		t.Fatal(err)
	}
	text := strings.ReplaceAll(b.String(), "\r\n ", "")
	if n := strings.Count(text, "Sauce and glaze"); n < 1 || n > 2 {
		t.Errorf("a caution stands in it %d times", n)
	}
	serve := text[strings.Index(text, "Serve: Pork butt"):]
	if !strings.Contains(serve[:strings.Index(serve, "END:VEVENT")], "Don't leave food out") {
		t.Errorf("the meal has no caution of its own:\n%s", serve)
	}
}
