package assemble

import (
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/belief"
	"example.com/cookday/schedule/planner/internal/day"
)

// curve is the core temperature from the put-on to the late end of the take-off
// at the expected pace, with its 80 % band. A pace f runs through the model's
// curve f times slower.
func (d *Assembler) curve(p *arrange.Placed) []schedule.Point {
	if p.Way.State == nil || p.Way.Direct || p.Way.Sear || p.It.Cut.Style == cut.Timed {
		return nil
	}
	total := p.Way.Total()
	if p.Way.Believed != nil {
		return d.liveCurve(p)
	}
	model, _ := d.ModelCook(p)
	read := func(minute, whole float64) float64 {
		return belief.Sample(model, startC(p), p.Way.PullC, minute/whole*p.Way.ModelDone*60)
	}
	step := math.Ceil(total.Late / day.CurvePoints)
	var out []schedule.Point
	for m := 0.0; m <= total.Late+step/2; m += step {
		out = append(out, schedule.Point{
			At: d.At(p.On - m), CoreC: read(m, total.Expected), LowC: read(m, total.Late), HighC: read(m, total.Early),
		})
	}
	return out
}
