package schedule

import (
	"math"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
)

// curvePoints is how many samples a predicted curve has, about.
const curvePoints = 40

// curve is the core temperature from the put-on to the late end of the take-off
// at the expected pace, with its 80 % band. A pace f runs through the model's
// curve f times slower.
func (d *day) curve(p *placed) []Point {
	if p.way.state == nil || p.way.direct || p.way.sear || p.it.cut.Style == cut.Timed {
		return nil
	}
	total := p.way.total()
	if p.way.believed != nil {
		return d.liveCurve(p)
	}
	model, _ := d.modelCook(p)
	read := func(minute, whole float64) float64 {
		return sample(model, p.startC(), p.way.pullC, minute/whole*p.way.modelDone*60)
	}
	step := math.Ceil(total.late / curvePoints)
	var out []Point
	for m := 0.0; m <= total.late+step/2; m += step {
		out = append(out, Point{
			At: d.at(p.on - m), CoreC: read(m, total.expected), LowC: read(m, total.late), HighC: read(m, total.early),
		})
	}
	return out
}

// modelCook is a cook at the model's own pace: its curve, and the piece at the end.
func (d *day) modelCook(p *placed) (heat.Curve, heat.Sim) {
	model := heat.Curve{EveryS: math.Max(p.way.modelDone*60/(2*curvePoints), 15), Points: make([]heat.Point, 0, 2*curvePoints+2)}
	in := heat.Grate(p.way.airC, d.outdoors)
	stages := []heat.Stage{{In: in}}
	if p.way.modelWrap > 0 {
		stages = []heat.Stage{{In: in, AtLeastS: p.way.modelWrap * 60}, {In: covered(in, p.way.with)}}
	}
	var s heat.Sim
	s.Start(p.it.body(p.massKg), in)
	s.Cook(heat.Recipe{Stages: stages, TargetC: p.way.pullC, LimitS: longestCookS}, &model)
	return model, s
}

// sample reads a curve that has its first point at its start, at an instant in s;
// beyond its last point it is endC.
func sample(c heat.Curve, startC, endC, atS float64) float64 {
	i := atS / c.EveryS
	k := int(i)
	at := func(k int) float64 {
		switch {
		case k < 0:
			return startC
		case k >= len(c.Points):
			return endC
		}
		return c.Points[k].CoreC
	}
	return at(k) + (i-float64(k))*(at(k+1)-at(k))
}
