package cut

import (
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// mostNameRunes is as much of a typed name as is looked at.
const mostNameRunes = 80

// keysOf are the spellings under which a name is filed and looked up. Two names are the
// same if they share one.
func keysOf(name string) []string {
	var keys []string
	for _, written := range spellings(name) {
		if words := wordsOf(written); len(words) > 0 {
			keys = append(keys, strings.Join(singulars(words), ""), singular(strings.Join(words, "")))
		}
	}
	slices.Sort(keys)
	return slices.Compact(keys)
}

// looseKeysOf are those of the words in any order, "chop, lamb". They have spaces, so that
// they meet only their like.
func looseKeysOf(name string) []string {
	var keys []string
	for _, written := range spellings(name) {
		if telling := slices.DeleteFunc(singulars(wordsOf(written)), isJoint); len(telling) > 1 {
			slices.Sort(telling)
			keys = append(keys, strings.Join(telling, " "))
		}
	}
	slices.Sort(keys)
	return slices.Compact(keys)
}

// spellings are a name in small letters without accents, and the way it is written where
// the keyboard has none of ä, ö and ü.
func spellings(name string) []string {
	if runes := []rune(name); len(runes) > mostNameRunes {
		name = string(runes[:mostNameRunes])
	}
	lower := norm.NFC.String(strings.ToLower(name))
	both := []string{plainLetters(lower)}
	if two := strings.NewReplacer("ä", "ae", "ö", "oe", "ü", "ue").Replace(lower); two != lower {
		both = append(both, plainLetters(two))
	}
	return both
}

// plainLetters takes accents off; ß and the Turkish dotless i have a form of their own.
func plainLetters(text string) string {
	text = strings.NewReplacer("ß", "ss", "ı", "i", "'", "", "’", "").Replace(text)
	return strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Mn, r) {
			return -1
		}
		return r
	}, norm.NFD.String(text))
}

// wordsOf are the runs of letters and digits.
func wordsOf(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}

// isJoint says whether a word only joins others.
func isJoint(word string) bool {
	return slices.Contains([]string{"of", "the", "a", "an", "in", "on", "and", "with"}, word)
}

func singulars(words []string) []string {
	single := make([]string, len(words))
	for i, w := range words {
		single[i] = singular(w)
	}
	return single
}

// singular takes the plural off a word. It need not be right, only the same for both:
// "patty" and "patties" meet at "patty", and so do "boerie" and "boeries" at "boery".
func singular(word string) string {
	const shortest = 4 // "ribs"; three letters have no plural worth taking off
	if len(word) < shortest {
		return word
	}
	for _, end := range []struct{ from, to string }{
		{"ies", "y"}, {"ie", "y"}, {"oes", "o"}, {"lves", "lf"}, {"oaves", "oaf"},
		{"ches", "ch"}, {"shes", "sh"}, {"xes", "x"}, {"sses", "ss"}, {"ss", "ss"}, {"s", ""},
	} {
		if stem, ok := strings.CutSuffix(word, end.from); ok {
			return stem + end.to
		}
	}
	return word
}
