package revise

import (
	"context"
	"math"
	"slices"
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
	outside := v.weatherFrom(a.on.at)
	s := &surprise.Scene{
		Journey: a.journey, OutsideC: func(m float64) float64 { return outside(m).AirC }, Now: minute(v.until(a)), Fire: !v.inOven(a), Accepted: accepted, DoneC: a.way().PullC,
		AirC: func(m float64) float64 { return v.airBeside(a, at(m)) },
		DeadAirC: func(from, m float64) float64 {
			return fire.WarmUp(m-from, v.grate.levelAt(at(from), level), v.day.Night.AirC)
		},
		Without: func(from, to float64) *belief.Journey { return v.journeyWithout(a, at(from), at(to)) },
	}
	if a.inner() {
		s.LeastC = a.leastC()
	}
	for _, r := range v.grate.readings {
		if m := minute(r.at); m > 0 && (!a.oven.set || r.at.Before(a.oven.at)) && !a.insideAt(r.at) {
			s.Grates = append(s.Grates, surprise.Grate{Minute: m, C: r.c, LevelC: v.grate.levelAt(r.at, level), Gauge: r.gauge})
		}
	}
	for _, o := range v.grate.outages {
		s.Known = append(s.Known, surprise.Span{From: minute(o.from), To: minute(o.to)})
		if !o.asked && !o.lid {
			s.Dead = append(s.Dead, surprise.Span{From: minute(o.since()), To: minute(o.to)})
		}
	}
	for _, t := range v.told(schedule.LogLit) {
		s.Lit = append(s.Lit, minute(t))
	}
	for _, t := range a.stands {
		s.Known = append(s.Known, surprise.Span{From: minute(t.from), To: minute(t.to)})
	}
	for _, o := range v.batches {
		if o != a && o.where == cooking && o.followed() && o.batch.It.Dish.ID != a.batch.It.Dish.ID {
			s.Others = append(s.Others, surprise.Other{Name: o.batch.It.Dish.Name, CoreAt: v.foretoldAt(o, a)})
		}
	}
	return s
}

// foretoldAt is the core of a piece at a minute of another's, by what was read of it before.
// It is followed only if somebody asks.
func (v *Revision) foretoldAt(o, of *liveBatch) func(float64, float64) (float64, float64, bool) {
	return func(minute, readC float64) (coreC, sdK float64, ok bool) {
		m := of.on.at.Add(instant.Minutes(minute)).Sub(o.on.at).Minutes()
		if m < 0 {
			return 0, 0, false
		}
		j := o.journey
		if j == nil {
			j = v.journeyOf(o)
		}
		look, err := belief.NewOutlook(context.Background(), j, v.standOf(o), m)
		if v.fail(err); err != nil {
			return 0, 0, false
		}
		from := belief.Reading{CoreC: j.Body.StartC}
		for _, r := range o.readings {
			if r.Minute <= m && r.Counts() {
				from = r
			}
		}
		coreC, sdK = look.From(from).At(m, readC)
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
	w.grate.add(outage{from: from, earliest: from, to: to, open: !to.Before(v.until(a)), seen: true})
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
			if !a.told() {
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
				v.find(a, s)
			}
		}
		if !news {
			break
		}
	}
	for _, a := range v.batches {
		if a.told() {
			a.dire, a.sound = v.worldsOf(a)
		}
	}
	return nil
}

// told says whether the model follows a piece that is on the fire, or was taken off it as
// the log says.
func (a *liveBatch) told() bool {
	return a.followed() && (a.where == cooking || a.where == off && a.off.logged && a.off.at.After(a.on.at))
}

// until is the end of what the fire does to a piece: now, or when it came off.
func (v *Revision) until(a *liveBatch) time.Time {
	if a.where == off && a.off.at.Before(v.now) {
		return a.off.at
	}
	return v.now
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
	a.leaveWarmerPlaces()
	return nil
}

// leaveWarmerPlaces takes no plain reading for the core that would finish a piece whose coldest
// place was found under its minimum, near it, and was not read at it since: it goes on as that
// place does.
func (a *liveBatch) leaveWarmerPlaces() {
	least, cold := a.leastC(), false
	if least == 0 || !a.inner() || a.where != cooking {
		return
	}
	for i, e := range a.cores[:len(a.readings)] {
		switch pushed := e.Kind == schedule.LogColdest; {
		case pushed && a.readings[i].Counts():
			cold = e.C < least-sameC && e.C > least-nearMinK
		case cold && !pushed && e.C >= least-sameC && a.readings[i].Counts():
			a.readings[i].Doubt = string(surprise.Place)
		}
	}
}

// find adds an outage that a piece's reading told of.
func (v *Revision) find(a *liveBatch, s surprise.Verdict) {
	o := v.outageAt(a, s.Since)
	o.asked = s.Open()
	v.found = append(v.found, o)
	v.grate.add(o)
}

// outageAt is an outage of a piece's minutes.
func (v *Revision) outageAt(a *liveBatch, s surprise.Since) outage {
	at := func(m float64) time.Time { return a.on.at.Add(instant.Minutes(m)).Truncate(time.Minute) }
	o := outage{from: at(s.Mean), earliest: at(s.Earliest), to: instant.Earlier(at(s.To), v.now), seen: true}
	o.open = !o.to.Before(v.now)
	return o
}

// worldsOf are those that a piece's open questions leave: the direst, in which its fire
// died, and the one in which nothing of that is so. Nil where nothing is open; dire is nil
// where it is what the times are worked out with.
func (v *Revision) worldsOf(a *liveBatch) (dire, sound *world) {
	dire = &world{grate: v.grate, readings: slices.Clone(a.readings)}
	dire.grate.outages = slices.Clone(v.grate.outages)
	sound = &world{grate: v.grateAs(func(o outage) bool { return !o.asked }), readings: slices.Clone(a.readings)}
	open, left := false, false
	for _, s := range a.signs {
		chance := s.Chance(surprise.Fire)
		if s.Settled || s.Taken != "" || chance < surprise.AliveFrom {
			continue
		}
		open = true
		sound.readings[s.Index].Doubt = string(surprise.Place)
		if dire.readings[s.Index].Doubt != "" {
			left = true
			dire.grate.add(v.outageAt(a, s.Since))
			dire.readings[s.Index].Doubt = ""
			dire.chance = math.Max(dire.chance, chance)
		}
	}
	for _, o := range v.grate.outages {
		open = open || o.asked
	}
	switch {
	case !open:
		return nil, nil
	case !left:
		return nil, sound
	}
	return dire, sound
}

// grateAs is the history of the fire with some of the outages that were found.
func (v *Revision) grateAs(with func(outage) bool) grateHistory {
	var found []outage
	for _, o := range v.found {
		if with(o) {
			found = append(found, o)
		}
	}
	return v.grateWith(found)
}

// readingsOf are the readings of a piece's core.
func readingsOf(a *liveBatch) []surprise.Reading {
	var out []surprise.Reading
	for _, e := range a.cores {
		if a.where == off && e.At.After(a.off.at) {
			break // it is held: that is no cook
		}
		out = append(out, surprise.Reading{Minute: e.At.Sub(a.on.at).Minutes(), CoreC: e.C, Pushed: e.Kind == schedule.LogColdest})
	}
	return out
}
