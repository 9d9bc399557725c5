package revise

import (
	"context"
	"slices"
	"time"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/planner/internal/surprise"
)

// dateOutages finds since when the fire was out where that was seen or lit again, and
// nobody had told of it.
func (v *Revision) dateOutages(ctx context.Context) error {
	v.dateSmothered()
	var ends []time.Time
	if !v.grate.dying.earliest.IsZero() {
		ends = append(ends, v.now)
	}
	ends = append(append(ends, v.grate.coldTold...), v.grate.relit...)
	if err := v.dateTold(ctx); err != nil {
		return err
	}
	for _, end := range ends {
		var found *outage
		for _, a := range v.batches {
			if !a.told() || !end.After(a.on.at) || a.where == off && !a.off.at.After(end) {
				continue
			}
			a.journey = v.journeyOf(a)
			since, err := surprise.Date(ctx, v.sceneOf(a, nil), v.standOf(a), readingsOf(a), end.Sub(a.on.at).Minutes())
			if err != nil {
				return err
			}
			at := func(m float64) time.Time { return a.on.at.Add(instant.Minutes(m)).Truncate(time.Minute) }
			o := outage{from: at(since.Mean), earliest: at(since.Earliest), to: end, open: !end.Before(v.now), seen: true, unread: !since.Read}
			if found == nil || o.earliest.After(found.earliest) { // what one piece proves holds for all
				found = &o
			}
		}
		if found == nil && end.Equal(v.now) { // nothing that is followed is on: since it was seen
			o := v.grate.dying
			o.earliest = v.heatProven(o.from)
			found = &o
		}
		if found != nil {
			v.found = append(v.found, *found)
			v.grate.add(*found)
		}
	}
	return nil
}

// dateTold moves the beginning of an outage that was told back to where it must lie, if the
// grate and the cores after it are colder than they can have become since then.
func (v *Revision) dateTold(ctx context.Context) error {
	for _, told := range slices.Clone(v.grate.outages) {
		if told.seen || told.lid {
			continue
		}
		var found *outage
		followed := false
		for _, a := range v.batches {
			if !a.told() || !told.from.After(a.on.at) || a.where == off && !a.off.at.After(told.to) {
				continue
			}
			a.journey, followed = v.journeyOf(a), true
			minute := func(t time.Time) float64 { return t.Sub(a.on.at).Minutes() }
			s := v.sceneOf(a, nil)
			s.Known = slices.DeleteFunc(s.Known, func(k surprise.Span) bool { return k.From == minute(told.from) })
			since, holds, err := surprise.DateTold(ctx, s, v.standOf(a), readingsOf(a), minute(told.from), minute(told.to))
			if err != nil {
				return err
			}
			if holds {
				continue
			}
			o := v.outageAt(a, since)
			o.to, o.open = told.to, told.open
			if found == nil || o.earliest.After(found.earliest) {
				found = &o
			}
		}
		if at := v.grate.latestDeath(told, v.plannedLevel); !followed && at.Before(told.from) {
			found = &outage{from: at, earliest: at, to: told.to, open: told.open, seen: true}
		}
		if found != nil {
			v.found = append(v.found, *found)
			v.grate.add(*found)
		}
	}
	return nil
}

// latestDeath is the latest instant at which a fire that was told to be out can have gone out,
// for its grate to be as cold as it was read after that.
func (h *grateHistory) latestDeath(o outage, level func(time.Time) float64) time.Time {
	const step, sdK, longest = 5 * time.Minute, 15 / 1.8, 12 * time.Hour
	at := o.from
	for _, r := range h.readings {
		levelC := h.levelAt(r.at, level)
		if !r.at.After(o.from) || !o.open && r.at.After(o.to) || levelC-r.c <= deadK {
			continue
		}
		for r.at.Sub(at) < longest && fire.WarmUp(r.at.Sub(at).Minutes(), levelC, h.d.Night.AirC) > r.c+3*sdK {
			at = at.Add(-step)
		}
	}
	return at
}

// heatProven is the last instant before another at which a thermometer of the grill, or a
// fire that was lit or fed, shows heat; when something was put on if that is later, and where
// nothing does.
func (v *Revision) heatProven(before time.Time) time.Time {
	var last time.Time
	for _, r := range v.grate.readings {
		if r.at.Before(before) && v.grate.levelAt(r.at, v.plannedLevel)-r.c < offLevelK {
			last = r.at
		}
	}
	for _, t := range v.grate.fed {
		if t.Before(before) {
			last = instant.Later(last, t)
		}
	}
	first := before
	for _, a := range v.batches {
		if a.where == cooking && !v.inOven(a) {
			first = instant.Earlier(first, a.on.at)
		}
	}
	return instant.Later(last, first)
}
