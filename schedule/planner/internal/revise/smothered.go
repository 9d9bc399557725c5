package revise

import (
	"fmt"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/safety"
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
	top, bottom = -1, -1
	for _, e := range v.log {
		if e.Kind == schedule.LogLit {
			shut = smothered{}
		}
		if e.Kind != schedule.LogVents || e.At.After(v.now) {
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

// bothShut says whether both vents are shut, as the log has them last.
func bothShut(log []schedule.Entry, now time.Time) bool {
	top, bottom := -1.0, -1.0
	for _, e := range log {
		if e.Kind != schedule.LogVents || e.At.After(now) {
			continue
		}
		if t, b, err := fire.ParseVents(e.Value); err == nil {
			top, bottom = told(t, top), told(b, bottom)
		}
	}
	return top == 0 && bottom == 0
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
	case !read || g.c < smotheredC || len(v.told(schedule.LogFireOut)) > 0 || v.windNow() >= stormMS:
		return s, false
	}
	return s, true
}

// smotheredText is what to do about it, and why.
func (v *Revision) smotheredText(s smothered) string {
	g, _ := v.grate.lastRead(v.now, smotheredLives)
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
