package revise

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/steer"
	"example.com/cookday/schedule/planner/internal/surprise"
)

// noteFire says what the thermometers show of the fire.
func (v *Revision) noteFire(add func(schedule.Finding)) {
	if !slices.ContainsFunc(v.batches, v.isOverFire) { // it may go out
		if v.steered != nil && v.steered.advice.Do == steer.LookFirst {
			v.noteSteered(add)
		}
		v.noteGauge(add)
		return
	}
	if o, dead := v.grate.dead(); dead && v.airFirst() {
		v.noteSteered(add)
	} else if dead {
		if !o.asked { // else the reading that tells of it does
			text, then := fmt.Sprintf("The fire has been out since about %s.", v.clock(o.from)), " The plan assumes you rebuild it now, with lit coals, or move the food to the oven."
			if _, _, s, any := v.ventsTold(); any && o.seen && !v.grate.readSince(s.from) {
				text = fmt.Sprintf("The fire is taken to be out: both vents were shut at %s, and nobody read the grate since.", v.clock(s.from))
			} else if g, ok := v.grate.lastRead(v.now, bridgesGap); o.seen && (!ok || o.since().Before(o.from)) {
				text = fmt.Sprintf("The fire is out: since about %s, perhaps as early as %s, by what was read since.", v.clock(o.from), v.clock(o.since()))
				if ok && g.c > v.day.Night.AirC+surprise.GlowsK {
					text = fmt.Sprintf("The fire gives hardly any heat: the grate was at %s at %s, and has been too cool since about %s, perhaps since %s.", v.day.Grate(g.c), v.clock(g.at), v.clock(o.from), v.clock(o.since()))
				}
			} else if o.seen && v.grate.levelAt(g.at, v.plannedLevel)-g.c > deadK {
				text = fmt.Sprintf("The fire is out: the grate was at %s at %s.", v.day.Grate(g.c), v.clock(g.at))
			} else if o.seen {
				text = fmt.Sprintf("The grate has been falling since about %s and is at %s: the fire is dying or choked by its ash.",
					v.clock(o.from), v.day.Grate(g.c))
				if then = " The plan assumes you rebuild it now, with lit coals."; v.stillHot() {
					text = fmt.Sprintf("The grate has been falling since about %s and is at %s: the fire is dying, or gets too little air.", v.clock(o.from), v.day.Grate(g.c))
					then = " The plan assumes you feed it now, " + v.feedShort(&v.first) + "; the food stays on."
				}
			}
			if s, ok := v.smotheredFire(); ok && o.seen {
				text, then = v.smotheredText(s), ""
			} else if v.allOpenTold() && o.seen && !v.stillHot() {
				then = " Both vents are open: sweep out the ash first, then add lit coals. The plan assumes you do."
			}
			if v.fireWanted() && !v.noFuel() { // that is said
				text += then
			}
			add(schedule.NewFinding("fire-died", "", text))
		}
	} else if v.grate.gaugeOnly() {
		f := schedule.NewFinding("gauge-only", "", "Measure the air beside the meat: so far only the gauge in the lid was read, and a grate is often 30 °F (17 °C) cooler or hotter than it says.")
		if v.steered != nil {
			s := v.steerText()
			f.Text, f.Steer = f.Text+" "+s.Text, &s
		}
		add(f)
	} else if off := v.offLevel(); off != 0 && v.grate.sinks() {
		v.noteSinking(off, add)
	} else if v.steered != nil {
		v.noteSteered(add)
	} else if off != 0 {
		do := v.slowShell(off)
		add(schedule.NewFinding("grate-off-level", "", do+" "+v.runsAt(off)+" The times assume it stays that way."))
	}
	v.noteHotAfterLid(add)
	v.noteNight(add)
	v.noteRelit(add)
	v.noteLid(add)
	v.noteGauge(add)
}

// slowShellTakes is how long a heavy shell, or a grill of which nobody said what it is, takes to show a move of its vents (common
// practice, no source: the hour of a ceramic cooker).
const slowShellTakes = time.Hour

// slowShell is what to do about a grill that is not steered by figures: one small move, and an hour's patience.
func (v *Revision) slowShell(offK float64) string {
	for _, r := range slices.Backward(v.grate.readings) {
		off := r.c - v.grate.levelAt(r.at, v.plannedLevel)
		if v.now.Sub(r.at) < slowShellTakes && v.now.Sub(r.at) > together && off*offK > 0 && math.Abs(off) > offLevelK {
			return fmt.Sprintf("Moved the vents at %s? Then wait until %s: a heavy shell takes an hour to show it.", v.clock(r.at), v.clock(r.at.Add(slowShellTakes)))
		}
	}
	if offK < 0 {
		return "Open top and bottom vent a little, once, and look again in an hour; no higher then: add fuel."
	}
	return "Close top and bottom vent a little, once, and look again in an hour: a heavy shell takes so long."
}

