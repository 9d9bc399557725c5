package schedule_test

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

// Twenty requests as people guess them (invented, written down before anything was tried),
// what a reader changes who does what the messages say, and what is read in the end. What a
// message shows as right is taken over; the lines behind -- and => are what is left to do by
// hand, and are done at the first try or the second.
func TestTwentyNaiveDays(t *testing.T) {
	const most = 2 // tries after the first
	chicago, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	now := time.Date(2026, 12, 1, 11, 27, 0, 0, chicago) // a Tuesday
	text, err := os.ReadFile("testdata/naive.txt")
	if err != nil {
		t.Fatal(err)
	}
	days := strings.Split(string(text), "== ")[1:]
	if len(days) != 20 {
		t.Fatalf("there are %d days", len(days))
	}
	at := [most + 1]int{}
	for _, day := range days {
		name, rest, _ := strings.Cut(day, "\n")
		body, want, _ := strings.Cut(rest, "-- reads\n")
		parts := strings.Split(body, "-- ")
		file, edits := parts[0], parts[1:]
		r, err := schedule.ReadOn([]byte(file), now)
		tries := 0
		for ; err != nil && tries < most; tries++ {
			mended, _ := schedule.MendOn([]byte(file), now)
			file = string(mended)
			for _, edit := range edits {
				old, right, _ := strings.Cut(strings.TrimSuffix(edit, "\n"), "\n=> ")
				file = strings.Replace(file, strings.ReplaceAll(old, `\n`, "\n"), strings.ReplaceAll(right, `\n`, "\n"), 1)
			}
			r, err = schedule.ReadOn([]byte(file), now)
		}
		if err != nil {
			t.Errorf("%s: not there after %d tries:\n%s\n%v", name, tries, file, err)
			continue
		}
		at[tries]++
		if got := inShort(r); got != strings.TrimSpace(want) {
			t.Errorf("%s\n got %s\nwant %s", name, got, strings.TrimSpace(want))
		}
	}
	t.Logf("right at once, after one try, after two: %v", at)
}

// inShort is what matters of a request, in one line.
func inShort(r schedule.Request) string {
	guests := "nobody counted"
	if r.Guests != nil {
		guests = fmt.Sprintf("%d+%d", r.Guests.Adults, r.Guests.Children)
		if r.Guests.Frail {
			guests += " frail"
		}
	}
	line := fmt.Sprintf("%s %s %s; %s; %s", r.Serve.Date, r.Serve.Time.HhMm(), r.Serve.TZ, guests, r.Grill.Kind)
	if r.Oven != nil {
		line += ", oven"
	}
	for _, d := range r.Dishes {
		line += fmt.Sprintf("; %d %s of %s", d.Count, d.Cut, r.Units.Mass(d.Weight))
		if d.Target != nil {
			line += " " + d.Target.Doneness
		}
		if d.Start != nil && d.Start.Frozen {
			line += " frozen"
		}
		if len(d.Assumed) > 0 {
			line += fmt.Sprintf(" (%s assumed)", strings.Join(d.Assumed, ", "))
		}
	}
	return line
}
