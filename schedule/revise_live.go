package schedule

import (
	"context"
	"math"
	"time"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
)

// believe follows every piece that cooks beside the coals, judges its readings,
// and shares the grate's error between the pieces.
func (v *revision) believe(ctx context.Context) error {
	var all []*belief
	for _, a := range v.afoot {
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
	mean, sd := shareGrate(all, v.grateRatio())
	for _, a := range v.afoot {
		switch {
		case a.believed != nil:
			a.live = v.liveWay(a)
		case a.where == cooking:
			a.live = v.clockWay(a)
		}
		if a.where == waiting {
			for i, w := range a.batch.ways {
				a.batch.ways[i] = w.taught(mean, sd, v.day.z)
			}
		}
	}
	return nil
}

// followed says whether the model follows the piece from its put-on: whatever
// cooks beside the coals.
func (a *afoot) followed() bool {
	w := a.way()
	return w.state != nil && !w.direct && a.batch.it.cut.Style != cut.Timed
}

// way is the way the batch was put on; of what the log added, its first.
func (a *afoot) way() way {
	if a.first != nil {
		return a.first.way
	}
	return a.batch.ways[0]
}

// grateRatio is how much of the grate's error is left where a thermometer stands
// beside the meat.
func (v *revision) grateRatio() float64 {
	for _, r := range v.grate.readings {
		if !r.gauge {
			return measuredShare
		}
	}
	return 1
}

// follow runs the piece through its day at all paces and weighs its readings.
func (v *revision) follow(ctx context.Context, a *afoot) error {
	a.journey = v.journeyOf(a)
	a.readings = nil
	for _, e := range a.cores {
		a.readings = append(a.readings, reading{minute: e.At.Sub(a.on.at).Minutes(), coreC: e.C})
		a.journey.asked = append(a.journey.asked, e.At.Sub(a.on.at).Minutes())
	}
	b, err := newBelief(ctx, a.journey, a.way().spread, a.batch.it.cut.Style == cut.Tough)
	if err != nil {
		return err
	}
	a.believed = b
	b.whole, b.lost, b.place = a.way().modelDone, v.lostMinutes(a), v.placeSpread(a)
	sieve{
		fast: &b.paths[0], slow: &b.paths[len(b.paths)-1], errorK: b.errorK, paths: b.paths,
		airC:     func(m float64) float64 { return v.airFor(a, a.on.at.Add(minutes(m))) },
		outsideC: v.day.air.AirC,
		cooking:  func(from, to float64) bool { return v.onFire(a, from, to) },
		targetC:  a.way().pullC,
	}.sift(a.readings)
	return b.weigh(ctx, a.readings)
}

// lostMinutes is how long the piece has been without heat since its put-on.
func (v *revision) lostMinutes(a *afoot) float64 {
	lost := 0.0
	for _, e := range v.episodes(a) {
		lost += e.ToMinute - e.FromMinute
	}
	return lost
}

// placeSpread is what the place of the probe does to the instant of the take-off,
// as a standard deviation of the logarithm of the whole cook.
func (v *revision) placeSpread(a *afoot) float64 {
	w := a.way()
	if w.state == nil || w.modelDone <= 0 {
		return 0
	}
	const aheadS = 60.0
	in := heat.Grate(w.airC, v.day.outdoors)
	if w.with != "" {
		in = covered(in, w.with)
	}
	s := *w.state
	s.Change(in)
	before := s.CoreC()
	s.Cook(heat.Recipe{Stages: []heat.Stage{{In: in, AtMostS: aheadS}}}, nil)
	riseK := s.CoreC() - before
	if riseK <= 0 {
		return mostPlaceSpread
	}
	return math.Min(placeErrorK/(riseK/aheadS*60)/w.modelDone, mostPlaceSpread)
}

// onFire says whether the piece was on a live fire from one minute to another.
func (v *revision) onFire(a *afoot, from, to float64) bool {
	start, end := a.on.at.Add(minutes(from)), a.on.at.Add(minutes(to))
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
func (v *revision) airFor(a *afoot, at time.Time) float64 {
	level := a.way().airC
	return v.grate.airAt(at, func(time.Time) float64 { return level })
}
