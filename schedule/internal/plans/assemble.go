package plans

import (
	"time"

	"example.com/cookday/schedule"
)

func FixedWindow(t time.Time) schedule.Window { return schedule.Window{Early: t, Expected: t, Late: t} }
