package plans

import "math"

// Round3 keeps three digits after the point, as chances are printed.
func Round3(x float64) float64 { return math.Round(x*1000) / 1000 }
