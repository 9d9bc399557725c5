package revise

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/steer"
)

// told are the instants at which the log has a kind of entry.
func (v *Revision) told(kind schedule.EntryKind) []time.Time {
	var out []time.Time
	for _, e := range v.log {
		if e.Kind == kind {
			out = append(out, e.At)
		}
	}
	return out
}

// refuelNumber is the place of a refuel among those of the first plan, from 1; 0
// for one that was added since, and the number of them for no id.
func (v *Revision) refuelNumber(id string) int {
	n := 0
	for _, s := range v.first.Steps {
		if s.Kind != schedule.StepRefuel {
			continue
		}
		if n++; s.ID == id {
			return n
		}
	}
	if id == "" {
		return n
	}
	return 0
}

// fedAt are the instants at which the fire that burns was fed, by the log: fuel, or coals after those of the pour that are as
// many as a feed.
func (v *Revision) fedAt() []time.Time {
	var out []time.Time
	burning := false
	for _, e := range v.log {
		switch e.Kind {
		case schedule.LogRefuelled:
			out = append(out, e.At)
		case schedule.LogGrate, schedule.LogGauge, schedule.LogOn:
			burning = true
		case schedule.LogLitCoals, schedule.LogUnlitCoals:
			if burning && countOf(e.Value) >= float64(v.leastFed()) {
				out = append(out, e.At)
			}
		}
	}
	return out
}

// leastFeed is how many coals are a feed: fewer only help a fire on (assumption).
const leastFeed = 20

// leastFed is how many are one on this day: no more than most of the smallest that its plan asks for.
func (v *Revision) leastFed() int {
	least := leastFeed
	for _, ph := range v.first.Phases {
		if ph.Burn == nil {
			continue
		}
		for _, r := range ph.Burn.Refuels {
			if r.Count > 0 {
				least = min(least, (3*r.Count+3)/4)
			}
		}
	}
	return least
}

// moreFuel are the refuels of the log that the first plan knows nothing of. They
// are steps of their own: those that a revision adds may be gone in the next.
func (v *Revision) moreFuel(p *schedule.Plan) []schedule.Step {
	var out []schedule.Step
	for k, at := range v.fedAt() {
		if k < v.refuelNumber("") {
			continue
		}
		out = append(out, schedule.Step{ID: plans.StepID(p.ID, "", 0, schedule.StepRefuel, k+1), At: at, Window: plans.FixedWindow(at), Kind: schedule.StepRefuel, Phase: v.phaseAt(at),
			Attended: true, Minutes: 5, Done: true, Text: "Fuel was added.", Why: "the log says so"})
	}
	return out
}

// fedOnce leaves one of several refuels of a fire that are overdue together: it is fed once now; and no unlit coals go on a
// fire that sinks, none at all on one that is too hot or about to be.
func (v *Revision) fedOnce(p *schedule.Plan, steps []schedule.Step) []schedule.Step {
	fed := map[int]bool{}
	for i, s := range steps {
		if v.takenByAdvice(s) {
			steps[i].Text = "Leave this out, even with food still on: the coals that are asked for now take its place."
			continue
		}
		late := s.At.After(v.now.Add(fedAnyway))
		if fed[s.Phase] && !s.Done && s.Kind == schedule.StepLight && v.tends(s) && s.At.Before(v.now.Add(rebuiltLasts-fedAnyway)) {
			steps[i].Text = "Leave this out, even with food still on: one refuel is enough for now."
			continue
		}
		if s.Kind != schedule.StepRefuel || s.Done || late && !(fed[s.Phase] && s.At.Before(v.now.Add(rebuiltLasts))) || strings.HasPrefix(s.Text, "Leave this out") {
			continue
		}
		switch {
		case !late && v.tooHotToFeed():
			steps[i].Text = "Leave this out for now, even with food still on: the grate is above its level, or on its way there. Feed it once it is back there."
		case !late && v.burnsOnlyUntil(v.now.Add(feedTells)):
			steps[i].Text = "Leave this out, even with food still on: it is off before new coals burn."
		case fed[s.Phase]:
			steps[i].Text = "Leave this out, even with food still on: one refuel is enough for now."
		case strings.Contains(s.Text, "unlit") && v.tooCoolForUnlit():
			steps[i].Text = v.insteadOfUnlit(p, s)
		default:
			steps[i].Text += v.dueSince(s)
			if v.sleepsWithin(safety.SettleMinutes * time.Minute) {
				steps[i].Text += fmt.Sprintf(" Nobody sleeps before the grate has held for %d min after it.", safety.VentsStillMinutes)
			}
		}
		fed[s.Phase] = fed[s.Phase] || !s.At.After(v.now)
	}
	return steps
}

