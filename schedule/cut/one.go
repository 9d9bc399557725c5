package cut

import (
	"fmt"
	"strings"

	"example.com/cookday/schedule/internal/say"
)

// One is the one cut that goes by a name. Where there is none, or more than one
// food, the sentence says so and what to write; else it is empty.
func One(name string) (found Cut, sentence string) {
	cuts, outside := Named(name)
	switch {
	case len(cuts) == 1 && len(outside) == 0:
		return cuts[0], ""
	case len(cuts) == 0 && len(outside) == 0:
		return Cut{}, say.Quoted(name) + " is not in the catalogue; " + nearestOf(Near(name, 3))
	case len(cuts) == 0:
		return Cut{}, say.Quoted(name) + " is not in the catalogue; " + nearestTo(outside)
	}
	return Cut{}, sharedName(name, cuts, outside)
}

func nearestOf(cuts []string) string {
	if len(cuts) == 0 {
		return "nothing near it is known: leave it out, or name the food here that is cooked like it (cookday cuts lists them)"
	}
	if len(cuts) == 1 {
		return "the nearest is " + cuts[0]
	}
	return "the nearest are " + say.Listed(cuts, "and")
}

// sharedName lists the foods that go by one name.
func sharedName(name string, cuts []Cut, outside []Outside) string {
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
func nearestTo(foods []Outside) string {
	var each []string
	for _, o := range foods {
		if len(o.Nearest) == 0 || o.Far {
			each = append(each, "nothing here stands for it ("+o.Why+"); leave it out of the plan")
			continue
		}
		each = append(each, fmt.Sprintf("%s (%s)", nearestOf(o.Nearest), o.Why))
	}
	return strings.Join(each, "; ")
}
