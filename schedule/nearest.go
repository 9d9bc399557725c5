package schedule

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.com/cookday/schedule/cut"
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

// noSuchCut says that a name is not in the catalogue, and what may be meant.
func noSuchCut(name string) string {
	return fmt.Sprintf("%s is not in the catalogue; the nearest are %s", quoted(name), listed(nearestCuts(name, 3), "and"))
}

// nearestCuts are up to n names of the catalogue, the likeliest meaning of a
// mistyped name first.
func nearestCuts(name string, n int) []string {
	wanted := strings.ToLower(name)
	edits := map[string]int{}
	var names []string
	for _, c := range cut.All() {
		names = append(names, c.Name)
		edits[c.Name] = letterEdits(wanted, c.Name)
		for _, called := range append(c.Also, c.Title) {
			edits[c.Name] = min(edits[c.Name], letterEdits(wanted, strings.ToLower(called)))
		}
		if sharesWord(wanted, c.Name) {
			edits[c.Name] /= 3 // "beef brisket" is closer to "brisket" than its letters tell
		}
	}
	slices.SortFunc(names, func(a, b string) int { return cmp.Or(cmp.Compare(edits[a], edits[b]), cmp.Compare(a, b)) })
	return names[:min(n, len(names))]
}

// sharesWord says whether a word of the text is a word of the name, or begins one,
// or begins with one: "wings" are a "chicken-wing".
func sharesWord(text, name string) bool {
	split := func(r rune) bool { return r == ' ' || r == '-' || r == '_' }
	words := strings.FieldsFunc(name, split)
	return slices.ContainsFunc(strings.FieldsFunc(text, split), func(a string) bool {
		return slices.ContainsFunc(words, func(b string) bool {
			return a == b || min(len(a), len(b)) > 3 && (strings.HasPrefix(a, b) || strings.HasPrefix(b, a))
		})
	})
}

// letterEdits counts the letters to add, drop, change or swap with the next one to
// make b of a. More than 60 letters are no slip of the pen: the rest is passed over.
func letterEdits(a, b string) int {
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
