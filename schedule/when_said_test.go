package schedule_test

import (
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

// A day that is written anywhere at the top of a request is the day of the line that would be
// right, whatever is not understood beside it; no other day is put in its place. So with heads.
func TestNoDayIsPutInThePlaceOfOneThatIsSaid(t *testing.T) {
	zone, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	now := time.Date(2026, 12, 1, 12, 0, 0, 0, zone)
	for said, want := range map[string]string{
		"date: 2026-12-12\ndinner: 6.30pm":                            `{date: 2026-12-12, time: "18:30"`,
		"date: 26/12/2026\nserving time: 17:30":                       `{date: 2026-12-26, time: "17:30"`,
		"date: Sunday 13 Dec 2026\nserve_at: 1 o'clock":               `{date: 2026-12-13, time: "13:00"`,
		"party_date: 2026-12-12\nready_by: noon":                      `{date: 2026-12-12, time: "12:00"`,
		"Cook: Saturday, December 12, 2026\nReady: \"half past six\"": `{date: 2026-12-12, time: "18:30"`,
		"datum: 20.12.2026\nuhrzeit: 18 Uhr":                          `{date: 2026-12-20, time: "18:00"`,
		"when: 2026-12-12, whenever the ribs are done":                `{date: 2026-12-12, time: `,
		"date: 2026-12-12\ntime: 18:30\nadults: 8\nkids: 6":           "guests: {adults: 8, children: 6}",
	} {
		_, err := schedule.ReadOn([]byte(said+"\ngrill: kettle 22 in\ndishes: [{cut: burger, count: 4}]\n"), now)
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v; want %s", said, err, want)
		}
	}
}

// Guests for whom the rules are stricter are heard among the guests, and what a plan knows
// nothing of is not passed over.
func TestWhoIsFrailIsHeardAmongTheGuests(t *testing.T) {
	read := func(guests string) (schedule.Request, error) {
		return schedule.Read([]byte("serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: " + guests + "\ndishes: [{cut: burger, count: 4}]\n"))
	}
	for said, want := range map[string][2]int{"4 adults, 2 kids, one pregnant": {4, 2}, "10 people; one pregnant": {10, 0}, "6 and a baby": {6, 0}, "8, grandma too": {8, 0}, "10 adults, 2 toddlers": {10, 2}, "5 adults + 3 kids, one is 18 months": {5, 3}} {
		r, err := read(said)
		if err != nil || r.Guests == nil || !r.Guests.Frail || r.Guests.Adults != want[0] || r.Guests.Children != want[1] {
			t.Errorf("%s: %+v, %v", said, r.Guests, err)
		}
	}
	for _, said := range []string{"12, nut allergy", "8, two vegetarians"} {
		if r, err := read(said); err == nil {
			t.Errorf("%s: taken as %+v", said, r.Guests)
		}
	}
	if r, err := read("about 10 people"); err != nil || r.Guests.Frail || r.Guests.Adults != 10 {
		t.Errorf("ten: %+v, %v", r.Guests, err)
	}
}

// A day or an hour that is written and not understood is left to the cook: no other is put in
// its place. What was read beside it is kept.
func TestWhatIsNotUnderstoodIsNotAnswered(t *testing.T) {
	zone, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	now := time.Date(2026, 12, 1, 12, 0, 0, 0, zone)
	for said, want := range map[string]string{
		"serve: my birthday 5pm":                         `"my birthday" is not understood as a day; write the date, as in 2027-07-03, for YYYY-MM-DD: serve: {date: YYYY-MM-DD, time: "17:00"`,
		"serve: saturday teatime-ish":                    `{date: 2026-12-05, time: "HH:MM"`,
		"serve: soon":                                    `{date: YYYY-MM-DD, time: "HH:MM"`,
		"serve: 2026-12-12 whenever":                     `"whenever" is not understood as a time; write it, as in 6:00 PM, for HH:MM: serve: {date: 2026-12-12, time: "HH:MM"`,
		"serve: sat 11":                                  `write 11 PM or 11 AM: serve: {date: 2026-12-05, time: "HH:MM"`,
		"serve: 5/12/2026 18:00":                         `is it May 12, 2026, or December 5, 2026? Write year, month and day: serve: {date: YYYY-MM-DD, time: "18:00"`,
		"serve: {date: my birthday, time: 5pm}":          `"my birthday" is not understood as a day`,
		"tonight: no, friday":                            `the time is not said; write serve: {date: 2026-12-04, time: "HH:MM"`,
		"time: 7pm":                                      `the day is not said; write serve: {date: YYYY-MM-DD, time: "19:00"`,
		"date: 2026-12-12":                               `serve: {date: 2026-12-12, time: "HH:MM"`,
		"when: my birthday 5pm":                          `{date: YYYY-MM-DD, time: "17:00"`,
		"serve: {date: YYYY-MM-DD, time: \"17:00\"}":     `"YYYY-MM-DD" is not understood as a day`,
		"serve: {date: 2026-12-12, time: \"HH:MM\"}":     `"HH:MM" must be a time of day`,
		"serve: the day after my birthday, half past 5":  `{date: YYYY-MM-DD, time: "17:30"`,
		"serve: {date: the 19th or 20th, time: teatime}": `"the 19th or 20th" is not understood as a day`,
	} {
		data := []byte(said + "\ngrill: kettle 22 in\ndishes: [{cut: burger, count: 4}]\n")
		_, err := schedule.Understand(data, now)
		if err == nil || !strings.Contains(err.Error(), want) || strings.Contains(err.Error(), "2026-12-05") != strings.Contains(want, "2026-12-05") {
			t.Errorf("%q: %v; want %s", said, err, want)
		}
		if mended, _ := schedule.MendOn(data, now); !strings.HasPrefix(string(mended), said) && strings.Contains(string(mended), "date: 20") {
			t.Errorf("%q is mended to %s", said, mended)
		}
	}
}

