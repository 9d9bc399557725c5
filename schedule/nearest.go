package schedule

import (
	"fmt"
	"strings"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/say"
)

// cutNamed is the one cut that goes by a name. Where there is none, or more than one
// food, the sentence says so and what to write; else it is empty.
func cutNamed(name string) (found cut.Cut, sentence string) {
	cuts, outside := cut.Named(name)
	switch {
	case len(cuts) == 1 && len(outside) == 0:
		return cuts[0], ""
	case len(cuts) == 0 && len(outside) == 0:
		return cut.Cut{}, say.Quoted(name) + " is not in the catalogue; " + nearestOf(cut.Suggest(name, 3))
	case len(cuts) == 0:
		return cut.Cut{}, say.Quoted(name) + " is not in the catalogue; " + nearestTo(outside)
	}
	return cut.Cut{}, sharedName(name, cuts, outside)
}

func nearestOf(cuts []string) string {
	if len(cuts) == 1 {
		return "the nearest is " + cuts[0]
	}
	return "the nearest are " + say.Listed(cuts, "and")
}

// sharedName lists the foods that go by one name.
func sharedName(name string, cuts []cut.Cut, outside []cut.Outside) string {
	var foods []string
	for _, c := range cuts {
		foods = append(foods, c.Name)
	}
	text := fmt.Sprintf("%s may mean %s; write which", say.Quoted(name), say.Listed(foods, "or"))
	if len(outside) == 0 {
		return text
	}
	var others []string
	for _, o := range outside {
		others = append(others, strings.ToLower(o.Title))
	}
	return fmt.Sprintf("%s. If it means %s: not in the catalogue; %s", text, say.Listed(others, "or"), nearestTo(outside))
}

// nearestTo says what comes nearest to foods that the catalogue does not have, and why
// they are not in it.
func nearestTo(foods []cut.Outside) string {
	var each []string
	for _, o := range foods {
		each = append(each, fmt.Sprintf("%s (%s)", nearestOf(o.Nearest), o.Why))
	}
	return strings.Join(each, "; ")
}

// catalogueName is the identifier of the one cut that goes by a name; any other name
// stays as it is, for its fault is told later.
func catalogueName(name string) string {
	if _, ok := cut.Find(name); ok {
		return name
	}
	if c, fault := cutNamed(name); fault == "" {
		return c.Name
	}
	return name
}
