package schedule

import (
	"fmt"
	"math"
	"slices"
	"time"
)

// findings is what the log shows, and what was assumed where it is silent.
func (v *revision) findings(l left) []Finding {
	var out []Finding
	add := func(f Finding) { out = append(out, f) }
	v.noteServing(add)
	v.noteFire(add)
	v.noteEarly(l, add)
	for i, p := range l.all {
		a := l.bound[i]
		v.noteSafety(a, p, add)
		switch a.where {
		case cooking:
			if a.condemned {
				break // nothing of its times matters any more
			}
			v.noteProbe(a, add)
			v.noteSilence(a, add)
			v.noteStall(a, add)
			v.noteFalling(a, add)
			v.noteLate(a, p, add)
		case waiting:
			if chance := p.readiness().chance(); chance < v.day.req.Confidence-lateWorth {
				add(about(a, mayBeLate, Warning, fmt.Sprintf("%s: on at %s; the chance to be ready at %s is about %.0f %%.",
					p.it.dish.Name, v.clock(v.day.at(p.on)), v.clock(v.serve(a)), 100*chance)))
			}
		case off:
			if !a.condemned {
				v.noteOff(a, add)
			}
		}
	}
	return out
}

func about(a *afoot, code, severity, text string) Finding {
	return Finding{Code: code, Severity: severity, Dishes: []string{a.batch.it.dish.ID}, Text: text}
}

// probeTexts say what a doubtful reading is likely to be, and what to do.
var probeTexts = map[string]string{
	probeInAir:   "shows the air of the grill or the grate, not the meat: the probe has come out or touches metal. Push it into the thickest part",
	probeFellOut: "shows the air outside: the probe has fallen out. Put it back into the thickest part",
	probeHot:     "is warmer than the meat can be by now: the probe sits near a bone, in fat or near the surface. Move it to the thickest part",
	probeCold:    "is colder than the meat can be: the probe was moved, or touches a cold piece. Put it into the thickest part",
}

// noteProbe names readings that are not believed, the last of each sort.
func (v *revision) noteProbe(a *afoot, add func(Finding)) {
	last, count := map[string]reading{}, map[string]int{}
	var order []string
	for _, r := range a.readings {
		if r.counts() {
			continue
		}
		if count[r.doubt] == 0 {
			order = append(order, r.doubt)
		}
		last[r.doubt] = r
		count[r.doubt]++
	}
	for _, doubt := range order {
		r := last[doubt]
		text := fmt.Sprintf("%s: the reading of %s at %s %s. It is left out.", a.batch.it.dish.Name, v.day.core(r.coreC),
			v.clock(a.on.at.Add(minutes(r.minute))), probeTexts[doubt])
		if n := count[doubt]; n > 1 {
			text += fmt.Sprintf(" So are %d others like it.", n-1)
		}
		add(about(a, doubt, Warning, text))
	}
}

// silence is how long, at least, a probe that gave readings must have been still
// to be worth a word.
const silence = 2 * time.Hour

// noteSilence says that there is no reading, or none any more, and what is
// counted with then.
func (v *revision) noteSilence(a *afoot, add func(Finding)) {
	if a.believed == nil {
		return
	}
	var lastAt time.Time
	var gap float64
	n := 0
	for _, r := range a.readings {
		if r.counts() {
			at := a.on.at.Add(minutes(r.minute))
			if n > 0 {
				gap = math.Max(gap, at.Sub(lastAt).Minutes())
			}
			lastAt = at
			n++
		}
	}
	name := a.batch.it.dish.Name
	b := a.believed
	low := b.between(b.paceSoFar(0.9), func(p *path) float64 { return p.nowC })
	if n == 0 {
		add(about(a, "no-readings", Info, fmt.Sprintf(
			"No reading of %s: this is the first plan's forecast and its slow end is counted with. On a slow day it is only at %s by now and comes off at %s. A reading would tell.",
			name, v.day.core(low), v.clock(a.on.at.Add(minutes(a.live.total().late))))))
		return
	}
	still := v.now.Sub(lastAt)
	if still >= silence && still.Minutes() > 1.5*gap {
		add(about(a, "readings-stopped", Info, fmt.Sprintf(
			"The last reading of %s was at %s. Since then it is the forecast alone; on the slow side it is at %s by now. Read it again.",
			name, v.clock(lastAt), v.day.core(low))))
	}
}

// Figures of a falling core (assumptions): three readings in a row, over at
// least so long, down by so much.
const (
	fallingLeast = 20.0
	fallingK     = 2.5
)

// noteFalling says that the core falls though it should be cooking.
func (v *revision) noteFalling(a *afoot, add func(Finding)) {
	if _, dead := v.grate.dead(); dead || a.believed == nil || len(a.stands) > 0 && a.stands[len(a.stands)-1].open {
		return
	}
	var run []reading
	for _, r := range slices.Backward(a.readings) {
		if !r.counts() || len(run) > 0 && r.coreC <= run[len(run)-1].coreC {
			break
		}
		run = append(run, r)
	}
	if len(run) < 3 || run[0].minute-run[len(run)-1].minute < fallingLeast || run[len(run)-1].coreC-run[0].coreC < fallingK {
		return
	}
	add(about(a, "core-falling", Warning, fmt.Sprintf(
		"The core of %s has fallen from %s to %s. Look at the fire: it may have gone out.",
		a.batch.it.dish.Name, v.day.core(run[len(run)-1].coreC), v.day.core(run[0].coreC))))
}

// noteOff says what was taken as done though the log does not say so.
func (v *revision) noteOff(a *afoot, add func(Finding)) {
	if a.off.logged || a.first == nil {
		return
	}
	if !v.now.Before(v.serve(a)) {
		add(about(a, "taken-as-done", Info, fmt.Sprintf("No word that %s came off: it was due by %s and is taken as served.",
			a.batch.it.dish.Name, v.clock(a.off.at))))
		return
	}
	add(about(a, "no-word", Warning, fmt.Sprintf(
		"Is %s off? There is no word of it; it was due by %s and is taken as done. If it is still on, log a reading of its core before %s, or it is not planned for.",
		a.batch.it.dish.Name, v.clock(a.off.at), v.clock(v.serve(a)))))
}
