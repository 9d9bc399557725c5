package planner

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	instantpkg "example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/strict"
	arrangepkg "example.com/cookday/schedule/planner/internal/arrange"
	assemblepkg "example.com/cookday/schedule/planner/internal/assemble"
	daypkg "example.com/cookday/schedule/planner/internal/day"
	spreadpkg "example.com/cookday/schedule/planner/internal/spread"
)

// Forecast answers for one piece. Faults of the inquiry are an *[InputError];
// a piece that cannot get to its target at that temperature is an answer with
// Reaches false and the reason.
func Forecast(ctx context.Context, q schedule.Inquiry) (schedule.Outlook, error) {
	if err := ctx.Err(); err != nil {
		return schedule.Outlook{}, err
	}
	d, err := inquiryDay(q)
	if err != nil {
		return schedule.Outlook{}, err
	}
	it := &d.Items[0]
	s, err := inquirySpot(q, it)
	if err != nil {
		return schedule.Outlook{}, err
	}
	if err := d.FrozenOutlook(it, s.LevelC); err != nil {
		return schedule.Outlook{}, err
	}
	o := schedule.Outlook{Cut: it.Cut.Name, MassKg: it.Lots[0].MassKg, GrateC: s.LevelC, TargetC: it.TargetC, Milestones: []schedule.OutlookMilestone{}}
	ways := dayOutlookWays(d, it, s)
	if len(ways) == 0 {
		o.Reason = d.NeverArrives(it).Text
	} else {
		o.Reaches = true
		d.NoteAir("grate", it, ways[0])
		p := &arrangepkg.Placed{Batch: &arrangepkg.Batch{It: it, Number: 1, MassKg: o.MassKg, Count: it.Lots[0].Count, Ways: ways}, Way: ways[0], Wrap: math.NaN(), Hold: -1}
		switch {
		case p.Way.Sear:
			p.Wrap = 0 // no schedule: seared as soon as it is ready for it
		case p.Way.Stages() == 2:
			p.Wrap = -p.Way.First.Planned
		}
		o.Way, o.Milestones, o.TargetC = assemblepkg.DayWayText(d, p), dayOutlook(d, p, q.Probabilities), p.Way.PullC
	}
	o.Findings = instantpkg.NonNil(d.Findings)
	o.Cautions = assemblepkg.DayCautions(d, &schedule.Plan{Phases: []schedule.Phase{{LevelC: s.LevelC, Band: s.Band}}}, nil)
	return o, nil
}

func inquiryDay(q schedule.Inquiry) (*daypkg.Day, error) {
	r := q.Request()
	if faults := r.Validate(); len(faults) > 0 {
		return nil, &strict.InputError{Faults: q.InTheirWords(faults)}
	}
	d, faults := daypkg.Resolve(r)
	if len(faults) > 0 {
		return nil, &strict.InputError{Faults: q.InTheirWords(faults)}
	}
	return d, nil
}

// spot is where the piece cooks: as asked, else where the cut usually does.
func inquirySpot(q schedule.Inquiry, it *daypkg.Item) (daypkg.Spot, error) {
	spots := it.Spots()
	if len(spots) == 0 {
		return daypkg.Spot{}, schedule.InquiryFault("layout", fmt.Sprintf("%s has no place of that kind", it.Cut.Name))
	}
	if q.Layout == "" {
		return spots[0], nil
	}
	desc, ok := fire.Describe(fire.Layout(q.Layout))
	if !ok {
		return daypkg.Spot{}, schedule.InquiryFault("layout", fmt.Sprintf("%q is no layout; use banked, ring, two-zone, spread or heap", q.Layout))
	}
	direct := desc.Zones[0].Direct
	for _, s := range spots {
		if s.Direct == direct || q.Layout == string(fire.TwoZone) {
			return s, nil
		}
	}
	side, other := "beside", "over"
	if direct {
		side, other = other, side
	}
	return daypkg.Spot{}, schedule.InquiryFault("layout", fmt.Sprintf("%s cooks %s the coals, and %s is for cooking %s them", it.Cut.Title, other, q.Layout, side))
}

// outlookWays is the one way of the inquiry: wrapped as asked or as is the habit.
func dayOutlookWays(d *daypkg.Day, it *daypkg.Item, s daypkg.Spot) []daypkg.Way {
	ways := d.WaysAt(it, it.Lots[0], s)
	if len(ways) > 1 { // bare comes first where the cut has a habit of wrapping
		if wraps, _ := it.Wraps(); len(wraps) > 0 {
			return ways[1:2]
		}
	}
	return ways
}

// outlook lists the milestones, on to rested, by their expected time: a wrap may
// come before, within or after the stall.
func dayOutlook(d *daypkg.Day, p *arrangepkg.Placed, probabilities []float64) []schedule.OutlookMilestone {
	var out []schedule.OutlookMilestone
	for _, m := range assemblepkg.PlacedMoments(p) {
		if m.Kind == schedule.MilestonePeak {
			continue
		}
		o := schedule.OutlookMilestone{
			Kind: m.Kind, CoreC: m.CoreC, EarlyMinutes: m.Minutes(-spreadpkg.ZTenth), ExpectedMinutes: m.Minutes(0), LateMinutes: m.Minutes(spreadpkg.ZTenth),
		}
		for _, probability := range probabilities {
			o.Quantiles = append(o.Quantiles, schedule.Quantile{Probability: probability, Minutes: m.Minutes(spreadpkg.NormalQuantile(probability))})
		}
		out = append(out, o)
	}
	slices.SortStableFunc(out, func(a, b schedule.OutlookMilestone) int { return cmp.Compare(a.ExpectedMinutes, b.ExpectedMinutes) })
	return out
}
