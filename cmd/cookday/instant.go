package main

import (
	"time"

	"example.com/cookday/schedule"
)

// localLayouts are the ways to write an instant on the cook's clock.
var localLayouts = []string{"2006-01-02 15:04", "2006-01-02T15:04"}

// instant reads a time of day that a cook types: RFC 3339, a date and a clock time
// in the plan's zone, or a clock time alone, which is the last one of that time
// before the plan ends.
func instant(flag, text string, p schedule.Plan) (time.Time, error) {
	loc, err := time.LoadLocation(p.TZ)
	if err != nil {
		return time.Time{}, usage("tz: %q is no time zone", p.TZ)
	}
	if t, err := time.Parse(time.RFC3339, text); err == nil {
		return t.In(loc), nil
	}
	for _, layout := range localLayouts {
		if t, err := time.ParseInLocation(layout, text, loc); err == nil {
			return t, nil
		}
	}
	clock, err := schedule.ParseTimeOfDay(text)
	if err != nil {
		return time.Time{}, usage("%s: %q is no time; write 14:30, 2:30pm, 2027-07-03T14:30 or 2027-07-03T14:30:00-05:00", flag, text)
	}
	end := planEnd(p).In(loc)
	t := time.Date(end.Year(), end.Month(), end.Day(), clock.Hours(), clock.Minutes(), 0, 0, loc)
	if t.After(end) {
		t = t.AddDate(0, 0, -1)
	}
	return t, nil
}

// planEnd is the last instant that a plan knows.
func planEnd(p schedule.Plan) time.Time {
	end := p.ServeAt
	for _, s := range p.Steps {
		if s.At.After(end) {
			end = s.At
		}
	}
	return end
}
