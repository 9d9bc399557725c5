package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// smokeDay is a butt over the coals all night: an invented day.
const smokeDay = `format: 1
serve: {date: 2027-07-04, time: "16:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
dishes:
  - {id: butt, name: Pork butt, cut: pork-butt, weight: 8 lb, level: 250 F, wrap: none, target: 200 F}
`

// atClock runs a command as of a time of the cook's clock in Chicago.
func atClock(t testing.TB, clock string, args ...string) result {
	t.Helper()
	loc, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	now, err := time.ParseInLocation("2006-01-02 15:04", clock, loc)
	if err != nil {
		t.Fatal(err)
	}
	var out, errors bytes.Buffer
	code := runAt(func() time.Time { return now }, args, strings.NewReader(""), &out, &errors)
	return result{code, out.String(), errors.String()}
}

// dayInFolder is a folder with the request of a day.
func dayInFolder(t testing.TB) (day, log string) {
	t.Helper()
	folder := t.TempDir()
	day = filepath.Join(folder, "sunday.yaml")
	if err := os.WriteFile(day, []byte(smokeDay), 0o600); err != nil {
		t.Fatal(err)
	}
	return day, filepath.Join(folder, "sunday.csv")
}

func TestNote(t *testing.T) {
	_, log := dayInFolder(t)
	for _, n := range []struct{ at, words, says string }{
		{"2027-07-03 22:05", "lit", "Noted: 10:05 PM lit\n"},
		{"2027-07-03 22:42", "22:40 butt on", "Noted: 10:40 PM Pork butt on\n"},
		{"2027-07-04 00:10", "23:50 pork 98", "Noted: 11:50 PM Sat Pork butt 98 F inside\n"},
		{"2027-07-04 05:12", "pork butt 152", "Noted: 5:12 AM Pork butt 152 F inside\n"},
		{"2027-07-04 05:13", "125", "Noted: 5:13 AM Pork butt 125 F inside\n"},
		{"2027-07-04 05:13", "undo", "Taken back: 2027-07-04 05:13 butt core 125 F\nLast in the log now: 2027-07-04 05:12 butt core 152 F\n"},
		{"2027-07-04 05:13", "126", "Noted: 5:13 AM Pork butt 126 F inside\n"},
		{"2027-07-04 05:13", "scratch that", "Taken back: 2027-07-04 05:13 butt core 126 F\nLast in the log now: 2027-07-04 05:12 butt core 152 F\n"},
		{"2027-07-04 05:14", "grate 245", "Noted: 5:14 AM grate 245 F\n"},
		{"2027-07-04 05:20", "butt 153 grate 240 5 minutes ago", "Noted: 5:15 AM Pork butt 153 F inside\nNoted: 5:15 AM grate 240 F\n"},
	} {
		r := atClock(t, n.at, append([]string{"note", log}, strings.Fields(n.words)...)...)
		if r.code != exitFine || r.out != n.says {
			t.Errorf("%s: exit code %d, %q%q, want %q", n.words, r.code, r.out, r.errors, n.says)
		}
	}
	want := "time,dish,kind,value\n2027-07-03 22:05,,lit,\n2027-07-03 22:40,butt,on,\n2027-07-03 23:50,butt,core,98 F\n" +
		"2027-07-04 05:12,butt,core,152 F\n# taken back: 2027-07-04 05:13,butt,core,125 F\n# taken back: 2027-07-04 05:13,butt,core,126 F\n2027-07-04 05:14,,grate,245 F\n# one note, lines: 2\n2027-07-04 05:15,butt,core,153 F\n2027-07-04 05:15,,grate,240 F\n"
	if got, err := os.ReadFile(log); err != nil || string(got) != want {
		t.Errorf("the log is %v\n%s\nwant\n%s", err, got, want)
	}
}

// Danger to people is answered before anything can go wrong: without a day, with a log that
// cannot be read, with the log left out; the words stay in the log as a remark.
func TestNoteAnswersAnEmergencyFirst(t *testing.T) {
	_, log := dayInFolder(t)
	broken := file(t, "broken.csv", "time,dish,kind,value\n99:99,nothing,at all,\n")
	for _, n := range []struct {
		args string
		kept bool
	}{{log + " dizzy and headache", true}, {log + " butt 152 and I feel dizzy", true}, {broken + " dizzy", true}, {filepath.Join(t.TempDir(), "none.csv") + " dizzy", false}, {"dizzy and headache", false}, {"dizzy", false}} {
		r := atClock(t, "2027-07-04 05:12", append([]string{"note"}, strings.Fields(n.args)...)...)
		if r.code != exitFine || !strings.HasPrefix(r.out, "Out into fresh air now") || strings.Contains(r.out, "Kept in the log") != n.kept {
			t.Errorf("%s: exit code %d, %q%q", n.args, r.code, r.out, r.errors)
		}
	}
	want := "time,dish,kind,value\n# said 2027-07-04 05:12: dizzy and headache\n# said 2027-07-04 05:12: butt 152 and I feel dizzy\n"
	if got, err := os.ReadFile(log); err != nil || string(got) != want {
		t.Errorf("the log is %v\n%s", err, got)
	}
	if r := atClock(t, "2027-07-04 05:13", "note", log, "butt", "on", "at", "22:40"); r.code != exitFine {
		t.Errorf("after the remark nothing can be noted: %q", r.errors)
	}
}

