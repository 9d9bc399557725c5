package assemble

import (
	"math"
	"slices"

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

// LeastLeft is how long, in minutes, a piece that is not off yet still takes.
const LeastLeft = 1

// liveCurve is the core of a piece on the grate, as believed, to the late end
// of its take-off.
func (d *Assembler) liveCurve(p *arrange.Placed) []schedule.Point {
	b, total := p.Way.Believed, p.Way.Total()
	step := math.Max(math.Ceil(total.Late/day.CurvePoints), 1)
	var marks []float64
	for m := 0.0; m <= total.Late+step/2; m += step {
		marks = append(marks, m)
	}
	for _, n := range b.Nodes {
		marks = append(marks, math.Round(n.Minute)) // what was read is shown as it was read
	}
	slices.Sort(marks)
	var out []schedule.Point
	for _, m := range slices.Compact(marks) {
		core := [3]float64{b.CoreC(m, 0.9), b.CoreC(m, 0.5), b.CoreC(m, 0.1)}
		slices.Sort(core[:]) // a fast piece also cools fast
		out = append(out, schedule.Point{At: d.At(p.On - m), CoreC: core[1], LowC: core[0], HighC: core[2]})
	}
	return out
}
