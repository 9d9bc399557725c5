package revise

import (
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
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

// moreFuel are the refuels of the log that the first plan knows nothing of. They
// are steps of their own: those that a revision adds may be gone in the next.
func (v *Revision) moreFuel(p *schedule.Plan) []schedule.Step {
	var out []schedule.Step
	for k, at := range v.told(schedule.LogRefuelled) {
		if k < v.refuelNumber("") {
			continue
		}
		out = append(out, schedule.Step{ID: plans.StepID(p.ID, "", 0, schedule.StepRefuel, k+1), At: at, Window: plans.FixedWindow(at), Kind: schedule.StepRefuel, Phase: v.phaseAt(at),
			Attended: true, Minutes: 5, Done: true, Text: "Fuel was added.", Why: "the log says so"})
	}
	return out
}

// fedOnce leaves one of several refuels of a fire that are overdue together: it is fed once now.
func (v *Revision) fedOnce(steps []schedule.Step) []schedule.Step {
	fed := map[int]bool{}
	for i, s := range steps {
		if s.Kind != schedule.StepRefuel || s.Done || s.At.After(v.now.Add(fedAnyway)) || strings.HasPrefix(s.Text, "Leave this out") {
			continue
		}
		switch {
		case v.tooHotToFeed():
			steps[i].Text = "Leave this out for now, even with food still on: the grate is above its level. Feed it once it is back there."
		case fed[s.Phase]:
			steps[i].Text = "Leave this out, even with food still on: one refuel is enough for now."
		}
		fed[s.Phase] = fed[s.Phase] || !s.At.After(v.now)
	}
	return steps
}

// tooHotToFeed says whether the grate was read above its level just now, and vents are closed for it.
func (v *Revision) tooHotToFeed() bool {
	g, ok := v.grate.lastRead(v.now, oldReading)
	if !ok || v.steered == nil || g.gauge {
		return false
	}
	off := g.c - v.grate.levelAt(v.now, v.plannedLevel)
	a := v.steered.advice
	return off > offLevelK/2 && a.Do == steer.Move && (a.To.Top < a.From.Top || a.To.Bottom < a.From.Bottom)
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
