package assemble

import (
	"fmt"
	"math"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/day"
)

// noteHeats says it where a tough cut has a hotter grate than its usual one, and why: who
// asked for no heat expects the usual one.
func (d *Assembler) noteHeats(all []*arrange.Placed) {
	said := map[*day.Item]bool{}
	for _, p := range all {
		if said[p.It] || p.It.Cut.Style != cut.Tough || p.It.Dish.Level != nil || p.Way.Direct || p.Way.Rank == 0 {
			continue
		}
		usual := p.It.Spots()[0].LevelC
		if p.Way.LevelC < usual+hotterK {
			continue
		}
		said[p.It] = true
		d.find(schedule.CodeHotter, p.It.Path("level"), p.It, fmt.Sprintf("%s: %s instead of the usual %s, because %s. For the usual heat write level: %s, and plan again; that day may not work.",
			p.It.Dish.Name, d.Grate(p.Way.LevelC), d.Grate(usual), d.whyHotter(p, all), d.Grate(usual)))
	}
}

// hotterK is from how much on a grate is told to be hotter, K (assumption: a small part of
// what cooks let it wander).
const hotterK = 5

func (d *Assembler) whyHotter(p *arrange.Placed, all []*arrange.Placed) string {
	var shares []string
	for _, o := range all {
		if o.It != p.It && !slices.Contains(shares, o.It.Dish.Name) && o.Phases[0].First <= p.Phases[0].Last && o.Phases[0].Last >= p.Phases[0].First && math.Abs(o.Way.LevelC-p.Way.LevelC) < hotterK {
			shares = append(shares, o.It.Dish.Name)
		}
	}
	if len(shares) > 0 {
		return "it shares one fire with " + say.Listed(shares, "and")
	}
	if was := p.UsualSure(); p.Way.Sure >= was+arrange.Surer {
		return fmt.Sprintf("a shorter cook is surer to end in time and still be good; at the usual heat the odds are %.0f%%", 100*was)
	}
	if d.asleepWithin(p.On, p.On+p.LongerAtUsual()) {
		return "the hours that you are up are too short for that"
	}
	if longer := p.LongerAtUsual(); longer >= 15 {
		return fmt.Sprintf("it is done about %s sooner, and the day comes out better by that", d.About(longer))
	}
	return "the day comes out better by that"
}

// asleepWithin says whether quiet hours, or what comes before anything may begin, lie between
// two minutes.
func (d *Assembler) asleepWithin(later, sooner float64) bool {
	if e := d.Req.Earliest; e != nil && d.At(sooner).Before(d.Clock(e)) {
		return true
	}
	return slices.ContainsFunc(d.Quiet, func(q day.Span) bool { return sooner > float64(q.From) && later < float64(q.To) })
}
