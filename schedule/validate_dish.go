package schedule

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/meant"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// The plausible ranges of a dish are wide on purpose: they catch slips.
var (
	leastCore, mostCore   = unit.FromFahrenheit(100), unit.FromFahrenheit(212) // boiling at the sea
	leastStart, mostStart = unit.FromFahrenheit(28), unit.FromFahrenheit(90)   // unfrozen, to a hot kitchen
	longestStage          = 24 * time.Hour
)

const thicknessFactor = 4 // a piece may be so much thinner or thicker than its cut usually is

func (v *validator) dishes() {
	n := len(v.r.Dishes)
	if n == 0 || n > maxDishes {
		v.faults.Add("dishes", "there are %d dishes; a request has from 1 to %d", n, maxDishes)
		return
	}
	weights := 0
	for _, dish := range v.r.Dishes {
		weights += len(dish.Weights)
	}
	if weights > maxPieces {
		v.faults.Add("dishes", "have %d weights of unequal pieces in all; at most %d are allowed", weights, maxPieces)
		return
	}
	first := map[string]int{}
	for i, dish := range v.r.Dishes {
		path := strict.ItemPath("dishes", i)
		if j, twice := first[dish.ID]; twice {
			v.faults.Add(path+".id", "%s is also the id of dishes[%d]; ids must differ", say.Quoted(dish.ID), j)
		} else {
			first[dish.ID] = i
		}
		v.dish(path, dish)
	}
}

func (v *validator) dish(path string, dish Dish) {
	v.id(path+".id", dish.ID)
	v.name(path+".name", dish.Name)
	v.words(path+".assumed", dish.Assumed, assumables...)
	c, unknown := cut.One(dish.Cut)
	if unknown == "" {
		v.pieces(path, dish, c)
		v.target(path, dish, c)
		v.wrap(path+".wrap", dish, c)
		v.finish(path+".finish", dish.Finish, c)
	} else {
		known := v.faults.Len()
		said := cutInWords(dish.Cut, unknown)
		if near, ok := meant.Nearest(dish.Cut); ok && !strings.Contains(said, "write") {
			said += fmt.Sprintf("; to plan it as that write cut: %s, name: %s", near.Name, dish.Cut)
		}
		v.faults.Add(path+".cut", "%s", said)
		if near := cut.Suggest(dish.Cut, 1); len(near) == 1 && say.NearestWord(dish.Cut, near) == near[0] {
			v.faults.Mended(known, dish.Cut, near[0])
		}
	}
	v.start(path+".start", dish.Start)
	v.words(path+".prep", dish.Prep, preps...)
	v.stuffing(path, dish, c)
	if dish.Zone != "" {
		v.word(path+".zone", dish.Zone, zones...)
	}
	if dish.Lies != "" {
		v.lies(path+".lies", dish.Lies, c, unknown == "")
	}
	v.layout(path+".layout", dish.Layout)
	if dish.Level != nil {
		ranged(v, path+".level", "grate temperature", *dish.Level, leastLevel, mostLevel, v.units.Grate)
		if dish.Zone == ZoneDirect && float64(*dish.Level) < fire.LeastDirectC() {
			v.faults.AddValue(path+".level", v.units.Grate(*dish.Level), "is too cool for a fire to cook over; it takes %s or more, or the zone indirect",
				v.units.Grate(unit.Temperature(fire.LeastDirectC())))
		}
	}
	v.hold(path+".hold", dish.Hold)
	v.times(path, dish)
}

// cutInWords is what there is to say of a cut that is unknown: perhaps its amount stands
// in its name.
func cutInWords(name, unknown string) string {
	said := meant.Dish(name, 0, 0)
	if s := cut.Speak(name); said.Node == nil || s.Count == 0 && s.Weight == "" && s.Thickness == "" && len(said.Left) == 0 {
		return unknown
	}
	if !said.Certain() {
		return said.Lead()
	}
	return say.Quoted(name) + " says more than what it is; write " + strings.Trim(said.Line(), "{}")
}

