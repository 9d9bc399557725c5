package schedule

import (
	"fmt"
	"regexp"

	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/strict"
	"github.com/rickb777/date"
	"github.com/rickb777/date/clock"
)

// clock reads "15:00" or {date: 2027-07-02, time: "15:00"}.
func (d decoder) clock(c *Clock) strict.Reader {
	return strict.Named("clock", func(n *strict.Node, path string) {
		c.Time = clock.Undefined
		if n.Kind != strict.NodeObject {
			strict.Quantity(d.Decoder, &c.Time, parseClockOfDay)(n, path)
			return
		}
		d.Object(n, path,
			strict.Optional("date", strict.Pointed(&c.Date, func(to *date.Date) strict.Reader { return strict.Quantity(d.Decoder, to, instant.ParseDate) })),
			strict.Required("time", strict.Quantity(d.Decoder, &c.Time, instant.ParseClock)),
		)
	})
}

// quietHours reads the list of them; an empty one is something said: nobody sleeps.
func (d decoder) quietHours(to *[]Quiet) strict.Reader {
	return func(n *strict.Node, path string) {
		if n.Kind == strict.NodeObject { // one alone
			*to = make([]Quiet, 1)
			d.quiet(&(*to)[0])(n, path)
			return
		}
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
			strict.Required("from", strict.Quantity(d.Decoder, &q.From, instant.ParseClock)),
			strict.Required("to", strict.Quantity(d.Decoder, &q.To, instant.ParseClock)),
		)
	}
}

var dated = regexp.MustCompile(`[0-9]{4}-[0-9]{1,2}-[0-9]{1,2}`)

// ParseTimeOfDay reads a time of day as cooks write it: "18:00", "6:00 PM", 6pm or noon.
func ParseTimeOfDay(text string) (clock.Clock, error) { return instant.ParseClock(text) }

// parseClockOfDay is a time of day where a time of another day may be meant.
func parseClockOfDay(text string) (clock.Clock, error) {
	c, err := instant.ParseClock(text)
	if err != nil && dated.MatchString(text) {
		return c, fmt.Errorf(`%w; of another day it is {date: 2027-07-03, time: "18:00"}`, err)
	}
	return c, err
}
