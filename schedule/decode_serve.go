package schedule

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
	"time"

	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	"github.com/rickb777/date"
	"github.com/rickb777/date/clock"
)

// slashes is a date whose month may be its first or its second number.
var slashes = regexp.MustCompile(`\b(\d{1,2})[/.-](\d{1,2})[/.-]\d{2,4}\b`)

// twoWays says whether a date can be read with the day first where people write it so.
func (d decoder) twoWays(text string) bool {
	m := slashes.FindStringSubmatch(text)
	american := !d.pastMonthFirst(text) && (strings.HasPrefix(d.saw.zone, "America/") || d.saw.zone == "Pacific/Honolulu" || d.nowhere && d.saw.home)
	return m != nil && !american && strings.Contains(m[0], "/") && m[1] != m[2] && len(m[1]+m[2]) <= 4 && smallMonth(m[1]) && smallMonth(m[2])
}

// pastMonthFirst says whether a date is past with its month first and yet to come with its
// day first: then nobody knows.
func (d decoder) pastMonthFirst(text string) bool {
	m := slashes.FindString(text)
	month, first := time.Parse("1/2/2006", m)
	day, second := time.Parse("2/1/2006", m)
	today := d.now.Truncate(24 * time.Hour)
	return !d.now.IsZero() && first == nil && second == nil && month.Before(today) && day.After(today) && day.Before(today.AddDate(1, 0, 0))
}

func smallMonth(text string) bool { return len(text) == 1 || text <= "12" }

// serve reads {date: 2027-07-03, time: "18:00", tz: America/Chicago}, or a text that says as
// much: "2027-07-03 18:00 Chicago". A day of the week is refused with its date: next week
// it would be another day.
func (d decoder) serve(s *Serve) strict.Reader {
	group := func(n *strict.Node, path string) {
		d.Object(n, path,
			strict.Required("date", strict.Quantity(d.Decoder, &s.Date, d.parseDate)),
			strict.Required("time", strict.Quantity(d.Decoder, &s.Time, instant.ParseClock)),
			strict.Optional("tz", d.zoneName(&s.TZ)),
		)
		switch home := d.ownZone(); {
		case s.TZ != "" || n.Probed() || n.Kind != strict.NodeObject || n.Get("tz") != nil:
		case home != "":
			s.TZ = home
		default:
			d.Faults.AddLine(path+".tz", n.Line, "is missing; write tz: %s, or the large city whose clock is yours", d.saw.zone)
		}
	}
	return func(n *strict.Node, path string) {
		s.Time = clock.Undefined // until it is read: midnight would look meant
		if n.Kind != strict.NodeText || n.Probed() {
			strict.OrText(d.Decoder, group)(n, path)
			return
		}
		d.seeServeText(n, path)
		if saw := d.saw; d.day.Whole && !saw.when.Relative {
			s.Date, s.Time, s.TZ = *saw.when.Day, *saw.when.Time, saw.zone
			if w := d.day.When; w.Node != nil && saw.when.Halfless {
				s.Time += 12 * clock.Hour
				*d.heard = append(*d.heard, w.Heard...)
			}
			return
		}
		known := d.Faults.Len()
		d.Faults.AddLine(path, n.Line, "%s", d.openServe(n.Text))
		if d.day.Whole {
			d.Faults.MendedWhole(known, "serve", d.day.Serve, n.Line)
		}
	}
}

// seeServeText looks at the text alone where nothing was looked at before.
func (d decoder) seeServeText(n *strict.Node, path string) {
	if path != "serve" {
		d.seeServe(n.Text, "")
	}
}

