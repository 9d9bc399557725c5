package schedule

import (
	"bytes"
	"regexp"
	"time"
)

// UnderstandWithLog is [UnderstandOnTheDay] with what is noted so far: then a day that is named by
// the week alone is the one nearest to the first date of the log, or to now where it has none, so
// that a Saturday that is past stays that Saturday. Without a note it is the next one.
func UnderstandWithLog(data []byte, now time.Time, log []byte) (Request, error) {
	r, pinned := UnderstandOnTheDay(data, now)
	if pinned == nil || now.IsZero() {
		return r, pinned
	}
	at := now
	if day, err := time.ParseInLocation(time.DateOnly, string(logDate.Find(log)), now.Location()); err == nil {
		at = day.Add(12 * time.Hour)
	}
	next, err := Understand(data, at)
	if err != nil {
		return r, pinned
	}
	before, err := Understand(data, at.AddDate(0, 0, -1))
	if err != nil || dateOf(next).Sub(dateOf(before))%(7*24*time.Hour) != 0 { // tomorrow is no day of the week
		return r, pinned
	}
	if len(bytes.TrimSpace(log)) == 0 {
		return next, nil
	}
	today := time.Date(at.Year(), at.Month(), at.Day(), 0, 0, 0, 0, time.UTC)
	if last := dateOf(next).AddDate(0, 0, -7); today.Sub(last) < dateOf(next).Sub(today) {
		return Understand(data, at.AddDate(0, 0, -7))
	}
	return next, nil
}

// logDate is the first date of a log.
var logDate = regexp.MustCompile(`\b20\d\d-\d\d-\d\d`)

// dateOf is the day of a request.
func dateOf(r Request) time.Time {
	return time.Date(r.Serve.Date.Year(), r.Serve.Date.Month(), r.Serve.Date.Day(), 0, 0, 0, 0, time.UTC)
}
