package plans

import (
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
)

func Shift(w schedule.Window, byMinutes float64) schedule.Window {
	by := instant.Minutes(byMinutes)
	add := func(t time.Time) time.Time { return t.Add(by).Round(time.Minute) }
	return schedule.Window{Early: add(w.Early), Expected: add(w.Expected), Late: add(w.Late)}
}
