package instant

import (
	"regexp"

	"github.com/rickb777/date"
)

// feasts are the days of the year that go by a name and are on the same date every year.
var feasts = map[string]string{
	"christmas": "December 25", "christmas day": "December 25", "xmas": "December 25", "xmas day": "December 25",
	"christmas eve": "December 24", "xmas eve": "December 24", "boxing day": "December 26",
	"new years eve": "December 31", "new year eve": "December 31",
	"new years day": "January 1", "new years": "January 1", "new year day": "January 1",
	"fourth of july": "July 4", "4th of july": "July 4", "july fourth": "July 4", "independence day": "July 4",
	"halloween": "October 31", "valentines day": "February 14",
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
