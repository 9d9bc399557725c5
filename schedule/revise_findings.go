package schedule

import (
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule/internal/fire"
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
			v.noteProbe(a, add)
			v.noteSilence(a, add)
			v.noteStall(a, add)
			v.noteFalling(a, add)
			v.noteLate(a, p, add)
		case waiting:
			if chance := p.readiness().chance(); chance < v.day.req.Confidence-lateWorth {
				add(about(a, mayBeLate, Warning, fmt.Sprintf("%s goes on at %s; the chance that it is ready at %s is about %.0f %%.",
					p.it.dish.Name, v.clock(v.day.at(p.on)), v.clock(v.serve(a)), 100*chance)))
			}
		case off:
			v.noteOff(a, add)
		}
	}
	return out
}

func about(a *afoot, code, severity, text string) Finding {
	return Finding{Code: code, Severity: severity, Dishes: []string{a.batch.it.dish.ID}, Text: text}
}

// noteServing says that the plan is for a later hour, or counts with less.
func (v *revision) noteServing(add func(Finding)) {
	if v.try.aside {
		add(Finding{Code: "stands-in-the-way", Severity: Warning, Text: "What is on the grate is not done in time for the rest to follow. The plan for the rest takes it that it makes room now: into the oven, or to the side."})
	}
	switch {
	case v.try.later > 0:
		add(Finding{Code: "served-later", Severity: Warning, Text: fmt.Sprintf(
			"What is left cannot be ready by %s. The earliest that works is %s: the plan is for that.",
			v.clock(v.day.end.Add(-time.Duration(v.try.later)*time.Minute)), v.clock(v.day.end))})
	case v.try.halfway:
		add(Finding{Code: "less-sure", Severity: Warning, Text: fmt.Sprintf(
			"Serving at %s holds only if things go as expected: there is no time left for a slow piece. See the chance of each dish.", v.clock(v.day.end))})
	}
}

// noteFire says what the thermometers show of the fire.
func (v *revision) noteFire(add func(Finding)) {
	if o, dead := v.grate.dead(); dead {
		if v.now.Sub(o.from) >= 0 {
			text := fmt.Sprintf("The fire has been out since about %s. The plan takes it that you rebuild it now, with lit coals, or move the food to the oven.", v.clock(o.from))
			if o.seen {
				text = fmt.Sprintf("The grate has been falling since about %s and is at %s: the fire is dying or choked by its ash. The plan takes it that you rebuild it now, with lit coals.",
					v.clock(o.from), v.day.grate(v.grate.readings[len(v.grate.readings)-1].c))
			}
			add(Finding{Code: "fire-died", Severity: Danger, Text: text})
		}
	} else if air := v.grate.ahead(v.now, v.plannedLevel); len(v.grate.readings) > 0 {
		level := v.grate.levelAt(v.now, v.plannedLevel)
		if off := air - level; math.Abs(off) > offLevelK {
			way := "above"
			if off < 0 {
				way = "below"
			}
			add(Finding{Code: "grate-off-level", Severity: Warning, Text: fmt.Sprintf(
				"The grate runs at about %s, %s its level of %s. The times take it that it stays so.", v.day.grate(air), way, v.day.grate(level))})
		}
	}
	v.noteGauge(add)
}

