package logbook

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
)

// told is a time that a note tells, and the words of the note without it.
type told struct {
	rest   []string
	clock  clockSaid
	ago    time.Duration // where it is no clock
	isAgo  bool
	before bool // it was before that time
	loose  bool // digits that may be a temperature: 430
}

// clockSaid is a time of day as somebody says it.
type clockSaid struct {
	hour, minute int
	exact        bool // of 24 hours, or with am or pm; else it may be either half of the day
}

// timeWords stand before a time.
var timeWords = []string{"at", "since", "around", "about", "before", "by", "from", "after", "approx", "roughly", "circa", "~", "for", "like", "maybe", "nearly", "almost", "just"}

// times are the readings of the time in a note, the likeliest first; the last is that it
// has none.
func times(words []string) []told {
	var all []told
	whole := words
	words, half := withoutDayPart(words)
	been := slices.Contains(words, "been")
	for i := range words {
		k := i
		for k < len(words) && k < i+3 && slices.Contains(timeWords, words[k]) {
			k++
		}
		said := words[i:k]
		without := func(next int) []string { return slices.Concat(words[:i], words[next:]) }
		before := slices.Contains(said, "before") || slices.Contains(said, "by")
		if span, next := spanAt(words, k); next > k {
			ago := next < len(words) && agoWord(words[next])
			if ago || slices.Contains(said, "since") || slices.Contains(said, "for") || been && next == len(words) {
				if ago {
					next++
				}
				all = append(all, told{rest: without(next), ago: span, isAgo: true, before: before})
			}
			continue
		}
		if c, next, loose := clockAt(words, k, k > i); next > k && !(next < len(words) && slices.Contains(counted, words[next])) {
			if half != wholeDay && !c.exact {
				c.hour, c.exact = half.hour(c.hour), true
			}
			all = append(all, told{rest: without(next), clock: c, before: before, loose: loose})
		}
	}
	slices.SortStableFunc(all, func(a, b told) int { return len(a.rest) - len(b.rest) }) // the most words explained
	return append(all, told{rest: whole, isAgo: true})
}

// counted are words before which a number is no time.
var counted = []string{"coals", "briquettes", "briquets", "charcoal", "lit", "unlit", "more", "hot", "degrees", "f", "c", "mph", "km/h", "chimneys", "times", "pieces", "chunks", "%"}

var (
	clockWord  = regexp.MustCompile(`^(\d{1,2})[:.](\d\d)(am|pm|a|p)?$`)
	hourWord   = regexp.MustCompile(`^(\d{1,2})(am|pm|a|p)?$`)
	clockNoDot = regexp.MustCompile(`^(\d{1,2})(\d\d)(am|pm|h)?$`)
)

// clockAt reads a time of day from a word on; led says that a word such as at or since is
// before it, without which a bare hour is none.
func clockAt(words []string, i int, led bool) (c clockSaid, next int, loose bool) {
	if i >= len(words) {
		return c, i, false
	}
	w := words[i]
	half := ""
	next = i + 1
	if next < len(words) && (words[next] == "am" || words[next] == "pm") {
		half = words[next]
	}
	take := func(hour, minute, own string) (clockSaid, int, bool) {
		h, _ := strconv.Atoi(hour) // digits, by the patterns
		m, _ := strconv.Atoi(minute)
		if own == "" && half != "" {
			own = half
			next++
		}
		own = strings.TrimSuffix(own, "h")
		if h > 23 || m > 59 || own != "" && (h < 1 || h > 12) {
			return clockSaid{}, i, false
		}
		switch {
		case strings.HasPrefix(own, "p"):
			h = h%12 + 12
		case strings.HasPrefix(own, "a"):
			h %= 12
		}
		exact := own != "" || h > 12 || h == 0 || strings.HasPrefix(hour, "0")
		return clockSaid{h, m, exact}, next, false
	}
	switch {
	case w == "noon" || w == "midday":
		return clockSaid{12, 0, true}, next, false
	case w == "midnight":
		return clockSaid{0, 0, true}, next, false
	}
	if c, k := clockPhrase(words, i); k > i {
		return c, k, false
	}
	if m := clockWord.FindStringSubmatch(w); m != nil && (led || strings.Contains(w, ":") || m[3] != "" || half != "") {
		return take(m[1], m[2], m[3])
	}
	if m := hourWord.FindStringSubmatch(w); m != nil {
		oclock := next < len(words) && (words[next] == "o'clock" || words[next] == "oclock")
		if oclock {
			c, _, _ := take(m[1], "0", m[2])
			return c, i + 2, false
		}
		if m[2] != "" && m[2] != "a" || half != "" || led && m[2] == "" {
			c, next, _ := take(m[1], "0", m[2])
			if c.hour > 12 && m[2] == "" && half == "" { // 20 alone is no time
				return c, i, false
			}
			return c, next, false
		}
		return c, i, false
	}
	if m := clockNoDot.FindStringSubmatch(w); m != nil && (led || m[3] != "" || half != "") {
		c, next, _ := take(m[1], m[2], m[3])
		return c, next, m[3] == "" && half == ""
	}
	return c, i, false
}

// clockPhrase reads half past 4, quarter to 5, 10 past 4, 20 to 6.
func clockPhrase(words []string, i int) (clockSaid, int) {
	if i+2 >= len(words) {
		return clockSaid{}, i
	}
	k := i
	if words[k] == "a" {
		k++
	}
	minutes := 0
	switch words[k] {
	case "half":
		minutes = 30
	case "quarter":
		minutes = 15
	default:
		v, err := strconv.Atoi(words[k])
		if err != nil || v < 1 || v > 29 {
			return clockSaid{}, i
		}
		minutes = v
	}
	if k+2 >= len(words) {
		return clockSaid{}, i
	}
	hour, err := strconv.Atoi(words[k+2])
	if err != nil || hour < 1 || hour > 12 {
		return clockSaid{}, i
	}
	switch words[k+1] {
	case "past", "after":
	case "to", "til", "till", "before":
		minutes, hour = 60-minutes, hour-1
		if hour == 0 {
			hour = 12
		}
	default:
		return clockSaid{}, i
	}
	return clockSaid{hour, minutes, false}, k + 3
}

// dayPart is the part of a day in which a time lies.
type dayPart int

const (
	wholeDay dayPart = iota
	morning
	evening // from noon on
	night
)

// nightFrom is from when on an hour of the evening is of the night.
const nightFrom = 6

// hour is an hour of twelve in a part of the day.
func (d dayPart) hour(h int) int {
	if h %= 12; d == evening || d == night && h >= nightFrom {
		return h + 12
	}
	return h
}

// withoutDayPart takes "this morning", "in the evening" or "last night" out of the words.
func withoutDayPart(words []string) (rest []string, part dayPart) {
	for k, w := range words {
		switch w {
		case "morning":
			part = morning
		case "afternoon", "evening", "tonight":
			part = evening
		case "night":
			part = night
		case "today":
			part = wholeDay
		default:
			continue
		}
		i := k
		for i > 0 && i > k-2 && slices.Contains([]string{"in", "the", "this", "last", "at"}, words[i-1]) {
			i--
		}
		return slices.Concat(words[:i], words[k+1:]), part
	}
	return words, wholeDay
}
