package logbook

import (
	"regexp"
	"slices"
	"strings"
)

var allOff = regexp.MustCompile(`^(it )?(everything|all)( the)?( food| meat)?( is| came| comes| now| of it)* off( the| of)*( grill| smoker| fire| heat| grate)?( now)?$`)

// everythingOff are the lines of all that is on the fire by the log, where all of it came off.
func (n *noteReader) everythingOff(words []string) (rows []Row) {
	if !allOff.MatchString(strings.Join(words, " ")) {
		return nil
	}
	var on []string
	for _, e := range n.log {
		switch {
		case e.Dish == "":
		case e.Kind == On || e.Kind == Restarted:
			on = append(on, e.Dish)
		case e.Kind != Core && e.Kind != Coldest && e.Kind != Wrapped && e.Kind != Outer:
			on = slices.DeleteFunc(on, func(id string) bool { return id == e.Dish })
		}
	}
	slices.Sort(on)
	for _, id := range slices.Compact(on) {
		rows = append(rows, Row{dish: id, kind: string(Pulled)})
	}
	return rows
}
