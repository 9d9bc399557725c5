package day

import (
	"math"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
)

// WeatherBetween cuts a stretch into pieces of one weather, day and night.
func (d *Day) WeatherBetween(from, to time.Time) []fire.Slice {
	var out []fire.Slice
	for at := from; at.Before(to); {
		w, until := d.weatherAt(at)
		if until.After(to) {
			until = to
		}
		out = append(out, fire.Slice{Minutes: until.Sub(at).Minutes(), Weather: w})
		at = until
	}
	return out
}

// nightFrom and nightTo are the hours at which the night's air temperature
// holds (assumption).
const (
	nightFrom = 21
	nightTo   = 8
)

// weatherAt is the weather of an instant and until when it holds: by day and
// night, and what the request's hours say from their instants on.
func (d *Day) weatherAt(t time.Time) (fire.Weather, time.Time) {
	local := t.In(d.Loc)
	y, m, n := local.Date()
	w, until := d.Air, time.Date(y, m, n, nightFrom, 0, 0, 0, d.Loc)
	switch h := local.Hour(); {
	case h < nightTo:
		w, until = d.Night, time.Date(y, m, n, nightTo, 0, 0, 0, d.Loc)
	case h >= nightFrom:
		w, until = d.Night, time.Date(y, m, n+1, nightTo, 0, 0, 0, d.Loc)
	}
	for _, h := range d.Req.Weather.Hours { // in the order of their instants
		at := d.Clock(&h.From)
		if at.After(t) {
			return w, instant.Earlier(until, at)
		}
		w = refined(w, h)
	}
	return w, until
}

// refined is the weather w with what an hour says of it.
func refined(w fire.Weather, h schedule.WeatherFrom) fire.Weather {
	if h.Air != nil {
		w.AirC = float64(*h.Air)
	}
	if h.Wind != nil {
		w.WindMS = float64(*h.Wind)
	}
	if h.Rain != nil {
		w.Rain = *h.Rain
	}
	return w
}

// refuelMinutes is the work of a refuel, which must be over when quiet hours begin
// (assumption).
const refuelMinutes = 5

// Untended are the quiet hours within a stretch, in minutes from its beginning.
func (d *Day) Untended(from, to time.Time) []fire.Span {
	return d.untended(from, to, func(int) float64 { return refuelMinutes })
}

// Unfed are the stretches of a phase in which nobody adds fuel, in minutes from its
// beginning: quiet hours, and before a night the time in which it settles.
func (d *Day) Unfed(from, to time.Time) []fire.Span {
	hours := d.Hours()
	return d.untended(from, to, func(i int) float64 {
		if hours[i%len(hours)].ForSleep() {
			return safety.SettleMinutes + refuelMinutes
		}
		return refuelMinutes
	})
}

func (d *Day) untended(from, to time.Time, before func(i int) float64) []fire.Span {
	var out []fire.Span
	for i, q := range d.QuietIntervals() {
		a, b := q.From.Sub(from).Minutes()-before(i), q.To.Sub(from).Minutes()
		if b > 0 && a < to.Sub(from).Minutes() {
			out = append(out, fire.Span{FromMinute: math.Max(a, 0), ToMinute: b})
		}
	}
	return out
}

// Windy says whether it blows too hard in a night for a fire that nobody watches.
func (d *Day) Windy(q Span) bool {
	for at, end := d.At(float64(q.To-1)), d.At(float64(q.From-1)); at.Before(end); {
		w, until := d.weatherAt(at)
		if w.WindMS >= safety.UnwatchedWindMS {
			return true
		}
		at = until
	}
	return false
}

// NightFires says of each fire whether it lasts through the longest quiet
// stretch untended. It is all true on a day without quiet hours.
type NightFires []bool

// LastsNight asks the fire for a burn with the quiet stretch in its middle.
func (d *Day) LastsNight(f fire.Fire, quiet float64) bool {
	if !d.Grill.Charcoal() {
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
