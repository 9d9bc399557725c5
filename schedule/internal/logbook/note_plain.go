package logbook

import (
	"cmp"
	"regexp"
	"slices"
	"strings"

	"example.com/cookday/schedule/internal/say"
)

// most words of a note: nobody says more with greasy hands, and each is looked at often.
const mostWords = 40

var (
	halfDayDots = regexp.MustCompile(`\b([ap])\.\s?m\b\.?`)
	hourMinute  = regexp.MustCompile(`^(\d{1,2})(?:h|hr|hrs)(\d{1,2})(?:m|min|mins)?$`)
	numberUnit  = regexp.MustCompile(`^(\d+(?:[.,]\d+)?)(min|mins|minutes|m|h|hr|hrs|hours)$`)
	letterOh    = regexp.MustCompile(`^(\d{1,2})(o{1,2})$`)
	degreeTail  = regexp.MustCompile(`^(-?\d+(?:[.,]\d+)?)(°|º|ish|deg|degrees|'s)(f|c)?$`)
	joined      = strings.NewReplacer("’", "'", "‘", "'", "“", "", "”", "", `"`, "", "–", "-", "&", " and ", "+", " and ", "=", " ", "#1", " first ", "#2", " second ", "#3", " third ", "#", " ", "½", " half ", "¼", "1/4", "¾", "3/4", "℉", "f", "℃", "c", ";", " , ", "\n", " , ")
)

// plainWords are the words of a note without the marks between them: in small letters,
// numbers in digits, slips of the pen mended where only one word can be meant.
func (n *noteReader) plainWords(text string) []string {
	text = joined.Replace(strings.ToLower(text))
	text = halfDayDots.ReplaceAllString(text, "${1}m")
	var words []string
	for _, w := range strings.Fields(text) {
		comma := strings.HasSuffix(w, ",")
		w = strings.TrimSuffix(strings.Trim(w, `,.!?()*`), ":")
		if m := hourMinute.FindStringSubmatch(w); m != nil {
			words = append(words, m[1], "h")
			w = m[2]
		}
		if m := numberUnit.FindStringSubmatch(w); m != nil {
			words = append(words, m[1])
			w = m[2]
		}
		if bare, ok := strings.CutSuffix(w, "'s"); ok && bare != "it" {
			w = bare
		}
		if m := letterOh.FindStringSubmatch(w); m != nil { // 25O
			w = m[1] + strings.Repeat("0", len(m[2]))
		}
		if m := degreeTail.FindStringSubmatch(w); m != nil {
			w = m[1] + m[3]
		}
		switch w {
		case "bird", "birds":
			w = n.onlyBird(w)
		case "rack", "racks", "slab", "slabs":
			if len(words) == 0 || !slices.Contains([]string{"top", "upper", "lower", "bottom", "oven", "wire", "cooling", "warming"}, words[len(words)-1]) {
				w = n.onlyRibs(w)
			}
		}
		if w != "" {
			words = append(words, w)
		}
		if comma {
			words = append(words, ",")
		}
	}
	words = offAt(litOnUnlit(n.numbered(withoutStart(spokenNumbers(words)))))
	for i, w := range words {
		words[i] = n.spelled(w)
	}
	return words
}

// withoutStart leaves out where a figure came from: down from 260 to 225.
func withoutStart(words []string) []string {
	for k := 1; k+3 < len(words); k++ {
		if words[k] == "from" && words[k+2] == "to" && noteNumber.MatchString(words[k+1]) && noteNumber.MatchString(words[k+3]) &&
			slices.Contains([]string{"down", "up", "went", "gone", "dropped", "fell", "fallen", "climbed", "rose", "risen", "jumped", "sank", "spiked", "shot", "dropping", "falling", "rising", "climbing"}, words[k-1]) {
			return slices.Concat(words[:k], words[k+2:])
		}
	}
	return words
}

var (
	litThenUnlit = regexp.MustCompile(`(\b\d+ (?:more )?(?:lit|hot|burning|glowing)(?: coals| briquettes| briquets)?) (?:on top of|on|onto|over|next to|beside|against|into|in with|to) (?:the |my |about )*(\d+ (?:unlit|cold|black))( coals| briquettes| briquets| ones)?\b`)
	offReading   = regexp.MustCompile(`\b(off|pulled|out) (\d[6-9]\d)\b`)
)

