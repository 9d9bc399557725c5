package revise

import (
	"context"
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/safety"
)

// What the fire cannot finish goes into the kitchen oven: an order of the plan. From its
// instant on the plan goes as if the log told of it, so that its times, its chance and its
// steps are those of what is ordered.

// indoorsMinutes are hands: from the grate to a pan in the oven (assumption).
const indoorsMinutes = 5

// Why a piece is ordered indoors.
const (
	whyNoCoals  = "no coals are left for this fire"
	whyStorm    = "no vent is opened and no coal is lit in this wind"
	whyColdFire = "a new fire comes too late for it"
	whyNight    = "on the grate it is not done before the night"
)

// sentTexts say it where no finding does.
var sentTexts = map[string]string{whyColdFire: " A new fire comes too late for it.", whyNight: " On the grate it is not done before the night."}

// sendIndoors orders into the oven what its fire cannot finish as things stand: its coals are
// spent, or burn out before it is done; it wants more air in a wind that carries embers; or
// it is out and a new one comes too late.
func (v *Revision) sendIndoors(ctx context.Context) error {
	why, pieces := v.fireFails()
	return v.send(ctx, pieces, v.now, why)
}

// fireFails is what no fire finishes any more, and why.
func (v *Revision) fireFails() (why string, pieces []*liveBatch) {
	o, dead := v.grate.dead()
	dead = dead && !o.asked
	switch {
	case v.phases == 0:
		return "", nil
	case v.noFuel() && v.lowFire():
		why = whyNoCoals
	case v.stormOpens(), dead && v.windNow() >= stormMS:
		why = whyStorm
	case dead:
		for _, a := range v.batches {
			if v.tooLate(a) && v.mayGoIndoors(a) {
				pieces = append(pieces, a)
			}
		}
		return whyColdFire, pieces
	default:
		return "", nil
	}
	return why, v.overFire()
}

// lowFire says whether the fire is out, sinks, or was read too cool to cook on.
func (v *Revision) lowFire() bool {
	_, dead := v.grate.dead()
	g, read := v.grate.lastRead(v.now, recent)
	return dead || v.grate.sinks() || read && g.c < lowestKeepsC
}

// overFire is what lies over the fire and may be carried indoors.
func (v *Revision) overFire() []*liveBatch {
	return slices.DeleteFunc(slices.Clone(v.batches), func(a *liveBatch) bool { return !v.mayGoIndoors(a) })
}

// mayGoIndoors says whether a piece over the fire may be ordered into the oven: one that is to
// be eaten, that needs no coals under it, and is not off already by what was read.
func (v *Revision) mayGoIndoors(a *liveBatch) bool {
	return v.isOverFire(a) && a.where == cooking && !a.condemned && !a.suspect && a.believed != nil && !a.way().Sear && !(a.atTarget() && !a.awaitsOthers()) && !a.isAside(v.now)
}

// send has pieces go on in the oven from an instant on; hotter where a tough one is late else.
func (v *Revision) send(ctx context.Context, pieces []*liveBatch, at time.Time, why string) error {
	in := v.sentC(pieces)
	if err := v.sendAt(ctx, pieces, at, in, why); err != nil || in >= finishC {
		return err
	}
	late := func(a *liveBatch) bool {
		return a.batch.It.Cut.Style == cut.Tough && v.readyAfter(a, true).After(v.serve(a))
	}
	if !slices.ContainsFunc(pieces, late) || v.ovenCooks() {
		return nil
	}
	return v.sendAt(ctx, pieces, at, finishC, why)
}

func (v *Revision) sendAt(ctx context.Context, pieces []*liveBatch, at time.Time, in float64, why string) error {
	for _, a := range pieces {
		a.oven, a.ovenC, a.sent = known{at: at, set: true}, in, why
		a.journey = v.journeyOf(a)
		a.believed = a.believed.Again(a.journey)
		if err := v.coverAgain(ctx, a); err != nil {
			return err
		}
		a.live = v.liveWay(a)
	}
	return nil
}

// sentC is the one heat of the oven that takes pieces: as hot as one of them needs it, and as
// it is where another dish cooks in it and that is enough.
func (v *Revision) sentC(pieces []*liveBatch) float64 {
	need := 0.0
	for _, a := range pieces {
		need = math.Max(need, v.indoorsC(a))
	}
	for _, a := range v.batches {
		if a.where == cooking && a.oven.logged && a.ovenAtC(v.now) >= need {
			return a.ovenAtC(v.now)
		}
	}
	return need
}

// ovenCooks says whether something cooks in the oven already.
func (v *Revision) ovenCooks() bool {
	return slices.ContainsFunc(v.batches, func(a *liveBatch) bool { return a.where == cooking && a.oven.logged })
}

