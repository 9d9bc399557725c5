package revise

import (
	"context"
	"math"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/planner/internal/belief"
	"example.com/cookday/schedule/planner/internal/surprise"
)

// world is how the day may have gone, for a piece: what its fire did, and which of its
// readings were the core.
type world struct {
	grate    grateHistory
	readings []belief.Reading
	chance   float64
}

// sceneOf is what is known of the fire around a piece.
func (v *Revision) sceneOf(a *liveBatch, accepted map[int]bool) *surprise.Scene {
	minute := func(t time.Time) float64 { return t.Sub(a.on.at).Minutes() }
	at := func(m float64) time.Time { return a.on.at.Add(instant.Minutes(m)) }
	level := func(time.Time) float64 { return a.way().AirC }
	s := &surprise.Scene{
		Journey: a.journey, OutsideC: v.day.Air.AirC, Now: minute(v.now), Fire: !v.inOven(a), Accepted: accepted,
		AirC: func(m float64) float64 { return v.airBeside(a, at(m)) },
		DeadAirC: func(from, m float64) float64 {
			return fire.WarmUp(m-from, v.grate.levelAt(at(from), level), v.day.Night.AirC)
		},
		Without: func(from, to float64) *belief.Journey { return v.journeyWithout(a, at(from), at(to)) },
	}
	for _, r := range v.grate.readings {
		if m := minute(r.at); m > 0 && (!a.oven.set || r.at.Before(a.oven.at)) {
			s.Grates = append(s.Grates, surprise.Grate{Minute: m, C: r.c, LevelC: v.grate.levelAt(r.at, level), Gauge: r.gauge})
		}
	}
	for _, o := range v.grate.outages {
		s.Known = append(s.Known, surprise.Span{From: minute(o.from), To: minute(o.to)})
	}
	for _, t := range v.told(schedule.LogLit) {
		s.Lit = append(s.Lit, minute(t))
	}
	for _, t := range a.stands {
		s.Known = append(s.Known, surprise.Span{From: minute(t.from), To: minute(t.to)})
	}
	for _, o := range v.batches {
		if o != a && o.where == cooking && o.foretold != nil && o.batch.It.Dish.ID != a.batch.It.Dish.ID {
			s.Others = append(s.Others, surprise.Other{Name: o.batch.It.Dish.Name, CoreAt: o.foretoldAt(a)})
		}
	}
	return s
}

// foretoldAt is the core of a piece at a minute of another's.
func (a *liveBatch) foretoldAt(of *liveBatch) func(float64) (float64, float64, bool) {
	return func(minute float64) (coreC, sdK float64, ok bool) {
		m := of.on.at.Add(instant.Minutes(minute)).Sub(a.on.at).Minutes()
		if m < 0 {
			return 0, 0, false
		}
		coreC, sdK = a.foretold.At(m)
		return coreC, sdK, true
	}
}

// airBeside is the air beside the piece, on the grate or in the oven.
func (v *Revision) airBeside(a *liveBatch, at time.Time) float64 {
	return v.envAt(a, at, a.way().AirC, v.airFor(a, at)).AirC
}

// journeyWithout is the journey of a piece if the fire was out for a while.
func (v *Revision) journeyWithout(a *liveBatch, from, to time.Time) *belief.Journey {
	w := *v
	w.grate.outages = append([]outage(nil), v.grate.outages...)
	w.grate.add(outage{from: from, to: to, open: !to.Before(v.now), seen: true})
	return w.journeyOf(a)
}

// discern judges the readings of all pieces, and finds when a fire may have died. What
// one piece tells of the fire holds for all of them, so they are judged again.
func (v *Revision) discern(ctx context.Context) error {
	const rounds = 4
	accepted := map[*liveBatch]map[int]bool{}
	kept := map[*liveBatch][]surprise.Verdict{}
	if err := v.dateOutages(ctx); err != nil {
		return err
	}
	for range rounds {
		news := false
		for _, a := range v.batches {
			if a.where != cooking || !a.followed() {
				continue
			}
			if accepted[a] == nil {
				accepted[a] = map[int]bool{}
			}
			if err := v.judge(ctx, a, accepted[a]); err != nil {
				return err
			}
			a.signs = append(kept[a][:len(kept[a]):len(kept[a])], a.signs...)
			for _, s := range a.signs {
				if s.Main() != surprise.Fire || s.Settled || accepted[a][s.Index] || a.readings[s.Index].Doubt != "" {
					continue
				}
				accepted[a][s.Index], news = true, true
				kept[a] = append(kept[a], s)
				v.find(a, s.Since)
			}
		}
		if !news {
			break
		}
	}
	for _, a := range v.batches {
		if a.where == cooking && a.followed() {
			a.dire = v.direst(a)
		}
	}
	return nil
}

