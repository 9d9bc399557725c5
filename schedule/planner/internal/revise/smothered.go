package revise

import (
	"fmt"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/steer"
	"example.com/cookday/schedule/unit"
)

// smothered is a stretch in which the cook had both vents shut, as told.
type smothered struct {
	from, to time.Time
	ended    bool // they were opened again at to
}

// Figures of a fire whose vents were shut. That it is out is no more than likely, so its clocks run; what is asked of the
// cook is the least trouble that may help (judgment; a shut grill keeps its heat for an hour and more, and coals were lit
// again a day later, as reports have it).
const (
	smotheredLives = 75 * time.Minute // shut for longer, a fresh chimney is the surer way
	smotheredBack  = 40 * time.Minute // since the vents were opened: so long it is given to come back
	smotheredLook  = 15 * time.Minute
)

// smotheredC is the grate at which its coals are alive yet.
var smotheredC = unit.FToC(160)

// wideOpen is a vent that has no more to give.
const wideOpen = 0.9

// ventsTold are the vents as the log has them last, and since when; below zero for one that nobody told.
func (v *Revision) ventsTold() (top, bottom float64, shut smothered, any bool) {
	return ventsBy(v.log, v.now)
}

// ventsBy are the same as they were at an instant.
func ventsBy(log []schedule.Entry, now time.Time) (top, bottom float64, shut smothered, any bool) {
	top, bottom = -1, -1
	for _, e := range log {
		if e.At.After(now) {
			continue
		}
		if e.Kind == schedule.LogLit {
			shut = smothered{}
		}
		if e.Kind != schedule.LogVents {
			continue
		}
		t, b, err := fire.ParseVents(e.Value)
		if err != nil {
			continue
		}
		was := top == 0 && bottom == 0
		top, bottom = told(t, top), told(b, bottom)
		switch is := top == 0 && bottom == 0; {
		case is && !was:
			shut, any = smothered{from: e.At}, true
		case was && !is:
			shut.to, shut.ended = e.At, true
		}
	}
	return top, bottom, shut, any && !shut.from.IsZero()
}

// bothShut says whether both vents are shut, as the log has them last, and since when.
func bothShut(log []schedule.Entry, now time.Time) (since time.Time, shut bool) {
	top, bottom := -1.0, -1.0
	for _, e := range log {
		if e.Kind != schedule.LogVents || e.At.After(now) {
			continue
		}
		t, b, err := fire.ParseVents(e.Value)
		if err != nil {
			continue
		}
		top, bottom = told(t, top), told(b, bottom)
		if top != 0 || bottom != 0 {
			since = time.Time{}
		} else if since.IsZero() {
			since = e.At
		}
	}
	return since, !since.IsZero()
}

// smotheredFire is the fire that falls because its vents were shut, and may come back when they are opened.
func (v *Revision) smotheredFire() (smothered, bool) {
	_, _, s, any := v.ventsTold()
	until := v.now
	if s.ended {
		until = s.to
	}
	g, read := v.grate.lastRead(v.now, smotheredLives)
	switch {
	case !any || until.Sub(s.from) > smotheredLives, s.ended && v.now.Sub(s.to) > smotheredBack:
		return s, false
	case read && g.c < smotheredC || len(v.told(schedule.LogFireOut)) > 0 || v.windNow() >= stormMS:
		return s, false
	}
	return s, true
}

// dateSmothered takes the fire under food to have failed when both vents were shut, the earliest that is likely, once its grate
// has cooled by physics below the heat that counts: nobody needs to have read it. It lasts until the vents are opened, where
// coals live that long; else until the fire is lit, or its grate is read hot again.
func (v *Revision) dateSmothered() {
	_, _, s, any := v.ventsTold()
	if !any || !v.foodOver(s.from) {
		return
	}
	end := v.now
	if s.ended {
		end = s.to
	}
	from, fromC := s.from, v.grate.levelAt(s.from, v.plannedLevel)
	hotSince := false
	for _, r := range v.grate.readings {
		switch {
		case r.at.After(end):
			hotSince = hotSince || r.c >= safety.LowHeatC
		case r.c >= safety.LowHeatC && r.at.After(s.from):
			from, fromC = r.at, r.c
		case r.at.After(s.from) || s.from.Sub(r.at) <= holdsReading && fromC > r.c:
			fromC = r.c
		}
	}
	if end.Sub(from) < smotheredLook || fire.WarmUp(end.Sub(from).Minutes(), fromC, v.day.Night.AirC) >= safety.LowHeatC {
		return
	}
	o := outage{from: from, to: end, open: !s.ended, seen: true, choked: true, unread: !v.coreReadBetween(from.Add(smotheredLook), v.now)}
	if s.ended && end.Sub(s.from) > smotheredLives && !hotSince {
		o.to, o.open = v.now, true
	}
	v.found = append(v.found, o)
	v.grate.add(o)
}

