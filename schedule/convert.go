package schedule

import "example.com/cookday/schedule/unit"

// celsius and pounds let the trade's figures be written as the trade says them.
func celsius(f float64) float64 { return float64(unit.FromFahrenheit(f)) }

// roomC is the air of a kitchen or a shaded table.
const roomC = 21.0