// litOnUnlit parts coals that lie together: 33 lit coals on 340 unlit.
func litOnUnlit(words []string) []string {
	return strings.Fields(litThenUnlit.ReplaceAllString(strings.Join(words, " "), "$1 and $2 coals"))
}

// offAt says of a figure behind off that it was read, where no clock shows it: off 166.
func offAt(words []string) []string {
	return strings.Fields(offReading.ReplaceAllString(strings.Join(words, " "), "$1 at $2"))
}

// numbered are pieces by their numbers: chicken 1 158, chicken 2 166.
func (n *noteReader) numbered(words []string) []string {
	out := slices.Clone(words)
	for k := 1; k+1 < len(words); k++ {
		i := slices.Index([]string{"1", "2", "3"}, words[k])
		read := len(words[k+1]) > 1 && noteNumber.MatchString(words[k+1])
		if i >= 0 && (read || slices.Contains([]string{"off", "pulled", "came", "is"}, words[k+1])) && len(n.alike(words[k-1])) == 1 && !isSmall(words[k-1]) {
			out[k] = []string{"first", "second", "third"}[i]
		}
	}
	return out
}

// onlyBird is the poultry of the day, where there is one.
func (n *noteReader) onlyBird(word string) string {
	id := ""
	for _, d := range n.day.Dishes {
		if d.Poultry {
			if id != "" {
				return word
			}
			id = d.ID
		}
	}
	return cmp.Or(id, word)
}

// onlyRibs are the ribs of the day, where there is one dish of them and none is called so.
func (n *noteReader) onlyRibs(word string) string {
	if len(n.alike(word)) > 0 {
		return word
	}
	var ids []string
	for _, d := range n.day.Dishes {
		if slices.ContainsFunc(singular(d.Cut), func(w string) bool { return w == "rib" || w == "back" }) {
			ids = append(ids, d.ID)
		}
	}
	if len(ids) != 1 {
		return word
	}
	return ids[0]
}

// heard are words as a telephone hears them, or a country says them, in ours.
var heard = map[string]string{
	"great": "grate", "grade": "grate", "gate": "grate", "grates": "grate", "grille": "grate", "rapped": "wrapped", "raped": "wrapped", "rap": "wrap",
	"barbie": "grill", "barbecue": "grill", "bbq": "grill", "kettle": "grill", "cooker": "grill", "esky": "cooler", "coolbox": "cooler",
	"alfoil": "foil", "tinfoil": "foil", "aluminium": "foil", "aluminum": "foil", "coal": "coals", "briquette": "briquettes", "briqs": "briquettes",
	"lump": "charcoal", "supper": "dinner", "tea": "dinner", "chook": "chicken", "chooks": "chickens", "snags": "sausages", "bangers": "sausages", "prawns": "shrimp",
	"temps": "temp", "tmp": "temp", "internals": "internal", "intl": "internal", "int": "internal", "damper": "vent", "dampers": "vents",
	"refrigerator": "fridge", "freezer": "fridge", "gonna": "", "fahrenheit": "f", "celsius": "c", "centigrade": "c", "dozen": "12", "whole": "", "outta": "out", "w/": "with", "thru": "through", "@": "at", "n": "and", "'n'": "and",
}

// spelled is a word as it is looked for: of another country, of a telephone's ear, or with
// a slip of the pen where one known word alone is near.
func (n *noteReader) spelled(word string) string {
	if h, ok := heard[word]; ok {
		return h
	}
	if len(word) < 4 || strings.ContainsAny(word, "0123456789") || n.known(word) {
		return word
	}
	best, most, twice := "", 1, false
	if len(word) > 6 {
		most = 2
	}
	for _, c := range n.vocabulary() {
		if len(c) < 4 || c[0] != word[0] || len(word) == 4 && len(c) == 4 { // short words are all near each other
			continue
		}
		switch edits := say.LetterEdits(word, c); {
		case edits < most || edits == most && best == "":
			best, most, twice = c, edits, false
		case edits == most && c != best:
			twice = true
		}
	}
	if best == "" || twice {
		return word
	}
	return best
}

