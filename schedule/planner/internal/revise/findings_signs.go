package revise

import (
	"fmt"
	"math"
	"strings"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/surprise"
	"example.com/cookday/schedule/unit"
)

// signCodes are the codes of what a surprising reading is taken for.
var signCodes = map[surprise.Cause]string{
	surprise.Unit: schedule.ReadingUnit, surprise.Warm: schedule.WentOnWarm, surprise.Frozen: schedule.FrozenMiddle,
	surprise.Out: schedule.ProbeFellOut, surprise.Air: schedule.ProbeInAir, surprise.Dish: schedule.ReadingOther,
}

// noteSigns names readings that are not as foretold: what each may be, what tells that, and
// what is counted with. Of several that are alike the last is named.
func (v *Revision) noteSigns(a *liveBatch, add func(schedule.Finding)) {
	type kind struct {
		code string
		sign surprise.Verdict
		n    int
	}
	var kinds []kind
	for _, s := range a.signs {
		code := v.codeOf(a, s)
		if code == "" {
			continue
		}
		at := -1
		for i := range kinds {
			if kinds[i].code == code {
				at = i
			}
		}
		if at < 0 {
			kinds = append(kinds, kind{code, s, 1})
			continue
		}
		kinds[at].sign, kinds[at].n = s, kinds[at].n+1
	}
	for _, k := range kinds {
		text := v.signText(a, k.code, k.sign)
		if k.n > 1 {
			text += fmt.Sprintf(" So are %d others like it.", k.n-1)
		}
		add(about(a, k.code, text))
	}
}

// codeOf is the code of a surprise; none for a piece that is just so slow or so fast.
func (v *Revision) codeOf(a *liveBatch, s surprise.Verdict) string {
	main := s.Main()
	switch {
	case s.Settled:
		return schedule.ReadingSettled
	case s.Taken == "" && s.Chance(surprise.Warm) >= asksFrom:
		return schedule.WentOnWarm
	case s.Taken == "" && s.Chance(surprise.Fire) >= surprise.AliveFrom:
		return schedule.ReadingOpen
	case s.Chance(surprise.Unit) >= asksFrom:
		return schedule.ReadingUnit
	case s.Taken == surprise.Fire || s.Taken == surprise.Pace:
		return "" // said of the fire, and in the times
	case main == surprise.Place && s.Cold:
		return schedule.ProbeCold
	case main == surprise.Place:
		return schedule.ProbeHot
	}
	return signCodes[main]
}

// signText says it: what to do first, then why.
func (v *Revision) signText(a *liveBatch, code string, s surprise.Verdict) string {
	name, at := a.batch.It.Dish.Name, v.clock(a.on.at.Add(instant.Minutes(s.Minute)))
	read := fmt.Sprintf("%s at %s", v.day.Core(s.CoreC), at)
	switch code {
	case schedule.ReadingOpen:
		return v.openText(a, s, read)
	case schedule.ReadingSettled:
		return fmt.Sprintf("%s: %s was the place of the probe, not the core: what was measured after it says so. The clock of its time without heat is back to what it was.", name, read)
	case schedule.ReadingUnit:
		return fmt.Sprintf("Was %s meant for %s? The reading of %s does not fit, %s does. Log it again in the right unit. It is left out until then.", v.meant(s), name, read, v.meant(s))
	case schedule.WentOnWarm:
		return fmt.Sprintf("Is the probe in the middle of %s? It shows %s. If that is true, it was out of the refrigerator for many hours, beyond the published 2 h: do not serve it. If not, push the probe into the middle and log that.", name, read)
	case schedule.FrozenMiddle:
		return fmt.Sprintf("%s is still frozen in the middle: %s. Leave it on, and give it more heat: the grate at %s, or an oven at %s now. It takes hours longer. What counts is how long its middle is between 40 and 140 F (4.4 and 60 °C).",
			name, read, v.day.Grate(unit.FToC(300)), v.day.Grate(unit.FToC(325)))
	case schedule.ReadingOther:
		return fmt.Sprintf("Was %s read in another dish? It fits %s, and %s was foretold at %s. It is left out: measure %s again.", read, otherName(s), name, v.day.Core(s.ForetoldC), name)
	}
	return fmt.Sprintf("%s: the reading of %s %s. It is left out.", name, read, probeTexts[code])
}

