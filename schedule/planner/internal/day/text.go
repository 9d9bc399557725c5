package day

import (
	"fmt"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/unit"
)

// About writes minutes as a cook would say them.
func (d *Day) About(m float64) string { return d.Req.Units.About(instant.Minutes(m)) }

func (d *Day) Core(c float64) string { return d.Req.Units.Core(unit.Temperature(c)) }

func (d *Day) Grate(c float64) string { return d.Req.Units.Grate(unit.Temperature(c)) }

// Level is a grate temperature with its band before it: "low, 250 °F".
func (d *Day) Level(c float64) string { return fire.Band(c) + ", " + d.Grate(c) }

// Slack is how far off a grate may be: 25 F either way is good enough (common
// practice, no source).
func (d *Day) Slack() string {
	if d.Req.Units == unit.Metric {
		return d.Req.Units.Difference(15) // as a cook would say it
	}
	return d.Req.Units.Difference(unit.DifferenceFromFahrenheit(25))
}

// InQuiet says whether an instant falls into quiet hours.
func (d *Day) InQuiet(t time.Time) bool {
	for _, q := range d.QuietIntervals() {
		if !t.Before(q.From) && t.Before(q.To) {
			return true
		}
	}
	return false
}

// AfterQuiet moves the instants of a window that fall into quiet hours to their
// end: a wrap waits until somebody is up.
func (d *Day) AfterQuiet(w schedule.Window) schedule.Window {
	move := func(t time.Time) time.Time {
		for _, q := range d.QuietIntervals() {
			if !t.Before(q.From) && t.Before(q.To) {
				return q.To
			}
		}
		return t
	}
	return schedule.Window{Early: move(w.Early), Expected: move(w.Expected), Late: move(w.Late)}
}

// VentsText says how to set the vents.
func (d *Day) VentsText(v fire.VentAdvice) string {
	if v.OpenTop == 0 && v.OpenBottom == 0 {
		return ""
	}
	bottom := "bottom vent"
	if v.TrimBottom {
		bottom = "bottom vents"
	}
	text := fmt.Sprintf("top vent %s, %s %s", share(v.OpenTop), bottom, share(v.OpenBottom))
	if share(v.OpenTop) == share(v.OpenBottom) {
		text = d.AllVents() + " " + share(v.OpenTop)
	}
	if v.LidOff {
		return text + ", lid off"
	}
	if v.TopOverMeat {
		text += "; top vent over the food, opposite the coals"
	}
	if v.TrimTop && v.OpenTop < 1 {
		text += "; adjust with the top vent, and give it 15 min to settle"
	}
	if v.TrimBottom {
		text += "; adjust with the bottom vents, all alike, and give it 15 min to settle"
	}
	return text
}

// AllVents names the vents of the grill: an upright cooker has several at its bottom.
func (d *Day) AllVents() string {
	if d.Grill.SteersBottom() {
		return "all vents"
	}
	return "both vents"
}

// BottomVents names what is at the bottom of the grill.
func (d *Day) BottomVents() string {
	if d.Grill.SteersBottom() {
		return "bottom vents"
	}
	return "bottom vent"
}

// FineVent is the vent by which this grill is steered.
func (d *Day) FineVent() string {
	if d.Grill.SteersBottom() {
		return d.BottomVents()
	}
	return "top vent"
}

func share(open float64) string {
	switch words := fire.MarkWords(open); words {
	case "fully open", "shut":
		return words
	case "a half":
		return "half open"
	default:
		return words + " open"
	}
}