// sentSteps are the orders.
func (v *Revision) sentSteps(p *schedule.Plan) []schedule.Step {
	var out []schedule.Step
	for _, a := range v.batches {
		if a.sent == "" || a.where != cooking {
			continue
		}
		when := "now"
		if a.oven.at.After(v.now) {
			when = fmt.Sprintf("as soon as the grate is under %s, by %s at the latest", v.day.Grate(lowestKeepsC), v.clock(a.oven.at))
		}
		text := fmt.Sprintf("%s: into the kitchen oven at %s %s, straight from the grate, in a rimmed pan.%s Log it (to-oven).", a.batch.It.Dish.Name, v.day.Grate(a.ovenC), when, sentTexts[a.sent])
		out = append(out, schedule.Step{ID: plans.StepID(p.ID, a.batch.It.Dish.ID, a.batch.Number, schedule.StepIndoors, 1), Kind: schedule.StepIndoors, At: a.oven.at, Window: plans.FixedWindow(a.oven.at),
			Dish: a.batch.It.Dish.ID, Batch: a.batch.Number, Attended: true, Minutes: indoorsMinutes, GrateC: a.ovenC, Text: text, Why: a.sent})
	}
	return out
}

// sends says whether something is ordered indoors.
func (v *Revision) sends() bool {
	return slices.ContainsFunc(v.batches, func(a *liveBatch) bool { return a.sent != "" })
}

// isOverFire says whether a piece is on the fire at this instant, wherever it is ordered, or
// is to go on it.
func (v *Revision) isOverFire(a *liveBatch) bool {
	return a.where == waiting || a.where == cooking && !v.isIndoors(a)
}

// isIndoors says whether a piece is in the kitchen oven at this instant.
func (v *Revision) isIndoors(a *liveBatch) bool { return a.sent == "" && v.inOven(a) }

// dayInstead is the rest of the day with what is late carried into an oven, where dinner else
// moves over a night and an oven is at hand; nil where that does not keep it from there.
func (v *Revision) dayInstead(ctx context.Context, l remainder) (*Revision, error) {
	if v.day.Req.Oven == nil || v.phases == 0 || !v.overNight() || v.day.InQuiet(v.now) { // nobody is called out of bed for what the morning may decide
		return nil, nil
	}
	w := v.copied()
	asked := v.askedEnd()
	var late []*liveBatch
	for _, a := range w.overFire() {
		if v.readyAfter(a, true).After(v.serve(a).Add(-v.day.End.Sub(asked))) { // late for the asked hour
			late = append(late, a)
		}
	}
	w.day, w.attempt = v.asking, attempt{}
	w.rebind()
	if err := w.send(ctx, late, v.now, whyNight); err != nil || len(late) == 0 {
		return nil, err
	}
	left, err := w.arrangeLeft(ctx)
	if err != nil || w.overNight() {
		return nil, ctx.Err()
	}
	w.remainder = left
	return w, nil
}

// untilItBurnsOut is the plan without the coals that are not there.
func (v *Revision) untilItBurnsOut(ctx context.Context, p schedule.Plan) (schedule.Plan, error) {
	sent, err := v.burnsOut(ctx, &p)
	if err != nil || !sent {
		return p, err
	}
	v.day, v.attempt = v.asking, attempt{}
	v.rebind()
	if v.remainder, err = v.arrangeLeft(ctx); err != nil {
		return p, err
	}
	return v.write(ctx, v.remainder)
}

// burnsOut sends what the fire does not finish indoors when it wants coals that are not there;
// false where nothing is sent.
func (v *Revision) burnsOut(ctx context.Context, p *schedule.Plan) (bool, error) {
	if !v.noFuel() || v.lowFire() {
		return false, nil
	}
	i := slices.IndexFunc(p.Steps, func(s schedule.Step) bool { return s.Kind == schedule.StepRefuel && !s.Done && s.Phase == v.phases })
	if i < 0 {
		return false, nil
	}
	at := instant.Later(p.Steps[i].At, v.now)
	pieces := slices.DeleteFunc(v.overFire(), func(a *liveBatch) bool {
		return a.on.at.Add(instant.Minutes(a.live.Total().Planned)).Before(at)
	})
	return len(pieces) > 0, v.send(ctx, pieces, at, whyNoCoals)
}

// copied is the same day, whose pieces may go another way.
func (v *Revision) copied() *Revision {
	w := *v
	w.batches = make([]*liveBatch, len(v.batches))
	for i, a := range v.batches {
		b := *a
		w.batches[i] = &b
	}
	return &w
}

// overNight says whether dinner has moved from its day, or into the hours in which people sleep.
func (v *Revision) overNight() bool {
	asked := v.askedEnd()
	return v.attempt.later > 0 && (v.day.End.YearDay() != asked.YearDay() || v.day.InQuiet(v.day.End.Add(-time.Minute)))
}

// tooLate says whether a piece over a dead fire has to be in heat before a new one gives any.
func (v *Revision) tooLate(a *liveBatch) bool {
	if a.where != cooking || v.isIndoors(a) || a.condemned {
		return false
	}
	limit := safety.OutLimit(v.day.Air.AirC)
	return slices.ContainsFunc(a.verdict, func(f safety.Finding) bool {
		return f.Code == string(safety.FireOut) && limit-f.Counted < newFireTakes
	})
}
