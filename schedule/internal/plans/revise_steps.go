package plans

import (
	"time"

	"example.com/cookday/schedule"
	instantpkg "example.com/cookday/schedule/internal/instant"
)

func WindowNotBefore(w schedule.Window, t time.Time) schedule.Window {
	return schedule.Window{Early: instantpkg.Latest(w.Early, t), Expected: instantpkg.Latest(w.Expected, t), Late: instantpkg.Latest(w.Late, t)}
}
