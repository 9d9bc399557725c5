package logbook

import (
	"fmt"
	"slices"
	"strings"
	"time"
)

// servingSaid writes to when a serving was moved: a time of day, or how much later or
// earlier than it was to be.
func (n *noteReader) servingSaid(row *Row) (sentence string, ok bool) {
	later := slices.ContainsFunc(strings.Fields(row.value), func(w string) bool {
		return slices.Contains([]string{"late", "later", "back", "behind", "delayed", "delay", "pushed", "push"}, w)
	})
	words := slices.DeleteFunc(strings.Fields(row.value), func(w string) bool {
		return slices.Contains([]string{"late", "later", "back", "behind", "moved", "pushed", "push", "delayed", "move", "delay", "is", "at", "to", "by", "till", "until", "running", "coming", "will", "be", "not", "before", "now", "from", "about", "around", "instead", "say", "come", "coming", "comes", "arrive", "arriving", "arrives", "time", "them", "it", "out", "off"}, w)
	})
	var at time.Time
	if span, next := spanAt(words, 0); next > 0 {
		from := n.serving(row.dish)
		if moved := n.justMoved(row.dish); !moved.IsZero() {
			return fmt.Sprintf("dinner was moved to %s a moment ago. If that is the same word of theirs, nothing is to note. If they come later still, note the time: dinner %s",
				n.day.Units.Clock(moved), n.day.Units.Clock(moved.Add(span))), true
		}
		early := slices.Contains([]string{"early", "earlier", "sooner"}, strings.Join(words[next:], " "))
		switch {
		case early:
			at = from.Add(-span)
		case later && next == len(words):
			at = from.Add(span)
		default:
			return "is that later or earlier? Write when people eat: dinner 7 PM, or dinner 1 hour later", next == len(words)
		}
	} else if len(words) > 1 && words[0] == "in" {
		span, next := spanAt(words, 1)
		if next != len(words) {
			return "", false
		}
		at = n.at.Add(span)
	} else if c, next, _ := clockAt(words, 0, true); next == len(words) && next > 0 {
		at = n.servingAt(c, row.dish)
	} else if t, bad := n.instant(row.value, n.fromServing(n.at)); bad == "" && len(words) > 0 {
		at = t
	} else {
		return fmt.Sprintf("when do people eat? Write it with its time: dinner %s", n.day.Units.Clock(n.serving(row.dish).Add(time.Hour))), false
	}
	if at.Before(n.at) {
		return fmt.Sprintf("%s is past; write when people will eat: dinner %s", n.dated(at), n.day.Units.Clock(n.at.Add(time.Hour))), true
	}
	row.value = at.Format("2006-01-02 15:04")
	return "", true
}

// sameWord is within which a serving that is moved by so many minutes may be told twice.
const sameWord = 15 * time.Minute

// justMoved is to when the serving was moved within the last minutes; zero where it was not.
func (n *noteReader) justMoved(dish string) (to time.Time) {
	for _, e := range n.log {
		if e.Kind == ServingMoved && (e.Dish == "" || e.Dish == dish) && n.at.Sub(e.At) <= sameWord {
			if t, err := time.Parse(time.RFC3339, e.Value); err == nil {
				to = t.In(n.day.Loc)
			}
		}
	}
	return to
}

// Words of guests who say when they come.
var (
	guestWords = []string{"guests", "guest", "people", "they", "they'll", "they're", "everyone", "everybody", "company", "family", "friends", "crowd", "gang", "folks"}
	lateWords  = []string{"late", "later", "delayed", "behind"}
	earlyWords = []string{"early", "earlier"}
	guestSmall = []string{"called", "call", "texted", "phoned", "say", "said", "says", "come", "coming", "comes", "be", "will", "running", "by", "are", "arrive", "arriving", "get", "here", "is", "get", "gets", "about", "an", "a", ",", "and", "the", "our", "stuck", "in", "traffic"}
)

// guestsSaid reads by how much guests come later or earlier, in whatever order: they come 90
// min late. Who does not say who is late is asked: it may be the cook.
func (n *noteReader) guestsSaid(words []string) (row Row, sentence string, ok bool) {
	var span time.Duration
	who, late, early := false, false, false
	for k := 0; k < len(words); {
		w := words[k]
		if s, next := spanAt(words, k); next > k && span == 0 {
			span, k = s, next
			continue
		}
		switch {
		case slices.Contains(guestWords, w):
			who = true
		case slices.Contains(lateWords, w):
			late = true
		case slices.Contains(earlyWords, w):
			early = true
		case !slices.Contains(guestSmall, w):
			return row, "", false
		}
		k++
	}
	if span == 0 || late == early {
		return row, "", false
	}
	minutes := int(span.Minutes())
	if !who {
		return row, fmt.Sprintf("do people eat that much later? Nothing was noted. Then note: dinner %d min later", minutes), late
	}
	row = Row{kind: string(ServingMoved), value: fmt.Sprintf("%d min later", minutes)}
	if early {
		row.value = fmt.Sprintf("%d min earlier", minutes)
	}
	sentence, ok = n.servingSaid(&row)
	return row, sentence, ok
}
