package schedule

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"example.com/cookday/schedule/internal/meant"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// openFire is a grill without a lid: food lies over its coals (an assumption of its size and heat).
var openFire = ofZones("{name: grate, width: 24 in, depth: 16 in, min: 350 F, max: 550 F, direct: true}")

var (
	openGrill  = regexp.MustCompile(`(?i)\b(?:braai|open (?:fire|grill|braai|wood)|no lid|without (?:a )?lid|lidless|fire ?pit|campfire|hibachi|parrilla|mangal|tripod)\b`)
	smallGrill = regexp.MustCompile(`(?i)\b(?:portable|small|table ?top|camping|travel|mini|bucket)\b`)
	smokerWord = regexp.MustCompile(`(?i)\b(?:smoker|bullet|drum|vertical|upright)\b`)
	grillLines = regexp.MustCompile(`(?i)[^\n.,;]*\b(?:gas|propane|pellets?|electric|kamado|ceramic|egg|offset|braai|kettle|bullet|drum|barrel|smoker|grill|barbecue|barbie|bbq (?:grill|pit)|charcoal|lid)\b[^\n.,;]*`)
	feet       = regexp.MustCompile(`(\d+(?:\.\d+)?)\s*(?:feet|foot|ft|')(?:\b|\s|$)`)
	zoneLine   = regexp.MustCompile(`\{kind: other, zones: \[.*\]\}`)
)

// guessGrill takes the grill that the words name with its usual size, one that is told by its
// heat where it burns no charcoal or has no lid, else a kettle.
func (g *guesser) guessGrill(sentence string) {
	wrote := g.saidIn("grill")
	if again := g.saidIn("grill again"); again != "" {
		if kg, err := unit.ParseMass(wrote); err == nil && kg > 0 && len(g.dishes) == 1 && g.amountOfOne(wrote) {
			wrote = ""
		}
		wrote = strings.TrimSpace(wrote + " " + again)
	}
	words := wrote
	if words == "" {
		words = g.grillSaid()
		wrote = strings.TrimSpace(words)
	} else if at := strings.Index(g.text, wrote); at >= 0 { // the line tells more: Smoker: ...
		words = g.text[strings.LastIndexAny(g.text[:at], "\n")+1:at] + wrote
	}
	for _, again := range []string{"grill again", "grill"} {
		g.tree = g.tree.Without(again)
	}
	line, how := g.grillGuessed(words, sentence)
	g.tree = g.tree.WithAt("grill", 1, line)
	g.marks["grill"] = mark(how, wrote)
}

// grillSaid are the parts of the text that name a grill and no food.
func (g *guesser) grillSaid() string {
	var said []string
	for _, part := range grillLines.FindAllString(g.text, -1) {
		food := slices.ContainsFunc(meant.GuessDishes(part, 0, 0), func(d meant.GuessedDish) bool { return d.Node != nil })
		if !food || burnsOther(strings.ToLower(part)) {
			said = append(said, strings.TrimSpace(part))
			g.unused = slices.DeleteFunc(g.unused, func(u string) bool { return strings.Contains(u, strings.TrimSpace(part)) || strings.Contains(part, u) })
		}
	}
	return strings.Join(said, ", ")
}

// grillGuessed is the likeliest grill of a text, and how it is said.
func (g *guesser) grillGuessed(words, sentence string) (line *strict.Node, how string) {
	metric := g.metric
	low := feet.ReplaceAllStringFunc(strings.ToLower(words), func(s string) string {
		ft, _ := strconv.ParseFloat(feet.FindStringSubmatch(s)[1], 64) // by the pattern
		return sideText(ft*12) + " in"
	})
	in := lineWord.FindAllString(low, -1)
	said := zoneLine.FindString(sentence)
	if said == "" || saysCeramic(in) && !burnsOther(low) {
		switch {
		case burnsOther(low):
			said = zoneLine.FindString(otherZones(low, false, metric))
		case saysCeramic(in):
			said = ceramicZones(low, metric, g.overCoals())
		case slices.Contains(in, "offset"):
			said = zoneLine.FindString(otherGrill("offset", low, metric))
		case openGrill.MatchString(low):
			said = openFire
			if w, d, ok := grateIn(low); ok && w != d {
				said = ofZones(zoneOver(w, d))
			}
		}
	}
	if said != "" {
		how = "told by its heat, no advice on its fire, and of a usual size: measure your grate"
		if openGrill.MatchString(low) {
			how = "an open fire of a usual size, food over its coals: without a lid thick pieces take longer than the plan says"
		}
		return groupIn(said), how
	}
	if sizes := lineSizes.FindStringSubmatch(low); sizes != nil && modelNumber(sizes) && grillKindIn(withoutWord(in, "smoker")) == "" {
		return groupIn(ofZones(zoneSaid(metric, "grate", pelletWidth, usualDepth, 450, false))), "what it burns is not known, so it is told by its heat, no advice on its fire, and of a usual size: for charcoal write kettle, box or upright and its size"
	}
	text, how := charcoalGrill(low)
	return strict.NewText(text, 1), how
}

