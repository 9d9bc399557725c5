package export

import (
	"slices"
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

// tickSteps are the steps of the scale in minutes, the finest first.
var tickSteps = []int{1, 2, 5, 10, 15, 30, 60, 120, 180, 240, 360, 720, 1440}

// tickGap is the least room between two times of the scale.
const tickGap = 6.0

// ticks are the instants where the cook's clock shows a round time, as close as their
// times find room beside each other.
func (a axis) ticks() []time.Time {
	var ticks []time.Time
	for _, minutes := range tickSteps {
		step := time.Duration(minutes) * time.Minute
		apart := (a.right - a.left) * step.Seconds() / a.to.Sub(a.from).Seconds()
		if apart < tickGap {
			continue
		}
		ticks = a.every(step)
		widest := 0.0
		for _, t := range ticks {
			widest = max(widest, size(a.tick(t), false))
		}
		if apart >= widest+tickGap {
			break
		}
	}
	return ticks
}

// every lists the instants where the cook's clock shows a multiple of a step.
func (a axis) every(step time.Duration) []time.Time {
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
// A time that would touch the one before is left out: it happens where clocks change. So
// is one that a line of the picture crosses.
func (a axis) scale(s *svg, top, bottom float64, crossed ...float64) {
	end := -pictureWidth
	for _, t := range a.ticks() {
		x := a.x(t)
		s.shape("path", "class", "rule", "d", "M"+short(x)+" "+short(top)+"V"+short(bottom))
		text := a.tick(t)
		half := size(text, false) / 2
		middle := min(max(x, half), pictureWidth-half)
		hidden := slices.ContainsFunc(crossed, func(c float64) bool { return c > middle-half-3 && c < middle+half+3 })
		if middle-half > end+4 && !hidden {
			s.label(middle, top-4, "soft middle", text)
			end = middle + half
		}
	}
}

// tick is the time of a tick: the full hours without minutes, what is between them
// without AM and PM, which the hours have.
func (a axis) tick(t time.Time) string {
	text := a.clock(t)
	if short := strings.Replace(text, ":00 ", " ", 1); short != text {
		return short
	}
	if a.to.Sub(a.from) < 2*time.Hour { // there may be no full hour on it
		return text
	}
	return strings.TrimSuffix(strings.TrimSuffix(text, " AM"), " PM")
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
