package schedule

import (
	"slices"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/meant"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/unit"
)

func (v *validator) target(path string, dish Dish, c cut.Cut) {
	path += ".target"
	t := dish.Target
	if c.Style == cut.Timed {
		if t != nil {
			v.faults.Add(path, "%s goes by the clock and has no core temperature; leave the target out", c.InText())
		}
		return
	}
	if t == nil {
		v.judge(path, dish, c)
		return
	}
	v.groundPoultry(path, dish, c)
	names := make([]string, len(c.Doneness))
	for i, d := range c.Doneness {
		names[i] = d.Name
	}
	switch {
	case t.given() != 1:
		v.faults.Add(path, "must be one of: a temperature, {final: temperature}, or a doneness (%s)", say.Listed(names, "or"))
	case t.Core != nil:
		if ranged(v, path, "core temperature", *t.Core, leastCore, mostCore, v.units.Core) {
			v.judge(path, dish, c)
		}
	case t.Final != nil:
		if ranged(v, path+".final", "core temperature", *t.Final, leastCore, mostCore, v.units.Core) {
			v.judge(path+".final", dish, c)
		}
	case slices.Contains(names, t.Doneness):
		v.judge(path, dish, c)
	case c.Food == "ground" || c.Food == "sausage":
		v.faults.Add(path, "%s is no doneness of %s: ground meat must reach %s all through; write done, or leave the target out", say.Quoted(t.Doneness), c.InText(), v.units.Core(unit.Temperature(c.Doneness[0].CoreC)))
	case t.Doneness == "pink" || t.Doneness == "blue" || t.Doneness == "bloody":
		v.faults.Add(path, "%s may be one of several; it must be %s, or a temperature", say.Quoted(t.Doneness), say.Listed(names, "or"))
	default:
		v.faults.Add(path, "%s is no doneness of %s; it must be %s, or a temperature", say.Quoted(t.Doneness), c.InText(), say.Listed(names, "or"))
	}
}

// groundPoultry refuses a target of ground poultry that is for red meat.
func (v *validator) groundPoultry(path string, dish Dish, c cut.Cut) {
	if at := coreTarget(dish.Target, c); c.Ground && poultryName.MatchString(dish.Name) && at > 0 && at < poultryCoreC {
		v.faults.Add(path, "ground poultry must reach %s all through; leave the target out", v.units.Core(unit.Temperature(poultryCoreC+0.01)))
	}
}

// coreTarget is what the core of a dish with a good target is cooked to, degC; 0 for none.
func coreTarget(t *Target, c cut.Cut) float64 {
	var d cut.Doneness
	switch {
	case t == nil:
		d, _ = c.DefaultDoneness()
	case t.Core != nil:
		return float64(*t.Core)
	case t.Final != nil:
		return float64(*t.Final)
	default:
		d, _ = c.FindDoneness(t.Doneness)
	}
	return d.CoreC
}

func (v *validator) wrap(path string, dish Dish, c cut.Cut) {
	w := dish.Wrap
	if w == nil || !v.word(path, w.With, wraps...) {
		return
	}
	switch {
	case w.With == WrapNone && (w.From != nil || w.After != nil):
		v.faults.Add(path, "none has neither from nor after; leave them out")
	case w.With != WrapNone && c.Quick():
		v.faults.Add(path, "%s is not wrapped while it cooks; leave wrap out or write none", c.InText())
	case w.From != nil && w.After != nil:
		v.faults.Add(path, "from and after are both given; keep the core temperature or the time")
	case w.From != nil:
		if !ranged(v, path+".from", "core temperature to wrap at", *w.From, leastCore, mostCore, v.units.Core) {
			return
		}
		if target := coreTarget(dish.Target, c); target > 0 && float64(*w.From) >= target {
			v.faults.AddValue(path+".from", v.units.Core(*w.From), "is not below the target of %s: the wrap would come when it is done",
				v.units.Core(unit.Temperature(target)))
		}
	case w.After != nil:
		v.span(path+".after", *w.After, longestStage)
	}
}

// finish: tough cuts are brown long before they are tender, and timed ones go by the clock.
func (v *validator) finish(path, finish string, c cut.Cut) {
	if done, ok := c.FindDoneness(meant.Doneness(finish)); ok {
		known := v.faults.Len()
		v.faults.Add(path, "%s is how done it is; write target: %s. finish is for a sear at the end", say.Quoted(finish), done.Name)
		v.faults.Mended(known, "finish: "+finish, "target: "+done.Name)
		return
	}
	if finish == "" || !v.word(path, finish, finishes...) || finish == FinishNone {
		return
	}
	if c.Style == cut.Tough || c.Style == cut.Timed {
		v.faults.Add(path, "%s is not seared at the end; leave finish out", c.InText())
	}
}
