package day

import (
	"math"

	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
)

// RestMinutes is the least rest: the asked one, else the cut's, never under the
// published one.
func (it *Item) RestMinutes() float64 {
	rest := it.Cut.Rest.MinMinutes
	if it.Dish.Rest != nil {
		rest = instant.UnitMinutes(*it.Dish.Rest)
	}
	return math.Max(rest, it.Verdict.Minimum.RestMinutes)
}

// StandsFor is how long a piece without a hold may stand: its least rest, and while it
// keeps its quality, but no longer than the published clock, unless it is chilled then.
func (d *Day) StandsFor(it *Item) float64 {
	rest := it.RestMinutes()
	most := rest + math.Max(it.Cut.Rest.LongestMinutes-it.Cut.Rest.MinMinutes, 0)
	if !d.Chill {
		most = math.Min(most, d.OutFor())
	}
	return math.Max(most, rest)
}

// OutFor is how long a piece may stand out of heat before it is on the table: by the
// published clock.
func (d *Day) OutFor() float64 {
	return safety.HoldFor(safety.Finished{Piece: safety.Joint, Place: safety.InOpen, AirC: d.Air.AirC}).LimitMinutes
}
