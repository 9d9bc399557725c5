package export

import (
	"strings"
	"time"
)

// axis maps instants to the width of a picture.
type axis struct {
	*view
	from, to    time.Time
	left, right float64
}

func (a axis) x(t time.Time) float64 {
	share := t.Sub(a.from).Seconds() / a.to.Sub(a.from).Seconds()
	return a.left + min(max(share, 0), 1)*(a.right-a.left)
}

func (a axis) holds(t time.Time) bool { return !t.Before(a.from) && !t.After(a.to) }

// mostTicks is how many "00:00" find room below each other's.
const mostTicks = 7

// ticks are the instants where the cook's clock shows a round time.
func (a axis) ticks() []time.Time {
	span := a.to.Sub(a.from)
	step := 24 * time.Hour
	for _, minutes := range []int{1, 2, 5, 10, 15, 30, 60, 120, 180, 240, 360, 720} {
		if s := time.Duration(minutes) * time.Minute; span <= mostTicks*s {
			step = s
			break
		}
	}
	stride := 30 * time.Minute // some zones are half an hour off
	if step < time.Hour {
		stride = time.Minute
	}
	var ticks []time.Time
	for t := a.from.Truncate(stride); !t.After(a.to); t = t.Add(stride) {
		local := t.In(a.loc)
		past := time.Duration(local.Hour())*time.Hour + time.Duration(local.Minute())*time.Minute
		if past%step == 0 && a.holds(t) {
			ticks = append(ticks, t)
		}
	}
	return ticks
}

// scale draws lines at the ticks from top to bottom and writes their times above.
// A time that would touch the one before is left out: it happens where clocks change.
func (a axis) scale(s *svg, top, bottom float64) {
	end := -pictureWidth
	for _, t := range a.ticks() {
		x := a.x(t)
		s.shape("path", "class", "rule", "d", "M"+short(x)+" "+short(top)+"V"+short(bottom))
		text := a.tick(t)
		half := size(text, false) / 2
		if middle := min(max(x, half), pictureWidth-half); middle-half > end+4 {
			s.label(middle, top-4, "soft middle", text)
			end = middle + half
		}
	}
}

// tick is the time of a tick, without minutes where there are none to say.
func (a axis) tick(t time.Time) string {
	return strings.Replace(a.clock(t), ":00 ", " ", 1) // before AM and PM only
}

// midnights are the starts of days within the axis.
func (a axis) midnights() []time.Time {
	var days []time.Time
	y, m, d := a.from.In(a.loc).Date()
	for i := 1; ; i++ {
		t := time.Date(y, m, d+i, 0, 0, 0, 0, a.loc)
		if t.After(a.to) {
			return days
		}
		days = append(days, t)
	}
}
