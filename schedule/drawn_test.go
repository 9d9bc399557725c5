package schedule_test

import (
	"time"

	"github.com/rickb777/date"
	"github.com/rickb777/date/clock"
	"pgregory.net/rapid"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/unit"
)

// anyRequest is a random request that is valid. The ranges are those of validate.
func anyRequest(t *rapid.T) schedule.Request {
	r := schedule.Request{
		Format: 1,
		ID:     rapid.StringMatching(`[a-z0-9_-]{0,12}`).Draw(t, "id"),
		Name:   rapid.StringMatching(`(\pL[\pL<&>"' é日]{0,20})?`).Draw(t, "name"),
		Serve:  schedule.Serve{Date: date.New(2027, time.July, rapid.IntRange(1, 31).Draw(t, "day")), Time: anyTime(t), TZ: "America/Chicago"},
		Guests: maybe(t, func() schedule.Guests {
			frail := rapid.SampledFrom([]string{"yes", "no", "not said"}).Draw(t, "frail")
			return schedule.Guests{Adults: people(t), Children: people(t), Frail: frail == "yes", NoneFrail: frail == "no"}
		}),
		Grill:      anyGrill(t),
		Oven:       maybe(t, func() schedule.Oven { return schedule.Oven{Hold: drawn[unit.Temperature](t, 55, 120)} }),
		Weather:    anyWeather(t),
		Confidence: rapid.SampledFrom([]float64{0, 0.5, 0.75, 0.9, 0.95, 0.99}).Draw(t, "confidence"),
		Units:      rapid.SampledFrom([]unit.System{"", unit.US, unit.Metric}).Draw(t, "units"),
	}
	if from, to := anyTime(t), anyTime(t); from != to {
		r.Quiet = []schedule.Quiet{{From: from, To: to}}
	}
	for range rapid.IntRange(1, 6).Draw(t, "dishes") {
		dish := anyDish(t)
		if r.Guests != nil && r.Guests.Frail {
			dish.Target = nil // a doneness below the published minimum is refused
			dish.Cut, dish.Weight, dish.Weights, dish.Count, dish.Thickness, dish.Wrap = "corn", 0, nil, 0, 0, nil
		}
		if r.Oven == nil {
			dish.Hold = nil
		}
		r.Dishes = append(r.Dishes, dish)
	}
	return r
}

func anyGrill(t *rapid.T) schedule.Grill {
	g := schedule.Grill{GaugeOffset: drawn[unit.Difference](t, -100, 100), WaterPan: rapid.Bool().Draw(t, "pan")}
	switch g.Kind = rapid.SampledFrom([]string{schedule.GrillKettle, schedule.GrillBox, schedule.GrillOther}).Draw(t, "kind"); g.Kind {
	case schedule.GrillKettle:
		g.Diameter = drawn[unit.Length](t, 0.26, 1)
		g.Fuel = rapid.SampledFrom([]string{"", schedule.FuelBriquettes, schedule.FuelLump}).Draw(t, "fuel")
	case schedule.GrillBox:
		g.Width, g.Depth = drawn[unit.Length](t, 0.25, 1.5), drawn[unit.Length](t, 0.25, 1.5)
	default:
		g.Zones = []schedule.GrillZone{{Name: "left", Width: drawn[unit.Length](t, 0.1, 1), Depth: 0.4, Min: 110, Max: drawn[unit.Temperature](t, 110, 300), Direct: true}}
	}
	return g
}

func anyWeather(t *rapid.T) schedule.Weather {
	air := func() unit.Temperature { return drawn[unit.Temperature](t, -40, 50) }
	w := schedule.Weather{
		Air: maybe(t, air), Night: maybe(t, air),
		Humidity:  maybe(t, func() unit.Fraction { return drawn[unit.Fraction](t, 0, 1) }),
		Wind:      drawn[unit.Speed](t, 0, 30),
		Rain:      rapid.Bool().Draw(t, "rain"),
		Sheltered: rapid.Bool().Draw(t, "sheltered"),
		Altitude:  drawn[unit.Length](t, -400, 6000),
	}
	if rapid.Bool().Draw(t, "hours") {
		wet := rapid.Bool().Draw(t, "wet")
		w.Hours = []schedule.WeatherFrom{{From: schedule.Clock{Time: anyTime(t)}, Air: maybe(t, air), Rain: &wet}}
	}
	return w
}