// probeTexts say what a doubtful reading is likely to be, and what to do.
var probeTexts = map[string]string{
	schedule.ProbeInAir:   "shows the air of the grill or the grate, not the meat: the probe has come out or touches metal. Push it into the thickest part",
	schedule.ProbeFellOut: "shows the air outside: the probe has fallen out. Put it back into the thickest part",
	schedule.ProbeHot:     "is warmer than the meat should be by now: the probe sits near a bone, in fat or near the surface. Move it to the thickest part",
	schedule.ProbeCold:    "is colder than it should be: the probe was moved, or touches a cold piece. Put it into the thickest part",
}

// causeTexts say what a surprise may be.
var causeTexts = map[surprise.Cause]string{
	surprise.Place: "the probe sits elsewhere", surprise.Out: "the probe has fallen out", surprise.Air: "the probe is in the air of the grill",
	surprise.Pace: "the cook is just so slow", surprise.Frozen: "it is still frozen in the middle", surprise.Warm: "it went on warm", surprise.Dish: "another dish was read",
}

// openText names the two likeliest explanations, and what tells them apart.
func (v *Revision) openText(a *liveBatch, s surprise.Verdict, read string) string {
	since := v.clock(a.on.at.Add(instant.Minutes(s.Since.Earliest)))
	fire := fmt.Sprintf("the fire went out, perhaps as early as %s", since)
	if s.Since.To < a.journey.Now {
		fire += ", and was lit again"
	}
	other := likeliestBut(s, surprise.Fire)
	if s.Chance(surprise.Unit) >= asksFrom {
		other = surprise.Unit
	}
	says := causeTexts[other]
	if other == surprise.Unit {
		says = fmt.Sprintf("%s was meant", v.meant(s))
	}
	first, second := says, fire
	if s.Main() == surprise.Fire {
		first, second = fire, says
	}
	name := a.batch.It.Dish.Name
	text := fmt.Sprintf("Look at the fire now, and read the grate. Then push the probe through the whole of %s and log the coldest place (coldest). It showed %s, and %s was foretold: %s, or %s.",
		name, read, v.day.Core(s.ForetoldC), first, second)
	return strings.TrimSpace(text) + " Until that is known, the clock of its time without heat runs as if the fire had gone out."
}

// asksFrom is the chance from which a wrong unit, or meat that went on warm, is asked about.
const asksFrom = 0.05

// likeliestBut is the likeliest cause but one.
func likeliestBut(s surprise.Verdict, but surprise.Cause) surprise.Cause {
	for _, e := range s.Causes {
		if e.Cause != but {
			return e.Cause
		}
	}
	return surprise.Place
}

// meant is the reading in the other unit, as the cook would say it.
func (v *Revision) meant(s surprise.Verdict) string {
	asC := s.CoreC*1.8 + 32
	if math.Abs(asC-s.ForetoldC) < math.Abs(unit.FToC(s.CoreC)-s.ForetoldC) {
		return fmt.Sprintf("%.0f °C (%.0f F)", asC, asC*1.8+32)
	}
	return fmt.Sprintf("%.0f F (%.0f °C)", s.CoreC, unit.FToC(s.CoreC))
}

func otherName(s surprise.Verdict) string {
	for _, e := range s.Causes {
		if e.Cause == surprise.Dish {
			return e.Name
		}
	}
	return "another dish"
}

