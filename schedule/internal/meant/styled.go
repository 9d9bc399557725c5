package meant

import (
	"fmt"
	"regexp"
	"strings"
	"unicode"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
)

// shapeWords stand behind a food and only say how it lies on the grate: halloumi skewers,
// walleye fillets, cauliflower steaks. Of a vegetable a burger is one too.
var (
	shapeWords = regexp.MustCompile(`(?i)^(?:skewers?|kebabs?|kabobs?|kebobs?|brochettes?|fillets?|filets?|steaks?|slices?|halves|wedges|rings?|spears?|planks?)$`)
	pieceSaid  = regexp.MustCompile(`(?i)\b(?:slices?|halves|wedges|rings?|spears?|steaks?|pieces|chunks|sliced|halved|quartered|skewers?|kebabs?)\b`)
	burgerWord = regexp.MustCompile(`(?i)^burgers?$`)
)

// countAtEnd is a number behind a food, where none stands before it.
var countAtEnd = regexp.MustCompile(`(?i)^(.*?\pL)\s+(?:x\s*)?(\d{1,3}|one|two|three|four|five|six|seven|eight|nine|ten|twelve)$`)

// numberOf parts a name from a number behind it; "for 6" is who eats.
func numberOf(name string) (food string, number int) {
	m := countAtEnd.FindStringSubmatch(name)
	if m == nil || strings.HasSuffix(strings.ToLower(m[1]), " for") {
		return name, 0
	}
	return m[1], cut.Speak(m[2]).Count
}

// foodWords are foods that make another dish of the one that stands behind them: a burger of
// mushrooms is none of beef. Red meat is only another of its kind where it is ground.
var (
	foodWords    = regexp.MustCompile(`(?i)\b(?:turkey|chicken|duck|goose|poultry|rabbit|ostrich|kangaroo|crocodile|alligator|gator|fish|salmon|tuna|shrimp|prawns?|crab|lobster|cod|halibut|mushrooms?|portobellos?|cauliflower|cabbage|eggplants?|aubergines?|tofu|beans?|lentils?|chickpeas?|jackfruit|seitan|tempeh|veggie|veg|vegetables?|vegan|vegetarian|plant|plant-based|meatless|cheese|halloumi|eggs?|rice|corn|potato(?:es)?|watermelon|pineapple|bacon|ham|liver|heart|tongue)\b`)
	redMeatWords = regexp.MustCompile(`(?i)\b(?:beef|pork|lamb|mutton|venison|deer|elk|bison|buffalo|boar|veal|goat|game)\b`)
	poultryWords = regexp.MustCompile(`(?i)\b(?:turkey|chicken|duck|goose|poultry)\b`)
)

// styled takes a food with words of a kitchen before it, or of its shape behind it, that the
// catalogue does not have: jerk chicken thighs are chicken thighs. The cook's name stays, and
// how it is planned is said. False where another food is meant.
func (h *hearer) styled(name string) (called string, ok bool) {
	name, count := numberOf(name)
	c, unknown := cut.One(name)
	known := unknown == ""
	if !known {
		if c, ok = styledAs(name); !ok {
			return "", false
		}
	}
	if count > 0 {
		h.behind.Count, h.said.Count = count, count
	}
	h.cut, h.Unclear = c, ""
	if known {
		return name, true
	}
	h.called = name
	h.sliced = h.sliced || pieceSaid.MatchString(name)
	h.Node = h.Node.With("name", strict.NewText(titled(name), h.line))
	h.Heard = append(h.Heard, fmt.Sprintf("%s: planned as %s", name, c.InText()))
	return c.Name, true
}

// isStyled says whether a name is a food with words of a kitchen about it.
func isStyled(name string) bool {
	_, ok := styledAs(name)
	return ok
}

func styledAs(name string) (cut.Cut, bool) {
	words := strings.Fields(name)
	if n := len(words); n > 1 && n < 7 {
		front, back := strings.Join(words[:n-1], " "), words[n-1]
		c, unknown := cut.One(front)
		if unknown == "" && (shapeWords.MatchString(back) || burgerWord.MatchString(back) && !c.IsMain()) {
			return c, true
		}
	}
	for k := 1; k < len(words) && len(words) < 7; k++ { // the longest food at the end counts
		tail := strings.Join(words[k:], " ")
		cuts, outside := cut.Named(tail)
		if len(cuts)+len(outside) == 0 {
			continue
		}
		c, unknown := cut.One(tail)
		if unknown != "" {
			var ok bool
			if c, ok = sausages(tail); !ok {
				return cut.Cut{}, false
			}
		}
		return c, !telling(words[:k], c)
	}
	return cut.Cut{}, false
}

// telling says whether words before a food make another one of it.
func telling(words []string, c cut.Cut) bool {
	head := strings.Join(words, " ")
	if c.Ground && (redMeatWords.MatchString(head) || poultryWords.MatchString(head)) { // poultry is done hotter, which is seen to
		return false
	}
	if pulledName.MatchString(head) || foodWords.MatchString(head) || redMeatWords.MatchString(head) {
		return true
	}
	for _, w := range words {
		if knownFood(w) {
			return true
		}
	}
	return false
}

// outsideNone says whether a name is that of no food that the catalogue knows of and has not.
func outsideNone(name string) bool {
	_, outside := cut.Named(name)
	return len(outside) == 0
}

// Cutting is a dish of whole fruit or vegetables in the pieces that lie on the grate, and what a
// cook has to see of that; the dish itself where it is none.
func (d Day) Cutting(dish *strict.Node) (*strict.Node, string) {
	food, count := dish.Get("cut"), dish.Get("count")
	if food == nil || food.Kind != strict.NodeText || count == nil || !digitsOnly.MatchString(count.Text) || dish.Get("weights") != nil {
		return dish, ""
	}
	c, unknown := cut.One(food.Text)
	p := cut.Whole(food.Text)
	if unknown != "" || p.Count == 0 {
		return dish, ""
	}
	n := countOf(count)
	all := n * p.Count
	if plenty := 3 * c.ServingKg * float64(d.Eaters); n > 1 && d.Eaters > 0 && float64(all)*c.UsualKg(food.Text) > plenty { // nobody buys so many whole ones
		return dish, fmt.Sprintf("%d %s: taken as %s, not as whole ones", n, food.Text, p.Called)
	}
	if w := dish.Get("weight"); w != nil { // of one
		dish = dish.With("weight", strict.NewText(Shared(w.Text, p.Count), w.Line))
	}
	if dish.Get("name") == nil {
		dish = dish.With("name", strict.NewText(titled(food.Text), food.Line))
	}
	dish = dish.With("cut", strict.NewText(c.Name, food.Line)).With("count", strict.NewNumber(all, count.Line))
	return dish, fmt.Sprintf("%d %s: taken as %d %s", n, food.Text, all, p.Called)
}

// titled is a name with a capital at its head.
func titled(name string) string {
	runes := []rune(strings.TrimSpace(name))
	if len(runes) > 0 {
		runes[0] = unicode.ToUpper(runes[0])
	}
	return string(runes)
}
