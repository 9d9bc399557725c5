package revise

import (
	"context"
	"math"
	"time"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/planner/internal/belief"
	"example.com/cookday/schedule/planner/internal/day"
)

// believe follows every piece that cooks beside the coals, judges its readings,
// and shares the grate's error between the pieces.
func (v *Revision) believe(ctx context.Context) error {
	var all []*belief.Belief
	for _, a := range v.batches {
		if err := ctx.Err(); err != nil { // a piece with many readings takes milliseconds
			return err
		}
		if a.where == cooking && a.followed() {
			if err := v.follow(ctx, a); err != nil {
				return err
			}
			all = append(all, a.believed)
		}
	}
	mean, sd := belief.ShareGrate(all, v.grateRatio())
	for _, a := range v.batches {
		switch {
		case a.believed != nil:
			a.live = v.liveWay(a)
		case a.where == cooking:
			a.live = v.clockWay(a)
		}
		if a.where == waiting {
			for i, w := range a.batch.Ways {
				a.batch.Ways[i] = wayTaught(w, mean, sd, v.day.Z)
			}
		}
	}
	return nil
}

// followed says whether the model follows the piece from its put-on: whatever
// cooks beside the coals.
func (a *liveBatch) followed() bool {
	w := a.way()
	return w.State != nil && !w.Direct && a.batch.It.Cut.Style != cut.Timed
}

// way is the way the batch was put on; of what the log added, its first.
func (a *liveBatch) way() day.Way {
	if a.first != nil {
		return a.first.Way
	}
	return a.batch.Ways[0]
}

// grateRatio is how much of the grate's error is left where a thermometer stands
// beside the meat.
func (v *Revision) grateRatio() float64 {
	for _, r := range v.grate.readings {
		if !r.gauge {
			return measuredShare
		}
	}
	return 1
}

// follow runs the piece through its day at all paces and weighs its readings.
func (v *Revision) follow(ctx context.Context, a *liveBatch) error {
	a.journey = v.journeyOf(a)
	a.readings = nil
	for _, e := range a.cores {
		a.readings = append(a.readings, belief.Reading{Minute: e.At.Sub(a.on.at).Minutes(), CoreC: e.C})
		a.journey.Asked = append(a.journey.Asked, e.At.Sub(a.on.at).Minutes())
	}
	b, err := belief.NewBelief(ctx, a.journey, a.way().Spread, a.batch.It.Cut.Style == cut.Tough)
	if err != nil {
		return err
	}
	a.believed = b
	b.Whole, b.Lost, b.Place = a.way().ModelDone, v.lostMinutes(a), v.placeSpread(a)
	belief.Sieve{
		Fast: &b.Paths[0], Slow: &b.Paths[len(b.Paths)-1], ErrorK: b.ErrorK, Paths: b.Paths,
		AirC:     func(m float64) float64 { return v.airFor(a, a.on.at.Add(instant.Minutes(m))) },
		OutsideC: v.day.Air.AirC,
		Cooking:  func(from, to float64) bool { return v.onFire(a, from, to) },
		TargetC:  a.way().PullC,
	}.Sift(a.readings)
	return b.Weigh(ctx, a.readings)
}

// lostMinutes is how long the piece has been without heat since its put-on.
func (v *Revision) lostMinutes(a *liveBatch) float64 {
	lost := 0.0
	for _, e := range v.episodes(a) {
		lost += e.ToMinute - e.FromMinute
	}
	return lost
}

// placeSpread is what the place of the probe does to the instant of the take-off,
// as a standard deviation of the logarithm of the whole cook.
func (v *Revision) placeSpread(a *liveBatch) float64 {
	w := a.way()
	if w.State == nil || w.ModelDone <= 0 {
		return 0
	}
	const aheadS = 60.0
	in := heat.Grate(w.AirC, v.day.Outdoors)
	if w.With != "" {
		in = day.Covered(in, w.With)
	}
	s := *w.State
	s.Change(in)
	before := s.CoreC()
	s.Cook(heat.Recipe{Stages: []heat.Stage{{In: in, AtMostS: aheadS}}}, nil)
	riseK := s.CoreC() - before
	if riseK <= 0 {
		return belief.MostPlaceSpread
	}
	return math.Min(belief.PlaceErrorK/(riseK/aheadS*60)/w.ModelDone, belief.MostPlaceSpread)
}

// onFire says whether the piece was on a live fire from one minute to another.
func (v *Revision) onFire(a *liveBatch, from, to float64) bool {
	start, end := a.on.at.Add(instant.Minutes(from)), a.on.at.Add(instant.Minutes(to))
	for _, s := range a.stands {
		if s.from.Before(end) && start.Before(s.to.Add(time.Hour)) {
			return false
		}
	}
	for _, o := range v.grate.outages {
		if o.from.Before(end) && start.Before(o.to.Add(time.Hour)) {
			return false
		}
	}
	return true
}

// airFor is the air beside the piece at an instant of the past.
func (v *Revision) airFor(a *liveBatch, at time.Time) float64 {
	level := a.way().AirC
	return v.grate.airAt(at, func(time.Time) float64 { return level })
}
