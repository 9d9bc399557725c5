package instant

import (
	"example.com/cookday/schedule/unit"
)

// celsius and pounds let the trade's figures be written as the trade says them.
func Celsius(f float64) float64 { return float64(unit.FromFahrenheit(f)) }