// judge says which readings of a piece are its core.
func (v *Revision) judge(ctx context.Context, a *liveBatch, accepted map[int]bool) error {
	a.journey, a.readings = v.journeyOf(a), nil
	rs := readingsOf(a)
	for _, r := range rs {
		a.readings = append(a.readings, belief.Reading{Minute: r.Minute, CoreC: r.CoreC})
	}
	doubts, signs, err := surprise.Judge(ctx, v.sceneOf(a, accepted), v.standOf(a), rs)
	if err != nil {
		return err
	}
	for i, d := range doubts {
		a.readings[i].Doubt = d
	}
	a.signs = signs
	return nil
}

// find adds an outage that a piece's reading told of.
func (v *Revision) find(a *liveBatch, s surprise.Since) {
	at := func(m float64) time.Time { return a.on.at.Add(instant.Minutes(m)).Truncate(time.Minute) }
	o := outage{from: at(s.Mean), earliest: at(s.Earliest), to: instant.Earlier(at(s.To), v.now), seen: true}
	o.open = !o.to.Before(v.now)
	v.found = append(v.found, o)
	v.grate.add(o)
}

// direst is the world of a piece if the fire died although something else is likelier; nil
// where that is not open.
func (v *Revision) direst(a *liveBatch) *world {
	out := &world{grate: v.grate, readings: append([]belief.Reading(nil), a.readings...)}
	out.grate.outages = append([]outage(nil), v.grate.outages...)
	for _, s := range a.signs {
		chance := s.Chance(surprise.Fire)
		if s.Settled || s.Taken == surprise.Fire || a.readings[s.Index].Doubt == "" || chance < surprise.AliveFrom {
			continue
		}
		at := func(m float64) time.Time { return a.on.at.Add(instant.Minutes(m)).Truncate(time.Minute) }
		to := instant.Earlier(at(s.Since.To), v.now)
		out.grate.add(outage{from: at(s.Since.Mean), earliest: at(s.Since.Earliest), to: to, open: !to.Before(v.now), seen: true})
		out.readings[s.Index].Doubt = ""
		out.chance = math.Max(out.chance, chance)
	}
	if out.chance == 0 {
		return nil
	}
	return out
}

// dateOutages finds since when the fire was out where that was seen or lit again, and
// nobody had told of it.
func (v *Revision) dateOutages(ctx context.Context) error {
	var ends []time.Time
	if o := v.grate.dying; o.open && !o.from.Before(v.grate.readings[len(v.grate.readings)-1].at) {
		ends = append(ends, v.now)
	}
	for _, at := range v.grate.relit {
		ends = append(ends, at)
	}
	for _, end := range ends {
		var found *outage
		for _, a := range v.batches {
			if a.where != cooking || !a.followed() || !end.After(a.on.at) {
				continue
			}
			a.journey = v.journeyOf(a)
			since, err := surprise.Date(ctx, v.sceneOf(a, nil), v.standOf(a), readingsOf(a), end.Sub(a.on.at).Minutes())
			if err != nil {
				return err
			}
			at := func(m float64) time.Time { return a.on.at.Add(instant.Minutes(m)).Truncate(time.Minute) }
			o := outage{from: at(since.Mean), earliest: at(since.Earliest), to: end, open: !end.Before(v.now), seen: true}
			if found == nil || o.earliest.After(found.earliest) { // what one piece proves holds for all
				found = &o
			}
		}
		if found != nil {
			v.found = append(v.found, *found)
			v.grate.add(*found)
		}
	}
	return nil
}

// readingsOf are the readings of a piece's core.
func readingsOf(a *liveBatch) []surprise.Reading {
	var out []surprise.Reading
	for _, e := range a.cores {
		out = append(out, surprise.Reading{Minute: e.At.Sub(a.on.at).Minutes(), CoreC: e.C, Pushed: e.Kind == schedule.LogColdest})
	}
	return out
}
