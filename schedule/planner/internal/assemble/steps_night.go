package assemble

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/arrange"
)

// nights are the steps around a night through which the fire burns.
func (it *Itinerary) nights(all []*arrange.Placed) {
	for _, q := range it.D.Unwatched(it.Plan.Phases) {
		var at, up *schedule.Phase
		for i := range it.Plan.Phases {
			ph := &it.Plan.Phases[i]
			if !burnsIn(*ph, q) {
				continue
			}
			if at == nil {
				at = ph
			}
			if up = nil; ph.To.After(q.To) {
				up = ph
			}
		}
		it.beforeSleep(at, q, all)
		if up != nil {
			it.waking(up, q, all)
		}
	}
}

// beforeSleep is what is seen to before people sleep beside a fire.
func (it *Itinerary) beforeSleep(ph *schedule.Phase, q schedule.Interval, all []*arrange.Placed) {
	d := it.D
	at := d.AfterQuiet(plans.FixedWindow(q.From.Add(-safety.VentsStillMinutes * time.Minute))).Expected
	if at = instant.Later(at, ph.From); at.After(q.From) {
		return
	}
	text := fmt.Sprintf("Before you sleep: the grate should read %s, and hold it. Within %s leave the vents as they are. Further off? One small move of the %s now, and nobody sleeps before it has held for %s. Then see to these:",
		d.Grate(ph.LevelC), d.Slack(), it.D.FineVent(), d.About(safety.VentsStillMinutes))
	if slices.ContainsFunc(all, func(b *arrange.Placed) bool {
		on := d.At(b.On)
		return !b.Oven && !on.After(at) && at.Sub(on) < coldLook
	}) {
		text += fmt.Sprintf(" Cold food takes %s for up to two hours: don't chase that.", coldTakes(d.Req.Units))
	}
	for k, c := range safety.SleepChecks() {
		text += fmt.Sprintf(" (%d) %s", k+1, c.Sentence)
		if c.Code == "core-alarm" {
			text += it.coreAlarms(q.From, all)
		}
	}
	it.add(schedule.Step{Kind: schedule.StepBeforeSleep, At: at, Phase: ph.Number, Attended: true, Minutes: sleepMinutes, GrateC: ph.LevelC,
		Text: text + " Any of these missing? Somebody stays up.", Why: "nobody watches the fire until " + say.LocalClock(d.Req.Units, q.To)})
}

// sleepMinutes is the work of seeing to it all (assumption).
const sleepMinutes = 15

// coreAlarms says at what each piece that lies on the grate calls.
func (it *Itinerary) coreAlarms(at time.Time, all []*arrange.Placed) string {
	var out []string
	for _, b := range it.lieOn(at, all) {
		out = append(out, fmt.Sprintf("%s at %s", it.name(b), it.D.Core(b.Way.PullC)))
	}
	if len(out) == 0 {
		return ""
	}
	return " Set it: " + strings.Join(out, ", ") + "."
}

// lieOn are the measured batches on the grate at an instant.
func (it *Itinerary) lieOn(at time.Time, all []*arrange.Placed) []*arrange.Placed {
	var out []*arrange.Placed
	for _, b := range all {
		if b.It.TargetC > 0 && b.Phases[0].First >= 0 && !it.D.At(b.On).After(at) && it.D.At(b.Off).After(at) {
			out = append(out, b)
		}
	}
	return out
}

// waking is the first look after a night beside the fire.
func (it *Itinerary) waking(ph *schedule.Phase, q schedule.Interval, all []*arrange.Placed) {
	d := it.D
	text := safety.WakingCheck + fmt.Sprintf(" The grate should be at %s.", d.Grate(ph.LevelC))
	for _, b := range it.lieOn(q.To, all) {
		text += fmt.Sprintf(" Core of %s: done at %s.", it.name(b), d.Core(b.Way.PullC))
	}
	it.add(schedule.Step{Kind: schedule.StepWaking, At: q.To, Phase: ph.Number, Attended: true, Minutes: 5, GrateC: ph.LevelC,
		Text: text + " A cold grate? Say so in the log before you do anything else, with the core.", Why: "nobody knows what the fire did in the night"})
}

// goesToSleep says whether an instant is so shortly before a night beside the fire that
// it is left to settle: the look before sleep is the next one.
func (it *Itinerary) goesToSleep(at time.Time) bool {
	for _, q := range it.D.Unwatched(it.Plan.Phases) {
		if at.Before(q.From) && !at.Before(q.From.Add(-safety.SettleMinutes*time.Minute)) {
			return true
		}
	}
	return false
}
