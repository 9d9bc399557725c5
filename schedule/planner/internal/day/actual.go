package day

import (
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/unit"
)

// What a typed level of the grate stands for. Gauges err, and what a grate really has is
// nearer to what such cooks usually have than the gauge is: regression to the mean. For
// tough cuts fitted on cooks' logs (settings spread by 26 F, gauges err by 15 F: 0.75),
// without it they come out half too long below 222 F and 13 % too short from 295 F; for
// all others an assumption, since hot birds speak against less than 0.92. It depends on
// the level and the kind of cut alone, never on the target: hotter is never slower.
const (
	toughTrust, otherTrust = 0.75, 0.92
)

var (
	toughUsualC = unit.FToC(247)
	otherUsualC = unit.FToC(275)
)

// actualC is the air that a typed level stands for. Grates that were measured and ovens
// are taken as they are.
func actualC(levelC float64, style cut.Style) float64 {
	if style == cut.Tough {
		return toughUsualC + toughTrust*(levelC-toughUsualC)
	}
	return otherUsualC + otherTrust*(levelC-otherUsualC)
}

// typedC is the level to type for an air: the inverse of actualC.
func typedC(airC float64, style cut.Style) float64 {
	if style == cut.Tough {
		return toughUsualC + (airC-toughUsualC)/toughTrust
	}
	return otherUsualC + (airC-otherUsualC)/otherTrust
}