// runsAt says how far the grate is off its level.
func (v *Revision) runsAt(offK float64) string {
	way, level := "above", v.grate.levelAt(v.now, v.plannedLevel)
	if offK < 0 {
		way = "below"
	}
	return fmt.Sprintf("The grate runs at about %s, %s its level of %s.", v.day.Grate(level+offK), way, v.day.Grate(level))
}

// noteSinking wants fuel for a fire that gives less and less heat.
func (v *Revision) noteSinking(off float64, add func(schedule.Finding)) {
	from := v.grate.sinking
	do := "Feed the fire now, " + v.feedShort(&v.first)
	if s, ok := v.smotheredFire(); ok && !s.ended {
		do = fmt.Sprintf("Open both vents: they have been shut since %s", v.clock(s.from))
	} else if v.allOpenTold() {
		do = "Sweep out the ash, then add " + v.feedShort(&v.first)
	}
	f := schedule.NewFinding("grate-off-level", "", fmt.Sprintf(do+": the grate has sunk since %s, when it was at %s. %s The times assume you do.",
		v.clock(from.at), v.day.Grate(from.c), v.runsAt(off)))
	if v.steered != nil {
		s := v.steerText()
		f.Steer = &s
	}
	add(f)
}

// noteSteered says what to do about the fire in hand: of a grate that is off its level, of one that will be, and of a
// reading that cannot be.
func (v *Revision) noteSteered(add func(schedule.Finding)) {
	s, off := v.steerText(), v.offLevel()
	if v.stormOpens() {
		text := "Open no vent in this wind: leave them as they are."
		if off != 0 {
			text += " " + v.runsAt(off)
		}
		add(schedule.NewFinding("grate-off-level", "", text))
		return
	}
	if text, ok := v.behindLid(); ok {
		s.Do, s.To, s.Text, s.Expect, s.Remedies = steer.HoldProbe.String(), nil, text, "", nil
		s.Now, s.In15, s.In30 = nil, nil, nil
		s.Why = "Why: a gauge in the lid alone is no ground to move a vent."
	}
	do := s.Text + " "
	if v.setsVents() {
		do = "" // a step of the plan says it
	}
	text := do + steered(s)
	var f schedule.Finding
	switch {
	case s.Do == steer.LookFirst.String():
		f = schedule.NewFinding("fat-may-burn", "", text)
	case off != 0:
		taken := " The times assume nobody touches the fire for an hour."
		if v.comingAir() == nil {
			taken = " The times assume it stays that way."
		}
		f = schedule.NewFinding("grate-off-level", "", do+v.runsAt(off)+" "+steered(s)+taken)
	case s.Do == steer.Leave.String(), s.Do == steer.HoldProbe.String():
		return
	case s.Do == steer.ReadAgain.String():
		f = schedule.NewFinding("grate-doubted", "", text)
	default:
		f = schedule.NewFinding("grate-drifts", "", text)
	}
	if quiet := v.day.InQuiet(v.now); quiet && v.maySleep() {
		f.Text = "Quiet hours: nothing here wants you out of bed. If you are up: " + f.Text
	} else if quiet && s.Do != steer.LookFirst.String() && v.rawOnFire() {
		f.Text = "This wants you out of bed: " + f.Text
	}
	if v.settles(v.now) && s.Do != steer.LookFirst.String() {
		f.Text = fmt.Sprintf("Sleep is less than %d min away, and no vent is moved so late: stay up until it has settled, or finish in the oven. What it wants: %s", safety.VentsStillMinutes, f.Text)
	}
	f.Steer = &s
	add(f)
}

// hotAfterLid is the newest reading of the grate, where it is far above the level so soon after the lid was off that it means
// little: more coals caught in the open air.
func (v *Revision) hotAfterLid() (schedule.Entry, bool) {
	lid := time.Time{}
	for _, e := range slices.Backward(v.log) {
		switch {
		case v.now.Sub(e.At) > 2*lidSettles:
			return schedule.Entry{}, false
		case e.Kind == schedule.LogLidOpened, e.Kind == schedule.LogLidClosed:
			lid = instant.Later(lid, e.At)
		case e.Kind == schedule.LogGrate:
			for _, o := range v.log {
				if (o.Kind == schedule.LogLidOpened || o.Kind == schedule.LogLidClosed) && !o.At.After(e.At) && e.At.Sub(o.At) < lidSettles {
					lid = instant.Later(lid, o.At)
				}
			}
			hot := e.C > v.grate.levelAt(e.At, v.plannedLevel)+offLevelK
			return e, hot && !lid.IsZero()
		}
	}
	return schedule.Entry{}, false
}

