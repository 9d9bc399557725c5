package schedule

import (
	"fmt"
	"regexp"
	"strconv"
	"time"

	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	"github.com/rickb777/date"
	"github.com/rickb777/date/clock"
)

func (d decoder) serve(s *Serve) strict.Reader {
	return func(n *strict.Node, path string) {
		s.Time = clock.Undefined // until it is read: midnight would look meant
		d.Object(n, path,
			strict.Required("date", strict.Quantity(d.Decoder, &s.Date, parseDate)),
			strict.Required("time", strict.Quantity(d.Decoder, &s.Time, parseClock)),
			strict.Required("tz", d.Text(&s.TZ)),
		)
	}
}

// clock reads "15:00" or {date: 2027-07-02, time: "15:00"}.
func (d decoder) clock(c *Clock) strict.Reader {
	return func(n *strict.Node, path string) {
		c.Time = clock.Undefined
		if n.Kind != strict.NodeObject {
			strict.Quantity(d.Decoder, &c.Time, parseClockOfDay)(n, path)
			return
		}
		d.Object(n, path,
			strict.Optional("date", strict.Pointed(&c.Date, func(to *date.Date) strict.Reader { return strict.Quantity(d.Decoder, to, parseDate) })),
			strict.Required("time", strict.Quantity(d.Decoder, &c.Time, parseClock)),
		)
	}
}

// quietHours reads the list of them; an empty one is something said: nobody sleeps.
func (d decoder) quietHours(to *[]Quiet) strict.Reader {
	return func(n *strict.Node, path string) {
		if n.Kind == strict.NodeList {
			*to = []Quiet{}
		}
		strict.List(d.Decoder, to, maxQuiet, d.quiet)(n, path)
	}
}

func (d decoder) quiet(q *Quiet) strict.Reader {
	return func(n *strict.Node, path string) {
		q.From, q.To = clock.Undefined, clock.Undefined
		d.Object(n, path,
			strict.Required("from", strict.Quantity(d.Decoder, &q.From, parseClock)),
			strict.Required("to", strict.Quantity(d.Decoder, &q.To, parseClock)),
		)
	}
}

// parseDate reads a calendar date and nothing looser.
func parseDate(text string) (date.Date, error) {
	t, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return date.Date{}, fmt.Errorf("%s must be a date of the calendar such as 2027-07-03", say.Quoted(text))
	}
	return date.NewAt(t), nil
}

var (
	clockText = regexp.MustCompile(`^([01]?[0-9]|2[0-3]):([0-5][0-9])$`)
	dated     = regexp.MustCompile(`[0-9]{4}-[0-9]{1,2}-[0-9]{1,2}`)
)

// parseClockOfDay is parseClock where a time of another day may be meant.
func parseClockOfDay(text string) (clock.Clock, error) {
	c, err := parseClock(text)
	if err != nil && dated.MatchString(text) {
		return c, fmt.Errorf(`%w; of another day it is {date: 2027-07-03, time: "18:00"}`, err)
	}
	return c, err
}

// parseClock reads a time of day to the minute, from 00:00 to 23:59.
func parseClock(text string) (clock.Clock, error) {
	m := clockText.FindStringSubmatch(text)
	if m == nil {
		return 0, fmt.Errorf(`%s must be a time of day from "00:00" to "23:59", such as "18:00" for six in the evening`, say.Quoted(text))
	}
	hours, _ := strconv.Atoi(m[1]) // two digits by the pattern
	minutes, _ := strconv.Atoi(m[2])
	return clock.New(hours, minutes, 0, 0), nil
}
