package schedule

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
	"time"

	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/meant"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	"github.com/rickb777/date"
	"github.com/rickb777/date/clock"
)

// meantServe is what a request says, in whichever words and fields, of when people eat.
type meantServe struct {
	when instant.When
	err  error // what is not understood of it
	zone string
	home bool // the zone is that of the cook's clock, and was not said
	date string
	time string

	noDay  bool // a day is written and not understood
	noTime bool // an hour is written, or may be, and is not understood
}

// What stands for a day or an hour that was written and not understood: no date of the
// calendar, for a real one would be copied.
const (
	unreadDate = "YYYY-MM-DD"
	unreadTime = "HH:MM"
)

// ownZone is the zone of the cook's clock; empty where that is not known.
func (d decoder) ownZone() string {
	if name := d.now.Location().String(); !d.now.IsZero() && strings.Contains(name, "/") {
		return name
	}
	if d.nowhere {
		return "UTC"
	}
	return ""
}

// seeServe finds out what texts of a request say of when people eat, and where. What they do not
// say is filled with the next Saturday, an example; what they say and is not understood is
// left to the cook.
func (d decoder) seeServe(text, zone string) {
	s := d.saw
	*s = meantServe{date: "2027-07-03", time: "18:00", zone: "America/Chicago"}
	if !d.now.IsZero() {
		saturday := d.now.AddDate(0, 0, int(time.Saturday-d.now.Weekday()+7)%7)
		s.date = saturday.Format(time.DateOnly)
	}
	if text != "" {
		s.when, s.err = instant.ParseWhen(text, d.now)
	}
	if s.when.Day != nil {
		s.date = s.when.Day.String()
	}
	if s.when.Time != nil {
		s.time = s.when.Time.HhMm()
		if s.when.Halfless && strings.Contains(text, " ") {
			s.time = (*s.when.Time + 12*clock.Hour).HhMm()
		}
	}
	var half *instant.HalfDayError
	if errors.As(s.err, &half) && half.Hour >= 1 && half.Hour <= 12 {
		s.time = clock.New(half.Hour%12+12, 0, 0, 0).HhMm() // of the two the likelier
	}
	s.leaveOpen(half)
	known := true
	switch said := instant.ZoneNamed(zone); {
	case said != "":
		s.zone = said
	case s.when.Offset != "" && d.sameClock(s.when):
		s.zone, s.home = d.ownZone(), true
	case s.when.Zone != "":
		s.zone = s.when.Zone
	case d.ownZone() != "":
		s.zone, s.home = d.ownZone(), true
	default:
		known = false
	}
	if s.noDay = s.noDay || d.twoWays(text); s.noDay {
		s.date = unreadDate
	}
	d.day.Serve, d.day.Lines, d.day.Open = s.line(), s.lines(), ""
	if s.noDay || s.noTime {
		d.day.Open = d.openServe(text)
	}
	d.day.When, d.day.Zone = d.heardWhen(text, known), ""
	if known {
		d.day.Zone = s.zone
	}
	d.day.Date = ""
	if s.err == nil && s.when.Day != nil && s.when.Time == nil && !d.twoWays(text) && !(d.pinned && s.when.Floating) {
		d.day.Date = s.date
	}
	d.day.Whole = known && s.err == nil && s.when.Day != nil && s.when.Time != nil && !d.twoWays(text)
}

// leaveOpen takes no day and no hour for those that are written and not understood. Of an
// hour that may be of the morning half has what is known.
func (s *meantServe) leaveOpen(half *instant.HalfDayError) {
	switch {
	case half != nil:
		s.noDay = half.NoDay
		s.noTime = half.Hour < 1 || half.Hour == 10 || half.Hour == 11 || half.Hour > 12
	case s.err != nil:
		s.noDay, s.noTime = s.when.Day == nil, s.when.Time == nil
	}
	if s.noTime {
		s.time = unreadTime
	}
}

// sameClock says whether the cook's own clock differs from UTC on that day as was written.
func (d decoder) sameClock(w instant.When) bool {
	if d.ownZone() == "" || w.Day == nil || w.Time == nil {
		return false
	}
	at := time.Date(w.Day.Year(), w.Day.Month(), w.Day.Day(), w.Time.Hours(), w.Time.Minutes(), 0, 0, d.now.Location())
	return at.Format("-07:00") == w.Offset
}

// heardWhen is when people eat as the form has it, where day, time and zone are known. A
// time that may be of the morning is taken for the evening, and said.
func (d decoder) heardWhen(text string, known bool) meant.When {
	s := d.saw
	var half *instant.HalfDayError
	evening := errors.As(s.err, &half) && half.Hour >= 1 && half.Hour <= 9 || s.err == nil && s.when.Halfless
	noon := half != nil && half.Hour == 12
	if s.when.Day == nil || s.when.Time == nil && !evening && !noon || s.err != nil && half == nil || d.twoWays(text) || d.pinned && s.when.Floating {
		return meant.When{}
	}
	at := s.time
	if s.when.Halfless {
		at = (*s.when.Time + 12*clock.Hour).HhMm()
	}
	if noon {
		at = "12:00"
	}
	w := meant.When{Node: strict.NewGroup(0).With("date", strict.NewText(s.date, 0)).With("time", strict.NewText(at, 0))}
	if known { // else it is asked
		w.Node = w.Node.With("tz", strict.NewText(s.zone, 0))
	}
	day := s.when.Day.Format("Monday, January 2, 2006")
	if s.when.Floating {
		w.Heard = append(w.Heard, fmt.Sprintf("%s is read as %s: said later it would be another day, so write date: %s into the file, or let cookday check --mend do it", say.Quoted(text), day, s.date))
	}
	if evening {
		w.Heard = append(w.Heard, fmt.Sprintf("the time is read as of the evening, %s; for the morning write AM behind it", at))
	}
	if s.when.Stretch != "" {
		w.Heard = append(w.Heard, fmt.Sprintf("of %s its beginning is planned for: what is done sooner is kept hot", say.Quoted(s.when.Stretch)))
	}
	return w
}

func (s *meantServe) line() string {
	return fmt.Sprintf("serve: {date: %s, time: %q, tz: %s}", s.date, s.time, s.zone)
}

// lines are those that would be right, by their paths.
func (s *meantServe) lines() map[string]string {
	return map[string]string{
		"serve": s.line(), "serve.date": "date: " + s.date, "serve.time": fmt.Sprintf("time: %q", s.time), "serve.tz": "tz: " + s.zone,
	}
}

// lookAhead finds out what must be known before the first field is read: how many eat, and
// when, for that may be said in several fields.
func (d decoder) lookAhead(n *strict.Node) {
	if n.Kind != strict.NodeObject || n.Probed() {
		return
	}
	d.day.Eaters, d.day.Heads = meant.Eaters(n), meant.Heads(n)
	d.day.Now = d.now
	d.seeServe(meant.Said(n, d.now))
}

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
	case errors.As(saw.err, &half) && saw.noDay:
		return fmt.Sprintf("%s: the day is not understood; write the date, as in 2027-07-03, for %s: %s", say.Quoted(text), unreadDate, saw.line())
	case half != nil && saw.noTime:
		return saw.err.Error() + ": " + saw.line()
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