// openServe says what is open about a text for when people eat, and what to write.
func (d decoder) openServe(text string) string {
	saw := d.saw
	var half *instant.HalfDayError
	var unread *instant.UnreadError
	switch {
	case d.twoWays(text):
		m := slashes.FindStringSubmatch(text)
		return fmt.Sprintf("%s may have its day or its month first: is it %s? Write year, month and day: %s", say.Quoted(text), bothWays(m[0]), saw.line())
	case saw.err == nil && saw.noDay && saw.noTime:
		return fmt.Sprintf("it is not said when people eat; write %s with the day for %s, as in 2027-07-03, and the time for %s, as in 6:00 PM", saw.line(), unreadDate, unreadTime)
	case saw.err == nil && saw.noDay:
		return fmt.Sprintf("the day is not said; write %s with it for %s, as in 2027-07-03", saw.line(), unreadDate)
	case saw.err == nil && saw.noTime:
		return fmt.Sprintf("the time is not said; write %s with it for %s, as in 6:00 PM", saw.line(), unreadTime)
	case errors.As(saw.err, &half) && saw.noDay && !half.NoDay:
		return fmt.Sprintf("the day is not said; write %s with it for %s, as in 2027-07-03", saw.line(), unreadDate)
	case errors.As(saw.err, &half) && saw.noDay:
		return fmt.Sprintf("%s: the day is not understood; write the date, as in 2027-07-03, for %s: %s", say.Quoted(text), unreadDate, saw.line())
	case half != nil && saw.noTime:
		return saw.err.Error() + ": " + saw.line()
	case errors.As(saw.err, &unread) && unread.Why != "":
		return fmt.Sprintf("%s: %s; write the date that is meant, as in 2027-07-03, for %s: %s", say.Quoted(text), unread.Why, unreadDate, saw.line())
	case errors.As(saw.err, &unread):
		return saw.openWords(say.Quoted(unread.Words))
	case saw.err != nil:
		return saw.err.Error() + "; such as " + saw.line()
	case saw.when.Relative && saw.when.Day != nil:
		return fmt.Sprintf("%s is another day when it is read later; it must be a group of fields: %s", say.Quoted(text), saw.line())
	}
	return say.Quoted(text) + " is text; it must be a group of fields: " + saw.line()
}

// openWords says what to write for words that are not understood.
func (s *meantServe) openWords(words string) string {
	switch {
	case s.noDay && s.noTime:
		return fmt.Sprintf("%s is not understood as a day and a time; write the date, as in 2027-07-03, and the time, as in 6:00 PM: %s", words, s.line())
	case s.noDay:
		return fmt.Sprintf("%s is not understood as a day; write the date, as in 2027-07-03, for %s: %s", words, unreadDate, s.line())
	case s.noTime:
		return fmt.Sprintf("%s is not understood as a time; write it, as in 6:00 PM, for %s: %s", words, unreadTime, s.line())
	}
	if choice := instant.ZonesNamed(strings.Trim(words, `"`)); choice != "" {
		s.zone = unreadZone
		return fmt.Sprintf("%s has more than one clock: for %s write %s: %s", words, unreadZone, choice, s.line())
	}
	if s.home && !strings.ContainsAny(words, "0123456789") {
		s.zone = unreadZone
		return fmt.Sprintf("%s is not understood; if it is where you are, write its state or country behind it, or a large city that shares its clock, for %s, else leave it out: %s", words, unreadZone, s.line())
	}
	return fmt.Sprintf("%s is not understood; without it this is %s", words, s.line())
}

// bothWays are the two days that a date with slashes may be.
func bothWays(slashed string) string {
	var days []string
	for _, form := range []string{"1/2/2006", "2/1/2006"} {
		if t, err := time.Parse(form, slashed); err == nil {
			days = append(days, t.Format("January 2, 2006"))
		}
	}
	return strings.Join(days, ", or ")
}

// parseDate reads a date, and knows what a day of the week is today.
func (d decoder) parseDate(text string) (date.Date, error) {
	v, err := instant.ParseDate(text)
	if err == nil {
		return v, nil
	}
	if d.twoWays(text) {
		m := slashes.FindStringSubmatch(text)
		return v, fmt.Errorf("%s may be %s; write year, month and day, as in 2027-07-03", say.Quoted(text), bothWays(m[0]))
	}
	if w, bad := instant.ParseWhen(text, d.now); bad == nil && w.Day != nil && w.Time == nil {
		return v, instant.NotADate(text, w.Day.String())
	}
	if !d.now.IsZero() && !instant.Mendable(err) {
		return v, fmt.Errorf("%s is not understood as a day; write year, month and day, as in 2027-07-03", say.Quoted(text))
	}
	return v, err
}

// zoneName reads the name of a time zone, or of what has one clock: a large city, a state.
func (d decoder) zoneName(to *string) strict.Reader {
	read := d.Text(to)
	return func(n *strict.Node, path string) {
		if read(n, path); *to != "" && !n.Probed() {
			if place := instant.ZoneNamed(*to); place != "" {
				*to = place
			}
		}
	}
}

// flat is a request whose fields stand behind dashes, as a group of fields.
func (d decoder) flat(n *strict.Node, path string) *strict.Node {
	if n.Kind != strict.NodeList || n.Probed() || len(n.Items) == 0 {
		return n
	}
	whole := strict.NewGroup(n.Line)
	for _, item := range n.Items {
		if item.Kind != strict.NodeObject {
			return n
		}
		whole = whole.Joined(item)
	}
	d.Faults.AddShape(path, n.Line, "is a list; take the dashes at the left margin away, so that serve:, grill: and dishes: begin their lines")
	return whole
}
