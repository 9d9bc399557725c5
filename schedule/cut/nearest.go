package cut

import (
	"cmp"
	"slices"
	"strings"
)

// Nearest returns up to n names of the catalogue, the likeliest meaning of a
// mistyped name first.
func Nearest(name string, n int) []string {
	const longest = 60 // characters; more is no slip of the pen
	wanted := []rune(strings.ToLower(name))
	wanted = wanted[:min(len(wanted), longest)]
	type candidate struct {
		name     string
		distance int
	}
	var found []candidate
	for _, c := range catalogue() {
		d := distance(wanted, []rune(c.Name))
		for _, called := range append([]string{c.Title}, c.Also...) {
			d = min(d, distance(wanted, []rune(strings.ToLower(called))))
		}
		if sharesWord(string(wanted), c.Name) {
			d /= 2 // "beef brisket" is closer to "brisket" than its letters tell
		}
		found = append(found, candidate{c.Name, d})
	}
	slices.SortFunc(found, func(a, b candidate) int {
		return cmp.Or(cmp.Compare(a.distance, b.distance), cmp.Compare(a.name, b.name))
	})
	names := []string{}
	for _, c := range found[:max(0, min(n, len(found)))] {
		names = append(names, c.name)
	}
	return names
}

func sharesWord(text, name string) bool {
	split := func(r rune) bool { return r == ' ' || r == '-' || r == '_' }
	words := strings.FieldsFunc(name, split)
	return slices.ContainsFunc(strings.FieldsFunc(text, split), func(w string) bool { return slices.Contains(words, w) })
}

// distance counts the letters to insert, delete, change or swap with the next one.
func distance(a, b []rune) int {
	before, last, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range a {
		before, last, row = last, row, before
		row[0] = i + 1
		for j := range b {
			change := last[j]
			if a[i] != b[j] {
				change++
			}
			row[j+1] = min(change, last[j+1]+1, row[j]+1)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
	}
	return row[len(b)]
}
