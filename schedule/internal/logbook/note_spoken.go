package logbook

import (
	"slices"
	"strconv"
)

var (
	ones = map[string]int{"zero": 0, "oh": 0, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9}
	teen = map[string]int{"ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19}
	tens = map[string]int{"twenty": 20, "thirty": 30, "forty": 40, "fourty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90}
)

// spokenNumbers writes numbers in digits that were said in words: one sixty five is 165,
// two oh three is 203.
func spokenNumbers(words []string) []string {
	var out []string
	for i := 0; i < len(words); {
		value, next := spokenNumber(words, i)
		if next == i || next == i+1 && words[i] == "one" && !oneIsNumber(words, i) {
			out = append(out, words[i])
			i++
			continue
		}
		out = append(out, strconv.Itoa(value))
		i = next
	}
	return out
}

// oneIsNumber says of a one that it counts: one hour, at one; the big one does not.
func oneIsNumber(words []string, i int) bool {
	return i+1 < len(words) && (unitOf(words[i+1]) != 0 || slices.Contains([]string{"chimney", "thirty", "o'clock", "and", "am", "pm"}, words[i+1])) ||
		i > 0 && slices.Contains(timeWords, words[i-1])
}

// spokenNumber reads a number from a word on; next is i where there is none.
func spokenNumber(words []string, i int) (value, next int) {
	small := func(k int) (int, int) { // below a hundred
		if k >= len(words) {
			return 0, k
		}
		if v, ok := teen[words[k]]; ok {
			return v, k + 1
		}
		if v, ok := tens[words[k]]; ok {
			if k+1 < len(words) {
				if u, ok := ones[words[k+1]]; ok && u > 0 {
					return v + u, k + 2
				}
			}
			return v, k + 1
		}
		if v, ok := ones[words[k]]; ok && words[k] != "oh" {
			return v, k + 1
		}
		return 0, k
	}
	v, k := small(i)
	if words[i] == "a" && i+1 < len(words) && words[i+1] == "hundred" {
		v, k = 1, i+1
	}
	if k == i {
		return 0, i
	}
	if k < len(words) && words[k] == "hundred" {
		v, k = v*100, k+1
		from := k
		if k < len(words) && words[k] == "and" {
			from++
		}
		if u, j := small(from); j > from {
			return v + u, j
		}
		return v, k
	}
	if v >= 1 && v <= 9 && k < len(words) { // one sixty five, two oh three
		if words[k] == "oh" || words[k] == "zero" {
			if u, j := small(k + 1); j > k+1 && u < 10 {
				return v*100 + u, j
			}
		}
		if u, j := small(k); j > k && u >= 10 {
			return v*100 + u, j
		}
		if k+1 < len(words) { // one six five
			a, okA := ones[words[k]]
			b, okB := ones[words[k+1]]
			if okA && okB {
				return v*100 + a*10 + b, k + 2
			}
		}
	}
	return v, k
}
