package unit

import (
	"regexp"
	"strings"
)

// bothWays is a measure told in both systems: "90 °F (32 °C)", "40 and 140 °F (4 and 60 °C)".
var bothWays = regexp.MustCompile(`(-?[0-9.]+(?: (?:and|to) -?[0-9.]+)? (?:°F|lb|oz|in|ft|mph)) \((-?[0-9.]+(?: (?:and|to) -?[0-9.]+)? (?:°C|kg|g|mm|cm|m|km/h))\)`)

// Own leaves of each measure that a text tells in both systems the one of this system:
// "90 °F" or "32 °C".
func (s System) Own(text string) string {
	if !strings.Contains(text, " (") { // as most texts do not
		return text
	}
	if s == US {
		return bothWays.ReplaceAllString(text, "$1")
	}
	return bothWays.ReplaceAllString(text, "$2")
}
