package logbook

import (
	"slices"
	"strconv"
	"strings"

	"example.com/cookday/schedule/internal/fire"
)

// coalWord is what a word of a note about coals tells.
type coalWord int

const (
	coalNoun  coalWord = iota
	coalFull           // a chimney of them
	coalLit            //
	coalUnlit          //
	coalVague          // some, a handful
	coalAdd            //
	coalPour           // what is poured is lit
	coalLay            // what is laid is not
	coalTake           // out, again
	coalThrow          // in, or out
	coalOut            //
	coalSmall          // tells nothing, or where they lie
)

// coalWords are the words of a note about coals; another one makes it a note of something else.
var coalWords = [...]string{
	coalNoun:  "coals briquettes briquets charcoal charcoals fuel",
	coalFull:  "chimney chimneys chimneyful chimneyfuls",
	coalLit:   "lit hot burning glowing live",
	coalUnlit: "unlit cold black raw",
	coalVague: "some few bunch load loads bit lot lots couple shovel handful handfuls",
	coalAdd:   "added add put placed spread piled went gone",
	coalPour:  "poured pour pouring",
	coalLay:   "laid lay",
	coalTake:  "took taken take removed remove scooped lifted fished shoveled shovelled",
	coalThrow: "threw thrown tossed dumped dump tipped chucked pulled pull raked",
	coalOut:   "out away",
	coalSmall: "more fresh new another full of on in into onto the a an to from at ring snake basket side top one left right other pile fire grill grate pit bucket pail kettle smoker middle center centre back rest i we and ,",
}

func coalWordOf(word string) (coalWord, bool) {
	for k, words := range coalWords {
		if slices.Contains(strings.Fields(words), word) {
			return coalWord(k), true
		}
	}
	return 0, false
}

// coalSaid is what a note tells of coals.
type coalSaid struct {
	has   map[coalWord]bool
	count string // digits; empty for none
	share string // a half, of a chimney or of the coals
}

// coalsIn takes a note about coals apart; false for one about something else, or of two counts.
func coalsIn(words []string) (c coalSaid, ok bool) {
	c.has = map[coalWord]bool{}
	for _, w := range words {
		share, isShare := shareWord(w)
		kind, known := coalWordOf(w)
		switch {
		case isShare && c.share == "":
			c.share = share
		case isCount(w) && c.count == "" && c.share == "":
			c.count = w
		case !known:
			return c, false
		default:
			c.has[kind] = true
		}
	}
	return c, true
}

func isCount(word string) bool {
	v, err := strconv.ParseFloat(word, 64)
	return err == nil && v > 0 && !strings.ContainsAny(word, "+-eExXpPnN")
}

// shareWord is a share of something, as the log writes it.
func shareWord(word string) (string, bool) {
	switch word {
	case "half", "1/2":
		return "1/2", true
	case "third", "1/3":
		return "1/3", true
	case "quarter", "1/4":
		return "1/4", true
	case "3/4", "2/3":
		return word, true
	}
	return "", false
}

// coalsSaid reads how many coals were added or taken out, and whether they were lit; false
// where it tells of none.
func (n *noteReader) coalsSaid(words []string) (row Row, sentence string, ok bool) {
	c, ok := coalsIn(words)
	lit, unlit := c.has[coalLit] || c.has[coalPour], c.has[coalUnlit] || c.has[coalLay]
	switch {
	case !ok || lit && unlit || !c.has[coalNoun] && !c.has[coalFull] && !onlyCounted(words, c):
		return row, "", false
	case c.has[coalTake] || c.has[coalThrow] && c.has[coalOut]:
		return c.taken(words)
	case c.has[coalOut] && c.count+c.share != "" && c.has[coalNoun] && !slices.Contains(words, "went") && !slices.Contains(words, "gone"):
		return row, "did you take them out? Nothing was noted. Then note: took out 20 coals, or took out half the coals. If the fire went out, note when: fire out at 3:10", true
	case c.has[coalOut] || words[0] == "lit":
		return row, "", false
	case c.has[coalFull]:
		return n.chimneysSaid(c, words, unlit)
	case c.count == "" && c.share == "":
		return Row{kind: string(Refuelled)}, "", c.has[coalVague] && !lit && (c.has[coalAdd] || c.has[coalThrow])
	case c.count == "" || c.share != "" || c.has[coalVague]:
		return row, "", false
	case lit:
		row = Row{kind: string(LitCoals), value: c.count}
	case unlit:
		row = Row{kind: string(UnlitCoals), value: c.count}
	default:
		row = Row{kind: string(Refuelled), value: c.count + " coals"}
	}
	return row, countFault(c.count), true
}

