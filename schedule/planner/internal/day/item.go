package day

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
)

// Item is a resolved dish.
type Item struct {
	Index      int
	Dish       schedule.Dish
	Cut        cut.Cut
	Category   safety.Category
	Prep       safety.Prep
	TargetC    float64 // core at take-off; 0 for timed items
	Doneness   string
	final      bool // targetC is the peak after carry-over
	Verdict    safety.Verdict
	Serve      int  // minutes before the last serving
	Thaws      bool // it starts frozen and is thawed first
	FromFrozen bool // it goes on frozen
	Earliest   int
	Lots       []Lot
	reachM     float64     // of the grate
	likes      []cut.Place // where its cut likes to cook, if a described grill may have other places
}

// Lot is the like pieces of a dish; unequal pieces finish on their own.
type Lot struct {
	MassKg float64
	Count  int
}

// boilingMarginK keeps the named doneness of tough cuts below the boiling
// point: at height the core cannot come closer in a time worth naming. One that
// lies nearer at the sea, where cooks get to it, may stay as near.
const boilingMarginK = 5

func (d *Day) resolveItems() []schedule.Fault {
	var faults []schedule.Fault
	for i, dish := range d.Req.Dishes {
		it, fs := d.resolveItem(i, dish)
		faults = append(faults, fs...)
		d.Items = append(d.Items, it)
	}
	return faults
}

func (d *Day) resolveItem(i int, dish schedule.Dish) (Item, []schedule.Fault) {
	path := fmt.Sprintf("dishes[%d]", i)
	c, ok := cut.Find(dish.Cut)
	if !ok {
		return Item{}, []schedule.Fault{{Path: path + ".cut", Sentence: strconv.Quote(dish.Cut) + " is not in the catalogue"}}
	}
	dish.Finish = d.Req.FinishOf(dish)
	it := Item{Index: i, Dish: dish, Cut: c, Category: safety.Category(c.Food), Prep: safety.PrepOf(slices.Concat(dish.Prep, c.Prep)), Earliest: d.Earliest, reachM: d.Grill.ReachM()}
	it.Serve = d.Minute(d.Clock(dish.Serve))
	if dish.Travel != nil {
		it.Serve += int(instant.UnitMinutes(*dish.Travel))
	}
	if dish.Earliest != nil {
		it.Earliest = min(it.Earliest, d.Minute(d.Clock(dish.Earliest)))
	}
	it.Lots = LotsOf(dish)
	if !d.Grill.Lays() {
		it.Cut.Places = withinZones(c.Places, d.Grill.OtherZones)
		it.likes = c.Places
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
	it.TargetC, it.Doneness, it.final = d.target(c, dish.Target)
	if faults := it.finalFault(); len(faults) > 0 {
		return it, faults
	}
	it.Verdict = safety.JudgeTarget(it.Category, it.Prep, it.TargetC, d.Frail)
	if it.Verdict.Kind == safety.Refused {
		return it, []schedule.Fault{{Path: path + ".target", Sentence: it.Verdict.Sentence}}
	}
	return it, nil
}

// laterFields refuses what is understood but not planned yet, so that nothing a
// cook wrote is passed over.
func laterFields(path string, dish schedule.Dish) []schedule.Fault {
	var faults []schedule.Fault
	if dish.Ready != "" { // a request with such dishes is split before
		faults = append(faults, schedule.Fault{Path: path + ".ready", Sentence: "a dish of this day alone cannot be ready the day before; leave ready out"})
	}
	return faults
}

// belowBoilingK is how far below the boiling point a typed target is held: no core comes
// nearer, though the model lets it.
const belowBoilingK = 1

// hottestCoreC is the hottest core that is aimed at here, degC.
func (d *Day) hottestCoreC() float64 { return heat.BoilingC(d.Outdoors.AltitudeM) - belowBoilingK }

// LoweredTargets are findings of dishes whose typed target lies too near the boiling point.
func (d *Day) LoweredTargets() []schedule.Finding {
	var out []schedule.Finding
	for i := range d.Items {
		it := &d.Items[i]
		if t := it.Dish.Target; t != nil && t.Core != nil && float64(*t.Core) > it.TargetC {
			out = append(out, Finding("target-lowered", it.Path("target"), it, fmt.Sprintf(
				"%s: water boils at %s here, and a core comes no nearer than a degree or two. The plan aims at %s, not at %s.",
				it.Dish.Name, d.Core(heat.BoilingC(d.Outdoors.AltitudeM)), d.Core(it.TargetC), d.Core(float64(*t.Core)))))
		}
	}
	return out
}

// target is the core temperature that ends the cook, its name if it has one,
// and whether it is the peak after carry-over.
func (d *Day) target(c cut.Cut, t *schedule.Target) (coreC float64, name string, final bool) {
	switch {
	case t != nil && t.Core != nil:
		return math.Min(float64(*t.Core), d.hottestCoreC()), "", false
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
		coreC = math.Min(coreC, heat.BoilingC(d.Outdoors.AltitudeM)-margin)
	}
	return coreC, name, false
}

// LotsOf groups pieces of the same weight, heaviest first.
func LotsOf(dish schedule.Dish) []Lot {
	if len(dish.Weights) == 0 {
		return []Lot{{MassKg: float64(dish.Weight), Count: dish.Count}}
	}
	weights := slices.Clone(dish.Weights)
	slices.Sort(weights)
	slices.Reverse(weights)
	var lots []Lot
	for _, w := range weights {
		if n := len(lots); n > 0 && lots[n-1].MassKg == float64(w) {
			lots[n-1].Count++
			continue
		}
		lots = append(lots, Lot{MassKg: float64(w), Count: 1})
	}
	return lots
}

// Body is a piece of the dish as the heat model takes it.
func (it *Item) Body(massKg float64) heat.Body {
	t, w, l := it.Cut.HeatDimensions(massKg, float64(it.Dish.Thickness))
	k := it.Cut.Composition
	b := heat.Body{
		ThicknessM: t, WidthM: w, LengthM: l, RadiusScale: it.Cut.Shape.RadiusScale,
		Water: k.Water, Protein: k.Protein, Fat: k.Fat, Ash: k.Ash,
		WetFactor: it.Cut.WetFactor, SupplyFactor: it.Cut.SupplyFactor, StartC: heat.RefrigeratorC,
	}
	if it.Dish.Start != nil && !it.Dish.Start.Frozen {
		b.StartC = float64(it.Dish.Start.Core)
	}
	return b
}

// Path is where a fault or finding of the dish points.
func (it *Item) Path(field string) string {
	p := fmt.Sprintf("dishes[%d]", it.Index)
	if field == "" {
		return p
	}
	return p + "." + field
}

// ByTheBend says whether a dish is done by time and by the bend.
func (it *Item) ByTheBend() bool {
	return it.Cut.TenderMinutes[1] > 0 && it.Dish.Target == nil && it.Dish.Finish == ""
}
