package draft

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"github.com/rickb777/date/clock"
)

// usualWhen is the first Saturday that is at least a day off, at the usual hour of the day
// that this one is like.
func (i *Interview) usualWhen() string {
	t := i.now.AddDate(0, 0, 1)
	for t.Weekday() != time.Saturday {
		t = t.AddDate(0, 0, 1)
	}
	t = time.Date(t.Year(), t.Month(), t.Day(), i.like.hour, 0, 0, 0, i.now.Location())
	return i.units.Date(t) + ", " + i.units.Clock(t)
}

func onClock(c clock.Clock) time.Time {
	return time.Date(2000, 1, 1, c.Hours(), c.Minutes(), 0, 0, time.UTC)
}

func (i *Interview) takeWhen(text string) error {
	t, err := readWhen(text, i.now)
	if err != nil {
		return err
	}
	i.serve = t
	return nil
}

var timeAtEnd = regexp.MustCompile(`(?i)[\s,]*(?:\bat\b)?\s*\b(\d{1,2}:\d{2}\s*(?:[ap]\.?m\.?)?|\d{1,2}\s*[ap]\.?m\.?|noon)\s*[,.]?\s*`)

// bareHour is an hour that may be of the morning or of the evening.
var bareHour = regexp.MustCompile(`(?i)\bat\s+(\d{1,2})\s*$`)

// readWhen reads a day and a time: "Saturday 18:00", "tomorrow at 6pm", "July 3, 6:00 PM",
// "7/3 18:00" (the month first), "2027-07-03 18:00". A day of the week is the next one.
func readWhen(text string, now time.Time) (time.Time, error) {
	at := timeAtEnd.FindStringSubmatchIndex(text)
	if hour := bareHour.FindStringSubmatch(text); at == nil && hour != nil {
		return time.Time{}, fmt.Errorf("%q may be the morning or the evening; write %s AM or %s PM behind the day", text, hour[1], hour[1])
	}
	if at == nil {
		return time.Time{}, fmt.Errorf("%q has no time of day; write a day and a time, such as Saturday 6:00 PM or 2027-07-03 18:00", text)
	}
	c, err := schedule.ParseTimeOfDay(strings.TrimSpace(text[at[2]:at[3]]))
	if err != nil {
		return time.Time{}, err
	}
	day, err := readDay(strings.Trim(text[:at[0]]+" "+text[at[1]:], " ,"), now, c)
	if err != nil {
		return time.Time{}, err
	}
	t := time.Date(day.Year(), day.Month(), day.Day(), c.Hours(), c.Minutes(), 0, 0, now.Location())
	if t.Before(now) {
		return time.Time{}, fmt.Errorf("%s is past; write a day to come", t.Format("2006-01-02 15:04"))
	}
	return t, nil
}

// dayForms are ways to write a date; those without a year mean the next one.
var dayForms = []string{
	time.DateOnly, "1/2/2006", "1/2", "January 2, 2006", "January 2 2006", "January 2", "Jan 2, 2006", "Jan 2", "2 January 2006", "2 January", "2 Jan",
	"Monday, January 2, 2006", "Monday, January 2", "Monday 2 January 2006", "Monday 2 January",
}

// readDay reads a day that is written before or behind its time.
func readDay(text string, now time.Time, c clock.Clock) (time.Time, error) {
	today := time.Date(now.Year(), now.Month(), now.Day(), 0, 0, 0, 0, now.Location())
	soon := today.Add(time.Duration(c.Hours())*time.Hour + time.Duration(c.Minutes())*time.Minute)
	switch word := strings.ToLower(strings.TrimPrefix(strings.ToLower(text), "on ")); word {
	case "":
		if soon.Before(now) {
			return today.AddDate(0, 0, 1), nil
		}
		return today, nil
	case "today", "tonight":
		return today, nil
	case "tomorrow", "tomorrow night", "tomorrow evening":
		return today.AddDate(0, 0, 1), nil
	default:
		for d := range 7 {
			day := today.AddDate(0, 0, d)
			name := strings.ToLower(day.Weekday().String())
			if len(word) >= 3 && strings.HasPrefix(name, strings.TrimPrefix(strings.TrimPrefix(word, "next "), "this ")) {
				if d == 0 && soon.Before(now) {
					return day.AddDate(0, 0, 7), nil
				}
				return day, nil
			}
		}
	}
	for _, form := range dayForms {
		day, err := time.ParseInLocation(form, text, now.Location())
		if err != nil {
			continue
		}
		if day.Year() == 0 {
			day = time.Date(now.Year(), day.Month(), day.Day(), 0, 0, 0, 0, now.Location())
			if day.Before(today) {
				day = day.AddDate(1, 0, 0)
			}
		}
		return day, nil
	}
	return time.Time{}, errors.New("the day cannot be read; write it as Saturday, tomorrow, July 3 or 2027-07-03")
}
