package revise

import (
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/steer"
	"example.com/cookday/schedule/planner/internal/belief"
	"example.com/cookday/schedule/planner/internal/surprise"
)

// notePlateau says that a core stands near its target, and what decides then.
func (v *Revision) notePlateau(a *liveBatch, add func(schedule.Finding)) {
	b := a.believed
	if b == nil || !b.Creep.On() {
		return
	}
	name, target := a.batch.It.Dish.Name, v.day.Core(b.Journey.TargetC)
	if !b.Stalls {
		add(about(a, schedule.Plateau, fmt.Sprintf("Measure %s at other places now, away from bone, and read the grate: it has stood near %s for %s, and this cut has no stall. Done is what its coldest place says: %s.",
			name, v.day.Core(b.Creep.ToC), v.span(b.Creep.ForMinutes), target)))
		return
	}
	text := fmt.Sprintf("Test %s for tenderness now: tenderness decides, not the number. It has stood near %s for %s", name, v.day.Core(b.Creep.ToC), v.span(b.Creep.ForMinutes))
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
	if b == nil || len(b.Nodes) == 0 || b.Creep.On() || a.plain != nil {
		return
	}
	last := b.Nodes[len(b.Nodes)-1]
	if v.explained(a, last) {
		return // one cause, one finding
	}
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
	add(about(a, schedule.SlowCook, fmt.Sprintf("%s. Then check that the probe of %s sits in the thickest part, and its weight. %s at %s is slower than 19 in 20 such cooks; these times allow for it.",
		first, a.batch.It.Dish.Name, v.day.Core(last.CoreC), v.clock(a.on.at.Add(instant.Minutes(last.Minute))))))
}

// explained says whether a finding says already what the reading of a node may be.
func (v *Revision) explained(a *liveBatch, last belief.Reading) bool {
	return slices.ContainsFunc(a.signs, func(s surprise.Verdict) bool {
		return !s.Settled && math.Abs(s.Minute-last.Minute) < 1 && v.codeOf(a, s) != ""
	})
}

// notePast says that a piece is at its target or past it.
func (v *Revision) notePast(a *liveBatch, add func(schedule.Finding)) {
	if _, waits := a.waitsForSear(); waits || !a.atTarget() {
		return
	}
	if a.awaitsOthers() {
		add(about(a, schedule.PastTarget, v.othersText(a)))
		return
	}
	it, core := a.batch.It, a.readAt()
	text := fmt.Sprintf("Take %s off now: it is at %s, and its target is %s.", it.Dish.Name, v.day.Core(core), v.day.Core(a.way().PullC))
	if at := a.readWhen(); v.now.Sub(at) > stillThere {
		text = fmt.Sprintf("Is %s off? It was read at %s at %s, and its target is %s. Log when it came off, or take it off now.", it.Dish.Name, v.day.Core(core), v.clock(at), v.day.Core(a.way().PullC))
	}
	if len(a.cores) == 1 {
		text += " How long it has been there is not known."
	}
	if a.way().Sear {
		if a.journey != nil && a.journey.TargetC < a.way().PullC-sameC && v.now.Sub(a.readWhen()) <= stillThere {
			text = fmt.Sprintf("Take %s off now: it is at %s, and comes off for the sear at %s.", it.Dish.Name, v.day.Core(core), v.day.Core(a.journey.TargetC))
		}
		text += " Sear it for less, or leave the sear out: a sear adds to that."
	} else if it.Cut.Style == cut.Tough {
		text += " Test it for tenderness: that decides, not the number."
	} else if d := donenessAt(it.Cut, core); d != "" {
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

// lowHeatBack is how far back a fire that was out is the reason of a cool grate.
const lowHeatBack = time.Hour

// leftAlone says whether nothing is to be done about a grate that is a little cool: it is in its band as it was read, or the food
// that was put on holds it down.
func (v *Revision) leftAlone() bool {
	if v.steered == nil || v.steered.advice.Do != steer.Leave || v.grate.sinks() {
		return false
	}
	g, ok := v.grate.lastRead(v.now, oldReading)
	return v.steered.advice.InDip || ok && !g.gauge && g.c >= v.grate.levelAt(v.now, v.plannedLevel)-offLevelK
}

// noteLowHeat says that the air beside a raw piece is too cool to let it be.
func (v *Revision) noteLowHeat(a *liveBatch, add func(schedule.Finding)) {
	if _, waits := a.waitsForSear(); waits || v.grate.outWithin(v.now.Add(-lowHeatBack), v.now) { // that is said
		return
	}
	minutes, air := v.lowHeatFor(a)
	if minutes < safety.LowHeatMinutes {
		return
	}
	name, low := a.batch.It.Dish.Name, v.day.Grate(safety.LowHeatC)
	if n := len(v.grate.readings); n > 0 && v.now.Sub(v.grate.readings[n-1].at) > recent {
		add(about(a, schedule.LowHeat, fmt.Sprintf("Read the grate now and log it: it was last read at %s, at %s. Below %s since, %s has too little heat, and is not at 140 °F (60 °C) yet. Still below: give the fire more air or fuel.",
			v.clock(v.grate.readings[n-1].at), v.day.Grate(v.grate.readings[n-1].c), low, name)))
		return
	}
	if air >= safety.HalfHeatC && v.leftAlone() {
		add(about(a, schedule.LowHeat, fmt.Sprintf("Read the grate again within 30 min, and log it: it has been below %s for %s, at about %s, and %s is not at 140 °F (60 °C) yet. It is in its band, or cold food holds it down: leave the vents. Lower by then: feed it.",
			low, v.span(minutes), v.day.Grate(air), name)))
		return
	}
	add(about(a, schedule.LowHeat, fmt.Sprintf("%s: the grate has been below %s for %s, at about %s, and %s is not at 140 °F (60 °C) yet.",
		v.moreHeat(), low, v.span(minutes), v.day.Grate(air), name)))
}

// moreHeat is what a fire wants that gives too little, in a few words and with a count: as it is advised, else fuel.
func (v *Revision) moreHeat() string {
	if v.steered != nil {
		switch a := v.steered.advice; a.Do {
		case steer.Move:
			return "Give the fire more air now"
		case steer.AddLit:
			return fmt.Sprintf("Light %d more coals now", a.Count)
		}
	}
	return "Feed the fire now, " + v.feedShort(&v.first)
}
