package logbook

import (
	"regexp"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule/internal/instant"
)

var logClock = regexp.MustCompile(`^([01]?[0-9]|2[0-3]):([0-5][0-9])(:[0-5][0-9])?$`)

// instant reads a time of a log. A clock alone is on the day on which it lies least far.
func (r *Reader) instant(text string, far func(time.Time) time.Duration) (time.Time, string) {
	if t, err := time.Parse(time.RFC3339, text); err == nil {
		return r.within(t.In(r.day.Loc))
	}
	for _, form := range []string{"2006-01-02 15:04", "2006-01-02T15:04", "2006-01-02 15:04:05", "2006-01-02T15:04:05"} {
		if t, err := time.ParseInLocation(form, text, r.day.Loc); err == nil {
			return r.within(t)
		}
	}
	if c, err := instant.ParseClock(text); err == nil { // of twice 12 hours too
		text = c.HhMm()
	}
	if !logClock.MatchString(text) {
		return time.Time{}, `must be a time such as "04:15", "4:15 AM", "2027-07-03 04:15" or 2027-07-03T04:15:00-05:00`
	}
	form := "15:04"
	if strings.Count(text, ":") == 2 {
		form = "15:04:05"
	}
	c, err := time.Parse(form, text)
	if err != nil {
		return time.Time{}, "is no time of day"
	}
	return r.within(r.nearest(c, far))
}

// nearest is a time of day on the day on which it lies least far, of those about the plan.
func (r *Reader) nearest(c time.Time, far func(time.Time) time.Duration) time.Time {
	var best time.Time
	y, m, n := r.day.First.In(r.day.Loc).Date()
	for k := -1; ; k++ {
		t := time.Date(y, m, n+k, c.Hour(), c.Minute(), c.Second(), 0, r.day.Loc)
		if best.IsZero() || far(t) < far(best) {
			best = t
		}
		if t.After(r.day.Last) {
			return best
		}
	}
}

// How far a clock lies is judged by what a cook is likely to have meant: logs are written
// forward, and what is out of its place is a little late rather than a day early; hours at
// which nothing cooks are unlikely (assumptions).
const (
	backwardWeighs = 2
	outsideWeighs  = 3
)

// fromHere is how far an instant lies from the entry before, or else from the cook.
func (r *Reader) fromHere(t time.Time) time.Duration {
	far := time.Duration(0)
	switch {
	case t.Before(r.day.From):
		far = outsideWeighs * r.day.From.Sub(t)
	case t.After(r.day.To):
		far = outsideWeighs * t.Sub(r.day.To)
	}
	switch {
	case r.before.IsZero():
		return far
	case t.Before(r.before):
		return far + backwardWeighs*r.before.Sub(t)
	}
	return far + t.Sub(r.before)
}

// fromServing is how far an instant lies from the planned serving, if it comes after the
// entry that moves it.
func (r *Reader) fromServing(at time.Time) func(time.Time) time.Duration {
	return func(t time.Time) time.Duration {
		far := t.Sub(r.day.To).Abs()
		if t.Before(at) {
			far += outsideWeighs * at.Sub(t)
		}
		return far
	}
}

var halfClock = regexp.MustCompile(`^([1-9]|1[0-2])(:[0-5][0-9])$`)

// servingOf is when people will eat. A time of day of twelve hours without AM or PM is the
// one of both halves that is ahead and lies least far from the planned serving.
func (r *Reader) servingOf(text string, from time.Time) (time.Time, string) {
	m := halfClock.FindStringSubmatch(text)
	if m == nil {
		return r.instant(text, r.fromServing(from))
	}
	far := r.fromServing(from)
	var best time.Time
	for _, half := range []string{" AM", " PM"} {
		if t, bad := r.instant(text+half, far); bad == "" && (best.IsZero() || far(t) < far(best)) {
			best = t
		}
	}
	if best.IsZero() {
		return r.instant(text, far)
	}
	return best, ""
}

// saidWhen is when something was that a cook wrote beside it and not into the column time:
// fire-out with since 3:10, pulled with 2 hours ago.
func (r *Reader) saidWhen(e Entry, text string) (time.Time, bool) {
	words := strings.Fields(strings.ToLower(text))
	led := len(words) > 1 && slices.Contains([]string{"since", "at", "for"}, words[0]) || len(words) > 1 && words[len(words)-1] == "ago"
	if !led || e.At.IsZero() {
		return e.At, false
	}
	n := noteReader{Reader: r, at: e.At, names: map[string][]string{}, read: map[string]reading{}}
	t := times(words)[0]
	if len(t.rest) > 0 || t.loose || t.before || t.isAgo && t.ago == 0 {
		return e.At, false
	}
	at, sentence := n.moment(t, Row{kind: string(e.Kind), dish: e.Dish})
	return at, sentence == "" && !at.After(e.At)
}
