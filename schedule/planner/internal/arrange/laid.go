package arrange

import (
	"context"
	"math"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/day"
)

// Asked is how a dish's coals are asked to lie; empty where nobody asks.
func (d *Arranger) Asked(it *day.Item) fire.Layout {
	if it.Dish.Layout != "" {
		return fire.Layout(it.Dish.Layout)
	}
	return fire.Layout(d.Req.Layout)
}

// heeded is the layout that is asked for, where some place of the dish can be had on it.
func (d *Arranger) heeded(it *day.Item) fire.Layout {
	asked := d.Asked(it)
	if asked == "" || d.Unheard || !d.Grill.Lays() || !d.Gives(it, asked) {
		return ""
	}
	return asked
}

// Gives says whether a layout gives the heat of some place of a dish.
func (d *Arranger) Gives(it *day.Item, l fire.Layout) bool {
	return slices.ContainsFunc(it.Spots(), func(s day.Spot) bool { return serves(l, s) })
}

func serves(l fire.Layout, s day.Spot) bool {
	return slices.ContainsFunc(fire.Serving(s.Direct, s.Band, s.LevelC, true), func(f fire.Fire) bool { return f.Layout == l })
}

// placesFor are the places in which a way of a dish can cook, on the layout that is asked for.
func (d *Arranger) placesFor(h Hearth, it *day.Item, w day.Way) []Place {
	places, l := h.PlacesOf(w), d.heeded(it)
	if l == "" {
		return places
	}
	return slices.DeleteFunc(places, func(p Place) bool { return h.Fires[p.Fire].Layout != l })
}

// asksMore says whether some dish asks for a layout that it could have.
func (d *Arranger) asksMore() bool {
	for i := range d.Items {
		if d.heeded(&d.Items[i]) != "" {
			return true
		}
	}
	return false
}

// ringWorth is what a ring may cost more than a banked fire through a night (assumption): it is lit a quarter of an hour
// earlier, and holds less. ringNight is the least stretch that nobody tends, minutes, for which one is worth laying
// (assumption): any fire lasts a nap.
const (
	ringWorth = changeCost
	ringNight = 180
)

// onRing is the same day on a ring, where its first fire is banked through hours that nobody tends and a kettle has room
// for it: few of its coals burn at a time, so it stays low (common practice, no source). The day as it was where it cannot
// be had so, or only at a price, or does not last until somebody feeds it.
func (d *Arranger) onRing(ctx context.Context, a Arrangement, err error) (Arrangement, error) {
	if err != nil || !a.Solved() || d.FirstPlan || d.Req.Grill.Kind != schedule.GrillKettle || !d.bankedThrough(a) {
		return a, err
	}
	h := a.Hearth.withoutTwins()
	if len(h.Fires) == len(a.Hearth.Fires) {
		return a, nil
	}
	batches, err := d.Batches(ctx, h, Roomiest)
	if err != nil {
		return a, err
	}
	b, err := d.solve(ctx, h, batches, than{cost: a.Solution.Cost + ringWorth, fires: len(a.Solution.Phases) + 1})
	if err != nil || !b.Solved() || !d.ringHolds(b) {
		return a, err
	}
	if h.Levels > 1 {
		if fits, err := d.stacks(ctx, b); err != nil || !fits {
			return a, err
		}
	}
	return b, nil
}

// ringHolds says whether the first fire is a ring that gives its heat, and lasts while nobody tends it.
func (d *Arranger) ringHolds(a Arrangement) bool {
	f := a.Hearth.Fires[a.Solution.Phases[0].Fire]
	if f.Layout != fire.Ring {
		return false
	}
	b := d.firstBurn(a)
	return len(b.Shortfalls) == 0 && !slices.Contains(b.Notes, fire.RingRunsCool)
}

// runsShort says whether the first fire runs down while nobody tends it.
func (d *Arranger) runsShort(a Arrangement) bool {
	return len(a.Solution.Phases) > 0 && len(d.firstBurn(a).Shortfalls) > 0
}

func (d *Arranger) firstBurn(a Arrangement) fire.Burn {
	from, to := d.At(float64(a.Solution.Phases[0].Begin)), d.At(float64(a.firstEnds()))
	need := fire.Need{First: true, Slices: d.WeatherBetween(from, to), Untended: d.Unfed(from, to)}
	return d.Grill.Plan(a.Hearth.Fires[a.Solution.Phases[0].Fire], need)
}

// firstEnds is when the first fire is no longer needed: at the next, or with the last food.
func (a Arrangement) firstEnds() int {
	ph := a.Solution.Phases[0]
	if len(a.Solution.Phases) > 1 {
		return ph.End
	}
	last := ph.Begin
	for _, tasks := range a.Solution.Chains {
		for _, at := range tasks {
			if at.FirstPhase >= 0 {
				last = min(last, at.End)
			}
		}
	}
	return last
}

// bankedThrough says whether the first fire is banked, by nobody's wish, and burns through a long stretch that nobody tends.
func (d *Arranger) bankedThrough(a Arrangement) bool {
	if len(a.Solution.Phases) == 0 {
		return false
	}
	ph := a.Solution.Phases[0]
	if a.Hearth.Fires[ph.Fire].Layout != fire.Banked || slices.ContainsFunc(d.Items, func(it day.Item) bool { return d.heeded(&it) == fire.Banked }) {
		return false
	}
	last := a.firstEnds()
	return slices.ContainsFunc(d.Quiet, func(q day.Span) bool { return q.To-q.From >= ringNight && ph.Begin >= q.To && last <= q.From })
}

// withoutTwins is the hearth without the banked fires beside which there is a ring of the same level.
func (h Hearth) withoutTwins() Hearth {
	out := h
	out.Fires, out.Zones = nil, nil
	for i, f := range h.Fires {
		twin := f.Layout == fire.Banked && slices.ContainsFunc(h.Fires, func(o fire.Fire) bool {
			return o.Layout == fire.Ring && math.Abs(o.LevelC-f.LevelC) < sameLevelK
		})
		if !twin {
			out.Fires, out.Zones = append(out.Fires, f), append(out.Zones, h.Zones[i])
		}
	}
	return out
}

// TakesOn says whether the place of a layout has room for all pieces of a dish together.
func (d *Arranger) TakesOn(it *day.Item, l fire.Layout) bool {
	return slices.ContainsFunc(d.firesOn(it, l), func(f fire.Fire) bool {
		h := Hearth{Fires: []fire.Fire{f}, Zones: [][]fire.Zone{d.Grill.Zones(f)}}
		for z := range h.Zones[0] {
			if !slices.ContainsFunc(it.Lots, func(lot day.Lot) bool { return h.fits(Place{0, z}, loadOf(it, lot.MassKg, 1)) < lot.Count }) {
				return true
			}
		}
		return false
	})
}

// LastsOn says whether a layout lasts through the longest quiet hours, and the time before them in which the vents are left
// alone, at every level of a dish.
func (d *Arranger) LastsOn(it *day.Item, l fire.Layout) bool {
	q := float64(d.LongestQuiet())
	return q == 0 || !slices.ContainsFunc(d.firesOn(it, l), func(f fire.Fire) bool { return !d.LastsNight(f, q+safety.VentsStillMinutes) })
}

// firesOn are the fires of a layout that give a place of a dish.
func (d *Arranger) firesOn(it *day.Item, l fire.Layout) []fire.Fire {
	var out []fire.Fire
	for _, s := range it.Spots() {
		if serves(l, s) {
			out = append(out, fire.Fire{Layout: l, LevelC: s.LevelC})
		}
	}
	return out
}
