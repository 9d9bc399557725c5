package instant

import (
	"regexp"
	"strings"
	"time"

	"github.com/rickb777/date"
)

// feasts are the days of the year that go by a name and are on the same date every year.
var feasts = map[string]string{
	"christmas": "December 25", "christmas day": "December 25", "xmas": "December 25", "xmas day": "December 25",
	"christmas eve": "December 24", "xmas eve": "December 24", "boxing day": "December 26",
	"new years eve": "December 31", "new year eve": "December 31",
	"new years day": "January 1", "new years": "January 1", "new year day": "January 1",
	"fourth of july": "July 4", "4th of july": "July 4", "july fourth": "July 4", "independence day": "July 4",
	"halloween": "October 31", "valentines day": "February 14", "juneteenth": "June 19", "veterans day": "November 11",
	"st patricks day": "March 17", "saint patricks day": "March 17", "cinco de mayo": "May 5",
	"heiligabend": "December 24", "silvester": "December 31", "neujahr": "January 1",
}

// movable are feasts of the United States that are on a day of the week: the month, the day and
// which of them; -1 is the last (law, from memory). The two of parents are custom there.
var movable = map[string]struct {
	month time.Month
	day   time.Weekday
	which int
}{
	"thanksgiving": {time.November, time.Thursday, 4}, "thanksgiving day": {time.November, time.Thursday, 4},
	"labor day": {time.September, time.Monday, 1}, "memorial day": {time.May, time.Monday, -1},
	"mothers day": {time.May, time.Sunday, 2}, "fathers day": {time.June, time.Sunday, 3},
	"presidents day": {time.February, time.Monday, 3}, "mlk day": {time.January, time.Monday, 3}, "columbus day": {time.October, time.Monday, 2},
}

// plainFeast is a name as the tables have it.
func plainFeast(word string) string {
	return strings.NewReplacer("'", "", "’", "", ".", "").Replace(word)
}

// movableFeast is the next day of a feast that moves; false for another text.
func movableFeast(word string, today date.Date) (d date.Date, ok bool) {
	f, ok := movable[plainFeast(word)]
	if !ok {
		return d, false
	}
	for year := today.Year(); ; year++ {
		d = date.New(year, f.month, 1)
		if f.which < 0 {
			for d = date.New(year, f.month+1, 1).Add(-1); d.Weekday() != f.day; {
				d = d.Add(-1)
			}
		} else {
			d = d.Add(date.PeriodOfDays((int(f.day)-int(d.Weekday())+7)%7 + 7*(f.which-1)))
		}
		if !d.Before(today) {
			return d, true
		}
	}
}

// dayAlone is a day of the month without its month: the 19th.
var dayAlone = regexp.MustCompile(`(?i)^(\d{1,2})(?:st|nd|rd|th)$`)

// nextDay is the next day of that number in a month, today or later; nil where there is none
// within two months, or today is not known.
func nextDay(number int, today date.Date) *date.Date {
	for ahead := range 62 {
		if d := today.Add(date.PeriodOfDays(ahead)); d.Day() == number && today.Year() > 1 {
			return &d
		}
	}
	return nil
}
