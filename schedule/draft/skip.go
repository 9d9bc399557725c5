package draft

import (
	"fmt"
	"strings"
)

// Skip passes over the open question where nobody is left to answer it. The text says what
// is missing, and where.
func (i *Interview) Skip() {
	switch {
	case i.asked < len(aboutTheDay):
		i.asked++
	case i.open != nil:
		i.unclear, i.open = append(i.unclear, *i.open), nil
	default:
		i.over = true
	}
}

// missing are remarks in the place of the dishes that the request cannot have yet.
func (i *Interview) missing() (lines []string) {
	for _, d := range i.unclear {
		var names []string
		for _, c := range d.which {
			names = append(names, c.Name)
		}
		of := d
		of.which, of.name = nil, d.cut.Title
		lines = append(lines, fmt.Sprintf("  # - {%s} # missing: %s is %s; take the first # away and write which", strings.Join(of.fields(), ", "), d.name, strings.Join(names, " or ")))
	}
	if len(i.dishes)+len(i.unclear) == 0 {
		lines = append(lines, "  # - {cut: brisket, weight: 10 lb} # missing: take the first # away and write your own")
	}
	return lines
}
