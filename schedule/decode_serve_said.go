package schedule

import (
	"cmp"
	"errors"
	"fmt"
	"regexp"
	"strings"
	"time"

	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/meant"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
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

	place string // where it is, as it was written and is not known; then nothing stands for its zone

	noDay  bool // a day is written and not understood
	noTime bool // an hour is written, or may be, and is not understood
}

// What stands for a day or an hour that was written and not understood: no date of the
// calendar, for a real one would be copied.
const (
	unreadDate = "YYYY-MM-DD"
	unreadTime = "HH:MM"
	unreadZone = "CITY"
)

// atHome is where a cook is at home, or near: it says nothing of a clock.
var atHome = regexp.MustCompile(`(?i)^\s*(?:in |at |on )?(?:the |my |our |in |back )*(?:back ?yard|yard|garden|home|house|place|patio|terrace|deck|balcony|park|beach|lake|campsite|cabin|driveway|porch|farm|outside|outdoors)\b[^,]*$`)

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
// say, or what is not understood of it, is left to the cook: a made-up day would be copied. Where
// it is not known which day it is, examples stand there.
func (d decoder) seeServe(text, zone string) {
	s := d.saw
	*s = meantServe{date: "2027-07-03", time: "18:00", zone: "America/Chicago"}
	if !d.now.IsZero() {
		s.date, s.time = unreadDate, unreadTime
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
			s.time = s.when.Evening().HhMm()
		}
	}
	var half *instant.HalfDayError
	if errors.As(s.err, &half) && half.Hour >= 1 && half.Hour <= 12 {
		s.time = clock.New(half.Hour%12+12, 0, 0, 0).HhMm() // of the two the likelier
	}
	s.leaveOpen(half)
	if text != "" && s.err == nil && !s.when.Relative {
		s.noDay, s.noTime = s.when.Day == nil, s.noTime || s.when.Time == nil
	} else if s.noTime = s.noTime || text != "" && s.err == nil && s.when.Time == nil; half != nil && s.when.Day == nil && !s.when.Relative {
		s.noDay = true
	}
	if s.noTime {
		s.time = unreadTime
	}
	known := true
	switch said := instant.ZoneNamed(zone); {
	case said != "":
		s.zone = said
	case strings.TrimSpace(zone) != "" && !d.now.IsZero() && !atHome.MatchString(zone):
		s.place, s.zone = strings.TrimSpace(zone), unreadZone
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
	d.day.Whole = known && s.place == "" && s.err == nil && s.when.Day != nil && s.when.Time != nil && !d.twoWays(text)
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
		at = s.when.Evening().HhMm()
	}
	if noon {
		at = "12:00"
	}
	w := meant.When{Node: strict.NewGroup(0).With("date", strict.NewText(s.date, 0)).With("time", strict.NewText(at, 0))}
	if known { // else it is asked
		w.Node = w.Node.With("tz", strict.NewText(cmp.Or(s.place, s.zone), 0))
	}
	day := s.when.Day.Format("Monday, January 2, 2006")
	text = strings.TrimPrefix(text, "evening ")
	if !strings.HasSuffix(text, "in the evening") {
		text = strings.TrimSuffix(text, " evening") // that it is of the evening is what the field is called
	}
	if s.when.Floating {
		w.Heard = append(w.Heard, fmt.Sprintf("%s is read as %s: said later it would be another day, so write date: %s into the file, or let cookday check --mend do it", say.Quoted(text), day, s.date))
	}
	if evening {
		w.Heard = append(w.Heard, fmt.Sprintf("the time is read as of the evening, %s; for the morning write AM behind it", at))
	}
	if s.when.Place != "" && s.zone == s.when.Zone {
		w.Heard = append(w.Heard, fmt.Sprintf("%s is read as the place where you are, on the clock of %s", say.Quoted(s.when.Place), s.zone))
	}
	if s.when.Stretch != "" {
		w.Heard = append(w.Heard, fmt.Sprintf("of %s its beginning is planned for: what is done sooner is kept hot", say.Quoted(s.when.Stretch)))
	}
	return w
}

func (s *meantServe) line() string {
	if s.home && s.zone == "UTC" { // nobody said where it is: no clock is put in its place
		return fmt.Sprintf("serve: {date: %s, time: %q}", s.date, s.time)
	}
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
	d.day.Some = meant.SomeOf(n)
	d.day.Now = d.now
	told := meant.Said(n, d.now)
	d.day.Fields = told.Fields
	d.seeServe(told.Text, told.Zone)
}
