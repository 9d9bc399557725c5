package revise

import (
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
)

// noteFire says what the thermometers show of the fire.
func (v *Revision) noteFire(add func(schedule.Finding)) {
	if o, dead := v.grate.dead(); dead {
		if !o.asked { // else the reading that tells of it does
			text, then := fmt.Sprintf("The fire has been out since about %s.", v.clock(o.from)), " The plan takes it that you rebuild it now, with lit coals, or move the food to the oven."
			if g, ok := v.grate.lastRead(v.now, bridgesGap); o.seen && (!ok || o.since().Before(o.from)) {
				text = fmt.Sprintf("The fire is out: since about %s, perhaps as early as %s, by what was read since.", v.clock(o.from), v.clock(o.since()))
			} else if o.seen {
				text = fmt.Sprintf("The grate has been falling since about %s and is at %s: the fire is dying or choked by its ash.",
					v.clock(o.from), v.day.Grate(g.c))
				then = " The plan takes it that you rebuild it now, with lit coals."
			}
			if v.fireWanted() {
				text += then
			}
			add(schedule.NewFinding("fire-died", "", text))
		}
	} else if v.grate.gaugeOnly() {
		add(schedule.NewFinding("gauge-only", "", "Measure the air beside the meat: so far only the gauge in the lid was read, and a grate is often 30 F (17 °C) cooler or hotter than it says."))
	} else if _, ok := v.grate.lastRead(v.now, holdsReading); ok {
		air := v.grate.ahead(v.now, v.plannedLevel)
		level := v.grate.levelAt(v.now, v.plannedLevel)
		if off := air - level; math.Abs(off) > offLevelK {
			way, do := "above", "Close the vents a little."
			if off < 0 {
				way, do = "below", "Open the vents, or add fuel."
			}
			if s := v.grate.sinking; v.grate.sinks() {
				do = fmt.Sprintf("Add fuel now, and open the vents: the grate has sunk since %s, when it was at %s.", v.clock(s.at), v.day.Grate(s.c))
			}
			takes := "The times take it that it stays so."
			if v.grate.sinks() {
				takes = "The times take it that you do."
			}
			add(schedule.NewFinding("grate-off-level", "", fmt.Sprintf(
				"%s The grate runs at about %s, %s its level of %s. %s", do, v.day.Grate(air), way, v.day.Grate(level), takes)))
		}
	}
	v.noteRelit(add)
	v.noteGauge(add)
}

// noteRelit asks since when a fire was out that was lit again.
func (v *Revision) noteRelit(add func(schedule.Finding)) {
	for _, o := range v.grate.outages {
		if i := slices.IndexFunc(v.grate.relit, func(at time.Time) bool { return at.Equal(o.to) }); i >= 0 && o.seen {
			add(schedule.NewFinding(schedule.FireRelit, "", fmt.Sprintf("Since when was the fire out before it was lit at %s? Log that (fire-out, with its time). By what was read it went out at about %s; the clock of the food counts from %s, the earliest that fits.",
				v.clock(o.to), v.clock(o.from), v.clock(o.since()))))
		}
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
		"The lid gauge shows %.0f F (%.0f °C) %s than the grate. Go by the grate; for the next plan give that as the gauge's offset.",
		math.Abs(v.grate.offsetK)*1.8, math.Abs(v.grate.offsetK), sense)))
}
