package revise

import (
	"fmt"
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
)

// noteFire says what the thermometers show of the fire.
func (v *Revision) noteFire(add func(schedule.Finding)) {
	if o, dead := v.grate.dead(); dead {
		if v.now.Sub(o.from) >= 0 {
			text, then := fmt.Sprintf("The fire has been out since about %s.", v.clock(o.from)), " The plan takes it that you rebuild it now, with lit coals, or move the food to the oven."
			if o.seen {
				text = fmt.Sprintf("The grate has been falling since about %s and is at %s: the fire is dying or choked by its ash.",
					v.clock(o.from), v.day.Grate(v.grate.readings[len(v.grate.readings)-1].c))
				then = " The plan takes it that you rebuild it now, with lit coals."
			}
			if v.fireWanted() {
				text += then
			}
			add(schedule.NewFinding("fire-died", "", text))
		}
	} else if air := v.grate.ahead(v.now, v.plannedLevel); len(v.grate.readings) > 0 {
		level := v.grate.levelAt(v.now, v.plannedLevel)
		if off := air - level; math.Abs(off) > offLevelK {
			way := "above"
			if off < 0 {
				way = "below"
			}
			add(schedule.NewFinding("grate-off-level", "", fmt.Sprintf(
				"The grate runs at about %s, %s its level of %s. The times take it that it stays so.", v.day.Grate(air), way, v.day.Grate(level))))
		}
	}
	v.noteGauge(add)
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
