package assemble

import (
	"fmt"
	"slices"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/day"
)

// noteLayouts says which layout was asked for, whether it is had and if not why, and why a ring was chosen that nobody
// asked for.
func (d *Assembler) noteLayouts(a arrange.Arrangement, all []*arrange.Placed) {
	layouts := func(it *day.Item) []fire.Layout {
		var out []fire.Layout
		for _, b := range all {
			if b.It.Index != it.Index {
				continue
			}
			for k := b.Phases[0].First; k >= 0 && k <= b.Phases[0].Last && k < len(a.Solution.Phases); k++ {
				out = append(out, a.Hearth.Fires[a.Solution.Phases[k].Fire].Layout)
			}
		}
		return out
	}
	if asked := fire.Layout(d.Req.Layout); asked != "" {
		had := slices.ContainsFunc(d.Items, func(it day.Item) bool {
			return d.Asked(&it) == asked && slices.Contains(layouts(&it), asked)
		})
		d.noteLayout("layout", asked, nil, had)
	}
	for i := range d.Items {
		it := &d.Items[i]
		if asked := fire.Layout(it.Dish.Layout); asked != "" {
			d.noteLayout(fmt.Sprintf("dishes[%d].layout", it.Index), asked, it, slices.Contains(layouts(it), asked))
		}
	}
	for _, ph := range a.Solution.Phases[:min(len(a.Solution.Phases), 1)] {
		asked := slices.ContainsFunc(d.Items, func(it day.Item) bool { return d.Asked(&it) == fire.Ring })
		if a.Hearth.Fires[ph.Fire].Layout == fire.Ring && !asked {
			d.find("layout-ring", "", nil, "The coals lie in a ring: few of them burn at a time, so the fire stays low and lasts while nobody tends it. layout: banked would heap them at one side.")
		}
	}
}

func (d *Assembler) noteLayout(path string, asked fire.Layout, it *day.Item, had bool) {
	if had {
		d.find("layout-asked", path, it, "The coals lie "+liesAs[asked]+", as you asked.")
		return
	}
	d.find("layout-not-had", path, it, fmt.Sprintf("You asked for coals that lie %s. %s The plan lays them another way.", liesAs[asked], d.whyNot(asked, it)))
}

// liesAs is how coals lie, behind "the coals lie".
var liesAs = map[fire.Layout]string{
	fire.Banked: "banked at one side", fire.Ring: "in a ring", fire.TwoZone: "along one side, all lit",
	fire.Spread: "spread out, all lit", fire.Heap: "in a heap in the middle",
}

// whyNot is why a layout is not had, for a dish or for any of them.
func (d *Assembler) whyNot(asked fire.Layout, only *day.Item) string {
	switch {
	case !d.Grill.Charcoal():
		return "This grill has none."
	case !d.Grill.Lays():
		return "In this cooker they lie in one way only, in the ring at its bottom."
	}
	var served, crowded []string
	lasts := true
	for i := range d.Items {
		it := &d.Items[i]
		if only != nil && it.Index != only.Index || d.Asked(it) != asked || !d.Gives(it, asked) {
			continue
		}
		served = append(served, it.Dish.Name)
		if !d.TakesOn(it, asked) {
			crowded = append(crowded, it.Dish.Name)
		}
		lasts = lasts && d.LastsOn(it, asked)
	}
	desc, _ := fire.Describe(asked)
	switch {
	case len(served) == 0:
		return fmt.Sprintf("That fire is for %s to %s: %s. What is on the menu cooks otherwise.", d.Grate(desc.MinC), d.Grate(desc.MaxC), desc.Use)
	case len(crowded) == len(served):
		return fmt.Sprintf("It leaves too little room for %s.", say.Listed(crowded, "and"))
	case !lasts:
		return "At the heat that this day needs it does not last the hours that nobody tends it."
	}
	return "With it the day cannot be had: it comes up too late, or has to be fed when nobody is there."
}
