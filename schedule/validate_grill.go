package schedule

import (
	"fmt"
	"slices"
	"time"

	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// Plausible ranges of what a backyard has. They catch slips of the pen and of
// the unit; they are assumptions, wide on purpose.
var (
	leastDiameter, mostDiameter = unit.FromInches(10), unit.FromInches(40)
	leastSide, mostSide         = unit.FromInches(8), unit.FromInches(60)
	leastZoneSide               = unit.FromInches(3)
	leastLevel, mostLevel       = unit.FromFahrenheit(150), unit.FromFahrenheit(900)
	mostGaugeOffset             = unit.DifferenceFromFahrenheit(200)
	leastOvenHold, mostOvenHold = unit.FromFahrenheit(130), unit.FromFahrenheit(250)
	leastAir, mostAir           = unit.Temperature(-40), unit.Temperature(50)
	mostWind                    = unit.Speed(30)
	leastAltitude, mostAltitude = unit.Length(-430), unit.Length(6000) // the Dead Sea's shore; above the highest town
)

func (v *validator) grill() {
	g := v.r.Grill
	if burnsOther(g.Kind) {
		v.faults.Add("grill.kind", "%s: %s", say.Quoted(g.Kind), charcoalOnly)
	} else if v.word("grill.kind", g.Kind, grillKinds...) {
		v.grillOfKind(g)
	}
	v.fuel(g)
	ranged(v, "grill.gauge_offset", "difference between lid gauge and grate", g.GaugeOffset, -mostGaugeOffset, mostGaugeOffset, v.units.Difference)
	if g.Own != nil {
		if g.Kind == GrillOther {
			v.faults.Add("grill.own", "a grill of kind %s gets no charcoal advice; leave its record out", g.Kind)
		}
		g.Own.within("grill.own", &v.faults)
	}
}

// burnsCharcoal says whether a grill of the kind gets advice on its charcoal.
func burnsCharcoal(kind string) bool { return kind == GrillKettle || kind == GrillBox }

// fuel is looked at of an unknown kind too.
func (v *validator) fuel(g Grill) {
	known := slices.Contains(grillKinds, g.Kind)
	switch {
	case g.Fuel == "":
	case burnsOther(g.Fuel):
		v.faults.Add("grill.fuel", "%s must be %s: %s", say.Quoted(g.Fuel), say.Listed(fuels, "or"), charcoalOnly)
	case known && !burnsCharcoal(g.Kind):
		v.faults.Add("grill.fuel", "%s: a grill of kind %s gets no charcoal advice; leave the fuel out", say.Quoted(g.Fuel), g.Kind)
	default:
		v.word("grill.fuel", g.Fuel, fuels...)
	}
}

// grillOfKind looks at what belongs to a kind of grill and what does not.
func (v *validator) grillOfKind(g Grill) {
	switch g.Kind {
	case GrillKettle:
		v.size("grill.diameter", "diameter", g.Diameter, leastDiameter, mostDiameter)
	case GrillBox:
		v.size("grill.width", "width", g.Width, leastSide, mostSide)
		v.size("grill.depth", "depth", g.Depth, leastSide, mostSide)
	case GrillUpright:
		v.upright(g)
	case GrillOther:
		v.zones(g.Zones)
	}
	if g.Kind != GrillUpright {
		v.onlyFor("grill.diameter", g.Diameter != 0, g.Kind, GrillKettle)
		v.onlyFor("grill.width", g.Width != 0, g.Kind, GrillBox)
		v.onlyFor("grill.depth", g.Depth != 0, g.Kind, GrillBox)
		v.onlyFor("grill.levels", g.Levels != 0, g.Kind, GrillUpright)
	}
	v.onlyFor("grill.zones", g.Zones != nil, g.Kind, GrillOther)
	if g.Raised && !burnsCharcoal(g.Kind) {
		v.faults.Add("grill.raised", "a second grate over the side away from the coals belongs to a grill of kind kettle or box, but this one is of kind %s", g.Kind)
	}
}

// mostLevels is how many grates stand above one another at the most (assumption).
const mostLevels = 6

// upright is round or a box.
func (v *validator) upright(g Grill) {
	if g.Levels < 1 || g.Levels > mostLevels {
		v.faults.Add("grill.levels", "%d must be a number of grates from 1 to %d", g.Levels, mostLevels)
	}
	switch {
	case g.Diameter != 0 && (g.Width != 0 || g.Depth != 0):
		v.faults.Add("grill.diameter", "width or depth is given too; an upright cooker is round or a box")
	case g.Width != 0 || g.Depth != 0:
		v.size("grill.width", "width", g.Width, leastSide, mostSide)
		v.size("grill.depth", "depth", g.Depth, leastSide, mostSide)
	default:
		v.size("grill.diameter", "diameter", g.Diameter, leastDiameter, mostDiameter)
	}
}

func (v *validator) onlyFor(path string, given bool, kind, wanted string) {
	if given && kind != wanted {
		v.faults.Add(path, "belongs to a grill of kind %s, but this one is of kind %s", wanted, kind)
	}
}

func (v *validator) zones(zones []GrillZone) {
	if len(zones) == 0 || len(zones) > maxZones {
		v.faults.Add("grill.zones", "a grill of kind other has from 1 to %d zones, each with name, width, depth, min and max; there are %d", maxZones, len(zones))
	}
	lines := map[string]int{}
	for i, z := range zones {
		path := strict.ItemPath("grill.zones", i)
		v.name(path+".name", z.Name)
		if first, twice := lines[z.Name]; twice {
			v.faults.Add(path+".name", "%s is also the name of zone %d; names must differ", say.Quoted(z.Name), first+1)
		} else if lines[z.Name] = i; z.Name == "" {
			v.faults.Add(path+".name", "is empty; give the zone a name")
		}
		v.size(path+".width", "width", z.Width, leastZoneSide, mostSide)
		v.size(path+".depth", "depth", z.Depth, leastZoneSide, mostSide)
		low := ranged(v, path+".min", "grate temperature", z.Min, leastLevel, mostLevel, v.units.Grate)
		high := ranged(v, path+".max", "grate temperature", z.Max, leastLevel, mostLevel, v.units.Grate)
		if low && high && z.Min > z.Max {
			v.faults.AddValue(path+".min", v.units.Grate(z.Min), "is above the max of %s; exchange them", v.units.Grate(z.Max))
		}
	}
}

func (v *validator) weather() {
	w := v.r.Weather
	v.air("weather.air", w.Air)
	v.air("weather.night", w.Night)
	if w.Humidity != nil {
		ranged(v, "weather.humidity", "humidity", *w.Humidity, 0, 1, func(f unit.Fraction) string { return fmt.Sprintf("%.0f%%", float64(f)*100) })
	}
	ranged(v, "weather.wind", "wind to cook in", w.Wind, 0, mostWind, v.units.Speed)
	ranged(v, "weather.altitude", "altitude", w.Altitude, leastAltitude, mostAltitude, v.units.Length)
	if len(w.Hours) > maxHours {
		v.faults.Add("weather.hours", "has %d items; at most %d are allowed", len(w.Hours), maxHours)
		return
	}
	var last time.Time
	for i, h := range w.Hours {
		path := strict.ItemPath("weather.hours", i)
		if h.Air == nil && h.Wind == nil && h.Rain == nil {
			v.faults.Add(path, "says nothing; give air, wind or rain")
		}
		v.air(path+".air", h.Air)
		if h.Wind != nil {
			ranged(v, path+".wind", "wind to cook in", *h.Wind, 0, mostWind, v.units.Speed)
		}
		from, ok := v.near(path+".from", h.From)
		if ok && !last.IsZero() && !from.After(last) {
			v.faults.Add(path+".from", "%s is not after the item before it, %s; put them in order, with a date where it is another day", told(from), told(last))
		}
		if ok {
			last = from
		}
	}
}

func (v *validator) air(path string, t *unit.Temperature) {
	if t != nil {
		ranged(v, path, "air temperature", *t, leastAir, mostAir, v.units.Core)
	}
}
