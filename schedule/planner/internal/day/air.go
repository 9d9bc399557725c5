package day

import (
	"fmt"
	"math"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/planner/internal/spread"
	"example.com/cookday/schedule/unit"
)

// doubtfulC is the typed level below which a fire that brings meat to doubtfulTargetC is
// more likely misread than real: cooks' logs at 200-208 F end hours before the model lets
// them.
var (
	doubtfulC       = unit.FToC(215)
	doubtfulTargetC = unit.FToC(195)
)

// doubtful says whether a level is hardly what the grate has.
func doubtful(levelC, targetC float64) bool { return levelC < doubtfulC && targetC >= doubtfulTargetC }

// arrivesIn says whether air of that temperature brings the core to its aim.
func (k *kitchen) arrivesIn(airC float64, with string) bool {
	return k.aimC() <= k.stopsAt(airC, with)
}

// leastAir is the least air between two that brings the core to its aim, degC; 0 where
// none does.
func (k *kitchen) leastAir(lowC, highC float64, with string) float64 {
	switch {
	case k.arrivesIn(lowC, with):
		return lowC
	case !k.arrivesIn(highC, with):
		return 0
	}
	const closeK = 0.05
	for highC-lowC > closeK {
		if mid := (lowC + highC) / 2; k.arrivesIn(mid, with) {
			highC = mid
		} else {
			lowC = mid
		}
	}
	return highC
}

// aimC is the core temperature that a cook creeps up to.
func (k *kitchen) aimC() float64 {
	if k.tenderS > 0 {
		return k.it.Cut.TenderAboveC
	}
	return k.base.PullC
}

// AirFindings say it where a fire hardly brings a piece to its target.
func (d *Day) AirFindings(path string, it *Item, w Way) []schedule.Finding {
	switch {
	case w.Direct:
		return nil
	case doubtful(w.LevelC, it.TargetC):
		return []schedule.Finding{Finding("grate-doubtful", path, it, fmt.Sprintf(
			"A grate at %s hardly brings meat to %s. Where it seems to, the grate is hotter than its gauge says: the times are for %s. Measure beside the meat.",
			d.Grate(w.LevelC), d.Core(it.TargetC), d.Grate(w.AirC)))}
	case w.Creeps:
		wrap := ""
		if w.With == "" && it.Cut.Wrap.FromC > 0 {
			wrap = "wrap it, or "
		}
		return []schedule.Finding{Finding("grate-creeps", path, it, fmt.Sprintf(
			"At %s the core only creeps up to %s, and on a grate a little cooler it takes far longer. Surer: %skeep %s or more.",
			d.Grate(w.LevelC), d.Core(it.TargetC), wrap, d.Grate(w.LevelC+creepsHelpK)))}
	}
	return nil
}

// creepsHelpK is how much hotter a grate is asked for where a core creeps: 15 F, what a
// gauge errs by.
const creepsHelpK = 15 / 1.8

// soughtC is how far a grate is looked for that brings a dish to its target, degC.
var soughtC = unit.FToC(400)

// NeverArrives is the finding of a dish that no fire on offer brings to its target.
func (d *Day) NeverArrives(it *Item) schedule.Finding {
	f := Finding(schedule.CodeNeverArrives, it.Path("level"), it, fmt.Sprintf("%s will not get to %s on any fire that it may cook on: the air is too cool for that, and the meat stops short of it. %s",
		it.Dish.Name, d.Core(it.TargetC), d.hotterHelp(it)))
	if it.Cut.Style == cut.Timed {
		f.Text = fmt.Sprintf("%s: cooked by the clock at a usual heat, and no fire on offer here has such a heat. Leave the level out, or use a grill that has it.", it.Dish.Name)
		return f
	}
	if it.Dish.Level == nil || it.Dish.Finish != "" {
		return f
	}
	levelC, with := float64(*it.Dish.Level), ""
	if wraps, bare := it.Wraps(); !bare && len(wraps) > 0 {
		with = wraps[0].With
	}
	k := kitchen{d: d, it: it, body: it.Body(it.Lots[0].MassKg)}
	k.base = Way{LevelC: levelC, PullC: it.TargetC}
	airC := actualC(levelC, it.Cut.Style)
	takes := "No grate brings it there."
	if least := k.leastAir(airC, math.Max(airC, soughtC), with); least > 0 {
		takes = fmt.Sprintf("It takes about %s%s.", d.Grate(math.Max(typedC(least, it.Cut.Style), levelC)+spread.GrateErrorK/2), d.orLower(it))
	}
	f.Text = fmt.Sprintf("%s will not get to %s with the grate at %s: the core stops short of it, near %s. %s",
		it.Dish.Name, d.Core(it.TargetC), d.Grate(levelC), d.Core(k.stopsAt(airC, with)), takes)
	return f
}

// hotterHelp is what would bring a dish to its target: of a grill that is told by its zones,
// of which none is said to lie over the fire, to say which does.
func (d *Day) hotterHelp(it *Item) string {
	g := d.Req.Grill
	if it.Cut.Style == cut.Small && len(g.Zones) > 0 && !slices.ContainsFunc(g.Zones, func(z schedule.GrillZone) bool { return z.Direct }) {
		return "Small pieces cook straight over the burners or coals: write direct: true at the zone that lies over them, and its max as hot as it goes there."
	}
	return "Use a hotter grate" + d.orLower(it) + "."
}

// orLower offers a lower target, where one is left above the published minimum.
func (d *Day) orLower(it *Item) string {
	least := it.Verdict.Minimum.CoreC
	if it.Cut.Style == cut.Tough || it.TargetC <= least+1 {
		return ""
	}
	return fmt.Sprintf(", or a lower target: never below %s", d.Core(least))
}

// stopsAt is the core temperature that air of that temperature brings the core close to.
func (k *kitchen) stopsAt(airC float64, with string) float64 {
	in := heat.Grate(airC, k.d.Outdoors)
	if with != "" {
		in = Covered(in, with)
	}
	var s heat.Sim
	s.StartWith(k.body, in, heat.Coarse)
	return s.AsymptoteC() - heat.ArrivalMarginK
}