// foodOver says whether food was over the fire at an instant and a while after it.
func (v *Revision) foodOver(at time.Time) bool {
	after := at.Add(smotheredLook)
	return slices.ContainsFunc(v.batches, func(a *liveBatch) bool {
		return a.on.set && a.on.at.Before(v.now) && (!a.oven.set || a.oven.at.After(after)) && (a.where == cooking || a.where == off && a.off.logged && a.off.at.After(after))
	})
}

// coreReadBetween says whether a core was read between two instants.
func (v *Revision) coreReadBetween(from, to time.Time) bool {
	return slices.ContainsFunc(v.log, func(e schedule.Entry) bool {
		return (e.Kind == schedule.LogCore || e.Kind == schedule.LogColdest) && e.At.After(from) && !e.At.After(to)
	})
}

// airFirst says whether the fire is only taken to have failed because its vents are shut, and may come back: then they are
// opened as far as the steering has it, and that is the one order.
func (v *Revision) airFirst() bool {
	s, ok := v.smotheredFire()
	return ok && !s.ended && v.steered != nil && v.steered.advice.Do == steer.Move
}

// smotheredText is what to do about it, and why.
func (v *Revision) smotheredText(s smothered) string {
	g, read := v.grate.lastRead(v.now, smotheredLives)
	if !read && s.ended {
		return fmt.Sprintf("Leave both vents open and read the grate at %s: they were shut from %s to %s, and nobody read it since. No higher than 225 °F (107 °C) by then? Sweep out the ash and add lit coals.", v.clock(v.smotheredLookAt(s)), v.clock(s.from), v.clock(s.to))
	} else if !read {
		return fmt.Sprintf("Open both vents fully now: they have been shut since %s, and the coals get no air.", v.clock(s.from))
	}
	if s.ended {
		return fmt.Sprintf("Leave both vents open and read the grate at %s: they were shut from %s to %s, and coals take half an hour to come back. It was at %s at %s. No higher by then? Sweep out the ash and add lit coals.",
			v.clock(v.smotheredLookAt(s)), v.clock(s.from), v.clock(s.to), v.day.Grate(g.c), v.clock(g.at))
	}
	return fmt.Sprintf("Open both vents fully now: they have been shut since %s, and the coals get no air. The grate was at %s at %s.", v.clock(s.from), v.day.Grate(g.c), v.clock(g.at))
}

// smotheredLookAt is when the grate tells whether it comes back.
func (v *Revision) smotheredLookAt(s smothered) time.Time {
	if at := s.to.Add(2 * smotheredLook); s.ended && at.After(v.now) {
		return at
	}
	return v.now
}

// smotheredStep is the same as a step.
func (v *Revision) smotheredStep(p *schedule.Plan, s smothered) schedule.Step {
	if s.ended {
		return v.steerStep(p, schedule.StepCheckFire, v.smotheredLookAt(s), 1, v.plannedLevel(v.now),
			"Read the grate and log it. No higher than before? Sweep out the ash and add lit coals.", "the vents were shut, and the coals need time to come back")
	}
	at := v.now
	return schedule.Step{ID: plans.StepID(p.ID, "", v.phases, schedule.StepSetVents, steeredStep), Kind: schedule.StepSetVents, At: at, Window: plans.FixedWindow(at), Phase: v.phases,
		Attended: true, Minutes: 2, GrateC: v.plannedLevel(v.now), Why: "both vents are shut, and the coals get no air",
		Text: fmt.Sprintf("Open both vents fully; they have been shut since %s. Keep the lid on. To look: %s Read the grate in 15 min; no higher than now: light a chimney.", v.clock(s.from), safety.OpenStarved)}
}

// allOpenTold says whether the cook told that both vents have no more to give.
func (v *Revision) allOpenTold() bool {
	top, bottom, _, _ := v.ventsTold()
	return top >= wideOpen && bottom >= wideOpen
}