// onlyCounted says of words that name no coals that they can be of nothing else: 12 lit, 50
// more unlit, rest unlit 90. Three digits may be a time, and what is hot may be a grate.
func onlyCounted(words []string, c coalSaid) bool {
	if c.count == "" || c.has[coalOut] || c.has[coalTake] {
		return false
	}
	sure := c.has[coalAdd] || c.has[coalPour] || c.has[coalThrow] || c.has[coalLay]
	k := slices.Index(words, c.count)
	next := k + 1
	for next < len(words) && (words[next] == "more" || words[next] == "new") {
		next++
	}
	switch {
	case next < len(words) && words[next] == "unlit": // no time is
		return true
	case len(c.count) > 2 && !sure:
		return false
	case next < len(words) && (words[next] == "lit" || words[next] == "unlit"):
		return true
	}
	return k > 0 && words[k-1] == "unlit"
}

// taken is what was taken out of the fire: so many coals, or a share of all.
func (c coalSaid) taken(words []string) (row Row, sentence string, ok bool) {
	row.kind, row.value = string(CoalsOut), c.count
	switch {
	case !c.has[coalNoun] && !c.has[coalLit]:
		return row, "", false
	case c.share != "" && (c.has[coalLit] || c.count != ""), c.share == c.count:
		return row, "how many burning coals did you take out, about? Nothing was noted. Note: took out 20 coals, or took out half the coals. They go into a metal pail with a lid", true
	case c.share != "":
		row.value = c.share
		return row, "", true
	case c.has[coalUnlit]:
		return row, "unlit coals that were taken out need no note: the fire burns as it did. Note what the grate reads in 20 min: grate 250", true
	}
	return row, countFault(c.count), true
}

// chimneysSaid is what was poured from a chimney: lit, where nothing else is said.
func (n *noteReader) chimneysSaid(c coalSaid, words []string, unlit bool) (row Row, sentence string, ok bool) {
	added := c.has[coalAdd] || c.has[coalThrow] || c.has[coalPour] || c.has[coalLay]
	if n.day.Chimney == 0 || !added || c.has[coalVague] {
		return row, "", false
	}
	coals := strconv.Itoa(int(chimneys(words)*float64(n.day.Chimney) + 0.5))
	if v, err := strconv.ParseFloat(c.count, 64); err == nil && v > mostChimneys { // dumped the chimney, 100 coals
		coals = c.count
	}
	kind := LitCoals
	if unlit {
		kind = UnlitCoals
	}
	return Row{kind: string(kind), value: coals}, countFault(coals), true
}

// mostChimneys are poured at once; a larger number counts coals.
const mostChimneys = 4

func countFault(count string) string {
	if _, bad := fireValue(CarriesCount, count); bad != "" {
		return bad
	}
	return ""
}

// chimneys is how many words speak of: half a one, 2, 1 and a half.
func chimneys(words []string) float64 {
	whole, share := 0.0, 0.0
	for _, w := range words {
		if s, ok := shareWord(w); ok {
			share = shareOf(s)
		} else if v, err := strconv.ParseFloat(w, 64); err == nil && isCount(w) {
			whole = v
		}
	}
	if whole+share == 0 {
		return 1
	}
	return whole + share
}

func shareOf(text string) float64 {
	share, err := fire.ParseOpening(text)
	if err != nil {
		return 0
	}
	return share
}
