package arrange

import (
	"cmp"
	"context"
	"math"
	"slices"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/sequence"
	"example.com/cookday/schedule/planner/internal/spread"
)

// Placed is one batch with the way the solver chose, in minutes before the last
// serving instant.
type Placed struct {
	*Batch
	Way      day.Way
	On       float64      // put on
	Wrap     float64      // second stage begins; NaN without one
	Off      float64      // take-off as planned
	Phases   [2]PhaseSpan // of each stage
	Zones    [2]string
	Oven     bool    // the second stage is in the oven
	Carried  bool    // indoors on the day, as it was
	Left     float64 // the grate, if it was carried
	CarriedC float64 // the oven that it was carried to, degC; 0 if nobody told
	Reasons  []sequence.Reason
	Options  []day.HoldOption
	Hold     int // index of the chosen one, -1 for none
	holdLong bool
	Mates    []*Placed // what is held in the oven already when the batch goes in
	Grate    []int     // of each piece, from below, where a zone has several; else empty or all 0
	Over     float64   // chance that it is done too early for its hold, beyond the tenth of fast days
}

// OvenLevelC is the heat of the oven that a batch is in, where the plan has another.
func (p *Placed) OvenLevelC(planned float64) float64 {
	if p.Carried && p.CarriedC > 0 {
		return p.CarriedC
	}
	return planned
}

// Stages is how many stages of cooking it has on the way chosen.
func (p *Placed) Stages() int {
	if math.IsNaN(p.Wrap) {
		return 1
	}
	return 2
}

// Place reads the solver's answer for every batch.
func (d *Arranger) Place(ctx context.Context, a Arrangement) ([]*Placed, error) {
	out := make([]*Placed, len(a.Batches))
	for i, b := range a.Batches {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		ps := a.Solution.Chains[i]
		ref := b.First[ps[0].Mode]
		p := &Placed{Batch: b, Way: b.Ways[ref.way], On: float64(ps[0].Start), Wrap: math.NaN(), Reasons: a.Solution.Why[i]}
		p.Off = float64(ps[len(ps)-1].End)
		p.Phases[0] = PhaseSpan{First: ps[0].FirstPhase, Last: ps[0].LastPhase}
		p.Zones[0] = a.zoneName(ps[0], ref.places)
		if len(ps) > 1 {
			second := b.second[ps[1].Mode]
			p.Phases[1] = PhaseSpan{First: ps[1].FirstPhase, Last: ps[1].LastPhase}
			p.Zones[1] = a.zoneName(ps[1], second.places)
			if p.Oven = second.oven; p.Oven {
				p.Way.Second = p.Way.InOven
			}
			if p.Way.Stages() > 1 {
				p.Wrap = float64(ps[1].Start)
			} else {
				p.Phases[0].Last = ps[1].LastPhase
			}
		}
		d.SetHold(p, p.LongestWait())
		out[i] = p
	}
	d.holdAlike(out)
	d.Stack(a.Hearth, a.Solution.Phases, out)
	d.OneOven(out)
	return out, nil
}

// NumberByTime numbers the batches of each dish in the order in which they go on, and lists
// them so: the solver takes like batches in any order, a cook counts from the first.
func NumberByTime(all []*Placed) {
	slices.SortStableFunc(all, func(a, b *Placed) int {
		return cmp.Or(cmp.Compare(a.It.Index, b.It.Index), cmp.Compare(b.On, a.On))
	})
	for i, p := range all {
		if p.Number = 1; i > 0 && all[i-1].It == p.It {
			p.Number = all[i-1].Number + 1
		}
	}
}

// zoneName is the zone of the first phase a task is in.
func (a Arrangement) zoneName(t sequence.Placed, places []Place) string {
	if t.FirstPhase < 0 {
		return ""
	}
	f := a.Solution.Phases[t.FirstPhase].Fire
	for _, pl := range places {
		if pl.Fire == f {
			return a.Hearth.Zones[f][pl.Zone].Name
		}
	}
	return ""
}

// ZoneIn is where a batch lies during a stage among the zones of a fire: what rides
// through a change lies on the like side of the next one.
func (p *Placed) ZoneIn(zones []fire.Zone, stage int) fire.Zone {
	direct := stage == 0 && p.Way.Direct || stage == 1 && (p.Way.Sear || p.Way.Direct)
	var like fire.Zone
	for _, z := range slices.Backward(zones) {
		switch {
		case z.Direct != direct:
		case z.Name == p.Zones[stage]:
			return z
		default:
			like = z
		}
	}
	return like
}

// EarlyGap is the longest the batch may have to wait: from the early end of its
// take-off to serving.
func (p *Placed) EarlyGap() float64 {
	return p.On - p.Took().Early - float64(p.It.Serve)
}

// Took is the minutes from the put-on until the batch is done. Between the slow side
// and its sear a piece stands, and is not held.
func (p *Placed) Took() spread.Pace {
	if p.SearedLater() {
		return spread.Pace{Early: p.TakeOff(-spread.ZTenth), Expected: p.TakeOff(0), Late: p.TakeOff(spread.ZTenth)}
	}
	return p.Way.Total()
}

// TooEarly is the part of its chance that goes because it is done too early to be kept
// until it is eaten; so many minutes too long are no matter.
func (p *Placed) TooEarly(k Keeps, tolerance float64) float64 {
	if p.SearedLater() {
		return 0
	}
	return k.lost(p.Way, p.On-float64(p.It.Serve)+p.It.TravelMinutes()-tolerance)
}

// Readiness is the margin of the batch.
func (p *Placed) Readiness() spread.Readiness {
	available := p.On - float64(p.It.Serve) - p.It.RestMinutes()
	if !math.IsNaN(p.Wrap) && p.It.Dish.Finish != "" {
		available -= p.On - p.Way.First.Planned - p.Wrap // the rest before the sear
	}
	return spread.Readiness{Z: p.Way.QuantileOf(available), Spread: p.Way.Spread, Over: p.Over}
}

// ModelCook is a cook at the model's own pace: its curve, and the piece at the end.
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

// TakeOff is when the batch is done, in minutes from the put-on. A sear begins
// when it is planned, or when the slow side is late.
func (p *Placed) TakeOff(z float64) float64 {
	if p.Way.Sear && p.Stages() == 2 {
		return math.Max(p.Way.First.At(z), p.On-p.Wrap) + p.Way.Second.At(z)
	}
	return p.Way.Total().At(z)
}

// PhaseSpan is from which fire to which a stage is on the grate; -1 for neither.
type PhaseSpan struct{ First, Last int }

// UpTo is the span with no fire after the last.
func (s PhaseSpan) UpTo(last int) PhaseSpan {
	return PhaseSpan{First: min(s.First, last), Last: min(s.Last, last)}
}

// ShiftPhases counts so many fires before those of a batch.
func ShiftPhases(p *Placed, by int) {
	shift := func(phase *int) {
		if *phase >= 0 {
			*phase += by
		}
	}
	for i := range p.Phases {
		shift(&p.Phases[i].First)
		shift(&p.Phases[i].Last)
	}
}

// SearedLater says whether a piece leaves the slow side before its sear.
func (p *Placed) SearedLater() bool { return p.Way.Sear && p.Stages() == 2 }
