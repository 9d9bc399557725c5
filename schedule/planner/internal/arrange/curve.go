package arrange

import (
	"math"

	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/planner/internal/day"
)

// modelCook is a cook at the model's own pace: its curve, and the piece at the end.
func (d *Arranger) ModelCook(p *Placed) (heat.Curve, heat.Sim) {
	model := heat.Curve{EveryS: math.Max(p.Way.ModelDone*60/(2*day.CurvePoints), 15), Points: make([]heat.Point, 0, 2*day.CurvePoints+2)}
	in := heat.Grate(p.Way.AirC, d.Outdoors)
	stages := []heat.Stage{{In: in}}
	if p.Way.ModelWrap > 0 {
		stages = []heat.Stage{{In: in, AtLeastS: p.Way.ModelWrap * 60}, {In: day.Covered(in, p.Way.With)}}
	}
	var s heat.Sim
	s.Start(p.It.Body(p.MassKg), in)
	s.Cook(heat.Recipe{Stages: stages, TargetC: p.Way.PullC, LimitS: day.LongestCookS}, &model)
	return model, s
}