// noteGauge says how far the gauge is off where the grate was read beside it.
func (v *revision) noteGauge(add func(Finding)) {
	if math.IsNaN(v.grate.offsetK) {
		return
	}
	level := v.grate.levelAt(v.now, v.plannedLevel)
	want := fire.GaugeC(v.day.grill, level, v.day.air.AirC) - level
	if math.Abs(v.grate.offsetK-want) < offsetWorthK {
		return
	}
	sense := "more"
	if v.grate.offsetK < 0 {
		sense = "less"
	}
	add(Finding{Code: "gauge-offset", Severity: Info, Path: "grill.gauge_offset", Text: fmt.Sprintf(
		"The lid gauge shows %.0f F (%.0f °C) %s than the grate. Go by the grate; for the next plan give that as the gauge's offset.",
		math.Abs(v.grate.offsetK)*1.8, math.Abs(v.grate.offsetK), sense)})
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
	low := b.between(b.quantile(0.9), func(p *path) float64 { return p.nowC })
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

// What makes a stall (the model's own measure of a slow core is 6 F an hour).
const (
	stallSlowKMin = 6 / 1.8 / 60
	stallLeast    = 45 * time.Minute
)

// stalled is the code of a core that stands still and is no fault.
const stalled = "stall"

// stands says how long the last readings have stood still in the range of the stall.
func (v *revision) stands(a *afoot) (run []reading, ok bool) {
	if a.believed == nil || !a.believed.stalls {
		return nil, false
	}
	for _, r := range slices.Backward(a.readings) {
		if !r.counts() {
			continue
		}
		if r.coreC < stallLowC || r.coreC > stallHighC {
			break
		}
		if len(run) > 0 && run[0].coreC-r.coreC > stallSlowKMin*(run[0].minute-r.minute)+probeErrorK {
			break
		}
		run = append(run, r)
	}
	return run, len(run) > 1 && minutes(run[0].minute-run[len(run)-1].minute) >= stallLeast
}

// noteStall says that a core that stands still is the stall and no fault.
func (v *revision) noteStall(a *afoot, add func(Finding)) {
	run, ok := v.stands(a)
	if !ok {
		return
	}
	t := a.live.total()
	add(about(a, stalled, Info, fmt.Sprintf(
		"%s has stood near %s for %s. That is the stall: water leaving the surface takes the heat. It is no fault of fire or probe, and it does not make the cook late: off at about %s, between %s and %s.",
		a.batch.it.dish.Name, v.day.core(run[0].coreC), v.span(run[0].minute-run[len(run)-1].minute), v.clock(a.on.at.Add(minutes(t.expected))),
		v.clock(a.on.at.Add(minutes(t.early))), v.clock(a.on.at.Add(minutes(t.late))))))
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

// noteLate says that a piece on the grate may miss its serving, with the chance
// of it; it is late only if it is expected after it.
func (v *revision) noteLate(a *afoot, p *placed, add func(Finding)) {
	code := v.lateness(a, p)
	if code == "" {
		return
	}
	t, rest := a.live.total(), p.it.restMinutes()
	add(about(a, code, Warning, fmt.Sprintf(
		"%s is expected off at %s and, rested, ready at %s; on a slow day at %s. The chance for %s is about %.0f %%.",
		a.batch.it.dish.Name, v.clock(a.on.at.Add(minutes(t.expected))), v.clock(a.on.at.Add(minutes(t.expected+rest))),
		v.clock(a.on.at.Add(minutes(t.late+rest))), v.clock(v.serve(a)), 100*p.readiness().chance())))
}

// Codes of a piece that may not be ready.
const (
	late      = "late"        // expected after its serving
	mayBeLate = "may-be-late" // expected before it, but not at the asked chance
)

func (v *revision) lateness(a *afoot, p *placed) string {
	switch {
	case p.on-a.live.total().expected-p.it.restMinutes() < float64(p.it.serve):
		return late
	case p.readiness().chance() < v.day.req.Confidence-lateWorth:
		return mayBeLate
	}
	return ""
}

// early is the code of a piece that will have to wait for long.
const early = "early"

// noteEarly says how a piece that is done long before its serving waits, and
// until when it may.
func (v *revision) noteEarly(l left, add func(Finding)) {
	i, why := v.troubled(l)
	if why != early {
		return
	}
	a, p := l.bound[i], l.all[i]
	off := a.on.at.Add(minutes(a.live.total().expected))
	text := fmt.Sprintf("%s is expected off at %s, %s before it is served.", p.it.dish.Name, v.clock(off), v.span(v.serve(a).Sub(off).Minutes()))
	if p.hold >= 0 {
		o := p.options[p.hold]
		until := off.Add(minutes(o.minutes))
		if until.Before(v.serve(a)) {
			text += fmt.Sprintf(" It can be held until about %s, which is too short.", v.clock(until))
		} else {
			text += " It can be held until then."
		}
		text += " " + v.day.holdText(p, o, p.it.dish.Name)
	}
	add(about(a, early, Info, text))
}

// lateWorth is by how much a chance may miss what was asked before it is said.
const lateWorth = 0.01

// noteOff says what was taken as done though the log does not say so.
func (v *revision) noteOff(a *afoot, add func(Finding)) {
	if a.off.logged || a.first == nil {
		return
	}
	add(about(a, "taken-as-done", Info, fmt.Sprintf(
		"The log does not say that %s came off; it was due by %s and is taken as done. If it is still on, log a reading.",
		a.batch.it.dish.Name, v.clock(a.off.at))))
}
