package draft

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"example.com/cookday/schedule/internal/instant"
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
	if name := t.Location().String(); strings.Contains(name, "/") && name != i.now.Location().String() {
		i.zone = name
	}
	return nil
}

// readWhen reads a day and a time as a request does: "Saturday 18:00", "tomorrow at 6pm",
// "July 3, 6:00 PM", "2027-07-03 18:00". A day of the week is the next one; an hour that may
// be of the morning is one of the evening; a time alone is the next of its kind.
func readWhen(text string, now time.Time) (time.Time, error) {
	w, err := instant.ParseWhen(text, now)
	var half *instant.HalfDayError
	if errors.As(err, &half) && w.Day != nil && half.Hour >= 1 && half.Hour <= 9 {
		at := clock.New(half.Hour+12, 0, 0, 0)
		w.Time, err = &at, nil
	}
	switch {
	case err != nil:
		return time.Time{}, err
	case w.Time == nil:
		return time.Time{}, fmt.Errorf("%q has no time of day; write a day and a time, such as Saturday 6:00 PM or 2027-07-03 18:00", text)
	}
	zone := now.Location()
	if there, err := time.LoadLocation(w.Zone); err == nil && w.Zone != "" {
		zone = there
	}
	c := w.Evening()
	year, month, day := now.Date()
	if w.Day != nil {
		year, month, day = w.Day.Year(), w.Day.Month(), w.Day.Day()
	}
	t := time.Date(year, month, day, c.Hours(), c.Minutes(), 0, 0, zone)
	if w.Day == nil && t.Before(now) {
		t = time.Date(year, month, day+1, c.Hours(), c.Minutes(), 0, 0, zone)
	}
	if t.Before(now) {
		return time.Time{}, fmt.Errorf("%s is past; write a day to come", t.Format("2006-01-02 15:04"))
	}
	return t, nil
}

// When is the day and the time that was answered, as people say it.
func (i *Interview) When() string { return i.units.Date(i.serve) + ", " + i.units.Clock(i.serve) }