// vocabulary are the words by which a note is read: of what is done, and of the dishes.
func (n *noteReader) vocabulary() []string {
	if n.words == nil {
		for _, s := range sayings {
			for _, phrase := range strings.Split(s.phrases, "|") {
				n.words = append(n.words, strings.Fields(phrase)...)
			}
		}
		for _, d := range n.named() {
			n.words = append(n.words, strings.FieldsFunc(strings.ToLower(d.ID+" "+d.Name+" "+d.Cut), func(r rune) bool { return r == ' ' || r == '-' })...)
		}
		n.words = append(n.words, "minutes", "hours", "guests", "dinner", "unlit", "briquettes", "chimney", "bottom", "vents", "coldest", "thigh", "breast")
		slices.Sort(n.words)
		n.words = slices.Compact(n.words)
	}
	return n.words
}

// known says of a word that it is none misspelled.
func (n *noteReader) known(word string) bool {
	if strings.Contains(answeredWords, word) {
		return true
	}
	_, ofCoals := coalWordOf(word)
	return ofCoals || placeOf(word) != "" || isPurpose(word) || slices.Contains(remarkWords, word) || ventNames[word] != "" || slices.Contains(ventSmalls, word) || slices.Contains(ventVague, word) || slices.Contains(ventStuck, word) ||
		slices.Contains(airDevice, word) || slices.Contains(airSmall, word) || slices.Contains(besideHeat, word) || slices.Contains(besideLid, word) ||
		slices.Contains(n.vocabulary(), word) || slices.Contains(fillers, word) || slices.Contains(needless, word) || len(n.alike(word)) > 0 || slices.Contains(correctWords, word)
}

// correctWords are right as they stand, and near a word that is something else.
var correctWords = []string{
	"dead", "dying", "cold", "hour", "hours", "since", "before", "around", "about", "after", "late", "later", "lamb", "beef", "pork", "duck", "fish", "corn", "noon", "half", "quarter", "past", "both",
	"pink", "done", "tender", "looks", "look", "good", "bend", "bends", "flame", "flames", "flare", "flaring", "burning", "burned", "burnt", "first", "second", "other", "flat", "point", "cook", "cooked", "cooling",
	"here", "there", "then", "they", "this", "last", "that", "than", "wine", "beer", "cake", "time", "tent", "tented", "rest", "more", "none", "over", "with", "from", "into", "onto", "down", "much", "many", "most",
	"eight", "eighty", "eighteen", "under", "undercooked", "lower", "lowered", "slow", "slowly", "blow", "blowing", "grow", "cover", "covered", "uncovered", "heat", "head", "seat", "meal", "meat", "wood", "food", "cool", "pool", "tool", "hold", "holding", "cheese",
	"snow", "snowing", "smoke", "skin", "help", "what", "ready", "kitchen", "popped", "times", "still", "pour", "poured", "hour", "clear", "white", "wild", "carved", "came", "gray", "grey", "side", "safe", "table", "temperature", "climbing", "steady", "stalled", "stall", "stuck", "dropping", "falling", "rising", "chunks", "chunk",
	"scratch", "against", "wrong", "broke", "broken", "broken,", "touching", "water", "bone", "spot", "place", "bucket", "between", "anywhere", "somewhere", "sprayed", "thigh", "thighs", "breasts", "minute", "empty", "refilled", "filled", "boiled", "soaked", "damp", "tore", "torn", "ripped", "leaking", "collapsed",
	"charred", "fallen", "wheel", "handle", "door", "plate", "board", "sheet", "error", "blank", "weird", "digit", "neighbor", "kids", "sleep", "woke", "think", "guess", "probably", "forgot", "forgotten", "remember", "should", "would", "could", "will", "want", "wants", "wanted", "target", "until", "because", "every", "never", "always",
	"faster", "slower", "quick", "quickly", "another", "behind", "under", "enough", "least", "right", "wrong", "inside", "outside", "underneath", "bottoms", "tops", "piece", "pieces", "rack", "racks", "slab", "slabs", "batch", "tray", "wing", "wings", "drumstick", "drumsticks", "shoulder", "shoulders", "steak", "steaks", "roast", "loin", "salmon", "shrimp", "veggies", "peppers", "onions", "potatoes", "beans",
}
