package say

import (
	"fmt"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"example.com/cookday/schedule/unit"
	"github.com/rickb777/date/clock"
)

// Quoted makes foreign text fit for a message of one line.
func Quoted(text string) string {
	const most = 40 // characters; enough to recognise it
	if runes := []rune(text); len(runes) > most {
		text = string(runes[:most]) + "..."
	}
	return fmt.Sprintf("%q", text)
}

// LocalClock is a local clock, "5:45 PM" or "17:45".
func LocalClock(u unit.System, t time.Time) string { return u.Clock(t.Round(time.Minute)) }

// TimeOfDay is a time of day without a day, as [LocalClock] has it.
func TimeOfDay(u unit.System, c clock.Clock) string {
	return u.Clock(time.Date(2000, 1, 1, c.Hours(), c.Minutes(), 0, 0, time.UTC))
}

func Mass(u unit.System, kg float64) string { return u.Mass(unit.Mass(kg)) }

// Upper and Lower change the first letter of a text, which may be of any alphabet.
func Upper(s string) string { return first(s, unicode.ToUpper) }

func Lower(s string) string { return first(s, unicode.ToLower) }

func first(s string, change func(rune) rune) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 || r == utf8.RuneError {
		return s
	}
	return string(change(r)) + s[n:]
}

// Plural is a number with its noun: "1 chunk", "2 chunks".
func Plural(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// Listed writes words as a sentence has them: "a, b and c".
func Listed(words []string, last string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	n := len(words) - 1
	return fmt.Sprintf("%s %s %s", strings.Join(words[:n], ", "), last, words[n])
}

// RoundTo is the nearest whole number of steps.
func RoundTo(n, step int) int { return (n + step/2) / step * step }
