package say

import (
	"strings"
)

// NearestWord is the candidate that differs from word by the fewest letters, or
// "" if none is close enough to be meant. Where more than one letter is off the first is
// right: words of a few letters are all near each other.
func NearestWord(word string, candidates []string) string {
	word = strings.ToLower(word)
	best, least := "", slipsIn(word)
	for _, c := range candidates {
		if strings.HasPrefix(c, word) && len(word) > 2 {
			return c
		}
		edits := LetterEdits(word, c)
		if edits <= least && (edits < 2 || word[0] == c[0]) {
			best, least = c, edits-1
		}
	}
	return best
}

// slipsIn is how many letters of a word may be wrong and it is still the one that is
// meant (an assumption, no source).
func slipsIn(word string) int {
	switch n := len([]rune(word)); {
	case n < 3:
		return 0
	case n < 6:
		return 1
	default:
		return min(n, 40) / 3
	}
}

// LetterEdits counts the letters to add, drop, change or swap with the next one to
// make b of a. More than 60 letters are no slip of the pen: the rest is passed over.
func LetterEdits(a, b string) int {
	x, y := []rune(a), []rune(b)
	x, y = x[:min(len(x), 60)], y[:min(len(y), 60)]
	before, last, row := make([]int, len(y)+1), make([]int, len(y)+1), make([]int, len(y)+1)
	for j := range row {
		row[j] = j
	}
	for i := range x {
		before, last, row = last, row, before
		row[0] = i + 1
		for j := range y {
			change := last[j]
			if x[i] != y[j] {
				change++
			}
			row[j+1] = min(change, last[j+1]+1, row[j]+1)
			if i > 0 && j > 0 && x[i] == y[j-1] && x[i-1] == y[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
	}
	return row[len(y)]
}
