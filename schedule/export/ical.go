package export

import (
	"fmt"
	"strings"
	"time"
	"unicode/utf8"
)

// icalendar writes content lines of RFC 5545. Its own writer, because of the libraries
// at hand one does not fold lines and the other escapes the value of TZID with
// backslashes, which section 3.2 of the RFC does not know.
type icalendar struct {
	*view
	strings.Builder
	stamp  string // DTSTAMP of all events
	warned bool   // an event to light has had the cautions
}

const (
	icalLocal = "20060102T150405"
	icalUTC   = "20060102T150405Z"
)

func (c *icalendar) begin(component string) { c.line("BEGIN", component) }
func (c *icalendar) end(component string)   { c.line("END", component) }

// line writes "name:value", folded at 75 octets between characters (section 3.1).
func (c *icalendar) line(name, value string) {
	text, room := name+":"+value, 75
	for len(text) > room {
		cut := room
		for !utf8.RuneStart(text[cut]) {
			cut--
		}
		c.WriteString(text[:cut] + "\r\n ")
		text, room = text[cut:], 74 // the space of the fold counts
	}
	c.WriteString(text + "\r\n")
}

var icalText = strings.NewReplacer(`\`, `\\`, ";", `\;`, ",", `\,`)

// escape makes a value of type TEXT (section 3.3.11), one line for each part.
func escape(parts ...string) string {
	for i, part := range parts {
		parts[i] = icalText.Replace(clean(part))
	}
	return strings.Join(parts, `\n`)
}

// when writes an instant. A local time that comes twice would mean its first
// occurrence (section 3.3.5), so such instants are written in UTC.
func (c *icalendar) when(name string, t time.Time) {
	t = c.at(t)
	if c.twice(t) {
		c.line(name, t.UTC().Format(icalUTC))
		return
	}
	c.line(name+";TZID="+c.TZ, t.Format(icalLocal))
}

// event opens an event; the caller adds to it and closes it. An event without
// length has no end (section 3.6.1).
func (c *icalendar) event(uid string, from, to time.Time, summary string, lines []string) {
	c.begin("VEVENT")
	c.line("UID", uid)
	c.line("DTSTAMP", c.stamp)
	c.line("SEQUENCE", fmt.Sprint(c.Revision))
	c.when("DTSTART", from)
	if c.at(to).After(c.at(from)) {
		c.when("DTEND", to)
	}
	c.line("SUMMARY", escape(summary))
	if len(lines) > 0 {
		c.line("DESCRIPTION", escape(lines...))
	}
}

// timezone writes the offsets that hold from one instant to another, each as an
// observance that starts once: no rule has to be guessed for other years.
func (c *icalendar) timezone(from, to time.Time) {
	c.begin("VTIMEZONE")
	c.line("TZID", c.TZ)
	for t := from.In(c.loc); ; {
		start, end := t.ZoneBounds()
		name, offset := t.Zone()
		before := offset
		if !start.IsZero() {
			_, before = start.Add(-time.Second).In(c.loc).Zone()
		} else {
			start = time.Date(1970, 1, 1, 0, 0, 0, 0, time.UTC)
		}
		kind := "STANDARD"
		if t.IsDST() {
			kind = "DAYLIGHT"
		}
		c.begin(kind)
		c.line("DTSTART", start.In(time.FixedZone("", before)).Format(icalLocal))
		c.line("TZOFFSETFROM", utcOffset(before))
		c.line("TZOFFSETTO", utcOffset(offset))
		c.line("TZNAME", escape(name))
		c.end(kind)
		if end.IsZero() || end.After(to) {
			break
		}
		t = end.In(c.loc)
	}
	c.end("VTIMEZONE")
}

// utcOffset writes seconds east of Greenwich as +hhmm, or +hhmmss (section 3.3.14).
func utcOffset(seconds int) string {
	sign := "+"
	if seconds < 0 {
		sign, seconds = "-", -seconds
	}
	text := fmt.Sprintf("%s%02d%02d", sign, seconds/3600, seconds/60%60)
	if seconds%60 != 0 {
		text += fmt.Sprintf("%02d", seconds%60)
	}
	return text
}
