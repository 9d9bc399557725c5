package schedule

import (
	"strings"

	"example.com/cookday/schedule/unit"
)

// A rack that is done by the bend is usually between these inside, in degrees F (common
// practice, no source).
const (
	bendLowF  = 195
	bendHighF = 203
)

// BendText is what a rack usually is inside that is done by the bend: "195 to 203 °F".
func BendText(u unit.System) string {
	low, _, _ := strings.Cut(u.Core(unit.FromFahrenheit(bendLowF)), " ")
	return low + " to " + u.Core(unit.FromFahrenheit(bendHighF))
}