// noteHotAfterLid says what to do about such a reading: nothing yet.
func (v *Revision) noteHotAfterLid(add func(schedule.Finding)) {
	e, ok := v.hotAfterLid()
	if !ok {
		return
	}
	level := v.grate.levelAt(v.now, v.plannedLevel)
	add(schedule.NewFinding("grate-doubted", "", fmt.Sprintf("Lid shut, vents as they are, no coals yet, and read the grate again at %s: %s at %s, so soon after the lid was off, means little, for more coals caught in the open air. Still above %s then: close the %s to half of what it is.",
		v.clock(e.At.Add(lidSettles)), v.day.Grate(e.C), v.clock(e.At), v.day.Grate(level+offLevelK), v.day.FineVent())))
}

// behindLid asks for the grate where the lid's gauge is all that was read lately and, by what both showed earlier, the grate is
// out of its band.
func (v *Revision) behindLid() (string, bool) {
	g, ok := v.grate.lastRead(v.now, oldReading)
	if !ok || !g.gauge || math.IsNaN(v.grate.offsetK) || math.Abs(g.c-v.grate.levelAt(v.now, v.plannedLevel)) <= offLevelK || v.setsVents() {
		return "", false
	}
	shown, way := "less", v.grate.offsetK
	if way > 0 {
		shown = "more"
	}
	return fmt.Sprintf("Hold a thermometer at the grate, and log it: the lid's gauge, which showed %.0f °F (%.0f °C) %s than the grate when both were read, puts the grate near %s.",
		math.Abs(way)*1.8, math.Abs(way), shown, v.day.Grate(g.c)), true
}

// steered is an advice behind what to do.
func steered(s schedule.Steer) string {
	var parts []string
	for _, text := range append([]string{s.Expect, s.Look, s.Why}, s.Also...) {
		if text != "" {
			parts = append(parts, text)
		}
	}
	for _, text := range s.Taken {
		parts = append(parts, "Assumed: "+text+".")
	}
	return strings.Join(parts, " ")
}

// noteRelit asks since when a fire was out that was lit again.
func (v *Revision) noteRelit(add func(schedule.Finding)) {
	for _, o := range v.grate.outages {
		if i := slices.IndexFunc(v.grate.relit, func(at time.Time) bool { return at.Equal(o.to) }); i >= 0 && o.seen {
			add(schedule.NewFinding(schedule.FireRelit, "", fmt.Sprintf("When did the fire go out, before it was lit at %s? Log that (fire-out, with its time). By what was read it went out at about %s; the clock of the food counts from %s, the earliest that fits.",
				v.clock(o.to), v.clock(o.from), v.clock(o.since()))))
		}
	}
}

// noteLid asks for a look at a fire whose lid was off until lately.
func (v *Revision) noteLid(add func(schedule.Finding)) {
	for _, o := range v.grate.outages {
		if g, ok := v.grate.lastRead(v.now, recent); !o.lid || o.to.Before(v.now.Add(-recent)) || ok && g.at.After(o.to) {
			continue
		}
		if slices.ContainsFunc(v.batches, func(a *liveBatch) bool { return a.where == cooking && !v.isIndoors(a) && v.unproven(&o, a) }) {
			continue // said of the food, with the time that it has
		}
		add(schedule.NewFinding(schedule.LidWasOff, "", fmt.Sprintf("Look at the coals and read the grate: the lid was off from %s to %s. Coals burn away fast then; add fuel if less than half is left. For the food that is time without heat.",
			v.clock(o.from), v.clock(o.to))))
	}
}

// noteGauge says how far the gauge is off where the grate was read beside it.
func (v *Revision) noteGauge(add func(schedule.Finding)) {
	if math.IsNaN(v.grate.offsetK) {
		return
	}
	level := v.grate.levelAt(v.now, v.plannedLevel)
	want := fire.GaugeC(v.day.Grill, level, v.day.Air.AirC) - level
	if math.Abs(v.grate.offsetK-want) < offsetWorthK {
		return
	}
	sense := "more"
	if v.grate.offsetK < 0 {
		sense = "less"
	}
	add(schedule.NewFinding("gauge-offset", "grill.gauge_offset", fmt.Sprintf(
		"The lid gauge shows %.0f °F (%.0f °C) %s than the grate. Go by the grate; for the next plan give that as the gauge's offset.",
		math.Abs(v.grate.offsetK)*1.8, math.Abs(v.grate.offsetK), sense)))
}
