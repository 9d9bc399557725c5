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
	for said, want := range map[string][2]int{"4 adults, 2 kids, one pregnant": {4, 2}, "10 people; one pregnant": {10, 0}, "6 and a baby": {6, 0}} {
		r, err := read(said)
		if err != nil || r.Guests == nil || !r.Guests.Frail || r.Guests.Adults != want[0] || r.Guests.Children != want[1] {
			t.Errorf("%s: %+v, %v", said, r.Guests, err)
		}
	}
	for _, said := range []string{"12, nut allergy", "8, two vegetarians", "8, grandma too"} {
		if r, err := read(said); err == nil {
			t.Errorf("%s: taken as %+v", said, r.Guests)
		}
	}
	if r, err := read("about 10 people"); err != nil || r.Guests.Frail || r.Guests.Adults != 10 {
		t.Errorf("ten: %+v, %v", r.Guests, err)
	}
}
