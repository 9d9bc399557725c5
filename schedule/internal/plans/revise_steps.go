package plans

import (
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
)

func WindowNotBefore(w schedule.Window, t time.Time) schedule.Window {
	return schedule.Window{Early: instant.Latest(w.Early, t), Expected: instant.Latest(w.Expected, t), Late: instant.Latest(w.Late, t)}
}
