package revise

import (
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/planner/internal/belief"
)

// findings is what the log shows, and what was assumed where it is silent.
func (v *Revision) findings(l remainder) []schedule.Finding {
	var out []schedule.Finding
	add := func(f schedule.Finding) { out = append(out, f) }
	v.noteServing(l, add)
	v.noteLeftOut(add)
	v.noteFire(add)
	v.noteWeather(l, add)
	v.noteEarly(l, add)
	for i, p := range l.all {
		a := l.bound[i]
		v.noteSlowOver(a, add)
		v.noteSafety(a, p, add)
		switch a.where {
		case cooking:
			if a.condemned {
				break // nothing of its times matters any more
			}
			v.noteRawBeside(a, add)
			v.noteSigns(a, add)
			v.notePlateau(a, add)
			v.noteSilence(a, add)
			v.noteSlowAhead(a, add)
			v.noteUnwatched(a, add)
			v.noteStall(a, add)
			v.noteFalling(a, add)
			v.notePast(a, add)
			v.noteSurprise(a, add)
			v.noteLowHeat(a, add)
			v.noteLate(a, p, add)
		case waiting:
			if chance := p.Readiness().Chance(); v.waitsLate(p) {
				add(about(a, schedule.MayBeLate, fmt.Sprintf("%s: on at %s; odds of being ready at %s: %.0f%%.",
					p.It.Dish.Name, v.clock(v.day.At(p.On)), v.clock(v.serve(a)), 100*chance)))
			}
		case off:
			v.noteUnwatched(a, add)
			if !a.condemned {
				v.noteOff(a, add)
			}
		}
	}
	return out
}

func about(a *liveBatch, code, text string) schedule.Finding {
	return schedule.NewFinding(code, "", text, a.batch.It.Dish.ID)
}

// silence is how long, at least, a probe that gave readings must have been still
// to be worth a word.
const silence = 2 * time.Hour

// unreadLeast is how old a reading may be at the least before another is asked for (assumption).
const unreadLeast = 20 * time.Minute

// noteSilence says that there is no reading, or none any more, and what is
// counted with then.
func (v *Revision) noteSilence(a *liveBatch, add func(schedule.Finding)) {
	if a.believed == nil {
		return
	}
	var lastAt time.Time
	var gap float64
	n := 0
	for _, r := range a.readings {
		if r.Counts() {
			at := a.on.at.Add(instant.Minutes(r.Minute))
			if n > 0 {
				gap = math.Max(gap, at.Sub(lastAt).Minutes())
			}
			lastAt = at
			n++
		}
	}
	name := a.batch.It.Dish.Name
	b := a.believed
	low := b.CoreC(b.Journey.Now, 0.9)
	if !a.on.logged && a.first != nil {
		add(about(a, schedule.OnNotTold, v.onText(a, n > 0)))
	}
	if n == 0 && !a.on.logged && a.first != nil {
		return
	}
	if n == 0 && len(a.readings) > 0 {
		return // what was read, and is left out, is said
	}
	if n == 0 {
		add(about(a, "no-readings", fmt.Sprintf(
			"No reading of %s: this is the first plan's forecast and its slow end is counted with. On a slow day it is only at %s by now and comes off at %s. A reading would tell.",
			name, v.day.Core(low), v.clock(a.on.at.Add(instant.Minutes(a.live.Total().Late))))))
		return
	}
	still := v.now.Sub(lastAt)
	// What is left by the last reading is half over: nobody knows any more how it stands.
	soon := still >= unreadLeast && still.Minutes() >= a.live.Total().Expected-b.Journey.Now
	if still >= silence && still.Minutes() > 1.5*gap || soon && !a.atTarget() {
		add(about(a, "readings-stopped", fmt.Sprintf(
			"The last reading of %s was at %s. Since then it is the forecast alone; on the slow side it is at %s by now. Read it again.",
			name, v.clock(lastAt), v.day.Core(low))))
	}
}

// justDue is how long after a put-on was due nobody needs to have logged it; provesHotK how far below
// its level a grate takes food (judgment).
const (
	justDue    = 20 * time.Minute
	provesHotK = 25 / 1.8
)

