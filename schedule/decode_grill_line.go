package schedule

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// grillForms are the grills that one line says.
const grillForms = `"kettle 22 in", "box 36 x 18 in" or "upright 18.5 in"`

// grillWords are the words of a line that say which grill it is, beside the kinds.
var grillWords = map[string]string{"barrel": GrillBox, "vertical": GrillUpright, "bullet": GrillUpright, "kugelgrill": GrillKettle}

var (
	gratesOf  = regexp.MustCompile(`[\s,]*(?:\b(?:with|and) )?\b(2|two|3|three)\s+(?:grates|racks|levels|shelves)\b`)
	gallons   = regexp.MustCompile(`\b\d+[\s-]*(?:gallons?|gal)\b`) // no size across
	lineWord  = regexp.MustCompile(`[a-z]+`)
	lineSizes = regexp.MustCompile(`([0-9][0-9./ ]*)\s*-?\s*(in\b|inch\b|inches\b|"|”|cm\b|mm\b|m\b|ft\b|feet\b)?(?:\s*(?:x|×|by)\s*([0-9][0-9./ ]*)\s*-?\s*(in\b|inch\b|inches\b|"|”|cm\b|mm\b|m\b|ft\b|feet\b)?)?`)
)

// grillLine reads a kind and its size in one line, in any order. Words that say nothing of
// the fire are passed over, such as a trade name.
func (d decoder) grillLine(g *Grill, n *strict.Node, path string) {
	if d.Is(n, path, strict.NodeText, "text"); n.Probed() {
		return
	}
	line := gallons.ReplaceAllString(strings.ToLower(strings.TrimSpace(n.Text)), " ")
	levels := 0
	if m := gratesOf.FindStringSubmatch(line); m != nil && grillKindIn(lineWord.FindAllString(line, -1)) == GrillUpright {
		levels, line = map[string]int{"2": 2, "two": 2, "3": 3, "three": 3}[m[1]], strings.Replace(line, m[0], " ", 1)
	}
	offset, line := gaugeIn(line)
	sizes := lineSizes.FindStringSubmatch(line)
	words := lineWord.FindAllString(strings.Replace(line, first(sizes), " ", 1), -1)
	kind := grillKindIn(words)
	if kind == GrillUpright && sizes != nil && strings.TrimSpace(sizes[3]) != "" { // a drum that lies: one that stands is round
		kind = GrillBox
	}
	model := kind == "" && sizes != nil && modelNumber(sizes)
	odd := oddInGrillLine(strings.Replace(line, first(sizes), " | ", 1))
	switch {
	case burnsOther(line):
		d.Faults.AddLine(path, n.Line, "%s: %s", say.Quoted(n.Text), charcoalOnly+otherZones(line, false, d.metric))
		return
	case saysCeramic(words):
		d.Faults.AddLine(path, n.Line, "%s: %s", say.Quoted(n.Text), ceramicSlow+otherZones(line, true, d.metric))
		return
	case kind == "" && slices.ContainsFunc(words, func(w string) bool { return slices.Contains(otherGrills, w) }):
		w := words[slices.IndexFunc(words, func(w string) bool { return slices.Contains(otherGrills, w) })]
		d.Faults.AddLine(path, n.Line, "%s: %s", say.Quoted(n.Text), otherGrill(w, line, d.metric))
		return
	case odd != "":
		d.Faults.AddLine(path, n.Line, "%s: %s", say.Quoted(n.Text), odd)
		return
	case kind != "" && sizes == nil:
		d.Faults.AddLine(path, n.Line, "%s: how large is it? Write what its grate measures across, such as grill: %s", say.Quoted(n.Text), sizedExample[kind])
		return
	case model:
		d.Faults.AddLine(path, n.Line, "%s: which kind is it, and what does its grate measure? %s is taken for no size. Write it such as %s; if it burns gas, wood or pellets write that word: gas grill, pellet grill", say.Quoted(n.Text), strings.TrimSpace(sizes[0]), grillForms)
		return
	case kind == "" && sizes != nil:
		d.Faults.AddLine(path, n.Line, "%s: which kind is it? Write kettle (round, with a lid), box (rectangular) or upright (grates one above another) before its size, such as grill: kettle %s", say.Quoted(n.Text), strings.TrimSpace(sizes[0]))
		return
	case kind == "":
		d.Faults.AddLine(path, n.Line, "%s must be a kind of grill and its size, such as %s", say.Quoted(n.Text), grillForms)
		return
	}
	g.Kind, g.Levels = kind, levels
	if offset != "" {
		text := &strict.Node{Kind: strict.NodeText, Text: offset, Line: n.Line}
		strict.Quantity(d.Decoder, &g.GaugeOffset, unit.ParseDifference)(text, path+".gauge_offset")
	}
	g.WaterPan = slices.Contains(words, "water")
	g.Raised = slices.Contains(words, "raised")
	if sizes[2] == "" && sizes[4] == "" {
		sizes = withLikelyUnit(kind, sizes)
	}
	if slices.Contains(words, FuelLump) {
		g.Fuel = FuelLump
	}
	d.grillSizes(g, n, path, sizes)
}

