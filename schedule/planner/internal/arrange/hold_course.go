package arrange

import (
	"math"

	daypkg "example.com/cookday/schedule/planner/internal/day"
)

// vented is the option with as long an open stand as the piece wants and as the
// hold, needed for some minutes, leaves room for.
func DayVented(d *daypkg.Day, p *Placed, o daypkg.HoldOption, needed float64) daypkg.HoldOption {
	if o.Vent == 0 || p.Way.State == nil {
		return o
	}
	s, most := *p.Way.State, o.Minutes
	s.Change(daypkg.Standing(p.Way, math.Min(daypkg.RoomC, d.Night.AirC), daypkg.PoorEnd))
	s.RunFor(daypkg.VentLeast * 60)
	for v := 2.0 * daypkg.VentLeast; v <= daypkg.VentMost && s.MeanC() > daypkg.VentToC; v += daypkg.VentLeast {
		if s.RunFor(daypkg.VentLeast * 60); s.OuterC() < daypkg.VentOuterC {
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
