package revise

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/belief"
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
	_, _, apart := v.oneIsDone(a) // the warmer of two pieces comes off, and is no probe read wrong
	for _, s := range a.signs {
		code := v.codeOf(a, s)
		if code == "" || code == schedule.ProbeHot && (apart || a.overtaken(s) || s.Leap && s.Index < len(a.readings)-1) || v.putRight(a, code, s) && v.now.Sub(a.on.at.Add(instant.Minutes(s.Minute))) > oldSign {
			continue
		}
		if code == schedule.FrozenMiddle && a.thawed(s) {
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
		switch {
		case k.n == 2 && k.code != schedule.FrozenMiddle:
			text += " So is one other like it."
		case k.n > 2 && k.code != schedule.FrozenMiddle:
			text += fmt.Sprintf(" So are %d others like it.", k.n-1)
		}
		add(about(a, k.code, text))
	}
}

// oldSign is how long a probe that was put right is worth a word (assumption).
const oldSign = time.Hour

// harmlessSigns are the codes of a probe that was read wrong: a reading after it that counts
// shows that this is over.
var harmlessSigns = []string{schedule.ProbeFellOut, schedule.ProbeInAir}

// putRight says whether a probe that had come out was pushed back since, by what it showed.
func (v *Revision) putRight(a *liveBatch, code string, s surprise.Verdict) bool {
	if !slices.Contains(harmlessSigns, code) || s.Index+1 >= len(a.readings) {
		return false
	}
	return slices.ContainsFunc(a.readings[s.Index+1:], func(r belief.Reading) bool { return r.Counts() })
}

// overtaken says of a reading that was too warm to be the core that the core has come to it since.
func (a *liveBatch) overtaken(s surprise.Verdict) bool {
	return s.Index < len(a.readings) && slices.ContainsFunc(a.readings[s.Index+1:], func(r belief.Reading) bool {
		return r.Counts() && r.CoreC >= a.readings[s.Index].CoreC
	})
}

// thawed says of a reading of ice that the core was read above the refrigerator since.
func (a *liveBatch) thawed(s surprise.Verdict) bool {
	return s.Index < len(a.readings) && slices.ContainsFunc(a.readings[s.Index+1:], func(r belief.Reading) bool {
		return r.Counts() && r.CoreC > safety.DangerLowC
	})
}

// codeOf is the code of a surprise; none for a piece that is just so slow or so fast.
func (v *Revision) codeOf(a *liveBatch, s surprise.Verdict) string {
	main := s.Main()
	switch {
	case s.Settled:
		return schedule.ReadingSettled
	case s.Taken == "" && s.Chance(surprise.Warm) >= surprise.AskFrom:
		return schedule.WentOnWarm
	case s.Taken == "" && s.Chance(surprise.Fire) >= surprise.AliveFrom:
		return schedule.ReadingOpen
	case s.Chance(surprise.Frozen) >= surprise.AskFrom:
		return schedule.FrozenMiddle
	case s.Chance(surprise.Unit) >= surprise.AskFrom:
		return schedule.ReadingUnit
	case s.Leap:
		return schedule.ProbeHot
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
		text := fmt.Sprintf("Was %s meant for %s? The reading of %s does not fit, %s does. Log it again in the right unit.", v.meant(s), name, read, v.meant(s))
		if s.Chance(surprise.Out) >= surprise.AskFrom {
			text += fmt.Sprintf(" If it does show %s, the probe has come out into the air: push it back and log that.", v.day.Core(s.CoreC))
		}
		return text + " It is ignored until then."
	case schedule.WentOnWarm:
		return fmt.Sprintf("Is the probe in the middle of %s? It shows %s. If that is true, it was out of the refrigerator for many hours, beyond the published 2 hr: do not serve it. If not, push the probe into the middle and log that.", name, read)
	case schedule.FrozenMiddle:
		grate := fmt.Sprintf("the grate at %s", v.day.Grate(unit.FToC(300)))
		if v.grate.levelAt(v.now, v.plannedLevel) >= unit.FToC(300)-offLevelK {
			grate = "a hotter grate"
		}
		text := fmt.Sprintf("%s is still frozen in the middle, by %s. Leave it on, and give it more heat: %s, or an oven at %s now. It takes hours longer. At the end measure it in three places. What counts is how long its middle is between 40 and 140 °F (4 and 60 °C).",
			name, read, grate, v.day.Grate(unit.FToC(325)))
		if s.Chance(surprise.Unit) >= surprise.AskFrom {
			text += fmt.Sprintf(" Or was %s meant? Then log it again in the right unit.", v.meant(s))
		}
		return text
	case schedule.ReadingOther:
		return fmt.Sprintf("Was %s read in another dish? It fits %s, and %s should be at %s by now. That reading is ignored: measure %s again.", read, otherName(s), name, v.day.Core(s.ForetoldC), name)
	}
	if low, ok := v.colderThan(a, s); ok && code == schedule.ProbeHot {
		return fmt.Sprintf("%s: leave it on. It showed %s, but %s at %s, and it needs %s everywhere: the coldest place counts. Shield what is done with foil, turn the colder side toward the coals, and measure the coldest place again in 10 min (coldest).",
			name, read, v.day.Core(low.C), v.clock(low.At), v.day.Core(a.leastC()))
	}
	if s.Leap {
		return fmt.Sprintf("%s: measure it now at two more places, in the middle and away from bone and fat, and log what they read. %s is early: about %s was expected. If they show it too, it is done; until then leave it on, and the vents as they are.",
			name, read, v.day.Core(s.ForetoldC))
	}
	or := ""
	if s.Chance(surprise.Dish) >= surprise.AskFrom {
		or = fmt.Sprintf(" Or %s was read: it fits that.", otherName(s))
	}
	if or == "" && code == schedule.ProbeCold && v.othersOn(a) {
		or = " Or was another dish read?"
	}
	so := probeTexts[code]
	if v.putRight(a, code, s) { // nothing is to be done
		so, _, _ = strings.Cut(so, ". ")
		or += " By what it showed since, it is in the meat again."
	}
	return fmt.Sprintf("%s: the reading of %s %s.%s That reading is ignored.", name, read, so, or)
}