// sizedExample is a line for each kind of grill, with the usual sizes.
var sizedExample = map[string]string{
	GrillKettle: "kettle 22 in, or kettle 18 in or 26 in", GrillBox: "box 36 x 18 in", GrillUpright: "upright 18 in, or upright 14 in or 22 in",
}

var (
	noLid      = regexp.MustCompile(`\b(?:no|without|missing|lost|broken)\s+(?:a |the |its )?(?:lid|cover|hood|top)\b|\blidless\b|\bopen\s+(?:grill|top)\b`)
	secondLine = regexp.MustCompile(`\b(?:second|2nd|extra|upper|warming|two)\s+(?:grate|grates|rack|racks|shelf|level)\b`)
	notOfGrill = regexp.MustCompile(`\b(?:no|without|with|and|plus)\b(.*)|,(.*)`)
)

// grillSaid are words of a line that are understood, or that say nothing of the fire.
var grillSaid = []string{
	"with", "and", "plus", "a", "an", "the", "its", "my", "own", "old", "new", "big", "small", "large", "black", "red", "of", "in", "on", "for", "from", "about", "inch", "inches", "cm", "mm", "ft", "feet", "m", "by", "x",
	"charcoal", "grill", "grills", "bbq", "barbecue", "smoker", "cooker", "briquettes", "briquets", "lump", "coal", "coals", "wood", "water", "pan", "raised", "grate", "lid", "cover", "vents", "vent", "top", "bottom", "lower", "round",
	"rectangular", "diameter", "wide", "deep", "across", "size", "steel", "thermometer", "gauge", "hinged", "model", "kettle", "box", "upright", "barrel", "drum", "vertical", "bullet", "kugelgrill", "classic", "standard",
}

// oddInGrillLine names the words of a grill's line that are not understood, where they may
// change the day; the words before its kind or size may be a trade name. Empty for none.
func oddInGrillLine(line string) string {
	if noLid.MatchString(line) {
		return lidless(line)
	}
	if secondLine.MatchString(line) && !strings.Contains(line, "raised") {
		return "a second grate that stands over the side away from the coals is written raised grate, as in kettle 22 in, raised grate; grates one above another belong to an upright cooker: {kind: upright, diameter: 18 in, levels: 2}"
	}
	tail := line
	if _, behind, ok := strings.Cut(line, "|"); ok && strings.TrimSpace(behind) != "" {
		tail = behind
	}
	m := notOfGrill.FindStringSubmatch(tail)
	if m == nil {
		return ""
	}
	said := strings.TrimSpace(m[0])
	var odd []string
	for _, w := range lineWord.FindAllString(said, -1) {
		if !slices.Contains(grillSaid, w) {
			odd = append(odd, w)
		}
	}
	if negated := strings.HasPrefix(said, "no ") || strings.HasPrefix(said, "without "); len(odd) == 0 && !negated {
		return ""
	}
	return strconv.Quote(strings.Trim(said, ", ")) + " is not understood of a grill; leave it out, or say it in a group of fields: {kind: kettle, diameter: 22 in, fuel: lump, water_pan: true, raised: true}"
}