// pieces looks at how many pieces there are and how large they are.
func (v *validator) pieces(path string, dish Dish, c cut.Cut) {
	switch {
	case len(dish.Weights) > maxPieces:
		v.faults.Add(path+".weights", "has %d items; at most %d are allowed", len(dish.Weights), maxPieces)
	case len(dish.Weights) > 0:
		if dish.Weight != 0 {
			v.faults.Add(path+".weight", "weights is given too; give either one weight for every piece or the weights of all")
		}
		if dish.Count != 0 {
			v.faults.Add(path+".count", "weights is given too, and has %d pieces; leave count out", len(dish.Weights))
		}
		for i, w := range dish.Weights {
			v.weight(strict.ItemPath(path+".weights", i), w, c, 1)
		}
	default:
		if dish.Count < 1 || dish.Count > maxPieces {
			v.faults.Add(path+".count", "%d must be a number of pieces from 1 to %d", dish.Count, maxPieces)
		}
		v.weight(path+".weight", dish.Weight, c, dish.Count)
	}
	if dish.Thickness != 0 {
		mass := dish.Weight
		if mass == 0 {
			mass = unit.Mass(c.Typical)
		}
		usual, _, length := c.Dimensions(float64(mass), 0)
		least, most := usual/thicknessFactor, max(usual, min(usual*thicknessFactor, length))
		ranged(v, path+".thickness", "thickness of "+c.InText(), dish.Thickness, unit.Length(least), unit.Length(most), v.units.Length)
	}
}

func (v *validator) weight(path string, w unit.Mass, c cut.Cut, count int) {
	least, most := unit.Mass(c.MinPieceKg), unit.Mass(c.MaxPieceKg)
	said := func(m unit.Mass) string { return v.units.Mass(m) }
	switch {
	case w == 0:
		v.faults.Add(path, "the weight is missing; for %s it is from %s to %s a piece. Without it give a count of pieces, or the guests of the day", c.InText(), said(least), said(most))
	case between(w, least, most, said):
	case count > 1:
		v.faults.AddValue(path, said(w), "is not plausible for each of %d pieces: for %s it is from %s to %s a piece", count, c.InText(), said(least), said(most))
	default:
		v.faults.AddValue(path, said(w), "is not plausible: for %s it is from %s to %s a piece%s", c.InText(), said(least), said(most), inPieces(w, c, v.units))
	}
}

// inPieces is what to write for a weight that is likely that of all pieces.
func inPieces(w unit.Mass, c cut.Cut, u unit.System) string {
	if racks := int(float64(w)/c.MaxPieceKg) + 1; c.Ribs() && racks > 1 && racks <= maxPieces && float64(w)/float64(racks) >= c.MinPieceKg {
		return fmt.Sprintf("; if that is all of it, write how many racks that is, such as count: %d, weight: %s", racks, u.Mass(w/unit.Mass(racks)))
	}
	pieces := c.InPieces(float64(w))
	if !c.Quick() || pieces < 2 || pieces > maxPieces {
		return ""
	}
	return fmt.Sprintf("; if that is all of it, write count: %d", pieces)
}

// lies: only racks of ribs are laid in more than one way.
func (v *validator) lies(path, lies string, c cut.Cut, known bool) {
	switch {
	case !v.word(path, lies, waysToLie...) || !known:
	case !c.Ribs():
		v.faults.Add(path, "%s lies in one way; lies is for racks of ribs", c.InText())
	case lies == LiesRolled && c.TooStiffToRoll():
		v.faults.Add(path, "%s does not roll up; write standing, halved or flat", c.InText())
	}
}

func (v *validator) start(path string, s *Start) {
	switch {
	case s == nil:
	case s.Frozen && s.Core != 0:
		v.faults.Add(path, "is both frozen and at %s; keep one", v.units.Core(s.Core))
	case !s.Frozen && s.Core < leastStart:
		v.faults.AddValue(path, v.units.Core(s.Core), "is below freezing; write frozen, or a temperature from %s to %s",
			v.units.Core(leastStart), v.units.Core(mostStart))
	case !s.Frozen:
		ranged(v, path, "temperature of raw food", s.Core, leastStart, mostStart, v.units.Core)
	}
}

func (v *validator) hold(path string, ways []string) {
	v.words(path, ways, holds...)
	if slices.Contains(ways, HoldNone) && len(ways) > 1 {
		v.faults.Add(path, "none stands beside other ways of holding; keep one or the other")
	}
	if slices.Contains(ways, HoldOven) && v.r.Oven == nil {
		v.faults.Add(path, "names the oven, but the request has none; add oven: {hold: %s}", v.units.Grate(defaultOvenHold))
	}
}

// times looks at what a dish says of its clocks and stretches.
func (v *validator) times(path string, dish Dish) {
	if dish.Rest != nil {
		v.span(path+".rest", *dish.Rest, longestStage)
	}
	if dish.Travel != nil {
		v.span(path+".travel", *dish.Travel, longestStage)
	}
	if dish.Ready != "" {
		v.word(path+".ready", dish.Ready, readies...)
	}
	serving := v.serveAt
	if dish.Serve != nil {
		serving, _ = v.near(path+".serve", *dish.Serve)
	}
	if dish.Earliest != nil {
		v.before(path+".earliest", *dish.Earliest, serving)
	}
}
