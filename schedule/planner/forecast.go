package planner

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/spread"
)

// Forecast answers for one piece. Faults of the inquiry are an [*schedule.InputError];
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
	var found day.Findings
	found.Add(d.CoolZones()...)
	found.Add(d.LoweredTargets()...)
	if it.Thaws || it.FromFrozen {
		if err := it.PutOnFrozen(s.LevelC); err != nil {
			return schedule.Outlook{}, err
		}
		found.Add(day.FrozenFinding(it))
	}
	o := schedule.Outlook{Cut: it.Cut.Name, MassKg: it.Lots[0].MassKg, GrateC: s.LevelC, TargetC: it.TargetC, Milestones: []schedule.OutlookMilestone{}}
	ways := outlookWays(d.Day, it, s)
	if len(ways) == 0 {
		o.Reason = d.NeverArrives(it).Text
	} else {
		o.Reaches = true
		found.Add(d.AirFindings("grate", it, ways[0])...)
		found.Add(thicknessFinding(d, q, s, ways[0].Total().Expected)...)
		p := unscheduled(it, ways)
		o.Way, o.Milestones, o.TargetC = d.WayText(p), milestonesOf(p, q.Probabilities), p.Way.PullC
	}
	if q.Own != nil {
		found.Add(day.Finding("own-grill", "own", nil, assemble.OwnTimes(q.Own, s.Direct)))
	}
	own := ownWords(d.Req.Units, d.Req.Dishes)
	o.Findings = ownFindings(strict.NonNil([]schedule.Finding(found)), own)
	o.Cautions = ownCautions(d.Cautions(&schedule.Plan{Phases: []schedule.Phase{{LevelC: s.LevelC, Band: s.Band}}}, nil), own)
	return o, nil
}

// unscheduled is the first way of a piece, put on at no instant of a clock.
func unscheduled(it *day.Item, ways []day.Way) *arrange.Placed {
	lot := it.Lots[0]
	p := &arrange.Placed{Batch: &arrange.Batch{It: it, Number: 1, MassKg: lot.MassKg, Count: lot.Count, Ways: ways}, Way: ways[0], Wrap: math.NaN(), Hold: -1}
	switch {
	case p.Way.Sear:
		p.Wrap = 0 // seared as soon as it is ready for it
	case p.Way.Stages() == 2:
		p.Wrap = -p.Way.First.Planned
	}
	return p
}

// inquiryDay is a day of one dish, with faults in the words of the inquiry.
func inquiryDay(q schedule.Inquiry) (*assemble.Assembler, error) {
	if faults := q.Validate(); len(faults) > 0 {
		return nil, &schedule.InputError{Faults: faults}
	}
	r := q.Request()
	r.Quiet = []schedule.Quiet{} // a piece by itself has no clock to sleep by
	loc, err := r.Location()
	if err != nil {
		return nil, err
	}
	d, err := day.Resolve(day.Sound{Request: r, Loc: loc}, day.Options{})
	if bad, ok := errors.AsType[*schedule.InputError](err); ok {
		return nil, &schedule.InputError{Faults: q.InItsWords(bad.Faults)}
	} else if err != nil {
		return nil, err
	}
	return assemble.New(&arrange.Arranger{Day: d}), nil
}

func inquiryFault(path, sentence string) error {
	return &schedule.InputError{Faults: []schedule.Fault{{Path: path, Sentence: sentence}}}
}

// inquirySpot is where the piece cooks: as asked, else where the cut usually does.
func inquirySpot(q schedule.Inquiry, it *day.Item) (day.Spot, error) {
	spots := it.Spots()
	if len(spots) == 0 {
		return day.Spot{}, inquiryFault("layout", fmt.Sprintf("%s has no place of that kind", it.Cut.Name))
	}
	if q.Layout == "" {
		return spots[0], nil
	}
	desc, ok := fire.Describe(fire.Layout(q.Layout))
	if !ok {
		return day.Spot{}, inquiryFault("layout", fmt.Sprintf("%q is no layout; use banked, ring, two-zone, spread or heap", q.Layout))
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
	return day.Spot{}, inquiryFault("layout", fmt.Sprintf("%s cooks %s the coals, and %s is for cooking %s them", it.Cut.Title, other, q.Layout, side))
}

// outlookWays is the one way of the inquiry: wrapped as asked or as is the habit.
func outlookWays(d *day.Day, it *day.Item, s day.Spot) []day.Way {
	ways := d.WaysAt(it, it.Lots[0], s)
	if len(ways) > 1 { // bare comes first where the cut has a habit of wrapping
		if wraps, _ := it.Wraps(); len(wraps) > 0 {
			return ways[1:2]
		}
	}
	return ways
}

// milestonesOf lists the milestones, on to rested, by their expected time: a wrap may
// come before, within or after the stall.
func milestonesOf(p *arrange.Placed, probabilities []float64) []schedule.OutlookMilestone {
	var out []schedule.OutlookMilestone
	for _, m := range assemble.Moments(p) {
		if m.Kind == schedule.MilestonePeak {
			continue
		}
		o := schedule.OutlookMilestone{
			Kind: m.Kind, CoreC: m.CoreC, EarlyMinutes: m.Minutes(-spread.ZTenth), ExpectedMinutes: m.Minutes(0), LateMinutes: m.Minutes(spread.ZTenth),
		}
		for _, probability := range probabilities {
			o.Quantiles = append(o.Quantiles, schedule.Quantile{Probability: probability, Minutes: m.Minutes(spread.NormalQuantile(probability))})
		}
		out = append(out, o)
	}
	slices.SortStableFunc(out, func(a, b schedule.OutlookMilestone) int { return cmp.Compare(a.ExpectedMinutes, b.ExpectedMinutes) })
	return out
}