// takenByAdvice says whether lit coals of the plan are to come so soon that those which the advice asks for now are theirs.
func (v *Revision) takenByAdvice(s schedule.Step) bool {
	if v.steered == nil || v.steered.advice.Do != steer.AddLit || v.offBeforeItTells() || v.stormOpens() || s.Done || s.Phase != v.phases || s.At.Sub(v.now) > rebuiltLasts {
		return false
	}
	return s.Kind == schedule.StepRefuel && !strings.Contains(s.Text, "unlit") || s.Kind == schedule.StepLight && strings.Contains(s.Text, "to add in 20 min")
}

// feedTells is how long a feed takes to give heat: food that is off by then has no use of it (judgment).
const feedTells = 30 * time.Minute

// dueSince says of a refuel that is overdue since when, so that it is not done each time it is read.
func (v *Revision) dueSince(s schedule.Step) string {
	for _, was := range v.first.Steps {
		if was.ID == s.ID && v.now.Sub(was.At) >= asksFed {
			text := " Due since " + v.clock(was.At) + ". Added already? Log it (refuelled)."
			if _, ok := v.grate.lastRead(v.now, oldReading); !ok && len(v.grate.readings) > 0 {
				text += " Read the grate too."
			}
			return text
		}
	}
	return ""
}

// fedInTheNight says whether the log has the fire fed in the hours in which nobody was to be up, of a
// night that is not over: how long it lasts is no longer what the plan says of it.
func (v *Revision) fedInTheNight(p *schedule.Plan) bool {
	for _, q := range p.Quiet {
		if q.To.After(v.now) && slices.ContainsFunc(v.fedAt(), func(at time.Time) bool { return !at.Before(q.From) && at.Before(q.To) }) {
			return true
		}
	}
	return false
}

// feedsAtNight says whether a plan has coals still to be added in hours in which nobody is up.
func (v *Revision) feedsAtNight(p *schedule.Plan) bool {
	for _, ph := range p.Phases {
		if ph.Burn != nil && slices.ContainsFunc(ph.Burn.Refuels, func(r schedule.Refuel) bool {
			return !r.Window.Expected.Before(v.now) && v.day.InQuiet(r.Window.Expected)
		}) {
			return true
		}
	}
	return false
}

// unfed says of a fire whose planned feed nobody logged that its hours are those of one that is fed.
func (v *Revision) unfed(p *schedule.Plan) {
	if v.phases == 0 || v.refuelNumber("") == 0 || len(v.fedAt()) > 0 {
		return
	}
	for i, f := range p.Findings {
		before, after, ok := strings.Cut(f.Text, ", fed last at ")
		_, after, comma := strings.Cut(after, ",")
		if f.Code == "fire-cannot-last" && ok && comma {
			p.Findings[i].Text = before + ", if it was fed as planned (no feed is logged; unfed it is down sooner)," + after
		}
	}
}

// tooHotToFeed says whether the grate was read above its level just now, or rising so that it will be. Shortly before a sleep
// it is fed all the same, if no vent is closed for it: coals burn down in the night.
func (v *Revision) tooHotToFeed() bool {
	if _, hot := v.hotAfterLid(); hot {
		return true
	}
	g, ok := v.grate.lastRead(v.now, oldReading)
	if !ok || v.steered == nil || g.gauge {
		return false
	}
	off, a := g.c-v.grate.levelAt(v.now, v.plannedLevel), v.steered.advice
	if off > offLevelK/2 && a.Do == steer.Move && (a.To.Top < a.From.Top || a.To.Bottom < a.From.Bottom) {
		return true
	}
	return !v.sleepsWithin(beforeSleep) && (off > offLevelK/2 || off+v.grate.climb(g)*soonFed.Minutes() > offLevelK/2 && v.grate.climb(g) > 0)
}

