package unit

import (
	"regexp"
	"strings"
	"time"
)

// Duration is a time.Duration that is written as ISO 8601 text. It is never negative.
type Duration time.Duration

const durationWant = "is written like 45m, 1h30m, 90 min or PT1H30M, without years and months"

// Weeks and days are 168 and 24 hours of elapsed time, whatever the clocks do.
// Years and months have no fixed length and are not accepted.
var (
	isoDuration   = regexp.MustCompile(`(?i)^P(?:(\d+(?:\.\d+)?)W)?(?:(\d+(?:\.\d+)?)D)?(?:T(?:(\d+(?:\.\d+)?)H)?(?:(\d+(?:\.\d+)?)M)?(?:(\d+(?:\.\d+)?)S)?)?$`)
	plainDuration = regexp.MustCompile(`(?i)^(?:(\d+(?:\.\d+)?) *(?:weeks?|w))? *(?:(\d+(?:\.\d+)?) *(?:days?|d))? *(?:(\d+(?:\.\d+)?) *(?:hours?|hrs?|h))? *(?:(\d+(?:\.\d+)?) *(?:minutes?|mins?|m))? *(?:(\d+(?:\.\d+)?) *(?:seconds?|secs?|s))?$`)
)

// ParseDuration reads "PT45M", "PT1H30M", "P1D", "45m", "1h30m", "90 min" or "1 h 30 min".
// The error is a *ParseError.
func ParseDuration(text string) (time.Duration, error) {
	fail := &ParseError{Quantity: "duration", Text: text, Want: durationWant}
	s := strings.TrimSpace(text)
	m := isoDuration.FindStringSubmatch(s)
	if m == nil {
		m = plainDuration.FindStringSubmatch(s)
	}
	if strings.Contains(s, ",") {
		fail.Want = "is written with a decimal point, not a comma: 1.5h and not 1,5h"
		return 0, fail
	}
	if m == nil || len(s) > longest || strings.HasSuffix(strings.ToUpper(s), "T") {
		return 0, fail
	}
	total, ok := sum(m[1:])
	if !ok {
		return 0, fail
	}
	return total, nil
}

// sum adds weeks, days, hours, minutes and seconds. Only the last part given may have
// a decimal point, as ISO 8601 has it.
func sum(parts []string) (time.Duration, bool) {
	var total time.Duration
	given, broken := false, false
	for i, digits := range parts {
		if digits == "" {
			continue
		}
		if broken {
			return 0, false
		}
		given, broken = true, strings.Contains(digits, ".")
		unit, times := [5]string{"h", "h", "h", "m", "s"}[i], [5]time.Duration{168, 24, 1, 1, 1}[i]
		d, err := time.ParseDuration(digits + unit) // exact to the nanosecond
		if err != nil || d > (1<<63-1-total)/times {
			return 0, false
		}
		total += d * times
	}
	return total, given
}

// MarshalText writes hours, minutes and seconds: "PT1H30M".
func (d Duration) MarshalText() ([]byte, error) {
	t := time.Duration(d)
	if t < 0 {
		return nil, &ParseError{Quantity: "duration", Text: t.String(), Want: "is not negative"}
	}
	s := strings.ToUpper(t.String()) // "1h30m0s", "45m0s", "0s", "1.5s"
	if t > 0 && t < time.Second {
		s = "0" + strings.TrimRight((t + time.Second).String()[1:], "s") + "S" // no ms, us, ns in ISO 8601
	}
	if strings.HasSuffix(s, "M0S") {
		s = strings.TrimSuffix(s, "0S")
	}
	if strings.HasSuffix(s, "H0M") {
		s = strings.TrimSuffix(s, "0M")
	}
	return []byte("PT" + s), nil
}

// UnmarshalText is ParseDuration.
func (d *Duration) UnmarshalText(b []byte) error {
	return set(d, b, func(text string) (Duration, error) {
		v, err := ParseDuration(text)
		return Duration(v), err
	})
}
