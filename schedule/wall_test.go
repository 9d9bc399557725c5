package schedule

import (
	"strings"
	"testing"
	"time"

	"github.com/rickb777/date"

	"example.com/cookday/schedule/internal/instant"
)

// Changes of the clock. United States: second Sunday of March and first of
// November at 02:00 (Energy Policy Act of 2005). European Union: last Sunday of
// March and October at 01:00 UTC (directive 2000/84/EC). Samoa left out
// 2011-12-30 to cross the date line. All as the zone database has them.
func TestClockChanges(t *testing.T) {
	tests := []struct {
		zone, day, at string
		utc           string // the instant, or
		words         []string
	}{
		{"America/Chicago", "2027-03-14", "01:59", "07:59", nil},
		{"America/Chicago", "2027-03-14", "02:00", "", []string{"does not exist", "from 02:00 to 03:00", "01:00 CST or 03:00 CDT"}},
		{"America/Chicago", "2027-03-14", "02:30", "", []string{"2027-03-14 02:30 does not exist in America/Chicago", "01:30 CST or 03:30 CDT"}},
		{"America/Chicago", "2027-03-14", "03:00", "08:00", nil},
		{"America/Chicago", "2027-11-07", "00:59", "05:59", nil},
		{"America/Chicago", "2027-11-07", "01:00", "", []string{"happens twice", "01:00 CDT and at 01:00 CST", "before 01:00 or from 02:00 on"}},
		{"America/Chicago", "2027-11-07", "01:59", "", []string{"happens twice", "01:59 CDT and at 01:59 CST"}},
		{"America/Chicago", "2027-11-07", "02:00", "08:00", nil},
		{"Europe/Berlin", "2027-03-28", "01:59", "00:59", nil},
		{"Europe/Berlin", "2027-03-28", "02:30", "", []string{"does not exist", "from 02:00 to 03:00", "01:30 CET or 03:30 CEST"}},
		{"Europe/Berlin", "2027-03-28", "03:00", "01:00", nil},
		{"Europe/Berlin", "2027-10-31", "01:59", "23:59", nil},
		{"Europe/Berlin", "2027-10-31", "02:30", "", []string{"happens twice", "02:30 CEST and at 02:30 CET", "before 02:00 or from 03:00 on"}},
		{"Europe/Berlin", "2027-10-31", "03:00", "02:00", nil},
		{"Pacific/Apia", "2011-12-30", "12:00", "", []string{"does not exist"}},
		{"Pacific/Apia", "2011-12-31", "12:00", "22:00", nil},
		{"UTC", "2027-07-03", "18:00", "18:00", nil},
		{"Asia/Kathmandu", "2027-07-03", "18:00", "12:15", nil},
	}
	for _, tt := range tests {
		loc, err := time.LoadLocation(tt.zone)
		if err != nil {
			t.Fatal(err)
		}
		at, err := instant.ParseClock(tt.at)
		if err != nil {
			t.Fatal(err)
		}
		got, sentence := wallInstant(date.MustParseISO(tt.day), at, loc)
		if tt.words == nil && (sentence != "" || got.UTC().Format("15:04") != tt.utc || told(got) != tt.day+" "+tt.at) {
			t.Errorf("%s %s %s: got %v %q, want %s UTC", tt.zone, tt.day, tt.at, got, sentence, tt.utc)
		}
		for _, word := range tt.words {
			if !strings.Contains(sentence, word) {
				t.Errorf("%s %s %s: %q does not say %q", tt.zone, tt.day, tt.at, sentence, word)
			}
		}
	}
}
