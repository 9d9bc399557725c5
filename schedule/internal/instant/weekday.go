package instant

import (
	"fmt"
	"regexp"
	"strings"
	"time"

	"github.com/rickb777/date"
)

const weekdayNames = `sun(?:day)?|mon(?:day)?|tue(?:s|sday)?|wed(?:s|nesday)?|thu(?:r|rs|rsday)?|fri(?:day)?|sat(?:urday)?`

// numbered is a day of the week with the day of a month, before or behind it: Saturday the 12th.
var (
	numbered = regexp.MustCompile(`(?i)^(` + weekdayNames + `)[,.]?\s+(?:the\s+)?(\d{1,2})(?:st|nd|rd|th)?$`)
	numberOn = regexp.MustCompile(`(?i)^(?:the\s+)?(\d{1,2})(?:st|nd|rd|th),?\s+(?:(?:a|which is a)\s+)?(` + weekdayNames + `)$`)
)

// onNumber is the next day that is so called and has that number, within two months; false where
// the text is no such day. A day that does not exist is nil, with a sentence of why.
func onNumber(text string, now time.Time) (day *date.Date, why string, ok bool) {
	name, number := "", 0
	if m := numbered.FindStringSubmatch(text); m != nil {
		name, number = m[1], digits(m[2])
	} else if m := numberOn.FindStringSubmatch(text); m != nil {
		name, number = m[2], digits(m[1])
	} else {
		return nil, "", false
	}
	if now.IsZero() {
		return nil, "", true
	}
	today := date.NewAt(now)
	for ahead := range 62 {
		if d := today.Add(date.PeriodOfDays(ahead)); d.Day() == number && onThatDay(d, strings.ToLower(name)) {
			return &d, "", true
		}
	}
	if d := nextDay(number, today); d != nil {
		return nil, d.Format("January 2, 2006") + " is a " + d.Weekday().String(), true
	}
	return nil, "no month has such a day", true
}

var (
	monthDay = regexp.MustCompile(`(?i)\b(?:\d{1,2}(?:st|nd|rd|th)?\.?\s+)?(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\.?(?:\s+\d{1,2}(?:st|nd|rd|th)?)?(?:,?\s+\d{4})?`)
	dayNamed = regexp.MustCompile(`(?i)\b(?:` + weekdayNames + `)\b`)
)

// clash says why a day of the week and the date beside it are two days; empty where they are not.
func clash(text string, now time.Time) string {
	text = strings.TrimSpace(text)
	name := dayNamed.FindString(text)
	if name == "" {
		return ""
	}
	if _, why, ok := onNumber(text, now); ok {
		return why
	}
	for _, said := range []string{anyDate.FindString(text), strings.TrimSpace(monthDay.FindString(text))} {
		if d, _, ok := readDay(said, nil, now); said != "" && ok && d != nil && !onThatDay(*d, strings.ToLower(name)) {
			return fmt.Sprintf("%s is a %s", d.Format("January 2, 2006"), d.Weekday())
		}
	}
	return ""
}
