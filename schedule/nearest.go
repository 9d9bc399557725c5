package schedule

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/say"
)

// noSuchCut says that a name is not in the catalogue, and what may be meant.
func noSuchCut(name string) string {
	return fmt.Sprintf("%s is not in the catalogue; the nearest are %s", say.Quoted(name), say.Listed(nearestCuts(name, 3), "and"))
}

// nearestCuts are up to n names of the catalogue, the likeliest meaning of a
// mistyped name first.
func nearestCuts(name string, n int) []string {
	wanted := strings.ToLower(name)
	edits := map[string]int{}
	var names []string
	for _, c := range cut.All() {
		names = append(names, c.Name)
		edits[c.Name] = say.LetterEdits(wanted, c.Name)
		for _, called := range append(c.Also, c.Title) {
			edits[c.Name] = min(edits[c.Name], say.LetterEdits(wanted, strings.ToLower(called)))
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
