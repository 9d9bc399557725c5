package logbook

import (
	"slices"
	"strconv"
	"strings"
	"time"
)

// spanAt reads a length of time from a word on: 20 minutes, an hour and a half, half an
// hour, 1 hour 20. next is i where there is none.
func spanAt(words []string, i int) (span time.Duration, next int) {
	v, k := amountAt(words, i)
	if k == i || k >= len(words) {
		return 0, i
	}
	unit := unitOf(words[k])
	if unit == 0 {
		return 0, i
	}
	span, k = time.Duration(v*float64(unit)), k+1
	rest := strings.Join(words[k:min(k+3, len(words))], " ")
	switch {
	case strings.HasPrefix(rest, "and a half"):
		return span + unit/2, k + 3
	case strings.HasPrefix(rest, "and a quarter"):
		return span + unit/4, k + 3
	}
	from := k
	if k < len(words) && words[k] == "and" {
		from++
	}
	if more, j := amountAt(words, from); unit == time.Hour && j > from && (j == len(words) || unitOf(words[j]) == time.Minute || agoWord(words[j])) {
		span += time.Duration(more * float64(time.Minute))
		if j < len(words) && unitOf(words[j]) != 0 {
			j++
		}
		return span, j
	}
	return span, k
}

// amountAt reads how many: 20, 1.5, a, an, half an, a couple of.
func amountAt(words []string, i int) (v float64, next int) {
	rest := words[i:min(i+4, len(words))]
	said := strings.Join(rest, " ")
	for _, a := range []struct {
		words string
		v     float64
	}{
		{"half an", 0.5}, {"a half", 0.5}, {"half a", 0.5}, {"quarter of an", 0.25}, {"a quarter of an", 0.25}, {"a quarter", 0.25}, {"3/4 of an", 0.75}, {"1 and a half", 1.5},
		{"a couple of", 2}, {"couple of", 2}, {"a couple", 2}, {"couple", 2}, {"a few", 5}, {"few", 5}, {"half", 0.5}, {"an", 1}, {"a", 1},
	} {
		if said == a.words || strings.HasPrefix(said, a.words+" ") {
			k := i + len(strings.Fields(a.words))
			if half, j := halfAfter(words, k); j > k {
				return a.v + half, j
			}
			return a.v, k
		}
	}
	if i >= len(words) {
		return 0, i
	}
	text := strings.ReplaceAll(words[i], ",", ".")
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || v < 0 || v > 3000 || strings.ContainsAny(text, "eExXpP+-_nN") {
		return 0, i
	}
	if half, j := halfAfter(words, i+1); j > i+1 {
		return v + half, j
	}
	return v, i + 1
}

// halfAfter is the half in "2 and a half hours".
func halfAfter(words []string, i int) (float64, int) {
	if i+3 < len(words) && strings.Join(words[i:i+3], " ") == "and a half" && unitOf(words[i+3]) != 0 {
		return 0.5, i + 3
	}
	return 0, i
}

// unitOf is the length of time that a word stands for; 0 for none.
func unitOf(word string) time.Duration {
	switch word {
	case "min", "mins", "minute", "minutes", "m":
		return time.Minute
	case "h", "hr", "hrs", "hour", "hours":
		return time.Hour
	}
	return 0
}

func agoWord(word string) bool {
	return slices.Contains([]string{"ago", "earlier", "back", "before"}, word)
}
