package schedule

import (
	"fmt"
	"strings"
)

// nearestWord is the candidate that differs from word by the fewest letters, or
// "" if none is close enough to be meant.
func nearestWord(word string, candidates []string) string {
	best, least := "", 1+min(len([]rune(word)), 40)/4
	for _, c := range candidates {
		if strings.HasPrefix(c, word) && len(word) > 2 {
			return c
		}
		if edits := letterEdits(strings.ToLower(word), c); edits <= least {
			best, least = c, edits-1
		}
	}
	return best
}

// letterEdits counts the letters to add, drop or change to make b of a; it gives
// up with a large number on words of very different length.
func letterEdits(a, b string) int {
	x, y := []rune(a), []rune(b)
	if len(x) > len(y)+5 || len(y) > len(x)+5 {
		return 1000
	}
	row := make([]int, len(y)+1)
	for j := range row {
		row[j] = j
	}
	for i := range x {
		corner := row[0]
		row[0] = i + 1
		for j := range y {
			change := corner
			if x[i] != y[j] {
				change++
			}
			corner = row[j+1]
			row[j+1] = min(change, row[j+1]+1, row[j]+1)
		}
	}
	return row[len(y)]
}

// listed writes words as a sentence has them: "a, b and c".
func listed(words []string, last string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	n := len(words) - 1
	return fmt.Sprintf("%s %s %s", strings.Join(words[:n], ", "), last, words[n])
}
