package schedule

import (
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// grill reads {kind: kettle, diameter: 22 in}, or "kettle 22 in" in one line.
func (d decoder) grill(g *Grill) strict.Reader {
	return func(n *strict.Node, path string) {
		if n.Kind == strict.NodeText {
			d.grillLine(g, n, path)
			return
		}
		d.Object(n, path,
			strict.Required("kind", d.word(&g.Kind, grillKinds...)),
			strict.Optional("diameter", strict.Quantity(d.Decoder, &g.Diameter, unit.ParseLength)),
			strict.Optional("width", strict.Quantity(d.Decoder, &g.Width, unit.ParseLength)),
			strict.Optional("depth", strict.Quantity(d.Decoder, &g.Depth, unit.ParseLength)),
			strict.Optional("fuel", d.word(&g.Fuel, fuels...)),
			strict.Optional("gauge_offset", strict.Quantity(d.Decoder, &g.GaugeOffset, unit.ParseDifference)),
			strict.Optional("water_pan", d.Boolean(&g.WaterPan)),
			strict.Optional("raised", d.Boolean(&g.Raised)),
			strict.Optional("levels", strict.NotZero(d.Decoder, &g.Levels, d.Whole(&g.Levels, "2"))),
			strict.Optional("zones", strict.List(d.Decoder, &g.Zones, maxZones, d.zone)),
			strict.Optional("own", strict.Pointed(&g.Own, d.ownGrill)),
		)
	}
}

func (d decoder) zone(z *GrillZone) strict.Reader {
	return func(n *strict.Node, path string) {
		d.Object(n, path,
			strict.Required("name", d.Text(&z.Name)),
			strict.Required("width", strict.Quantity(d.Decoder, &z.Width, unit.ParseLength)),
			strict.Required("depth", strict.Quantity(d.Decoder, &z.Depth, unit.ParseLength)),
			strict.Required("min", strict.Quantity(d.Decoder, &z.Min, unit.ParseTemperature)),
			strict.Required("max", strict.Quantity(d.Decoder, &z.Max, unit.ParseTemperature)),
			strict.Optional("direct", d.Boolean(&z.Direct)),
		)
	}
}
