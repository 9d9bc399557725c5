package meant

import (
	"regexp"
	"strings"
)

// unitsInNames are units at the end of a field's name, as programmers write them.
var unitsInNames = []struct{ tail, unit string }{
	{"fahrenheit", "F"}, {"celsius", "C"}, {"inches", "in"}, {"inch", "in"}, {"pounds", "lb"}, {"lbs", "lb"}, {"lb", "lb"}, {"ounces", "oz"}, {"oz", "oz"},
	{"kilos", "kg"}, {"kg", "kg"}, {"grams", "g"}, {"cm", "cm"}, {"mm", "mm"}, {"in", "in"}, {"f", "F"}, {"c", "C"}, {"g", "g"},
	{"mph", "mph"}, {"kmh", "km/h"}, {"minutes", "min"}, {"mins", "min"}, {"min", "min"}, {"hours", "h"}, {"hrs", "h"}, {"h", "h"}, {"ms", "m/s"},
}

var wordsOfName = regexp.MustCompile(`[A-Z]?[a-z]+|[A-Z]+|\d+`)

// unitOfName parts the name of a field from the unit at its end: weight_lb, targetTempF,
// wind_m_s. That it is of each piece says nothing more: mass_g_each.
func unitOfName(name string) (field, unit string) {
	words := wordsOfName.FindAllString(name, -1)
	if n := len(words); n > 2 && oneOf(strings.ToLower(words[n-1]), "each", "apiece") {
		words = words[:n-1]
	}
	for _, last := range []int{2, 1} { // m_s is one unit
		if len(words) <= last {
			continue
		}
		from := len(words) - last
		tail := strings.ToLower(strings.Join(words[from:], ""))
		for _, u := range unitsInNames {
			if tail == u.tail {
				return strings.ToLower(strings.Join(words[:from], "_")), u.unit
			}
		}
	}
	return strings.ToLower(name), ""
}