func TestNoteAsksAndRefuses(t *testing.T) {
	day, log := dayInFolder(t)
	other := file(t, "other.csv", "kind,value,time,dish\non,,2027-07-03 22:40,butt\n")
	for _, n := range []struct{ log, words, says string }{
		{log, "goose 152", "cannot be read"},
		{log, "fire out a while ago", "at the earliest"},
		{log, "butt done", "Is it off the grill?"},
		{log, "06:10 butt 152", "is still ahead, it is only"},
		{log, "butt 128 c", "128"},
		{filepath.Join(filepath.Dir(log), "monday.csv"), "butt 152", "of which day?"},
		{file(t, "log.json", "[]"), "--day " + day + " butt 152", "in JSON"},
		{file(t, "empty.csv", "time,dish,kind,value\n"), "undo", "no line to take back"},
	} {
		r := atClock(t, "2027-07-04 05:12", append([]string{"note", n.log}, strings.Fields(n.words)...)...)
		if said := r.out + r.errors; !strings.Contains(said, n.says) || r.code != exitInput && n.words != "butt 128 c" {
			t.Errorf("%s: exit code %d, %q, want %q", n.words, r.code, said, n.says)
		}
	}
	if r := atClock(t, "2027-07-04 05:12", "note", other, "--day", day, "butt", "152"); r.code != exitFine {
		t.Fatal(r.errors)
	}
	if got, err := os.ReadFile(other); err != nil || !strings.HasSuffix(string(got), "core,152 F,2027-07-04 05:12,butt\n") {
		t.Errorf("its columns are in another order: %v\n%s", err, got)
	}
}

func TestALogRemembersItsDay(t *testing.T) {
	day, log := dayInFolder(t)
	log = strings.Replace(log, "sunday", "other", 1)
	for _, words := range []string{"--day " + day + " butt on", "butt 98"} {
		if r := atClock(t, "2027-07-04 00:12", append([]string{"note", log}, strings.Fields(words)...)...); r.code != exitFine {
			t.Fatal(words, r.errors)
		}
	}
	want := "time,dish,kind,value\n# day: sunday.yaml\n2027-07-04 00:12,butt,on,\n2027-07-04 00:12,butt,core,98 F\n"
	if got, err := os.ReadFile(log); err != nil || string(got) != want {
		t.Errorf("%v\n%s", err, got)
	}
}

func TestNow(t *testing.T) {
	day, log := dayInFolder(t)
	r := atClock(t, "2027-07-03 12:00", "now", day)
	if r.code != exitFine || !strings.Contains(r.out, "Nothing to do before 9:") { // the fire is laid in the evening
		t.Errorf("before the day: %d\n%s%s", r.code, r.out, r.errors)
	}
	for _, n := range [][2]string{{"2027-07-03 22:40", "butt on"}, {"2027-07-04 05:00", "butt 140"}, {"2027-07-04 09:00", "butt 152"}, {"2027-07-04 12:00", "butt 158"}} {
		if r := atClock(t, n[0], append([]string{"note", log}, strings.Fields(n[1])...)...); r.code != exitFine {
			t.Fatal(r.errors)
		}
	}
	r = atClock(t, "2027-07-04 12:05", "now", day)
	order := []string{"12:05 PM, Sunday", "Odds: 51%", "at 4:00 PM, as asked: 35%", "Do now\n------", "Next\n----", "Worries\n-------", "At 4:00 PM: ", "What you could do now", "On the fire", "158 °F at 12:00 PM"}
	at := 0
	for _, part := range order {
		i := strings.Index(r.out[at:], part)
		if i < 0 {
			t.Fatalf("%q is not in its place in\n%s%s", part, r.out, r.errors)
		}
		at += i
	}
	for line := range strings.Lines(r.out) {
		if len([]rune(line)) > 81 {
			t.Errorf("wider than 80 columns: %s", line)
		}
	}
	if n := strings.Count(r.out, "\n"); n > 50 {
		t.Errorf("%d lines are no few", n)
	}
}

// A request will do where a plan would: both give the same revision.
func TestReviseTakesARequest(t *testing.T) {
	day, log := dayInFolder(t)
	plan := filepath.Join(filepath.Dir(day), "plan.json")
	if r := atClock(t, "2027-07-03 12:00", "plan", day, "--out", plan); r.code != exitFine {
		t.Fatal(r.errors)
	}
	if err := os.WriteFile(log, []byte("time,dish,kind,value\n22:40,butt,on,\n05:00,pork,core,140 F\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	by, of := atClock(t, "2027-07-04 05:05", "revise", plan, log, "--format", "json"), atClock(t, "2027-07-04 05:05", "revise", day, log, "--format", "json")
	if by.code != exitFine || of.code != exitFine || by.out != of.out {
		t.Errorf("by the plan %d, by the request %d: they differ\n%s%s", by.code, of.code, by.errors, of.errors)
	}
}

// Example_note keeps a log as the night goes on, and asks how the day stands.
func Example_note() {
	folder, err := os.MkdirTemp("", "cookday")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer os.RemoveAll(folder)
	day, log := filepath.Join(folder, "sunday.yaml"), filepath.Join(folder, "sunday.csv")
	if err := os.WriteFile(day, []byte(smokeDay), 0o600); err != nil {
		fmt.Println(err)
		return
	}
	loc, err := time.LoadLocation("America/Chicago")
	if err != nil {
		fmt.Println(err)
		return
	}
	say := func(hour, minute int, args ...string) {
		clock := func() time.Time { return time.Date(2027, 7, 4, hour, minute, 0, 0, loc) }
		runAt(clock, args, strings.NewReader(""), os.Stdout, os.Stdout)
	}
	say(-2, 40, "note", log, "butt", "on")
	say(5, 0, "note", log, "butt", "66")
	say(5, 1, "note", log, "butt", "151")
	// Output:
	// Noted: 10:40 PM Pork butt on
	// sunday.csv: 66 F does not fit here; 66 C, that is 151 °F, may be meant. Type the letter after the number: 66F if it does show that, else 66C.
	// Noted: 5:01 AM Pork butt 151 F inside
}
