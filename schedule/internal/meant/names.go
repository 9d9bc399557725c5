package meant

import (
	"regexp"
	"strings"
)

// unitsInNames are units at the end of a field's name, as programmers write them.
var unitsInNames = []struct{ tail, unit string }{
	{"fahrenheit", "F"}, {"celsius", "C"}, {"inches", "in"}, {"inch", "in"}, {"pounds", "lb"}, {"lbs", "lb"}, {"lb", "lb"}, {"ounces", "oz"}, {"oz", "oz"},
	{"kilos", "kg"}, {"kg", "kg"}, {"grams", "g"}, {"cm", "cm"}, {"mm", "mm"}, {"in", "in"}, {"f", "F"}, {"c", "C"}, {"g", "g"},
}

var wordsOfName = regexp.MustCompile(`[A-Z]?[a-z]+|[A-Z]+|\d+`)

// unitOfName parts the name of a field from the unit at its end: weight_lb, targetTempF.
func unitOfName(name string) (field, unit string) {
	words := wordsOfName.FindAllString(name, -1)
	if len(words) > 1 {
		last := strings.ToLower(words[len(words)-1])
		for _, u := range unitsInNames {
			if last == u.tail {
				return strings.ToLower(strings.Join(words[:len(words)-1], "_")), u.unit
			}
		}
	}
	return strings.ToLower(name), ""
}
