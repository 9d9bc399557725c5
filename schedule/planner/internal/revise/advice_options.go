package revise

import (
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/unit"
)

// Temperatures that advice names, degC.
var (
	hotterC, hottestC, sinkC = unit.FToC(275), unit.FToC(300), unit.FToC(225)
	finishC                  = unit.FToC(300)
	wrapFromC                = unit.FToC(140) // earlier there is no bark to keep (common practice, no source)
)

// options are what may be done about a piece, least trouble first.
func (v *Revision) options(a *liveBatch, p *arrange.Placed, why string) []option {
	out := v.helpOf(a, p, why)
	if v.noFuel() || v.stormOpens() {
		return slices.DeleteFunc(out, func(o option) bool { return slices.Contains(wantsFuel, o.code) })
	}
	if why != "grate-off-level" && v.offLevel() != 0 && !v.grate.sinks() { // what sinks is fed: to bring the fire back is a choice, but what sinks is fed: that is in the plan
		out = append(out, v.backToLevel(rebuildText))
	}
	return out
}

// wantsFuel are the codes of options that burn more of it.
var wantsFuel = []string{"hotter", "back-to-level", "rebuild"}

func (v *Revision) helpOf(a *liveBatch, p *arrange.Placed, why string) []option {
	if why == schedule.Early {
		return v.slower(a, p)
	}
	out := v.mendFire(a, why)
	name, id := a.batch.It.Dish.Name, a.batch.It.Dish.ID
	level := v.grate.levelAt(v.now, func(time.Time) float64 { return p.Way.LevelC })
	b := a.believed
	unwrapped := !a.wrap.set && !a.oven.set && a.batch.It.Cut.WrapAllowed && a.batch.It.Cut.Style == cut.Tough
	if unwrapped && b.CoreC(b.Journey.Now, 0.5) > wrapFromC {
		with := p.Way.With
		if with == "" {
			with = schedule.WrapFoil
		}
		o := option{code: "wrap-now", text: fmt.Sprintf("Wrap %s in %s now.", name, with), entry: schedule.Entry{Dish: id, Kind: schedule.LogWrapped, Value: with}}
		if !v.wrapLater(a) { // the plan takes it that it is wrapped now
			o.against = schedule.Entry{Dish: id, Kind: schedule.LogWrapped, Value: schedule.WrapNone}
		}
		out = append(out, o)
	}
	if why == stalled {
		return out
	}
	if tough := a.batch.It.Cut.Style == cut.Tough; tough && v.windNow() < stormMS && !a.oven.set && why != "fire-died" && level < hottestC-offLevelK/2 && v.offLevel() <= 0 {
		to := hotterC
		if level > hotterC-offLevelK/2 {
			to = hottestC
		}
		out = append(out, option{code: "hotter", text: fmt.Sprintf("Bring the grate up to %s.", v.day.Grate(to)), entry: schedule.Entry{Kind: schedule.LogLevel, C: to}})
	}
	if v.day.Req.Oven != nil && !a.oven.set && !offeredOption(out, "indoors") {
		in := finishC
		if a.inner() {
			in = undoneOvenC // below its minimum it needs that
		}
		out = append(out, option{code: "oven-finish", text: fmt.Sprintf("Finish %s in the kitchen oven at %s.", name, v.day.Grate(in)), entry: schedule.Entry{Dish: id, Kind: schedule.LogToOven, C: in}})
	}
	return append(out, v.laterServing(a, p)...)
}

func offeredOption(all []option, code string) bool {
	return slices.ContainsFunc(all, func(o option) bool { return o.code == code })
}

// wrapLater says whether the piece would stay bare for a while yet.
func (v *Revision) wrapLater(a *liveBatch) bool {
	const soon = 15.0 // minutes: whoever wraps then need not be told of it as a choice
	return !a.journey.Wrap.Planned || a.live.First.Expected > a.journey.Now+soon
}

const rebuildText = "Rebuild the fire: knock the ash out, open the vents below, add fuel."

// mendFire is what helps a fire that sinks or is out. That one that is out is rebuilt is in the
// plan, and no choice.
func (v *Revision) mendFire(a *liveBatch, why string) []option {
	var out []option
	level := v.grate.levelAt(v.now, v.plannedLevel)
	coals := rebuildText
	if level > unit.FToC(325) {
		coals = "Rebuild the fire with lit coals: knock the ash out, open the vents below."
	}
	if why == "grate-off-level" && !v.grate.sinks() {
		out = append(out, v.backToLevel(coals))
	}
	if v.day.Req.Oven != nil && !a.oven.set && (why == "fire-died" || v.grate.sinks() || v.day.Req.Weather.Rain || v.rainsNow() || v.noFuel() || v.windNow() >= stormMS) {
		in := v.indoorsC(a)
		out = append(out, option{code: "indoors", text: fmt.Sprintf("Take %s indoors now, into the oven at %s.", a.batch.It.Dish.Name, v.day.Grate(in)),
			entry: schedule.Entry{Dish: a.batch.It.Dish.ID, Kind: schedule.LogToOven, C: in}})
	}
	return out
}

