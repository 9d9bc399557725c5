package cut

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"sync"

	"example.com/cookday/schedule/internal/say"
)

// Suggest returns up to n identifiers of the catalogue, the likeliest meaning of a name
// first: a slip of the pen, then words in common. Like letters count only where neither
// helps. For a food outside the catalogue stands what is nearest to it.
func Suggest(name string, n int) []string {
	ids, far := ranked(name)
	if byLetters := slices.IndexFunc(ids, func(id string) bool { return far[id] >= lettersFrom }); byLetters > 0 {
		ids = ids[:byLetters]
	}
	return byTail(name, ids)[:max(min(n, len(ids)), 0)]
}

// Near is [Suggest] without what has only some letters in common: nothing is near okra because
// corn has an o and an r. Empty where nothing is.
func Near(name string, n int) []string {
	_, far := ranked(name)
	few := lettersFrom + float64(len([]rune(name)))/3 // letters that may be wrong, and the word is still that one (an assumption)
	return slices.DeleteFunc(Suggest(name, n), func(id string) bool { return far[id] > few })
}

// ranked are all cuts, the likeliest meaning of a name first, and how far each is.
func ranked(name string) (ids []string, far map[string]float64) {
	ask := asking(name)
	far = map[string]float64{}
	for _, k := range known() {
		d := ask.farFrom(k)
		for _, id := range k.leads {
			if old, seen := far[id]; !seen || d < old {
				far[id] = d
			}
		}
	}
	for _, c := range catalogue() {
		ids = append(ids, c.Name)
	}
	slices.SortFunc(ids, func(a, b string) int { return cmp.Or(cmp.Compare(far[a], far[b]), cmp.Compare(a, b)) })
	return ids, far
}

// byTail puts the cut first whose name a name ends in: venison sausage is sausage before it
// is anything of venison.
func byTail(name string, ids []string) []string {
	words := strings.Fields(name)
	for k := 1; k < len(words); k++ {
		cuts, outside := Named(strings.Join(words[k:], " "))
		if len(cuts) != 1 || len(outside) > 0 {
			continue
		}
		if at := slices.Index(ids, cuts[0].Name); at > 0 {
			return slices.Insert(slices.Delete(slices.Clone(ids), at, at+1), 0, cuts[0].Name)
		}
		return ids
	}
	return ids
}

// spelled is a name ready to be compared.
type spelled struct {
	joined string
	words  []string
	leads  []string // identifiers of the cuts it leads to
	extra  float64  // breaks ties: a cut's own name before a borrowed one
}

func spell(name string) spelled {
	words := singulars(wordsOf(spellings(name)[0]))
	return spelled{joined: strings.Join(words, ""), words: slices.DeleteFunc(words, isJoint)}
}

// known are all names that lead somewhere.
var known = sync.OnceValue(func() []spelled {
	var all []spelled
	for _, c := range catalogue() {
		for i, name := range c.names() {
			k := spell(name)
			if k.leads = []string{c.Name}; i > 2 { // after identifier, title and plural
				k.extra = 0.01
			}
			all = append(all, k)
		}
	}
	for _, o := range tables().outside {
		for _, name := range o.names() {
			k := spell(name)
			k.leads, k.extra = o.Nearest, 0.02
			all = append(all, k)
		}
	}
	return all
})

// rarity weighs a word by how few names have it: "chicken" tells less than "wing".
var rarity = sync.OnceValue(func() map[string]float64 {
	in := map[string]float64{}
	for _, k := range known() {
		for _, w := range k.words {
			in[w]++
		}
	}
	for w, n := range in {
		in[w] = math.Log(float64(len(known())) / n)
	}
	return in
})

// question is what was asked for.
type question struct {
	spelled
	weight float64
}

func asking(name string) question {
	q := question{spelled: spell(name)}
	for _, w := range q.words {
		q.weight += weightOf(w)
	}
	return q
}

func weightOf(word string) float64 {
	if w, ok := rarity()[word]; ok {
		return w
	}
	return math.Log(float64(len(known())))
}

// The three ways to be near do not overlap: slips are below 2, words in common below 6,
// and letters above that (the order is the rule, the figures only keep it).
const (
	wordsFrom, wordsSpan = 2.0, 4.0
	lettersFrom          = 6.0
	leastLikeness        = 0.2
)

func (q question) farFrom(k spelled) float64 {
	edits := say.LetterEdits(q.joined, k.joined)
	if edits <= slipsIn(q.joined, k.joined) {
		return 0.5*float64(edits) + k.extra
	}
	if like := q.likeness(k); like > leastLikeness {
		return wordsFrom + wordsSpan*(1-like) + k.extra
	}
	return lettersFrom + float64(edits) + k.extra
}

// slipsIn is how many letters may be wrong and the same word is still meant: one from
// five letters on, two from nine, by the longer of the two (an assumption, no source).
func slipsIn(a, b string) int {
	switch n := max(len([]rune(a)), len([]rune(b))); {
	case n >= 9:
		return 2
	case n >= 5:
		return 1
	}
	return 0
}

// likeness is the share of the weight of all words, asked and known, that both have.
func (q question) likeness(k spelled) float64 {
	common, all := 0.0, q.weight
	for _, w := range k.words {
		all += weightOf(w)
	}
	for _, a := range q.words {
		best := 0.0
		for _, b := range k.words {
			best = max(best, sameWord(a, b)*(weightOf(a)+weightOf(b)))
		}
		common += best
	}
	return common / max(all, 1e-9)
}

// sameWord is 1 for the same word, less for one within the other and for a slip.
func sameWord(a, b string) float64 {
	const part = 4 // letters; shorter ones begin too many words
	switch {
	case a == b:
		return 1
	case min(len(a), len(b)) >= part && (strings.HasPrefix(a, b) || strings.HasPrefix(b, a) || strings.HasSuffix(a, b) || strings.HasSuffix(b, a)):
		return 0.8
	case say.LetterEdits(a, b) <= slipsIn(a, b):
		return 0.7
	}
	return 0
}

// Slip is the name of a food that was meant by one with a slip of the pen in it: briskit. False
// where more than one is as near, or none is.
func Slip(name string) (meant string, ok bool) {
	asked := spell(name).joined
	least, found := math.MaxInt, ""
	for _, c := range catalogue() {
		for _, known := range c.names() {
			k := spell(known).joined
			edits := say.LetterEdits(asked, k)
			if asked == "" || k == "" || k[0] != asked[0] || edits == 0 || edits > slipsIn(asked, k) || edits > least {
				continue
			}
			if edits < least {
				least, found = edits, ""
			}
			if found != "" && spell(found).joined != k {
				return "", false
			}
			found = known
		}
	}
	return found, found != ""
}
