package revise

import (
	"context"
	"slices"
	"time"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/planner/internal/belief"
	"example.com/cookday/schedule/planner/internal/day"
)

// believe follows every piece that cooks beside the coals, judges its readings,
// and shares the grate's error between the pieces.
func (v *Revision) believe(ctx context.Context) error {
	if err := v.discern(ctx); err != nil {
		return err
	}
	if v.stillOn() { // another piece has told of its fire
		if err := v.discern(ctx); err != nil {
			return err
		}
	}
	var all []*belief.Belief
	for _, a := range v.batches {
		if err := ctx.Err(); err != nil { // a piece with many readings takes milliseconds
			return err
		}
		if a.where == cooking && a.followed() {
			a.bare = a.bare || a.pastWrapping()
			if err := v.follow(ctx, a); err != nil {
				return err
			}
			all = append(all, a.believed)
		}
	}
	mean, sd := belief.ShareGrate(all, v.grateRatio())
	for _, a := range v.batches {
		if a.believed != nil {
			a.believed.MaySoon(v.tenderChance(a))
			if err := v.cover(ctx, a); err != nil {
				return err
			}
		}
	}
	for _, a := range v.batches {
		switch {
		case a.believed != nil:
			a.live = v.liveWay(a)
		case a.where == cooking && a.read():
			a.live = v.coalsWay(a)
		case a.where == cooking:
			a.live = v.clockWay(a)
		}
		if a.where == waiting {
			for i, w := range a.batch.Ways {
				a.batch.Ways[i] = wayTaught(w, mean, sd)
			}
		}
	}
	return nil
}

// noWrapWithinK is how near its target, 20 F, a piece is wrapped no more: that would save no time
// (common practice, no source).
const noWrapWithinK = 20 / 1.8

// pastWrapping says whether a piece of which no wrap was logged was read so near its target, by a
// reading that counts, that nobody wraps it any more.
func (a *liveBatch) pastWrapping() bool {
	for _, r := range slices.Backward(a.readings) {
		if r.Counts() {
			return !a.wrap.set && !a.way().Sear && a.way().Stages() > 1 && r.CoreC >= a.way().PullC-noWrapWithinK
		}
	}
	return false
}

// followed says whether the model follows the piece from its put-on: whatever
// cooks beside the coals.
func (a *liveBatch) followed() bool {
	w := a.way()
	return w.State != nil && !w.Direct && a.batch.It.Cut.Style != cut.Timed
}

// way is the way the batch was put on; of what the log added, its first, and none where no fire of this grill cooks it.
func (a *liveBatch) way() day.Way {
	if a.first != nil {
		return a.first.Way
	}
	if len(a.batch.Ways) == 0 {
		return day.Way{}
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

// follow runs the piece through its day and takes what its readings say.
func (v *Revision) follow(ctx context.Context, a *liveBatch) (err error) {
	a.journey = v.journeyOf(a)
	if a.believed, err = belief.New(ctx, a.journey, v.standOf(a), a.readings); err != nil {
		return err
	}
	a.plain = nil
	if core, ok := v.risenAtMost(a); ok {
		a.plain = a.believed
		a.believed, err = belief.New(ctx, a.journey, v.standOf(a), append(a.readings[:len(a.readings):len(a.readings)], belief.Reading{Minute: a.journey.Now, CoreC: core}))
	}
	return err
}

// asRead is what is believed of a piece by its readings alone.
func (a *liveBatch) asRead() *belief.Belief {
	if a.plain != nil {
		return a.plain
	}
	return a.believed
}

// cover lets the times of a piece answer for what else its readings may be: a fire that
// died, and the coldest core that a cold reading could have been which is left out.
func (v *Revision) cover(ctx context.Context, a *liveBatch) error {
	var other, edge *belief.Belief
	var err error
	chance := 0.0
	if a.dire != nil {
		x := *v
		x.grate = a.dire.grate
		if other, err = belief.New(ctx, x.journeyOf(a), v.standOf(a), a.dire.readings); err != nil {
			return err
		}
		belief.ShareGrate([]*belief.Belief{other}, v.grateRatio())
		chance = a.dire.chance
	}
	if readings, ok := a.coldEdge(); ok {
		if edge, err = belief.New(ctx, a.journey, v.standOf(a), readings); err != nil {
			return err
		}
		belief.ShareGrate([]*belief.Belief{edge}, v.grateRatio())
	}
	a.believed.Cover(other, chance, edge)
	return nil
}

// coverAgain covers what else the readings may be in another future.
func (v *Revision) coverAgain(ctx context.Context, a *liveBatch) error {
	if dire := a.dire; dire != nil {
		w := *dire
		w.grate = v.grate
		w.grate.outages = slices.Clone(v.grate.outages)
		for _, o := range dire.grate.outages {
			w.grate.add(o)
		}
		a.dire = &w
	}
	if _, edge := a.coldEdge(); a.dire == nil && !edge {
		return nil
	}
	return v.cover(ctx, a)
}

// coldEdge are the readings with the newest, if it is a cold one that is left out, as the
// coldest that would have been taken.
func (a *liveBatch) coldEdge() ([]belief.Reading, bool) {
	n := len(a.readings)
	for _, s := range a.signs {
		if s.Index == n-1 && s.Cold && !s.Settled && a.readings[n-1].Doubt != "" {
			out := append([]belief.Reading(nil), a.readings...)
			out[n-1] = belief.Reading{Minute: s.Minute, CoreC: s.EdgeC}
			return out, true
		}
	}
	return nil, false
}

// standOf is the piece as it was put on.
func (v *Revision) standOf(a *liveBatch) belief.Stand {
	return belief.Stand{Spread: a.way().Spread, Stalls: a.batch.It.Cut.Style == cut.Tough, Pieces: a.batch.Count}
}

// airFor is the air beside the piece at an instant of the past.
func (v *Revision) airFor(a *liveBatch, at time.Time) float64 {
	level := a.way().AirC
	h := v.grate
	if !v.countsOnRecovery(a) {
		h.cold = nil
	}
	return h.airAt(at, func(time.Time) float64 { return level })
}
