package api

import (
	"time"

	"example.com/cookday/schedule"
)

// twice is how soon the same entry again is a thumb that slipped (assumption).
const twice = 10 * time.Second

func pressedTwice(log []logged, posted []schedule.Entry) bool {
	for _, l := range log {
		for _, e := range posted {
			if !l.withdrawn && l.Kind == e.Kind && l.Dish == e.Dish && l.C == e.C && l.Value == e.Value && e.At.Sub(l.At).Abs() < twice {
				return true
			}
		}
	}
	return false
}
