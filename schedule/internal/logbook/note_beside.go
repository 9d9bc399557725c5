package logbook

import (
	"regexp"
	"slices"
	"strings"
)

// beside reads what can be noted among words that only tell how it looks or what happened
// about it, of which the answer stands beside the line: the figure is never lost. Nil where
// a word is left that nobody knows.
func (n *noteReader) beside(words []string, dish string) []Row {
	if rows := n.besideSegments(words, dish); rows != nil {
		return rows
	}
	bare := strings.Fields(remarkPhrases.ReplaceAllString(strings.Join(words, " "), " "))
	if len(bare) == 0 || len(bare) == len(words) {
		return nil
	}
	rows, sentence, ok := n.whole(bare, dish)
	if !ok || sentence != "" || len(rows) != 1 || !isMeatReading(rows[0]) {
		return nil
	}
	if a, ok := answerOf(strings.Join(words, " ")); ok {
		rows[0].aside = n.inWords([]string{rows[0].dish}, a.besideFigure())
	}
	return rows
}

func isMeatReading(row Row) bool {
	return slices.Contains([]Kind{Core, Coldest, Outer}, Kind(row.kind))
}

// remarkPhrases are said beside a figure, and tell none.
var remarkPhrases = regexp.MustCompile(`\b(and |but |though |, )*((still |really |very |quite |bit |nearly |almost |not |yet )*(pink|raw|bloody|undercooked|underdone|done|ready|finished|cooked|tender)( in the middle| inside)?( yet)?` +
	`|looks? (really |very |so )?(good|great|black|dark|brown|golden|done|nice|burnt|bad|dry|perfect|amazing)( on the outside| outside)?` +
	`|(hasn't|hasnt|has not|not) (moved|budged|changed|climbed|moving|budging)( at all| much)?( (in|for) (the last |an |a |the past |about |over )*(\d+ )?(hours?|minutes?|mins?|min|hrs?|hr|while))?` +
	`|(the )?bones? (wiggles?|wiggly|twists?|slides? out|slid out|is loose|loose)( out)?|bends?( nice(ly)?| well)?|nice bark|probe tender|probes? like butter|like butter|stall(ed|ing)?|(in|hit) (the |a )?stall)( now| already)?\b`)

// besideSegments reads each part of a note between its joints: a line, or a remark.
func (n *noteReader) besideSegments(words []string, dish string) []Row {
	var all []Row
	var asides []string
	type waiting struct{ kinds []Kind }
	var waits []waiting
	parts := segments(words)
	for _, part := range parts {
		if rows, sentence := n.segment(part, dish, len(parts) > 1); rows != nil && sentence == "" {
			all = append(all, rows...)
			dish = rows[len(rows)-1].dish
			continue
		}
		if !n.onlyRemarks(part) {
			return nil
		}
		if id := n.dishIn(part); id != "" {
			dish = id
		}
		said := strings.Join(part, " ")
		if kinds := remarkOf(said); kinds != nil {
			waits = append(waits, waiting{kinds})
		} else if a, ok := answerOf(said); ok {
			asides = append(asides, n.inWords([]string{dish}, a.besideFigure()))
		}
	}
	for _, w := range waits { // a gust alone asks for the wind
		if !slices.ContainsFunc(all, func(r Row) bool { return slices.Contains(w.kinds, Kind(r.kind)) }) {
			return nil
		}
	}
	if off := slices.ContainsFunc(all, func(r Row) bool { return Kind(r.kind) == Pulled }); len(all) > 0 && !off {
		all[len(all)-1].aside = strings.Join(slices.Compact(asides), ". ")
	}
	return all
}

// segment are the lines of one part; of a part among several a figure stands without what is
// said beside it.
func (n *noteReader) segment(words []string, dish string, among bool) ([]Row, string) {
	if rows, sentence, ok := n.whole(words, dish); ok {
		return rows, sentence
	}
	if rows := n.several(words, dish, 2); rows != nil {
		return rows, ""
	}
	bare := strings.Fields(remarkPhrases.ReplaceAllString(strings.Join(words, " "), " "))
	if !among || len(bare) == 0 || len(bare) == len(words) {
		return nil, ""
	}
	rows, sentence, ok := n.whole(bare, dish)
	if !ok || len(rows) != 1 || !isMeatReading(rows[0]) {
		return nil, ""
	}
	return rows, sentence
}

func segments(words []string) [][]string {
	var all [][]string
	from := 0
	for k := 0; k <= len(words); k++ {
		if k == len(words) || slices.Contains(joints, words[k]) || words[k] == "though" {
			if k > from {
				all = append(all, words[from:k])
			}
			from = k + 1
		}
	}
	return all
}

// remarkOf are the kinds one of which has to be told beside a remark; nil for one that may
// stand by itself.
func remarkOf(said string) []Kind {
	for _, r := range []struct {
		said  *regexp.Regexp
		kinds []Kind
	}{
		{remarkWind, []Kind{Wind}}, {remarkRain, []Kind{Rain, Wind}}, {remarkGuests, []Kind{ServingMoved, Served}}, {remarkFire, []Kind{Grate, Gauge, FireOut, LitCoals, UnlitCoals, Refuelled, CoalsOut, Vents}},
	} {
		if r.said.MatchString(said) {
			return r.kinds
		}
	}
	return nil
}

var (
	remarkWind   = regexp.MustCompile(`\b(gusts?|gusty|windy|wind|breezy)\b`)
	remarkRain   = regexp.MustCompile(`\b(storm|thunder|thunderstorm|clouds?)\b`)
	remarkGuests = regexp.MustCompile(`\b(guests?|called|texted|company|people|family|friends|uncle|aunt|everybody|everyone)\b`)
	remarkFire   = regexp.MustCompile(`\b(fire|coals|temp|dying|dropping|falling|rising|climbing|hot|cool|low|weak)\b`)
)

// remarkWords are all words of a remark: one that is none of them may change what is meant.
var remarkWords = strings.Fields(`look looks looking black dark brown golden red good great bad beautiful color colour bark set mahogany crispy crisp skin outside
	inside done ready cooked tender bend bends bent bending crack cracks cracking cracked butter soft jiggly jiggles juicy juices clear run running smell smells smelling smoke smoky
	blue thick thin pink raw bloody very already little bit stalled stalling stall stuck gust gusts came through guests called company people family friends
	texted phoned uncle aunt arrived coming storm thunder thunderstorm lots nearly almost perfect amazing probe probes like middle in on windy fire dying dropping falling
	wiggle wiggles wiggly loose slides slid twists twisted temped took it off bone at joint near rising climbing hot cool low weak going down up still temp coals burnt burned dry nice nicely wood chunk chunks chips hickory oak apple cherry mesquite pecan added put`)

// onlyRemarks says of words that they are remarks, or done to food without a note.
func (n *noteReader) onlyRemarks(words []string) bool {
	told := false
	for _, w := range words {
		remark := slices.Contains(remarkWords, w) || slices.Contains(needless, w)
		if !remark && !slices.Contains(fillers, w) && len(n.alike(w)) == 0 {
			return false
		}
		told = told || remark
	}
	return told
}

// dishIn is the dish that words name somewhere; empty where none or several are.
func (n *noteReader) dishIn(words []string) string {
	id := ""
	for _, w := range words {
		ids := n.alike(w)
		if len(ids) != 1 || isSmall(w) || slices.Contains(remarkWords, w) {
			continue
		}
		if id != "" && id != ids[0] {
			return ""
		}
		id = ids[0]
	}
	return id
}
