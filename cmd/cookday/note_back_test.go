package main

import (
	"os"
	"strings"
	"testing"
)

// A log from standard input is named so, and not by the dash that asked for it.
func TestALogFromStandardInputIsNamed(t *testing.T) {
	day, _ := dayInFolder(t)
	for _, command := range []string{"now", "revise"} {
		r := invoke("time,dish,kind,value\n2027-07-04 09:00,butt,core,140 F\n", command, day, "-", "--now", "2027-07-04 08:00")
		if r.code != exitInput || !strings.HasPrefix(r.errors, "standard input line 2: 9:00 AM is later") {
			t.Errorf("%s: exit code %d, %q", command, r.code, r.errors)
		}
	}
}

// What one note wrote is taken back as one, and what stands then is told; what came off below its minimum is said at once.
func TestUndoTakesTheWholeNoteBack(t *testing.T) {
	_, log := dayInFolder(t)
	for _, n := range []struct{ at, words, says string }{
		{"2027-07-04 05:12", "butt on at 22:40", "Noted: 10:40 PM Sat Pork butt on\n"},
		{"2027-07-04 14:00", "butt off at 130", "Noted: 2:00 PM Pork butt off\nNoted: 2:00 PM Pork butt 130 F inside\nNot done: it needs 145 °F everywhere. Back on the hot grate now, and measure again. Do not cut or serve it before that.\n"},
		{"2027-07-04 14:01", "undo", "Taken back: 2027-07-04 14:00 butt pulled\nTaken back: 2027-07-04 14:00 butt core 130 F\nLast in the log now: 2027-07-03 22:40 butt on\n"},
		{"2027-07-04 14:02", "undo", "Taken back: 2027-07-03 22:40 butt on\n"},
	} {
		if r := atClock(t, n.at, append([]string{"note", log}, strings.Fields(n.words)...)...); r.code != exitFine || r.out != n.says {
			t.Errorf("%s: exit code %d, %q%q, want %q", n.words, r.code, r.out, r.errors, n.says)
		}
	}
}

// A line that is later than now is named by its file, its line and its hour, once; so is the log of another day.
func TestALogAheadOfNowIsNamedOnce(t *testing.T) {
	day, _ := dayInFolder(t)
	ahead := file(t, "ahead.csv", "time,dish,kind,value\n2027-07-03 22:05,,lit,\n2027-07-04 09:00,butt,core,140 F\n2027-07-04 09:30,butt,core,150 F\n")
	foreign := file(t, "foreign.csv", "time,dish,kind,value\n2027-07-03 22:05,,lit,\n2027-07-03 22:20,goose,on,\n")
	for _, c := range []struct{ log, now, says string }{
		{ahead, "8:00", "ahead.csv line 3: 9:00 AM is later than --now, 8:00 AM."},
		{foreign, "8:00", "it is the log of another one"},
	} {
		for _, command := range []string{"now", "revise"} {
			r := atClock(t, "2027-07-04 08:00", command, day, c.log, "--now", "2027-07-04 0"+c.now)
			if r.code != exitInput || !strings.Contains(r.errors, c.says) || strings.Count(r.errors, "\n") != 1 {
				t.Errorf("%s: exit code %d, %q, want %q", command, r.code, r.errors, c.says)
			}
		}
	}
}

// A log that was there before remembers the day that it is told of as well; and a number behind --brief is told its sign.
func TestALogThatWasThereRemembersItsDay(t *testing.T) {
	day, log := dayInFolder(t)
	log = strings.Replace(log, "sunday", "other", 1)
	if err := os.WriteFile(log, []byte("time,dish,kind,value\n2027-07-03 22:05,,lit,"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, words := range []string{"--day " + day + " butt on", "butt 98"} {
		if r := atClock(t, "2027-07-04 00:12", append([]string{"note", log}, strings.Fields(words)...)...); r.code != exitFine {
			t.Fatal(words, r.errors)
		}
	}
	want := "time,dish,kind,value\n2027-07-03 22:05,,lit,\n# day: sunday.yaml\n2027-07-04 00:12,butt,on,\n2027-07-04 00:12,butt,core,98 F\n"
	if got, err := os.ReadFile(log); err != nil || string(got) != want {
		t.Errorf("%v\n%s", err, got)
	}
	if r := atClock(t, "2027-07-04 00:12", "plan", day, "--brief", "3"); r.code != exitInput || !strings.Contains(r.errors, "write --brief=3") {
		t.Errorf("%d: %s", r.code, r.errors)
	}
}