// soonFed is how far ahead a climb is drawn on before a fire is fed (judgment).
const soonFed = 30 * time.Minute

// sleepsWithin says whether a sleep beside the fire begins so soon.
func (v *Revision) sleepsWithin(d time.Duration) bool {
	return slices.ContainsFunc(v.day.Unwatched(v.first.Phases), func(q schedule.Interval) bool { return q.From.After(v.now) && q.From.Sub(v.now) <= d })
}

// climb is by how much the grate rose a minute up to its newest reading, K; below zero where it fell, 0 where one look is all.
func (h *grateHistory) climb(g grateReading) float64 {
	for i := len(h.readings) - 2; i >= 0; i-- {
		r := h.readings[i]
		if took := g.at.Sub(r.at); took >= 10*time.Minute && took <= holdsReading && !r.gauge {
			return (g.c - r.c) / took.Minutes()
		}
	}
	return 0
}

// tooCoolForUnlit says whether the grate was read out of its band below just now, and not rising: unlit coals take heat first.
func (v *Revision) tooCoolForUnlit() bool {
	g, ok := v.grate.lastRead(v.now, oldReading)
	return ok && v.steered != nil && !g.gauge && !v.noFuel() && g.c < v.grate.levelAt(v.now, v.plannedLevel)-offLevelK
}

// insteadOfUnlit is what a fire wants that sinks when it was to be fed: air, its ash out, then lit coals.
func (v *Revision) insteadOfUnlit(p *schedule.Plan, s schedule.Step) string {
	g, _ := v.grate.lastRead(v.now, oldReading)
	why := "the grate was at " + v.day.Grate(g.c) + " at " + v.clock(g.at) + ", and unlit coals would cool it more."
	switch a := v.steered.advice; {
	case a.Do == steer.AddLit, a.Do == steer.ClearAsh:
		return v.steerText().Text + " Sweep out the ash below. No unlit coals yet: " + why
	case v.wantsFuel() && !v.stormOpens():
		who, _, late := strings.Cut(s.Text, " still on? Then ")
		feed := v.feedNow(p)
		if late {
			feed = who + " still on? Then " + say.Lower(feed)
		}
		return feed + " Why: a feed is due, and " + strings.Replace(why, "unlit coals", "unlit coals alone", 1) + v.dueSince(s)
	case v.setsVents(), a.Do == steer.Leave:
		return "Leave this out for now, even with food still on: " + why + " Feed it once it is back at its level."
	case a.Do == steer.Move:
		return v.steerText().Text + " Sweep out the ash below. No unlit coals yet: " + why + " Read the grate in 20 min; no higher: lit coals."
	}
	return "Leave this out for now, even with food still on: " + why + " Read the grate again first."
}

// oldReading is how long a reading is a ground for anything done to the fire.
const oldReading = 45 * time.Minute

// phaseAt is the phase, from 1, that was to burn at an instant.
func (v *Revision) phaseAt(at time.Time) int {
	n := min(len(v.first.Phases), 1)
	for i, ph := range v.first.Phases {
		if !ph.SetupFrom.After(at) {
			n = i + 1
		}
	}
	return n
}

// takenBy says whether a refuel that was added to the plan since is one of those
// that the log has, and takes it from them.
func (v *Revision) takenBy(s schedule.Step, more *[]schedule.Step) bool {
	if s.Kind != schedule.StepRefuel || v.refuelNumber(s.ID) > 0 {
		return false
	}
	i := slices.IndexFunc(*more, func(m schedule.Step) bool { return m.Phase == s.Phase })
	if i < 0 {
		return false
	}
	*more = slices.Delete(slices.Clone(*more), i, i+1)
	return true
}
