package unit

import "time"

// Clock prints a time of day: "6:00 PM", "18:00".
func (s System) Clock(t time.Time) string {
	if s == US {
		return t.Format("3:04 PM")
	}
	return t.Format("15:04")
}

// Day prints a day without its year: "Saturday, July 3", "Saturday 3 July".
func (s System) Day(t time.Time) string {
	if s == US {
		return t.Format("Monday, January 2")
	}
	return t.Format("Monday 2 January")
}

// Date prints a day with its year: "Saturday, July 3, 2027", "Saturday 3 July 2027".
func (s System) Date(t time.Time) string {
	if s == US {
		return t.Format("Monday, January 2, 2006")
	}
	return t.Format("Monday 2 January 2006")
}

// ClockOn prints a time of day with its weekday: "8:00 PM Fri", "20:00 Fri".
func (s System) ClockOn(t time.Time) string { return s.Clock(t) + t.Format(" Mon") }

// DayForms are the layouts of a day, the longest first, for where room is short.
func (s System) DayForms() []string {
	if s == US {
		return []string{"Monday, January 2", "Mon, Jan 2", "Mon"}
	}
	return []string{"Monday 2 January", "Mon 2 Jan", "Mon"}
}
