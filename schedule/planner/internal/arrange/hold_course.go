package arrange

import (
	"math"

	"example.com/cookday/schedule/planner/internal/day"
)

// vented is the option with as long an open stand as the piece wants and as the
// hold, needed for some minutes, leaves room for.
func (d *Arranger) Vented(p *Placed, o day.HoldOption, needed float64) day.HoldOption {
	if o.Vent == 0 || p.Way.State == nil {
		return o
	}
	s, most := *p.Way.State, o.Minutes
	s.Change(day.Standing(p.Way, math.Min(day.RoomC, d.Night.AirC), day.PoorEnd))
	s.RunFor(day.VentLeast * 60)
	for v := 2.0 * day.VentLeast; v <= day.VentMost && s.MeanC() > day.VentToC; v += day.VentLeast {
		if s.RunFor(day.VentLeast * 60); s.OuterC() < day.VentOuterC {
			break
		}
		longer := o
		longer.Vent, longer.Minutes = v, math.Min(d.HotFor(p.Way, o.Method, p.Count, v), most)
		if longer.Minutes < needed {
			break
		}
		o = longer
	}
	return o
}
