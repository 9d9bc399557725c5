package schedule

import (
	"regexp"
	"slices"
	"strings"

	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// grillForms are the grills that one line says.
const grillForms = `"kettle 22 in", "box 36 x 18 in" or "upright 18.5 in"`

// grillWords are the words of a line that say which grill it is, beside the kinds.
var grillWords = map[string]string{"barrel": GrillBox, "vertical": GrillUpright, "bullet": GrillUpright, "kugelgrill": GrillKettle}

// otherFires are words for grills that burn no charcoal.
var otherFires = []string{"gas", "propane", "butane", "pellet", "pellets", "electric", "infrared"}

// charcoalOnly is what there is to say of a grill that burns something else.
const charcoalOnly = "the plan is for charcoal, its fires and its vents; another grill can only be told by the heat of its zones, and gets no advice on its fire: {kind: other, zones: [{name: left, width: 16 in, depth: 18 in, min: 225 F, max: 350 F}]}"

// ceramicSlow is what there is to say of a ceramic cooker.
const ceramicSlow = "a ceramic cooker's shell stores heat for hours, and what its vents do is not known here: come up slowly from below, for once too hot it stays so for an hour and more. It can be told by its heat, and gets no advice on its vents: {kind: other, zones: [{name: grate, width: 16 in, depth: 16 in, min: 225 F, max: 600 F}]}"

// burnsOther says whether a text names a grill or a fuel that is no charcoal.
func burnsOther(text string) bool {
	return slices.ContainsFunc(lineWord.FindAllString(strings.ToLower(text), -1), func(w string) bool { return slices.Contains(otherFires, w) })
}

var (
	lineWord  = regexp.MustCompile(`[a-z]+`)
	lineSizes = regexp.MustCompile(`([0-9][0-9./ ]*)\s*-?\s*(in\b|inch\b|inches\b|"|”|cm\b|mm\b|m\b|ft\b|feet\b)?(?:\s*(?:x|×|by)\s*([0-9][0-9./ ]*)\s*-?\s*(in\b|inch\b|inches\b|"|”|cm\b|mm\b|m\b|ft\b|feet\b)?)?`)
)

// grillLine reads a kind and its size in one line, in any order. Words that say nothing of
// the fire are passed over, such as a trade name.
func (d decoder) grillLine(g *Grill, n *strict.Node, path string) {
	if d.Is(n, path, strict.NodeText, "text"); n.Probed() {
		return
	}
	line := strings.ToLower(strings.TrimSpace(n.Text))
	sizes := lineSizes.FindStringSubmatch(line)
	words := lineWord.FindAllString(strings.Replace(line, first(sizes), " ", 1), -1)
	kind := grillKindIn(words)
	switch {
	case burnsOther(line):
		d.Faults.AddLine(path, n.Line, "%s: %s", say.Quoted(n.Text), charcoalOnly)
		return
	case slices.Contains(words, "ceramic"):
		d.Faults.AddLine(path, n.Line, "%s: %s", say.Quoted(n.Text), ceramicSlow)
		return
	case kind == "" || sizes == nil:
		d.Faults.AddLine(path, n.Line, "%s must be a kind of grill and its size, such as %s; there is more to say in a group of fields: {kind: kettle, diameter: 22 in, fuel: lump}", say.Quoted(n.Text), grillForms)
		return
	}
	g.Kind = kind
	g.WaterPan = slices.Contains(words, "water")
	g.Raised = slices.Contains(words, "raised")
	if slices.Contains(words, FuelLump) {
		g.Fuel = FuelLump
	}
	d.grillSizes(g, n, path, sizes)
}

// first is the whole of a match; empty for none.
func first(match []string) string {
	if match == nil {
		return ""
	}
	return match[0]
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
		line := &strict.Node{Kind: strict.NodeText, Text: strings.TrimSpace(number) + strings.Replace(" "+of, "”", `"`, 1), Line: n.Line}
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
