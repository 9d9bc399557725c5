package schedule

import "example.com/cookday/schedule/unit"

// Limits that keep a request within what one person and one grate can mean.
const (
	maxDishes  = 40
	maxPieces  = 500 // of one dish
	maxQuiet   = 10
	maxHours   = 168 // a week by the hour
	maxZones   = 12
	maxChoices = 10 // words in a list of ways
)

func (d *decoder) request(r *Request) reader {
	return func(n *node, path string) {
		d.object(n, path,
			required("format", d.whole(&r.Format, "1")),
			optional("id", d.text(&r.ID)),
			optional("name", d.text(&r.Name)),
			required("serve", d.serve(&r.Serve)),
			optional("guests", pointed(&r.Guests, d.guests)),
			required("grill", d.grill(&r.Grill)),
			optional("oven", pointed(&r.Oven, d.oven)),
			optional("weather", d.weather(&r.Weather)),
			optional("quiet", list(d, &r.Quiet, maxQuiet, d.quiet)),
			optional("confidence", notZero(d, &r.Confidence, d.number(&r.Confidence, "0.9"))),
			optional("units", quantity(d, &r.Units, unit.ParseSystem)),
			optional("earliest", pointed(&r.Earliest, d.clock)),
			required("dishes", list(d, &r.Dishes, maxDishes, d.dish)),
		)
	}
}

// guests reads 24 or {adults: 20, children: 8, frail: true}.
func (d *decoder) guests(g *Guests) reader {
	return func(n *node, path string) {
		if n.kind != nodeObject {
			d.whole(&g.Adults, "24")(n, path)
			return
		}
		d.object(n, path,
			optional("adults", d.whole(&g.Adults, "20")),
			optional("children", d.whole(&g.Children, "8")),
			optional("frail", d.boolean(&g.Frail)),
		)
	}
}

func (d *decoder) grill(g *Grill) reader {
	return func(n *node, path string) {
		d.object(n, path,
			required("kind", d.text(&g.Kind)),
			optional("diameter", quantity(d, &g.Diameter, unit.ParseLength)),
			optional("width", quantity(d, &g.Width, unit.ParseLength)),
			optional("depth", quantity(d, &g.Depth, unit.ParseLength)),
			optional("fuel", d.text(&g.Fuel)),
			optional("gauge_offset", quantity(d, &g.GaugeOffset, unit.ParseDifference)),
			optional("water_pan", d.boolean(&g.WaterPan)),
			optional("zones", list(d, &g.Zones, maxZones, d.zone)),
		)
	}
}

func (d *decoder) zone(z *GrillZone) reader {
	return func(n *node, path string) {
		d.object(n, path,
			required("name", d.text(&z.Name)),
			required("width", quantity(d, &z.Width, unit.ParseLength)),
			required("depth", quantity(d, &z.Depth, unit.ParseLength)),
			required("min", quantity(d, &z.Min, unit.ParseTemperature)),
			required("max", quantity(d, &z.Max, unit.ParseTemperature)),
			optional("direct", d.boolean(&z.Direct)),
		)
	}
}

func (d *decoder) oven(o *Oven) reader {
	return func(n *node, path string) {
		d.object(n, path, optional("hold", notZero(d, &o.Hold, d.temperature(&o.Hold))))
	}
}

func (d *decoder) weather(w *Weather) reader {
	return func(n *node, path string) {
		d.object(n, path,
			optional("air", pointed(&w.Air, d.temperature)),
			optional("night", pointed(&w.Night, d.temperature)),
			optional("humidity", pointed(&w.Humidity, func(f *unit.Fraction) reader { return quantity(d, f, unit.ParseFraction) })),
			optional("wind", quantity(d, &w.Wind, unit.ParseSpeed)),
			optional("rain", d.boolean(&w.Rain)),
			optional("sheltered", d.boolean(&w.Sheltered)),
			optional("altitude", quantity(d, &w.Altitude, unit.ParseLength)),
			optional("hours", list(d, &w.Hours, maxHours, d.weatherFrom)),
		)
	}
}

func (d *decoder) weatherFrom(w *WeatherFrom) reader {
	return func(n *node, path string) {
		d.object(n, path,
			required("from", d.clock(&w.From)),
			optional("air", pointed(&w.Air, d.temperature)),
			optional("wind", pointed(&w.Wind, func(s *unit.Speed) reader { return quantity(d, s, unit.ParseSpeed) })),
			optional("rain", pointed(&w.Rain, d.boolean)),
		)
	}
}

func (d *decoder) temperature(t *unit.Temperature) reader {
	return quantity(d, t, unit.ParseTemperature)
}

func (d *decoder) duration(to *unit.Duration) reader {
	return quantity(d, to, func(text string) (unit.Duration, error) {
		v, err := unit.ParseDuration(text)
		return unit.Duration(v), err
	})
}