// gaugeSays is a lid's thermometer that is off by so much.
var gaugeSays = regexp.MustCompile(`[\s,;]*(?:(?:its|the|with|and) )*(?:(?:lid|dome|hood) )?(?:thermometer|gauge|thermo)(?: that)? (?:reads?|shows?|is|runs?|off by)(?: about)? ?\+?(\d{1,3}) ?(?:°|degrees?|deg)? ?([fc])?(?:\b[a-z]*)? ?(?:too )?(high|hot|low|cold|more|less)\b`)

// gaugeIn takes what a lid's thermometer is off by out of a grill's line, as its field has it.
func gaugeIn(line string) (offset, rest string) {
	m := gaugeSays.FindStringSubmatch(line)
	if m == nil {
		return "", line
	}
	of := "F"
	if m[2] != "" {
		of = strings.ToUpper(m[2])
	}
	sign := ""
	if m[3] == "low" || m[3] == "cold" || m[3] == "less" {
		sign = "-"
	}
	return sign + m[1] + " " + of, strings.Replace(line, m[0], " ", 1)
}

// withLikelyUnit gives a bare size the unit that it can only have: no kettle is 57 inches
// across, and none 22 cm. What could be either stays bare.
func withLikelyUnit(kind string, sizes []string) []string {
	largest := 0.0
	for _, text := range []string{sizes[1], sizes[3]} {
		if v, err := strconv.ParseFloat(strings.TrimSpace(text), 64); err == nil {
			largest = max(largest, v)
		}
	}
	inches, cm := 30.0, 45.0 // a round grate: at most so many inches, at least so many cm (assumptions)
	if sizes[3] != "" {
		inches, cm = 40, 65
	}
	sizes = slices.Clone(sizes)
	switch {
	case largest > 0 && largest <= inches:
		sizes[2] = "in"
	case largest >= cm:
		sizes[2] = "cm"
	}
	return sizes
}

// modelNumber says whether a bare number is too large to be what a grate measures: one of a model.
func modelNumber(sizes []string) bool {
	const most = 100 // cm; grates are smaller (an assumption)
	n, err := strconv.ParseFloat(strings.TrimSpace(sizes[1]), 64)
	return err == nil && n > most && sizes[2] == "" && strings.TrimSpace(sizes[3]) == ""
}

// first is the whole of a match; empty for none.
func first(match []string) string {
	if match == nil {
		return ""
	}
	return match[0]
}

// lengthText is a length as the line of a grill has it, its number and its unit apart.
func lengthText(number, of string) string {
	return strings.TrimSpace(number) + strings.Replace(" "+of, "”", `"`, 1)
}

// saysCeramic says whether the words of a line are of a cooker with a thick shell.
func saysCeramic(words []string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return w == "ceramic" || w == "kamado" || w == "egg" })
}

// grillKindIn is the kind of grill that the words name; empty for none.
func grillKindIn(words []string) string {
	if slices.Contains(words, "offset") { // a smoker whose fire is beside it
		return ""
	}
	for _, w := range words {
		if kind := asInFormat(w); kind != GrillOther && slices.Contains(grillKinds, kind) {
			return kind
		}
		if kind, ok := grillWords[w]; ok {
			return kind
		}
	}
	return ""
}

// grillSizes reads one size of a round grate, or the two of a rectangular one.
func (d decoder) grillSizes(g *Grill, n *strict.Node, path string, sizes []string) {
	side := func(to *unit.Length, number, of, field string) {
		line := &strict.Node{Kind: strict.NodeText, Text: lengthText(number, of), Line: n.Line}
		strict.Quantity(d.Decoder, to, unit.ParseLength)(line, path+"."+field)
	}
	number, of, second, secondOf := sizes[1], sizes[2], sizes[3], sizes[4]
	switch {
	case of == "" && secondOf == "":
		d.Faults.AddLine(path, n.Line, "%s: the size needs a unit; write %s in, or cm", say.Quoted(n.Text), strings.TrimSpace(number))
	case second == "" && g.Kind == GrillBox:
		d.Faults.AddLine(path, n.Line, "%s says one size; a box has two: box 36 x 18 in", say.Quoted(n.Text))
	case second == "":
		side(&g.Diameter, number, of, "diameter")
	default:
		if of == "" { // it may stand behind the second alone
			of = secondOf
		}
		if secondOf == "" {
			secondOf = of
		}
		side(&g.Width, number, of, "width")
		side(&g.Depth, second, secondOf, "depth")
	}
}