func anyDish(t *rapid.T) schedule.Dish {
	c := rapid.SampledFrom(cut.All()).Draw(t, "cut")
	mass := func() unit.Mass { return drawn[unit.Mass](t, c.MinPieceKg, c.MaxPieceKg) }
	stage := func() unit.Duration { return unit.Duration(rapid.Int64Range(0, int64(24*time.Hour)).Draw(t, "stage")) }
	d := schedule.Dish{
		Name: rapid.StringMatching(`(\pL[\pL\pN ]{0,10})?`).Draw(t, "dish"), Cut: c.Name,
		Weight: mass(), Count: rapid.IntRange(0, 500).Draw(t, "count"),
		Start: maybe(t, func() schedule.Start { return schedule.Start{Core: drawn[unit.Temperature](t, 0, 20)} }),
		Prep:  rapid.SampledFrom([][]string{nil, {"rolled"}, {"brined", "rolled"}}).Draw(t, "prep"),
		Zone:  rapid.SampledFrom([]string{"", "direct", "indirect"}).Draw(t, "zone"),
		Level: maybe(t, func() unit.Temperature { return drawn[unit.Temperature](t, 100, 300) }),
		Rest:  maybe(t, stage), Travel: maybe(t, stage),
		Hold:  rapid.SampledFrom([][]string{nil, {schedule.HoldNone}, {schedule.HoldBox, schedule.HoldOven}}).Draw(t, "hold"),
		Ready: rapid.SampledFrom([]string{"", "day-before"}).Draw(t, "ready"),
		Serve: maybe(t, func() schedule.Clock { return schedule.Clock{Time: anyTime(t)} }),
	}
	if rapid.Bool().Draw(t, "unequal") {
		d.Weight, d.Count, d.Weights = 0, 0, []unit.Mass{mass(), mass()}
	}
	if n := len(c.Doneness); n > 0 {
		d.Target = maybe(t, func() schedule.Target { return schedule.Target{Doneness: c.Doneness[n-1].Name} })
	}
	if d.Target == nil && d.Prep != nil && len(c.Doneness) > 0 { // rolled meat is not planned below its minimum
		d.Target = &schedule.Target{Doneness: c.Doneness[len(c.Doneness)-1].Name}
	}
	if c.WrapAllowed {
		d.Wrap = maybe(t, func() schedule.Wrap {
			after := stage()
			return rapid.SampledFrom([]schedule.Wrap{{With: schedule.WrapNone}, {With: schedule.WrapFoil}, {With: schedule.WrapPaper, After: &after}}).Draw(t, "wrap")
		})
	}
	if rapid.Bool().Draw(t, "frozen") {
		d.Start = &schedule.Start{Frozen: true}
	}
	if d.Level != nil && float64(*d.Level) < fire.LeastDirectC() && d.Zone == schedule.ZoneDirect {
		d.Zone = schedule.ZoneIndirect
	}
	return d
}

func anyTime(t *rapid.T) clock.Clock {
	return clock.New(rapid.IntRange(0, 23).Draw(t, "hour"), rapid.IntRange(0, 59).Draw(t, "minute"), 0, 0)
}

func people(t *rapid.T) int { return rapid.IntRange(0, 100).Draw(t, "people") }

func drawn[T ~float64](t *rapid.T, least, most float64) T {
	return T(rapid.Float64Range(least, most).Draw(t, "value"))
}

func maybe[T any](t *rapid.T, draw func() T) *T {
	if !rapid.Bool().Draw(t, "given") {
		return nil
	}
	v := draw()
	return &v
}
