package schedule

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// otherFires are words for grills that burn no charcoal.
var otherFires = []string{"gas", "propane", "butane", "pellet", "pellets", "electric", "infrared"}

// charcoalOnly is what there is to say of a grill that burns something else.
const charcoalOnly = "the plan is for charcoal, its fires and its vents; another grill can only be told by the heat of its zones, and gets no advice on its fire: "

// ceramicSlow is what there is to say of a ceramic cooker.
const ceramicSlow = "a ceramic cooker's shell stores heat for hours, and what its vents do is not known here: light it an hour ahead and come up slowly from below, for once too hot it stays so for an hour and more. It can be told by its heat, and gets no advice on its vents: "

// zoneSaid is a zone of a grill that is told by its heat, in a line of a request: its sides in
// inches and its heats in °F, in the units that the cook writes.
func zoneSaid(metric bool, name string, width, depth, most float64, direct bool) string {
	over := map[bool]string{true: ", direct: true"}[direct]
	if metric {
		return fmt.Sprintf("{name: %s, width: %.0f cm, depth: %.0f cm, min: 110 C, max: %.0f C%s}", name, width*2.54, depth*2.54, math.Round((most-32)/9)*5, over)
	}
	return fmt.Sprintf("{name: %s, width: %g in, depth: %g in, min: 225 F, max: %g F%s}", name, width, depth, most, over)
}

// ofZones is a grill of zones.
func ofZones(zones ...string) string {
	return "{kind: other, zones: [" + strings.Join(zones, ", ") + "]}"
}

// Usual grates of grills that burn no charcoal, in inches (from memory).
const (
	usualDepth, gasWidth, pelletWidth = 18.0, 32.0, 30.0
	portableWidth, portableDepth      = 20.0, 13.0
	ceramicSide                       = 16.0
)

// grateIn is the size of a grate that a line says, in inches: of a round one the side of the
// square of its area. False where it says none.
func grateIn(line string) (width, depth float64, said bool) {
	sizes := lineSizes.FindStringSubmatch(line)
	if sizes == nil {
		return 0, 0, false
	}
	inches := map[bool]float64{true: 1 / 2.54, false: 1}[sizes[2] == "cm" || sizes[4] == "cm"]
	first, _ := strconv.ParseFloat(strings.TrimSpace(sizes[1]), 64)  // by the pattern; 0 is no size
	second, _ := strconv.ParseFloat(strings.TrimSpace(sizes[3]), 64) // likewise
	switch {
	case first*inches >= 10 && second*inches >= 10:
		return math.Round(max(first, second) * inches), math.Round(min(first, second) * inches), true
	case first*inches >= 10:
		side := math.Floor(first * inches * math.Sqrt(math.Pi) / 2)
		return side, side, true
	}
	return 0, 0, false
}

// otherZones is a line that tells a grill which burns something else, or stores its heat, by
// zones as large as its grate: two halves, the left one over its fire; one alone where nothing
// lies over the fire.
func otherZones(line string, ceramic, metric bool) string {
	width, depth, said := grateIn(line)
	even := fanned.MatchString(line)
	usual := ""
	if !said {
		usual = "(of a usual size: measure your grate) "
		switch {
		case ceramic:
			width, depth = ceramicSide, ceramicSide
		case portable.MatchString(line):
			width, depth = portableWidth, portableDepth
		case even:
			width, depth = pelletWidth, usualDepth
		default:
			width, depth = gasWidth, usualDepth
		}
	}
	switch half := math.Round(width / 2); {
	case ceramic && deflectorIn.MatchString(line):
		return usual + ofZones(zoneSaid(metric, "grate", width, depth, 400, false))
	case ceramic:
		return usual + ofZones(zoneSaid(metric, "left", half, depth, 600, true), zoneSaid(metric, "right", half, depth, 400, false))
	case even:
		return usual + ofZones(zoneSaid(metric, "grate", width, depth, 450, false))
	default:
		return usual + ofZones(zoneSaid(metric, "left", half, depth, 550, true), zoneSaid(metric, "right", half, depth, 350, false))
	}
}

var (
	fanned   = regexp.MustCompile(`\b(?:pellets?|electric)\b`) // their heat comes from below a plate, the same everywhere
	portable = regexp.MustCompile(`\b(?:portable|small|table ?top|camping|travel)\b`)
)

var deflectorIn = regexp.MustCompile(`\b(?:deflector|plate|heat ?shield|plate ?setter|indirect)\b`)

// burnsOther says whether a text names a grill or a fuel that is no charcoal.
func burnsOther(text string) bool {
	return slices.ContainsFunc(lineWord.FindAllString(strings.ToLower(text), -1), func(w string) bool { return slices.Contains(otherFires, w) })
}

// otherGrill is what there is to say of a grill that no line says, by a word for it.
func otherGrill(word, line string, metric bool) string {
	if word != "offset" {
		return lidless(line)
	}
	usual, width, depth := "", 36.0, usualDepth
	if w, d, said := grateIn(line); said && w != d {
		width, depth = w, d
	} else {
		usual = "(of a usual size: measure your grate) "
	}
	return "a smoker with its fire in a box beside the grate is not known here: its draft and its wood fire are another matter. Told by its heat it gets no advice on its fire: " +
		usual + ofZones(zoneSaid(metric, "grate", width, depth, 325, false))
}

// otherGrills are words for grills that no line says.
var otherGrills = []string{"offset", "hibachi", "campfire", "firepit", "braai", "parrilla", "mangal", "park"}

// lidless is what there is to say of a fire without a lid; one that is built like it and has a
// lid is written with its own size.
func lidless(line string) string {
	const open = "every plan here is for a grill with a lid, which does most of the cooking; an open fire is not known, and a plan for another grill would not be right for it. "
	if sizes := lineSizes.FindStringSubmatch(line); sizes != nil && strings.TrimSpace(sizes[3]) != "" {
		return open + "If yours has a lid to close, write box " + strings.TrimSpace(sizes[0])
	}
	return open + "If yours has a lid to close, write kettle and what it measures across, or box and its two sides"
}