// onText asks after a put-on that nobody told of.
func (v *Revision) onText(a *liveBatch, read bool) string {
	name, at := a.batch.It.Dish.Name, v.clock(a.on.at)
	if !read && v.now.Sub(a.on.at) < justDue {
		if level := a.way().LevelC; !v.inOven(a) && v.day.Grill.BurnsCharcoal() {
			return fmt.Sprintf("%s: on the fire by now? It was due at %s. Not yet: put it on once the grate reads %s or so. Then log it (on, with its time).", name, at, v.day.Grate(level-provesHotK))
		}
		return fmt.Sprintf("%s: on by now? It was due at %s. Log it (on, with its time).", name, at)
	}
	if !read {
		return fmt.Sprintf("Is %s on the fire? Nothing was logged: this plan assumes that it went on at %s, as planned. Log it (on, with its time), and read its core.", name, at)
	}
	return fmt.Sprintf("When did %s go on? Nothing was logged: this plan assumes %s, as planned. Log it (on, with its time): its clock and its times hang on that.", name, at)
}

// Figures of a falling core (assumptions): three readings in a row, over at
// least so long, down by so much.
const (
	fallingLeast = 20.0
	fallingK     = 2.5
	fallingTwoK  = 8 / 1.8 // of two readings, which may be of two places
)

// noteFalling says that the core falls though it should be cooking.
func (v *Revision) noteFalling(a *liveBatch, add func(schedule.Finding)) {
	if _, dead := v.grate.dead(); dead || a.believed == nil || len(a.stands) > 0 && a.stands[len(a.stands)-1].open {
		return
	}
	var run []belief.Reading
	for _, r := range slices.Backward(a.readings) {
		if !r.Counts() || len(run) > 0 && r.CoreC <= run[len(run)-1].CoreC {
			break
		}
		run = append(run, r)
	}
	if len(run) < 2 {
		return
	}
	fell, over := run[len(run)-1].CoreC-run[0].CoreC, run[0].Minute-run[len(run)-1].Minute
	from, to := a.on.at.Add(instant.Minutes(run[len(run)-1].Minute)), a.on.at.Add(instant.Minutes(run[0].Minute))
	if v.grate.outWithin(from, to) { // that is said
		return
	}
	if over < fallingLeast || fell < fallingK || len(run) < 3 && fell < fallingTwoK || v.explained(a, run[0]) {
		return
	}
	add(about(a, "core-falling", fmt.Sprintf(
		"Look at the fire, and read the grate: the core of %s has fallen from %s to %s. The fire may have gone out, or the probe sits elsewhere.",
		a.batch.It.Dish.Name, v.day.Core(run[len(run)-1].CoreC), v.day.Core(run[0].CoreC))))
}

// noteOff says what was taken as done though the log does not say so.
func (v *Revision) noteOff(a *liveBatch, add func(schedule.Finding)) {
	if v.noteEaten(a, add) {
		return
	}
	if a.off.logged || a.first == nil || a.unshown() && v.now.Before(v.serve(a)) { // that is asked
		return
	}
	if !v.now.Before(v.serve(a)) {
		add(about(a, "taken-as-done", fmt.Sprintf("Nothing was logged of %s coming off: it was due by %s, and this plan assumes it was served.",
			a.batch.It.Dish.Name, v.clock(a.off.at))))
		return
	}
	if a.batch.Number > 1 && slices.ContainsFunc(v.batches, func(o *liveBatch) bool {
		return o.is(a.batch.It.Dish.ID, a.batch.Number-1) && o.where == off && !o.off.logged
	}) {
		return // that is asked of the batch before it
	}
	if a.batch.It.TargetC == 0 { // it has no core to read
		add(about(a, "no-word", fmt.Sprintf("Is %s off? Nothing was logged; it was due by %s, and this plan assumes it is done. Off: log it.", a.batch.It.Dish.Name, v.clock(a.off.at))))
		return
	}
	add(about(a, "no-word", fmt.Sprintf(
		"Is %s off? Nothing was logged; it was due by %s, and this plan assumes it is done. If it is still on, log a reading of its core before %s, or it is not planned for.",
		a.batch.It.Dish.Name, v.clock(a.off.at), v.clock(v.serve(a)))))
}
