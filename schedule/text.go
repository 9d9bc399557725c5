package schedule

import (
	"fmt"
	"strings"
	"time"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/unit"
)

// about writes minutes as a cook would say them.
func (d *day) about(m float64) string { return d.req.Units.About(minutes(m)) }

// localClock is a local clock, "17:45".
func localClock(t time.Time) string { return t.Format("15:04") }

func mass(u unit.System, kg float64) string { return u.Mass(unit.Mass(kg)) }

func (d *day) core(c float64) string  { return d.req.Units.Core(unit.Temperature(c)) }
func (d *day) grate(c float64) string { return d.req.Units.Grate(unit.Temperature(c)) }

// level is a grate temperature with its band before it: "low, 250 F".
func (d *day) level(c float64) string { return fire.Band(c) + ", " + d.grate(c) }

// slack is how far off a grate may be: 25 F either way is good enough (common
// practice, no source).
func (d *day) slack() string {
	if d.req.Units == unit.Metric {
		return d.req.Units.Difference(15) // as a cook would say it
	}
	return d.req.Units.Difference(unit.DifferenceFromFahrenheit(25))
}

func roundTo(n, step int) int { return (n + step/2) / step * step }

// inQuiet says whether an instant falls into quiet hours.
func (d *day) inQuiet(t time.Time) bool {
	for _, q := range d.quietIntervals() {
		if !t.Before(q.From) && t.Before(q.To) {
			return true
		}
	}
	return false
}

// afterQuiet moves the instants of a window that fall into quiet hours to their
// end: a wrap waits until somebody is up.
func (d *day) afterQuiet(w Window) Window {
	move := func(t time.Time) time.Time {
		for _, q := range d.quietIntervals() {
			if !t.Before(q.From) && t.Before(q.To) {
				return q.To
			}
		}
		return t
	}
	return Window{Early: move(w.Early), Expected: move(w.Expected), Late: move(w.Late)}
}

func shift(w Window, byMinutes float64) Window {
	by := minutes(byMinutes)
	add := func(t time.Time) time.Time { return t.Add(by).Round(time.Minute) }
	return Window{Early: add(w.Early), Expected: add(w.Expected), Late: add(w.Late)}
}

// ventsText says how to set the vents.
func (d *day) ventsText(v fire.VentAdvice) string {
	if v.OpenTop == 0 && v.OpenBottom == 0 {
		return ""
	}
	text := fmt.Sprintf("top vent %s, bottom vent %s", share(v.OpenTop), share(v.OpenBottom))
	if v.LidOff {
		return text + ", lid off"
	}
	if v.TopOverMeat {
		text += "; top vent over the food, opposite the coals"
	}
	if v.TrimTop && v.OpenTop < 1 {
		text += "; trim with the top vent and wait 15 min to see what it does"
	}
	return text
}

func share(open float64) string {
	switch {
	case open >= 0.99:
		return "fully open"
	case open >= 0.7:
		return "three quarters open"
	case open >= 0.45:
		return "half open"
	}
	return "a quarter open"
}

// upper and lower change the first letter of a text that begins with a plain one.
func upper(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
func lower(s string) string { return strings.ToLower(s[:1]) + s[1:] }

// plural is a number with its noun: "1 chunk", "2 chunks".
func plural(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// listed writes words as a sentence has them: "a, b and c".
func listed(words []string, last string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	n := len(words) - 1
	return fmt.Sprintf("%s %s %s", strings.Join(words[:n], ", "), last, words[n])
}
