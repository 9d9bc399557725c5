package schedule

import (
	"fmt"
	"slices"
	"strings"

	"example.com/cookday/schedule/unit"
)

// FireGrills are the grills that a fire may burn in.
func FireGrills() []string { return []string{"kettle", "smoker", "drum", "ceramic"} }

// fireGrillOf is the grill of an inquiry that a kind in a request's line stands for.
func fireGrillOf(words []string) string {
	switch {
	case saysCeramic(words):
		return "ceramic"
	case slices.Contains(words, "drum"), slices.Contains(words, "barrel"):
		return "drum"
	}
	switch kind := grillKindIn(words); kind {
	case GrillKettle:
		return "kettle"
	case GrillUpright:
		return "smoker"
	case "":
		if slices.Contains(words, "smoker") && !slices.Contains(words, "offset") {
			return "smoker"
		}
	}
	return ""
}

// readFireGrill reads a grill as it is written in a request, its kind and what it measures across in one line, or the kind alone.
func readFireGrill(q *FireInquiry, text string) error {
	line := gallons.ReplaceAllString(strings.ToLower(strings.TrimSpace(text)), " ")
	sizes := lineSizes.FindStringSubmatch(line)
	q.Grill = fireGrillOf(lineWord.FindAllString(strings.Replace(line, first(sizes), " ", 1), -1))
	switch {
	case burnsOther(line):
		return fmt.Errorf("%q burns no charcoal; this advice is for coals and their vents", text)
	case q.Grill == "":
		return fmt.Errorf("%q is not known; write %s, and its size behind it if you like: kettle 22 in", text, strings.Join(FireGrills(), ", "))
	case sizes == nil || q.Diameter != 0:
		return nil
	case sizes[3] != "":
		return fmt.Errorf("%q has two sizes; write what its grate measures across: %s 22 in", text, q.Grill)
	}
	if sizes[2] == "" {
		sizes = withLikelyUnit(GrillKettle, sizes)
	}
	d, err := unit.ParseLength(lengthText(sizes[1], sizes[2]))
	if err != nil {
		return fmt.Errorf("%q: %w", text, err)
	}
	q.Diameter = d
	return nil
}