// notePlateau says that a core stands near its target, and what decides then.
func (v *Revision) notePlateau(a *liveBatch, add func(schedule.Finding)) {
	b := a.believed
	if b == nil || !b.Creep.On() {
		return
	}
	name, target := a.batch.It.Dish.Name, v.day.Core(b.Journey.TargetC)
	text := fmt.Sprintf("Test %s for tenderness now: tenderness decides, not the number. It stands near %s for %s", name, v.day.Core(b.Creep.ToC), v.span(b.Creep.ForMinutes))
	if g, ok := v.grate.lastRead(v.now, recent); ok && v.grate.levelAt(v.now, v.plannedLevel)-g.c > offLevelK/2 {
		text += ": the air beside the meat is cooler than meant"
	} else {
		text += ": water still leaves it, or the air beside it is cooler than meant"
	}
	text += fmt.Sprintf(". It may not come to %s at this heat. If it is not tender, wrap it or bring the grate to %s or more.", target, v.day.Grate(hotterC))
	add(about(a, schedule.Plateau, text))
}

// noteSurprise says that a cook is slower than nearly all such cooks: then something is
// not as it was said to be.
func (v *Revision) noteSurprise(a *liveBatch, add func(schedule.Finding)) {
	const slowFrom = 2.0 // standard deviations: 19 in 20 cooks are not as slow
	b := a.believed
	if b == nil || len(b.Nodes) == 0 || b.Creep.On() {
		return
	}
	last := b.Nodes[len(b.Nodes)-1]
	late := last.CoreC < b.Journey.TargetC && last.Minute > a.way().Total().At(1.645)
	if b.Surprise() < slowFrom && !late {
		return
	}
	first := "Measure the air beside the meat"
	if _, ok := v.grate.lastRead(v.now, bridgesGap); ok && !v.grate.gaugeOnly() {
		first = "Look at the grate"
	} else if ok {
		first += ": the grate is probably cooler than the gauge in the lid says"
	}
	add(about(a, schedule.SlowCook, fmt.Sprintf("%s. Then check that the probe of %s sits in the thickest part, and its weight. %s at %s is slower than 19 in 20 such cooks; these times count with it.",
		first, a.batch.It.Dish.Name, v.day.Core(last.CoreC), v.clock(a.on.at.Add(instant.Minutes(last.Minute))))))
}

// notePast says that a piece is at its target or past it.
func (v *Revision) notePast(a *liveBatch, add func(schedule.Finding)) {
	b := a.believed
	if b == nil || b.Rest != nil || len(b.Nodes) == 0 {
		return
	}
	last, it := b.Nodes[len(b.Nodes)-1], a.batch.It
	text := fmt.Sprintf("Take %s off now: it is at %s, and its target is %s.", it.Dish.Name, v.day.Core(last.CoreC), v.day.Core(b.Journey.TargetC))
	if len(b.Nodes) == 1 {
		text += " Since when is not known."
	}
	if a.way().Sear {
		text += " Sear it for less, or leave the sear out: a sear adds to that."
	} else if it.Cut.Style == cut.Tough {
		text += " Test it for tenderness: that decides, not the number."
	} else if d := donenessAt(it.Cut, last.CoreC); d != "" {
		text += fmt.Sprintf(" That is %s.", d)
	}
	add(about(a, schedule.PastTarget, text))
}

// donenessAt is the name of the doneness that a core has come to.
func donenessAt(c cut.Cut, coreC float64) string {
	name := ""
	for _, d := range c.Doneness {
		if coreC >= d.CoreC-1 {
			name = d.Name
		}
	}
	return name
}

// noteLowHeat says that the air beside a raw piece is too cool to let it be.
func (v *Revision) noteLowHeat(a *liveBatch, add func(schedule.Finding)) {
	if _, dead := v.grate.dead(); dead {
		return
	}
	if minutes, air := v.lowHeatFor(a); minutes >= safety.LowHeatMinutes {
		add(about(a, schedule.LowHeat, fmt.Sprintf("Give the fire more air or fuel now: the grate has been below %s for %s, at about %s, and %s is not at 140 F (60 °C) yet.",
			v.day.Grate(safety.LowHeatC), v.span(minutes), v.day.Grate(air), a.batch.It.Dish.Name)))
	}
}
