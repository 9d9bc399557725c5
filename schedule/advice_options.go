package schedule

import (
	"fmt"
	"math"
	"time"

	"example.com/cookday/schedule/cut"
)

// Temperatures that advice names, degC.
var (
	hotterC, hottestC, sinkC = celsius(275), celsius(300), celsius(225)
	finishC                  = celsius(300)
	wrapFromC                = celsius(140) // earlier there is no bark to keep (common practice, no source)
)

// options are what may be done about a piece, least trouble first.
func (v *revision) options(a *afoot, p *placed, why string) []option {
	if why == early {
		return v.slower(a, p)
	}
	out := v.mendFire(a, why)
	name, id := a.batch.it.dish.Name, a.batch.it.dish.ID
	level := v.grate.levelAt(v.now, func(time.Time) float64 { return p.way.levelC })
	b := a.believed
	unwrapped := !a.wrap.set && !a.oven.set && a.batch.it.cut.WrapAllowed && a.batch.it.cut.Style == cut.Tough
	if unwrapped && b.between(b.paceSoFar(0.5), func(q *path) float64 { return q.nowC }) > wrapFromC {
		with := p.way.with
		if with == "" {
			with = WrapFoil
		}
		o := option{code: "wrap-now", text: fmt.Sprintf("Wrap %s in %s now.", name, with), entry: Entry{Dish: id, Kind: LogWrapped, Value: with}}
		if !v.wrapLater(a) { // the plan takes it that it is wrapped now
			o.against = Entry{Dish: id, Kind: LogWrapped, Value: WrapNone}
		}
		out = append(out, o)
	}
	if why == stalled {
		return out
	}
	if tough := a.batch.it.cut.Style == cut.Tough; tough && !a.oven.set && why != "fire-died" && level < hottestC-offLevelK/2 {
		to := hotterC
		if level > hotterC-offLevelK/2 {
			to = hottestC
		}
		out = append(out, option{code: "hotter", text: fmt.Sprintf("Bring the grate up to %s.", v.day.grate(to)), entry: Entry{Kind: LogLevel, C: to}})
	}
	if v.day.req.Oven != nil && !a.oven.set {
		out = append(out, option{code: "oven-finish", text: fmt.Sprintf("Finish %s in the kitchen oven at %s.", name, v.day.grate(finishC)), entry: Entry{Dish: id, Kind: LogToOven, C: finishC}})
	}
	return append(out, v.laterServing(a, p)...)
}

// wrapLater says whether the piece would stay bare for a while yet.
func (v *revision) wrapLater(a *afoot) bool {
	return !a.journey.wrap.planned || a.live.first.expected > a.journey.now+leastLeft
}

// mendFire is what helps a fire that sinks or is out.
func (v *revision) mendFire(a *afoot, why string) []option {
	var out []option
	level := v.grate.levelAt(v.now, v.plannedLevel)
	coals := "Rebuild the fire: knock the ash out, open the vents below, add fuel."
	if level > celsius(325) {
		coals = "Rebuild the fire with lit coals: knock the ash out, open the vents below."
	}
	switch why {
	case "grate-off-level":
		out = append(out, option{code: "rebuild", text: coals, entry: Entry{Kind: LogLevel, C: level}})
	case "fire-died":
		out = append(out, option{code: "rebuild", text: coals, entry: Entry{Kind: LogLit}})
	}
	if v.day.req.Oven != nil && !a.oven.set && (why == "fire-died" || v.day.req.Weather.Rain) {
		in := math.Min(level, hotterC)
		out = append(out, option{code: "indoors", text: fmt.Sprintf("Take %s indoors now, into the oven at %s.", a.batch.it.dish.Name, v.day.grate(in)),
			entry: Entry{Dish: a.batch.it.dish.ID, Kind: LogToOven, C: in}})
	}
	return out
}

// laterServing moves dinner, or only the dish where something else is ready.
func (v *revision) laterServing(a *afoot, p *placed) []option {
	ready := a.on.at.Add(minutes(a.live.total().planned + p.it.restMinutes()))
	const step = 10 * time.Minute
	at := ready.Truncate(step)
	if at.Before(ready) {
		at = at.Add(step)
	}
	if !at.After(v.serve(a)) || a.never(a.live.total().expected) {
		return nil
	}
	moved := Entry{Kind: LogServingMoved, Value: at.Format(time.RFC3339)}
	out := []option{{code: "later", text: fmt.Sprintf("Serve at %s.", v.clock(at)), entry: moved, dishOnly: true}}
	for _, o := range v.afoot {
		if o.where == off && o.batch.it.dish.ID != a.batch.it.dish.ID {
			moved.Dish = a.batch.it.dish.ID
			return append(out, option{code: "slice-first", text: fmt.Sprintf("Slice and serve what is done at %s, and %s at %s.",
				v.clock(v.serve(a)), a.batch.it.dish.Name, v.clock(at)), entry: moved, dishOnly: true})
		}
	}
	return out
}

// slower is what helps a piece that comes too early.
func (v *revision) slower(a *afoot, p *placed) []option {
	var out []option
	if a.batch.it.cut.Style != cut.Tough || p.way.levelC > hottestC+offLevelK {
		return nil // what wants a hot grate is not the better for a cool one
	}
	if !a.oven.set && v.grate.levelAt(v.now, func(time.Time) float64 { return p.way.levelC }) > sinkC+offLevelK/2 {
		out = append(out, option{code: "sink", text: fmt.Sprintf("Let the fire sink to %s.", v.day.grate(sinkC)), entry: Entry{Kind: LogLevel, C: sinkC}})
	}
	return out
}
