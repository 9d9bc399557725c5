package revise

import (
	"math"

	"example.com/cookday/schedule/internal/steer"
)

// How often a thermometer that reports all the time counts as a look at the fire
// (assumptions): every two minutes of the last half hour, and of what is older one in ten
// minutes, or as many as make fifty of them.
const (
	lookEvery  = 10.0
	lookLately = 2.0
	lookLast   = 30.0
	mostLooks  = 50
)

// looks leaves out readings of the fire that a later one of the same thermometer repeats:
// five thousand of them say no more of a fire than fifty.
func looks(all []steer.Event, until float64) []steer.Event {
	if len(all) == 0 {
		return nil
	}
	every := math.Max(lookEvery, (until-all[0].Minute)/mostLooks)
	var out []steer.Event
	kept := map[steer.Kind]float64{}
	for _, e := range all {
		last, seen := kept[e.Kind]
		reading := e.Kind == steer.Grate || e.Kind == steer.Gauge
		apart := every
		if e.Minute >= until-lookLast {
			apart = lookLately
		}
		if reading && seen && e.Minute-last < apart {
			continue
		}
		if reading {
			kept[e.Kind] = e.Minute
		} else {
			clear(kept) // what was read after something was done is news
		}
		out = append(out, e)
	}
	return out
}