// colderThan is the newest reading that counts of a piece of which the coldest place does, if it
// is colder than one that surprises, and shortly after it.
func (v *Revision) colderThan(a *liveBatch, s surprise.Verdict) (schedule.Entry, bool) {
	n := len(a.readings)
	if !a.colder || n == 0 || n > len(a.cores) || !a.readings[n-1].Counts() || a.readings[n-1].CoreC >= s.CoreC || s.Index >= n-1 {
		return schedule.Entry{}, false
	}
	return a.cores[n-1], a.readings[n-1].Minute-s.Minute <= placesFor.Minutes()
}

// othersOn says whether another dish is on the fire, which may have been read instead.
func (v *Revision) othersOn(a *liveBatch) bool {
	return slices.ContainsFunc(v.batches, func(o *liveBatch) bool {
		return o.where == cooking && o.batch.It.Dish.ID != a.batch.It.Dish.ID
	})
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
	name := a.batch.It.Dish.Name
	since := v.clock(a.on.at.Add(instant.Minutes(s.Since.Earliest)))
	fire, but := fmt.Sprintf("the fire went out, perhaps as early as %s", since), ""
	if s.Since.To < a.journey.Now {
		fire += ", and was lit again"
		but = " That the grate is hot now says nothing of the hours before."
	}
	other := likeliestBut(s, surprise.Fire)
	if at, warmer := a.warmerAt(s); warmer.CoreC > 0 && other == surprise.Pace {
		other = surprise.Place
		read += fmt.Sprintf(", and %s at %s", v.day.Core(warmer.CoreC), v.clock(at))
	}
	push := fmt.Sprintf("push the probe through the whole of %s and log the coldest place (coldest).", name)
	do := "Look at the fire now, and read the grate. Then " + push
	if _, ok := v.grate.lastRead(v.now, lookedAt); ok {
		do = say.Upper(push)
	}
	asks := ""
	if s.Chance(surprise.Unit) >= surprise.AskFrom {
		asks = fmt.Sprintf(" Was %s meant? Then log it again in the right unit.", v.meant(s))
		if other == surprise.Unit {
			return fmt.Sprintf("%s %s showed %s, and should be at %s. If that is true, %s.%s %s%s", do, name, read, v.day.Core(s.ForetoldC), fire, but, clockRuns, asks)
		}
	}
	first, second := v.causeText(s, other), fire
	if s.Main() == surprise.Fire {
		first, second = fire, first
	}
	return fmt.Sprintf("%s It showed %s, and should be at %s: either %s, or %s.%s %s%s", do, read, v.day.Core(s.ForetoldC), first, second, but, clockRuns, asks)
}

// warmerAt is a warmer reading of the same moment: then the colder is no pace of the cook.
func (a *liveBatch) warmerAt(s surprise.Verdict) (time.Time, belief.Reading) {
	const moment, apartK = 10.0, 6 / 1.8
	for _, r := range a.readings {
		if math.Abs(r.Minute-s.Minute) <= moment && r.CoreC > s.CoreC+apartK {
			return a.on.at.Add(instant.Minutes(r.Minute)), r
		}
	}
	return time.Time{}, belief.Reading{}
}

// clockRuns says which clock counts as long as two explanations are alive.
const clockRuns = "Until that is known, the clock of its time without heat runs as if the fire had gone out."

// lookedAt is for how long a reading of the grate stands for a look at it.
const lookedAt = 30 * time.Minute

// causeText says what a surprise may be, with the name of the dish that was read instead.
func (v *Revision) causeText(s surprise.Verdict, c surprise.Cause) string {
	if c == surprise.Dish {
		return otherName(s) + " was read"
	}
	return causeTexts[c]
}

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
	if c := meantC(s); c > s.CoreC {
		return fmt.Sprintf("%.0f °C (%.0f °F)", c, unit.Temperature(c).Fahrenheit())
	}
	return fmt.Sprintf("%.0f °F (%.0f °C)", s.CoreC, meantC(s))
}

// meantC is the core that a reading shows in the other unit, degC: of the two ways to mistake
// one, that which fits what was foretold.
func meantC(s surprise.Verdict) float64 {
	asC, asF := unit.Temperature(s.CoreC).Fahrenheit(), unit.FToC(s.CoreC)
	if math.Abs(asC-s.ForetoldC) < math.Abs(asF-s.ForetoldC) {
		return asC
	}
	return asF
}

func otherName(s surprise.Verdict) string {
	for _, e := range s.Causes {
		if e.Cause == surprise.Dish {
			return e.Name
		}
	}
	return "another dish"
}
