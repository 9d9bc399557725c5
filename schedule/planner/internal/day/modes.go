package day

import (
	"math"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
)

// nightFires says of each fire whether it lasts through the longest quiet
// stretch untended. It is all true on a day without quiet hours.
type NightFires []bool

// lastsNight asks the fire for a burn with the quiet stretch in its middle.
func (d *Day) LastsNight(f fire.Fire, quiet float64) bool {
	if d.Grill.Kind == fire.OtherKind {
		return true
	}
	const before, after = 60, 120
	b := d.Grill.Plan(f, fire.Need{
		First:    true,
		Slices:   []fire.Slice{{Minutes: before + quiet + after, Weather: d.Night}},
		Untended: []fire.Span{{FromMinute: before, ToMinute: before + quiet}},
	})
	return len(b.Shortfalls) == 0
}

// restMinutes is the least rest: the asked one, else the cut's, never under the
// published one.
func (it *Item) RestMinutes() float64 {
	rest := it.Cut.Rest.MinMinutes
	if it.Dish.Rest != nil {
		rest = instant.UnitMinutes(*it.Dish.Rest)
	}
	return math.Max(rest, it.Verdict.Minimum.RestMinutes)
}

// standsFor is how long a piece without a hold may stand: its least rest, and while it
// keeps its quality, but no longer than the published clock, unless it is chilled then.
func (d *Day) StandsFor(it *Item) float64 {
	rest := it.RestMinutes()
	most := rest + math.Max(it.Cut.Rest.LongestMinutes-it.Cut.Rest.MinMinutes, 0)
	if clock := safety.HoldFor(0, false, false, d.Air.AirC, 0); !d.Chill {
		most = math.Min(most, clock.LimitMinutes)
	}
	return math.Max(most, rest)
}