// overCoals says whether some food wants to lie over the coals (common practice, no source).
func (g *guesser) overCoals() bool {
	return slices.ContainsFunc(g.dishes, func(d guessedDish) bool { return seared.MatchString(d.node.Flow()) })
}

var seared = regexp.MustCompile(`(?i)steak|burger|chop|sausage|skewer|sear|ribeye|brats|hot-dog|fillet|shrimp|prawn`)

// ceramicZones is a ceramic cooker by its heat: with its plate in, one even grate, else two halves.
func ceramicZones(low string, metric, direct bool) string {
	if !direct {
		low += " deflector"
	}
	return zoneLine.FindString(otherZones(low, true, metric))
}

func withoutWord(words []string, word string) []string {
	return slices.DeleteFunc(slices.Clone(words), func(w string) bool { return w == word })
}

// zoneOver is the one zone of an open fire of a size that is said, in inches.
func zoneOver(width, depth float64) string {
	return strings.Replace(zoneSaid(false, "grate", width, depth, 550, true), "min: 225 F", "min: 350 F", 1)
}

// charcoalGrill is the likeliest line for a charcoal grill.
func charcoalGrill(low string) (line, how string) {
	width, depth, sized := grateIn(low)
	round := likelySize(low)
	two := sized && round != nil && strings.TrimSpace(round[3]) != ""
	kind := grillKindIn(lineWord.FindAllString(low, -1))
	switch {
	case two:
		return "box " + sideText(width) + " x " + sideText(depth) + " in", "a rectangular charcoal grill with its lid"
	case kind == GrillUpright || kind == "" && smokerWord.MatchString(low):
		return "upright " + sizeIn(round, 10, 30, "18") + " in", "an upright charcoal smoker; if yours burns gas, wood or pellets write so"
	case kind == GrillBox:
		return "box 36 x 18 in", "a rectangular charcoal grill of a usual size: measure its grate"
	case smallGrill.MatchString(low) && sizeIn(round, 10, 30, "") == "":
		return "kettle 14 in", "a small charcoal kettle: measure its grate"
	}
	return "kettle " + sizeIn(round, 12, 30, "22") + " in", "a charcoal kettle; measure its grate across"
}

func sideText(inches float64) string {
	return strconv.FormatFloat(math.Round(inches*10)/10, 'f', -1, 64)
}

// likelySize is the first size with a unit in a text, else the first number; nil for none.
func likelySize(low string) []string {
	all := lineSizes.FindAllStringSubmatch(low, -1)
	for _, m := range all {
		if m[2] != "" || m[4] != "" {
			return m
		}
	}
	return lineSizes.FindStringSubmatch(low)
}

// sizeIn is the size of a round grate that a match says, in inches, where it is a likely one.
func sizeIn(sizes []string, least, most float64, usual string) string {
	if sizes == nil || strings.TrimSpace(sizes[3]) != "" {
		return usual
	}
	d, _ := strconv.ParseFloat(strings.TrimSpace(sizes[1]), 64) // by the pattern; 0 is no size
	switch sizes[2] {
	case "cm":
		d /= 2.54
	case "mm":
		d /= 25.4
	case "":
		if d > 30 && d < 80 {
			d /= 2.54
		}
	}
	if d < least || d > most {
		return usual
	}
	return sideText(d)
}

// groupIn is a group in one line of YAML.
func groupIn(flow string) *strict.Node {
	tree, _ := strict.ParseDocument([]byte("x: "+flow), strict.MaxRequestBytes)
	return tree.Get("x")
}
