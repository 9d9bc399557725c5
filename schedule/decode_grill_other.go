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

// halves is a grill told by two zones, the left one over its fire, the right one beside it, of
// a grate that measures so many inches.
func halves(width, depth, most float64) string {
	return fmt.Sprintf("{kind: other, zones: [{name: left, width: %g in, depth: %g in, min: 225 F, max: %g F, direct: true}, {name: right, width: %g in, depth: %g in, min: 225 F, max: %g F}]}", width, depth, most, width, depth, map[bool]float64{true: 400, false: 350}[most > 550])
}

// deflected is a cooker whose plate keeps the fire off the whole of its grate.
func deflected(side float64) string {
	return fmt.Sprintf("{kind: other, zones: [{name: grate, width: %g in, depth: %g in, min: 225 F, max: 400 F}]}", side, side)
}

// otherZones is a line that tells a grill which burns something else, or stores its heat, by
// zones as large as its grate: of a round one the square of its area.
func otherZones(line string, ceramic bool) string {
	width, depth := 18.0, 18.0
	if !ceramic {
		width = 32
	}
	if sizes := lineSizes.FindStringSubmatch(line); sizes != nil {
		inches := map[bool]float64{true: 1 / 2.54, false: 1}[sizes[2] == "cm" || sizes[4] == "cm"]
		first, _ := strconv.ParseFloat(strings.TrimSpace(sizes[1]), 64)  // by the pattern; 0 is no size
		second, _ := strconv.ParseFloat(strings.TrimSpace(sizes[3]), 64) // likewise
		switch {
		case first*inches >= 10 && second*inches >= 10:
			width, depth = math.Round(max(first, second)*inches), math.Round(min(first, second)*inches)
		case first*inches >= 10:
			width = math.Floor(first * inches * math.Sqrt(math.Pi) / 2)
			depth = width
		}
	} else if ceramic {
		width, depth = 16, 16
	}
	switch {
	case ceramic && deflectorIn.MatchString(line):
		return deflected(width)
	case ceramic:
		return halves(math.Round(width/2), depth, 600)
	}
	return halves(math.Round(width/2), depth, 550)
}

var deflectorIn = regexp.MustCompile(`\b(?:deflector|plate|heat ?shield|plate ?setter|indirect)\b`)

// burnsOther says whether a text names a grill or a fuel that is no charcoal.
func burnsOther(text string) bool {
	return slices.ContainsFunc(lineWord.FindAllString(strings.ToLower(text), -1), func(w string) bool { return slices.Contains(otherFires, w) })
}

// otherGrills is what there is to say of grills that no line says.
var otherGrills = map[string]string{
	"offset":  "a smoker with its fire in a box beside the grate is not known here: its draft and its wood fire are another matter. Told by its heat it gets no advice on its fire: {kind: other, zones: [{name: grate, width: 36 in, depth: 18 in, min: 225 F, max: 325 F}]}",
	"hibachi": lidless, "campfire": lidless, "firepit": lidless, "braai": lidless, "parrilla": lidless, "mangal": lidless, "park": lidless,
}

// lidless is what there is to say of a fire without a lid.
const lidless = "every plan here is for a grill with a lid, which does most of the cooking; an open fire is not known. A kettle or a box with its lid is written kettle 22 in, or box 36 x 18 in"

// sidesOf are the two sides of a grate as a zone has them, the longer first; inches where no
// unit is said.
func sidesOf(sizes []string) string {
	first, _ := strconv.ParseFloat(strings.TrimSpace(sizes[1]), 64)  // by the pattern; what is none is refused as a size
	second, _ := strconv.ParseFloat(strings.TrimSpace(sizes[3]), 64) // likewise
	of := map[bool]string{true: "cm", false: "in"}[sizes[2] == "cm" || sizes[4] == "cm"]
	return fmt.Sprintf("width: %g %s, depth: %g %s", max(first, second), of, min(first, second), of)
}
