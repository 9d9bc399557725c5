package instant

import (
	"math"
)

func Round3(x float64) float64 { return math.Round(x*1000) / 1000 }

func NonNil[T any](s []T) []T {
	if s == nil {
		return []T{}
	}
	return s
}