// Feasts, a day of the month and a bare hour behind a day are read.
func TestDaysByTheirNames(t *testing.T) {
	zone, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	now := time.Date(2026, 12, 1, 12, 0, 0, 0, zone)
	for said, want := range map[string]string{
		"christmas day 2pm": "2026-12-25 14:00", "christmas eve at 6pm": "2026-12-24 18:00", "new year's eve 8pm": "2026-12-31 20:00",
		"New Year's Day, noon": "2027-01-01 12:00", "six-thirty on the 19th": "2026-12-19 18:30", "the 19th at 6pm": "2026-12-19 18:00",
		"tomorrow 7": "2026-12-02 19:00", "friday at 8": "2026-12-04 20:00", "fourth of july 5pm": "2027-07-04 17:00", "christmas 5": "2026-12-25 17:00",
	} {
		r, err := schedule.Understand([]byte("serve: "+said+"\nguests: 4\ngrill: kettle 22 in\ndishes: [{cut: burger, count: 4}]\n"), now)
		if err != nil {
			t.Errorf("%q: %v", said, err)
			continue
		}
		if got := r.Serve.Date.String() + " " + r.Serve.Time.HhMm(); got != want {
			t.Errorf("%q: %s, want %s", said, got, want)
		}
	}
}

// No word between the day and the place is lost in the name of a town; a day that is not the
// one that stands beside it, or that nobody can know, is asked for; a place that is understood
// stays in the line to write, and no clock is put where none is said.
func TestADayIsNeverATown(t *testing.T) {
	now := time.Date(2026, 12, 2, 12, 0, 0, 0, time.UTC)
	for said, want := range map[string]string{
		"Saturday 19 6pm, Akron OH":                    "2026-12-19 18:00 America/New_York",
		"Saturday 12th 6pm, Tupelo Mississippi":        "2026-12-12 18:00 America/Chicago",
		"Sunday the 20th at noon, Tupelo Mississippi":  "2026-12-20 12:00 America/Chicago",
		"Saturday the 12th of December at 6, Akron OH": "2026-12-12 18:00 America/New_York",
		"Saturday around 5 or so, Austin TX":           "2026-12-05 17:00 America/Chicago",
		"the 13th, a Sunday, 6pm Boise":                "2026-12-13 18:00 America/Boise",
		"Thanksgiving 4pm, Burlington VT":              "2027-11-25 16:00 America/New_York",
		"Memorial Day 5pm Chicago":                     "2027-05-31 17:00 America/Chicago",
		"Friday @ 6:30p, Key West":                     "2026-12-04 18:30 America/New_York",
		"Saturday Dec 11 6pm, Akron OH":                "December 11, 2026 is a Friday",
		"Saturday the 13th 6pm Boise":                  "December 13, 2026 is a Sunday",
		"Saturday after Christmas 6pm, Akron OH":       `"Saturday after Christmas" is not understood as a day`,
		"Sunday in January 6pm, Akron OH":              `"Sunday in January" is not understood as a day`,
		"Saturday week 6pm, Akron OH":                  `"Saturday week" is not understood as a day`,
		"Saturday maybe Sunday 6pm, Akron OH":          "YYYY-MM-DD, time: \"18:00\", tz: America/New_York",
		"Super Bowl Sunday 5pm, Austin TX":             "YYYY-MM-DD, time: \"17:00\", tz: America/Chicago",
		"Saturday 6pm or 7pm, Austin Texas":            "YYYY-MM-DD",
		"Saturday 6pm bring chairs, Akron OH":          `"bring chairs, Akron OH" is not understood`,
		"Saturday evening":                             `{date: 2026-12-05, time: "HH:MM"}`,
		"Saturday 6pm, Bangor":                         "write its state or country behind it",
	} {
		r, err := schedule.Understand([]byte("serve: "+said+"\nguests: 4\ngrill: kettle 22 in\ndishes: [{cut: burger, count: 4}]\n"), now)
		got := r.Serve.Date.String() + " " + r.Serve.Time.HhMm() + " " + r.Serve.TZ
		if err != nil {
			got = err.Error()
		}
		if !strings.Contains(got, want) || strings.Contains(got, "tz: UTC") {
			t.Errorf("%q: %s; want %s", said, got, want)
		}
	}
}
