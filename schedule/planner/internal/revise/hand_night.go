package revise

import (
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/steer"
)

// night is how sure a fire is that burns while people sleep.
type night struct {
	to    time.Time // end of the sleep; zero for none that is near
	share float64   // of the guesses that keep the grate between its alarms until then, untouched
}

// beforeSleep is from when on a night is told of; surelyOfTen is a fire that one sleeps beside with no more words
// (assumptions).
const (
	beforeSleep = 3 * time.Hour
	surelyOfTen = 8
)

// nightOf looks at the next sleep that this fire burns through.
func (v *Revision) nightOf(f *steer.Fire) night {
	for _, q := range v.day.Unwatched(v.first.Phases) {
		if q.From.After(v.now) && q.From.Sub(v.now) <= beforeSleep {
			return night{q.To, f.Share((safety.AlarmLowC+safety.AlarmHighC)/2, (safety.AlarmHighC-safety.AlarmLowC)/2, q.To.Sub(v.now).Minutes())}
		}
	}
	return night{}
}

// noteNight says before a sleep how sure its fire is.
func (v *Revision) noteNight(add func(schedule.Finding)) {
	if v.steered == nil || v.steered.night.to.IsZero() {
		return
	}
	n := v.steered.night
	in := int(math.Round(10 * n.share))
	many := fmt.Sprintf("about %d of ten", in)
	if in == 0 {
		many = "hardly one of ten"
	}
	text := fmt.Sprintf("Untouched until %s, %s fires like this one stay between the alarms of %s and %s.", v.clock(n.to), many, v.day.Grate(safety.AlarmLowC), v.day.Grate(safety.AlarmHighC))
	if in < surelyOfTen {
		text += " Count on being woken, or finish in the oven."
	}
	add(schedule.NewFinding("night-sure", "", text))
}

// maySleep says whether the fire wants nobody out of bed: the grate lies between its alarms, no fat may burn, its coals get air,
// and nothing over it is between 40 and 140 F on too cool a grate.
func (v *Revision) maySleep() bool {
	a := v.steered.advice
	if a.Do == steer.LookFirst || a.Why == steer.VentsShut || a.Now.Middle < safety.AlarmLowC || a.Now.Middle > safety.AlarmHighC {
		return false
	}
	return a.Now.Middle >= safety.LowHeatC || !v.rawOnFire()
}

// rawOnFire says whether something lies over the fire that is not surely above 140 F.
func (v *Revision) rawOnFire() bool {
	return slices.ContainsFunc(v.batches, func(a *liveBatch) bool { return a.where == cooking && !v.inOven(a) && !v.hotInside(a) })
}

// settles says whether an instant is so near to a sleep beside the fire that its vents stay as they are.
func (v *Revision) settles(at time.Time) bool {
	for _, q := range v.day.Unwatched(v.first.Phases) {
		if at.Before(q.From) && q.From.Sub(at) <= safety.VentsStillMinutes*time.Minute {
			return true
		}
	}
	return false
}

// staysForNight says whether a step before a sleep beside the fire is still to be done: nobody is asleep yet. A feed of the
// evening that was logged is done by that.
func (v *Revision) staysForNight(s schedule.Step) bool {
	if s.Kind != schedule.StepBeforeSleep && s.Kind != schedule.StepRefuel || !v.anyCooking() {
		return false
	}
	for _, q := range v.day.Unwatched(v.first.Phases) {
		if q.From.After(v.now) && !s.At.After(q.From) && q.From.Sub(s.At) <= beforeSleep {
			return true
		}
	}
	return false
}
