package schedule

import (
	"regexp"
	"strings"

	"example.com/cookday/schedule/internal/say"
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

// grillForms are the grills that one line says.
const grillForms = `"kettle 22 in", "box 36 x 18 in" or "upright 18.5 in"`

var sideBySide = regexp.MustCompile(`^([^x×y]+?)\s*(?:x|×|by)\s*(.+)$`)

// grillLine reads a kind and its size in one line, in either order.
func (d decoder) grillLine(g *Grill, n *strict.Node, path string) {
	if d.Is(n, path, strict.NodeText, "text"); n.Probed() {
		return
	}
	kind, size := kindAndSize(strings.ToLower(strings.TrimSpace(n.Text)))
	if kind == "" || size == "" {
		d.Faults.AddLine(path, n.Line, "%s must be a kind of grill and its size, such as %s; there is more to say in a group of fields: {kind: kettle, diameter: 22 in, fuel: lump}", say.Quoted(n.Text), grillForms)
		return
	}
	g.Kind = kind
	sides := sideBySide.FindStringSubmatch(size)
	side := func(to *unit.Length, text, field string) {
		line := &strict.Node{Kind: strict.NodeText, Text: text, Line: n.Line}
		strict.Quantity(d.Decoder, to, unit.ParseLength)(line, path+"."+field)
	}
	switch {
	case sides == nil && kind == GrillBox:
		d.Faults.AddLine(path, n.Line, "%s says one size; a box has two: box 36 x 18 in", say.Quoted(n.Text))
	case sides == nil:
		side(&g.Diameter, size, "diameter")
	default:
		side(&g.Width, withUnitOf(sides[1], sides[2]), "width")
		side(&g.Depth, sides[2], "depth")
	}
}

// kindAndSize takes a line apart: "kettle 22 in", "22 in kettle", "rectangular 36 x 18 in".
func kindAndSize(line string) (kind, size string) {
	words := map[string]string{GrillKettle: GrillKettle, GrillBox: GrillBox, "rectangular": GrillBox, GrillUpright: GrillUpright}
	first, rest, _ := strings.Cut(line, " ")
	if kind, ok := words[strings.TrimSuffix(first, ",")]; ok {
		return kind, strings.TrimSpace(rest)
	}
	if at := strings.LastIndex(line, " "); at > 0 {
		return words[line[at+1:]], strings.TrimSpace(line[:at])
	}
	return "", ""
}

var endsInUnit = regexp.MustCompile(`[a-z"']+$`)

// withUnitOf is the first of two sides, whose unit may stand behind the second alone.
func withUnitOf(first, second string) string {
	if endsInUnit.MatchString(first) {
		return first
	}
	return first + " " + endsInUnit.FindString(second)
}
