package schedule

import (
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/unit"
)

// item is a resolved dish.
type item struct {
	index      int
	dish       Dish
	cut        cut.Cut
	category   safety.Category
	prep       safety.Prep
	targetC    float64 // core at take-off; 0 for timed items
	doneness   string
	final      bool // targetC is the peak after carry-over
	verdict    safety.Verdict
	serve      int  // minutes before the last serving
	thaws      bool // it starts frozen and is thawed first
	fromFrozen bool // it goes on frozen
	earliest   int
	lots       []lot
}

// lot is the like pieces of a dish; unequal pieces finish on their own.
type lot struct {
	massKg float64
	count  int
}

// boilingMarginK keeps the named doneness of tough cuts below the boiling
// point: at height the core cannot come closer in a time worth naming. One that
// lies nearer at the sea, where cooks get to it, may stay as near.
const boilingMarginK = 5

func (d *day) resolveItems() []Fault {
	var faults []Fault
	for i, dish := range d.req.Dishes {
		it, fs := d.resolveItem(i, dish)
		faults = append(faults, fs...)
		d.items = append(d.items, it)
	}
	return faults
}

func (d *day) resolveItem(i int, dish Dish) (item, []Fault) {
	path := fmt.Sprintf("dishes[%d]", i)
	c, ok := cut.Find(dish.Cut)
	if !ok {
		return item{}, []Fault{{Path: path + ".cut", Sentence: noSuchCut(dish.Cut)}}
	}
	it := item{index: i, dish: dish, cut: c, category: safety.Category(c.Food), prep: prepOf(dish.Prep), earliest: d.earliest}
	it.serve = d.minute(d.clock(dish.Serve))
	if dish.Travel != nil {
		it.serve += int(unitMinutes(*dish.Travel))
	}
	if dish.Earliest != nil {
		it.earliest = min(it.earliest, d.minute(d.clock(dish.Earliest)))
	}
	it.lots = lotsOf(dish)
	if d.grill.Kind == fire.OtherKind {
		it.cut.Places = withinZones(c.Places, d.grill.OtherZones)
		d.noteZones(&it, c.Places)
	}
	if faults := laterFields(path, dish); len(faults) > 0 {
		return it, faults
	}
	if faults := it.resolveFrozen(); len(faults) > 0 {
		return it, faults
	}
	if c.Style == cut.Timed {
		return it, nil
	}
	it.targetC, it.doneness, it.final = d.target(c, dish.Target)
	if faults := it.finalFault(); len(faults) > 0 {
		return it, faults
	}
	it.verdict = safety.JudgeTarget(it.category, it.prep, it.targetC, d.frail)
	if it.verdict.Kind == safety.Refused {
		return it, []Fault{{Path: path + ".target", Sentence: it.verdict.Sentence}}
	}
	return it, nil
}

// laterFields refuses what is understood but not planned yet, so that nothing a
// cook wrote is passed over.
func laterFields(path string, dish Dish) []Fault {
	var faults []Fault
	if dish.Ready != "" { // a request with such dishes is split before
		faults = append(faults, Fault{Path: path + ".ready", Sentence: "a dish of this day alone cannot be ready the day before; leave ready out"})
	}
	return faults
}

// target is the core temperature that ends the cook, its name if it has one,
// and whether it is the peak after carry-over.
func (d *day) target(c cut.Cut, t *Target) (coreC float64, name string, final bool) {
	switch {
	case t != nil && t.Core != nil:
		return float64(*t.Core), "", false
	case t != nil && t.Final != nil:
		return float64(*t.Final), "", true
	}
	for _, g := range c.Doneness {
		if t != nil && g.Name == t.Doneness || t == nil && g.Default {
			coreC, name = g.CoreC, g.Name
		}
	}
	if c.Style == cut.Tough {
		margin := math.Min(boilingMarginK, heat.BoilingC(0)-coreC)
		coreC = math.Min(coreC, heat.BoilingC(d.outdoors.AltitudeM)-margin)
	}
	return coreC, name, false
}

func prepOf(words []string) safety.Prep {
	return safety.Prep{
		Stuffed: slices.Contains(words, "stuffed"), Injected: slices.Contains(words, "injected"),
		Tenderised: slices.Contains(words, "tenderised"), Rolled: slices.Contains(words, "rolled"),
		Brined: slices.Contains(words, "brined"),
	}
}

// lotsOf groups pieces of the same weight, heaviest first.
func lotsOf(dish Dish) []lot {
	if len(dish.Weights) == 0 {
		return []lot{{massKg: float64(dish.Weight), count: dish.Count}}
	}
	weights := slices.Clone(dish.Weights)
	slices.Sort(weights)
	slices.Reverse(weights)
	var lots []lot
	for _, w := range weights {
		if n := len(lots); n > 0 && lots[n-1].massKg == float64(w) {
			lots[n-1].count++
			continue
		}
		lots = append(lots, lot{massKg: float64(w), count: 1})
	}
	return lots
}

// body is a piece of the dish as the heat model takes it.
func (it *item) body(massKg float64) heat.Body {
	t, w, l := it.cut.HeatDimensions(massKg, float64(it.dish.Thickness))
	k := it.cut.Composition
	b := heat.Body{
		ThicknessM: t, WidthM: w, LengthM: l, RadiusScale: it.cut.Shape.RadiusScale,
		Water: k.Water, Protein: k.Protein, Fat: k.Fat, Ash: k.Ash,
		WetFactor: it.cut.WetFactor, SupplyFactor: it.cut.SupplyFactor, StartC: heat.RefrigeratorC,
	}
	if it.dish.Start != nil && !it.dish.Start.Frozen {
		b.StartC = float64(it.dish.Start.Core)
	}
	return b
}

// footprint is what a piece covers of the grate.
func (it *item) footprint(massKg float64) fire.Footprint {
	l, w := it.cut.Footprint(massKg, float64(it.dish.Thickness))
	return fire.Footprint{LengthM: l, WidthM: w, Disc: it.cut.Disc, Rack: it.cut.Rack}
}

// path is where a fault or finding of the dish points.
func (it *item) path(field string) string {
	p := fmt.Sprintf("dishes[%d]", it.index)
	if field == "" {
		return p
	}
	return p + "." + field
}

func unitMinutes(d unit.Duration) float64 { return time.Duration(d).Minutes() }
