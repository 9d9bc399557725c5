package instant

import (
	"time"

	"example.com/cookday/schedule/unit"
)

func UnitMinutes(d unit.Duration) float64 { return time.Duration(d).Minutes() }
