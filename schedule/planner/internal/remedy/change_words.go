package remedy

import (
	"fmt"
	"strconv"
	"strings"
)

// counted is a number in figures.
func counted(n int) string { return strconv.Itoa(n) }

// numberWord is a small number in words, as a sentence has it.
func numberWord(n int) string {
	words := []string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}
	if n < len(words) {
		return words[n]
	}
	return counted(n)
}

// shares says how many of something there are each time.
func shares(sizes []int, when []string) string {
	var all []string
	for i, n := range sizes {
		all = append(all, fmt.Sprintf("%d %s", n, when[i]))
	}
	return strings.Join(all, ", ")
}
