package schedule

import (
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// Limits that keep a request within what one person and one grate can mean.
const (
	maxDishes  = 40
	maxPieces  = 500 // of one dish
	maxQuiet   = 10
	maxHours   = 168 // a week by the hour
	maxZones   = 12
	maxChoices = 10 // words in a list of ways
)

func decoderRequest(d *strict.Decoder, r *Request) strict.Reader {
	return func(n *strict.Node, path string) {
		d.Object(n, path,
			strict.Required("format", d.Whole(&r.Format, "1")),
			strict.Optional("id", d.Text(&r.ID)),
			strict.Optional("name", d.Text(&r.Name)),
			strict.Required("serve", decoderServe(d, &r.Serve)),
			strict.Optional("guests", strict.Pointed(&r.Guests, func(a0 *Guests) strict.Reader { return decoderGuests(d, a0) })),
			strict.Required("grill", decoderGrill(d, &r.Grill)),
			strict.Optional("oven", strict.Pointed(&r.Oven, func(a0 *Oven) strict.Reader { return decoderOven(d, a0) })),
			strict.Optional("weather", decoderWeather(d, &r.Weather)),
			strict.Optional("quiet", strict.List(d, &r.Quiet, maxQuiet, func(a0 *Quiet) strict.Reader { return decoderQuiet(d, a0) })),
			strict.Optional("confidence", strict.NotZero(d, &r.Confidence, d.Number(&r.Confidence, "0.9"))),
			strict.Optional("units", strict.Quantity(d, &r.Units, unit.ParseSystem)),
			strict.Optional("earliest", strict.Pointed(&r.Earliest, func(a0 *Clock) strict.Reader { return decoderClock(d, a0) })),
			strict.Required("dishes", strict.List(d, &r.Dishes, maxDishes, func(a0 *Dish) strict.Reader { return decoderDish(d, a0) })),
		)
	}
}

// guests reads 24 or {adults: 20, children: 8, frail: true}.
func decoderGuests(d *strict.Decoder, g *Guests) strict.Reader {
	return func(n *strict.Node, path string) {
		if n.Kind != strict.NodeObject {
			d.Whole(&g.Adults, "24")(n, path)
			return
		}
		d.Object(n, path,
			strict.Optional("adults", d.Whole(&g.Adults, "20")),
			strict.Optional("children", d.Whole(&g.Children, "8")),
			strict.Optional("frail", d.Boolean(&g.Frail)),
		)
	}
}

func decoderGrill(d *strict.Decoder, g *Grill) strict.Reader {
	return func(n *strict.Node, path string) {
		d.Object(n, path,
			strict.Required("kind", d.Text(&g.Kind)),
			strict.Optional("diameter", strict.Quantity(d, &g.Diameter, unit.ParseLength)),
			strict.Optional("width", strict.Quantity(d, &g.Width, unit.ParseLength)),
			strict.Optional("depth", strict.Quantity(d, &g.Depth, unit.ParseLength)),
			strict.Optional("fuel", d.Text(&g.Fuel)),
			strict.Optional("gauge_offset", strict.Quantity(d, &g.GaugeOffset, unit.ParseDifference)),
			strict.Optional("water_pan", d.Boolean(&g.WaterPan)),
			strict.Optional("zones", strict.List(d, &g.Zones, maxZones, func(a0 *GrillZone) strict.Reader { return decoderZone(d, a0) })),
		)
	}
}

func decoderZone(d *strict.Decoder, z *GrillZone) strict.Reader {
	return func(n *strict.Node, path string) {
		d.Object(n, path,
			strict.Required("name", d.Text(&z.Name)),
			strict.Required("width", strict.Quantity(d, &z.Width, unit.ParseLength)),
			strict.Required("depth", strict.Quantity(d, &z.Depth, unit.ParseLength)),
			strict.Required("min", strict.Quantity(d, &z.Min, unit.ParseTemperature)),
			strict.Required("max", strict.Quantity(d, &z.Max, unit.ParseTemperature)),
			strict.Optional("direct", d.Boolean(&z.Direct)),
		)
	}
}

func decoderOven(d *strict.Decoder, o *Oven) strict.Reader {
	return func(n *strict.Node, path string) {
		d.Object(n, path, strict.Optional("hold", strict.NotZero(d, &o.Hold, decoderTemperature(d, &o.Hold))))
	}
}

func decoderWeather(d *strict.Decoder, w *Weather) strict.Reader {
	return func(n *strict.Node, path string) {
		d.Object(n, path,
			strict.Optional("air", strict.Pointed(&w.Air, func(a0 *unit.Temperature) strict.Reader { return decoderTemperature(d, a0) })),
			strict.Optional("night", strict.Pointed(&w.Night, func(a0 *unit.Temperature) strict.Reader { return decoderTemperature(d, a0) })),
			strict.Optional("humidity", strict.Pointed(&w.Humidity, func(f *unit.Fraction) strict.Reader { return strict.Quantity(d, f, unit.ParseFraction) })),
			strict.Optional("wind", strict.Quantity(d, &w.Wind, unit.ParseSpeed)),
			strict.Optional("rain", d.Boolean(&w.Rain)),
			strict.Optional("sheltered", d.Boolean(&w.Sheltered)),
			strict.Optional("altitude", strict.Quantity(d, &w.Altitude, unit.ParseLength)),
			strict.Optional("hours", strict.List(d, &w.Hours, maxHours, func(a0 *WeatherFrom) strict.Reader { return decoderWeatherFrom(d, a0) })),
		)
	}
}

func decoderWeatherFrom(d *strict.Decoder, w *WeatherFrom) strict.Reader {
	return func(n *strict.Node, path string) {
		d.Object(n, path,
			strict.Required("from", decoderClock(d, &w.From)),
			strict.Optional("air", strict.Pointed(&w.Air, func(a0 *unit.Temperature) strict.Reader { return decoderTemperature(d, a0) })),
			strict.Optional("wind", strict.Pointed(&w.Wind, func(s *unit.Speed) strict.Reader { return strict.Quantity(d, s, unit.ParseSpeed) })),
			strict.Optional("rain", strict.Pointed(&w.Rain, d.Boolean)),
		)
	}
}

func decoderTemperature(d *strict.Decoder, t *unit.Temperature) strict.Reader {
	return strict.Quantity(d, t, unit.ParseTemperature)
}

func decoderDuration(d *strict.Decoder, to *unit.Duration) strict.Reader {
	return strict.Quantity(d, to, func(text string) (unit.Duration, error) {
		v, err := unit.ParseDuration(text)
		return unit.Duration(v), err
	})
}