// indoorsC is the kitchen oven that takes a piece from the grate before it is done: at 325 F
// what carries its surface inside, and what is not straight from a hot grill any more.
func (v *Revision) indoorsC(a *liveBatch) float64 {
	if _, dead := v.grate.dead(); dead || safety.SurfaceInside(a.batch.It.Category, a.batch.It.Prep) {
		return undoneOvenC
	}
	return math.Max(math.Min(v.grate.levelAt(v.now, v.plannedLevel), hotterC), safety.OvenWholeC)
}

// backToLevel brings the grate back to its level, by what the fire in hand wants.
func (v *Revision) backToLevel(coals string) option {
	level := v.grate.levelAt(v.now, v.plannedLevel)
	o := option{code: "rebuild", text: coals, entry: schedule.Entry{Kind: schedule.LogLevel, C: level}}
	if v.steered == nil {
		if v.offLevel() > 0 {
			o.code, o.text = "back-to-level", fmt.Sprintf("Close the vents a little: back to %s.", v.day.Grate(level))
		}
		return o
	}
	o.code, o.text = "back-to-level", fmt.Sprintf("Back to %s: %s", v.day.Grate(level), say.Lower(v.steerText().Text))
	return o
}

// laterServing moves dinner, or only the dish where something else is ready.
func (v *Revision) laterServing(a *liveBatch, p *arrange.Placed) []option {
	if v.attempt.later > 0 { // dinner has moved already
		return slices.Concat(v.restFirst(a, v.serve(a), v.askedEnd()), v.evenOdds(a), v.askedOdds(a))
	}
	ready := a.on.at.Add(instant.Minutes(a.live.Total().Planned + p.It.RestMinutes()))
	at := instant.UpTo(ready, 10*time.Minute)
	if !at.After(v.serve(a)) || a.outOfReach() {
		return nil
	}
	out := []option{{code: "later", text: fmt.Sprintf("Serve at %s.", v.clock(at)), entry: v.movedTo(a, at), dishOnly: true}}
	return append(out, v.restFirst(a, at, v.serve(a))...)
}

// askedOdds waits for the asked chance, where dinner moved by no more than is expected.
func (v *Revision) askedOdds(a *liveBatch) []option {
	at, ok := v.sureHour()
	if !ok || at.Sub(v.day.End) < worthWaiting {
		return nil
	}
	return []option{{code: "later", text: fmt.Sprintf("Serve at %s, to be surer.", v.clock(at)), entry: v.movedTo(a, at), dishOnly: true}}
}

// evenOdds counts with what is expected, where the asked chance makes dinner much later.
func (v *Revision) evenOdds(a *liveBatch) []option {
	at := instant.UpTo(v.readyAfter(a, false), delayStep*time.Minute)
	if v.day.End.Sub(at) < worthWaiting {
		return nil
	}
	return []option{{code: "likely", text: fmt.Sprintf("Eat when it is likely ready, at %s, and eat late.", v.clock(at)),
		entry: v.movedTo(a, at), dishOnly: true}}
}

// movedTo is the entry that moves the serving of a dish, and of all that is served with it.
func (v *Revision) movedTo(a *liveBatch, at time.Time) schedule.Entry {
	e := schedule.Entry{Kind: schedule.LogServingMoved, Value: at.Format(time.RFC3339)}
	if a.batch.It.Dish.Serve != nil {
		e.Dish = a.batch.It.Dish.ID
	}
	return e
}

// worthWaiting is how much sooner dinner must be for even odds to be a choice (assumption).
const worthWaiting = 30 * time.Minute

// restFirst serves at an hour what is ready by then, and the late dish by itself.
func (v *Revision) restFirst(a *liveBatch, at, first time.Time) []option {
	var names []string
	for _, o := range v.batches {
		name := o.batch.It.Dish.Name
		if o.batch.It.Dish.ID == a.batch.It.Dish.ID || o.condemned || o.outOfReach() || slices.Contains(names, name) {
			continue
		}
		if o.where == waiting || o.where == off && !v.serve(o).Before(v.now) || o.where == cooking && !v.readyAfter(o, true).After(first) {
			names = append(names, name)
		}
	}
	if len(names) == 0 || !first.After(v.now) {
		return nil
	}
	moved := schedule.Entry{Kind: schedule.LogServingMoved, Dish: a.batch.It.Dish.ID, Value: at.Format(time.RFC3339)}
	return []option{{code: "slice-first", text: fmt.Sprintf("Serve %s at %s, and %s by itself at %s.",
		say.Listed(names, "and"), v.clock(first), a.batch.It.Dish.Name, v.clock(at)), entry: moved, dishOnly: true}}
}

// slower is what helps a piece that comes too early.
func (v *Revision) slower(a *liveBatch, p *arrange.Placed) []option {
	var out []option
	if a.batch.It.Cut.Style != cut.Tough || p.Way.LevelC > hottestC+offLevelK {
		return nil // what wants a hot grate is not the better for a cool one
	}
	if !a.oven.set && v.grate.levelAt(v.now, func(time.Time) float64 { return p.Way.LevelC }) > sinkC+offLevelK/2 {
		out = append(out, option{code: "sink", text: fmt.Sprintf("Let the fire sink to %s.", v.day.Grate(sinkC)), entry: schedule.Entry{Kind: schedule.LogLevel, C: sinkC}})
	}
	return out
}
