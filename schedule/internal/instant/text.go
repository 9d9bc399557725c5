package instant

import (
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"

	"github.com/rickb777/date"
	"github.com/rickb777/date/clock"

	"example.com/cookday/schedule/internal/say"
)

// ParseDate reads a calendar date and nothing looser.
func ParseDate(text string) (date.Date, error) {
	t, err := time.Parse(time.DateOnly, text)
	if err == nil {
		return date.NewAt(t), nil
	}
	slip := &dateSlip{text, likelyDate(text)}
	if slip.right == "" {
		slip.right = "2027-07-03"
		return date.Date{}, errors.New(slip.Error()) // an example is no mend
	}
	return date.Date{}, slip
}

// dateSlip is a date in another form than the format's.
type dateSlip struct{ text, right string }

func (s *dateSlip) Error() string {
	return fmt.Sprintf("%s is no date of the calendar; write year, month and day: %s", say.Quoted(s.text), s.right)
}

// Right is what was meant.
func (s *dateSlip) Right() string { return s.right }

// NotADate is the error of a text that means a day, with the date that it means.
func NotADate(text, right string) error { return &dateSlip{text, right} }

// Mendable says whether an error of [ParseDate] knows the date that was meant.
func Mendable(err error) bool {
	var slip *dateSlip
	return errors.As(err, &slip)
}

// yearForms are ways to write a date with its year that are no other date.
var yearForms = []string{"1/2/2006", "1-2-2006", "2006/1/2", "2006-1-2", "2.1.2006", "January 2, 2006", "Jan 2, 2006", "January 2 2006", "2 January 2006"}

// likelyDate is the date that a text of another form likely means; empty for none.
func likelyDate(text string) string {
	for _, form := range yearForms {
		if t, err := time.Parse(form, text); err == nil {
			return t.Format(time.DateOnly)
		}
	}
	return ""
}

var (
	clockText = regexp.MustCompile(`^([01]?[0-9]|2[0-3]):([0-5][0-9])$`)
	halfDay   = regexp.MustCompile(`^(?i)(0?[1-9]|1[0-2])(?::([0-5][0-9]))?\s*([ap])\.?m\.?$`)
)

// ParseClock reads a time of day to the minute, of a clock of 24 hours or of twice 12.
func ParseClock(text string) (clock.Clock, error) {
	if m := clockText.FindStringSubmatch(text); m != nil {
		return clock.New(digits(m[1]), digits(m[2]), 0, 0), nil
	}
	if m := halfDay.FindStringSubmatch(text); m != nil {
		hour := digits(m[1]) % 12
		if strings.EqualFold(m[3], "p") {
			hour += 12
		}
		return clock.New(hour, digits(m[2]), 0, 0), nil
	}
	if strings.EqualFold(text, "noon") {
		return clock.New(12, 0, 0, 0), nil
	}
	if at := clockHour.FindString(text); at != "" && at == text {
		if plain := wholeHour(text); clockText.MatchString(plain) {
			return ParseClock(plain)
		}
	}
	if m := bareHour.FindStringSubmatch(text); m != nil && len(text) <= 2 && digits(text) >= 1 && digits(text) <= 12 {
		return 0, fmt.Errorf(`%s must be a time of day: "%s PM" or "%s AM"`, say.Quoted(text), text, text)
	}
	return 0, fmt.Errorf(`%s must be a time of day, such as "18:00" or "6:00 PM" for six in the evening`, say.Quoted(text))
}

// digits is the number of a few digits; 0 of none.
func digits(text string) int {
	n, _ := strconv.Atoi(text) // by the patterns: at most two digits
	return n
}
