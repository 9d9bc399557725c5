package revise

import (
	"context"
	"fmt"
	"math"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/steer"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/spread"
)

// option is something the cook could do now, as the entry that the log would get.
type option struct {
	code, text string
	entry      schedule.Entry
	against    schedule.Entry // the entry of the plan it is compared with; none: the plan as it stands
	dishOnly   bool           // moves the serving of the dish, not its take-off
}

// advice is what could be done now, each with what it does: the same day is
// followed again with the entry that the log would get, and the difference of the
// two take-offs is the effect. Its edits are entries of the log.
func (v *Revision) advice(ctx context.Context, p *schedule.Plan, l remainder) ([]schedule.Remedy, error) {
	out := []schedule.Remedy{}
	i, why := v.troubled(l)
	if i < 0 {
		return out, nil
	}
	for _, o := range v.options(l.bound[i], l.all[i], why) {
		r, moved, after, err := v.priced(ctx, p, l, i, o, why)
		if err != nil {
			return nil, err
		}
		if o.code == "slice-first" && (after == nil || after.attempt.later > 0) {
			continue // the rest is not ready by then
		}
		if v.helps(r, p, moved, o, why) {
			out = append(out, r)
		}
	}
	switch {
	case v.attempt.halfway && v.attempt.later == 0 && why != schedule.Early && !offered(out, "later"):
		out = append(out, v.unhurried(ctx, p, why)...)
	case why == schedule.Early:
		out = append(out, v.sooner(ctx, p, l.bound[i], l.all[i])...)
	}
	slices.SortStableFunc(out, func(a, b schedule.Remedy) int { // what saves dinner first, and what keeps its hour
		if why == schedule.Early {
			a, b = b, a
		}
		return a.ServeAt.Compare(b.ServeAt)
	})
	return out, nil
}

// offered says whether a remedy of a code is among some.
func offered(all []schedule.Remedy, code string) bool {
	return slices.ContainsFunc(all, func(r schedule.Remedy) bool { return r.Code == code })
}

// What an option must bring to be worth a word (assumptions).
const (
	soonerMinutes = 5.0
	laterMinutes  = 20.0 // of what is done early
	surerChance   = 0.05
)

// helps says whether an option is one: a way out that leads nowhere is none.
func (v *Revision) helps(r schedule.Remedy, p *schedule.Plan, moved float64, o option, why string) bool {
	switch {
	case r.ServeAt.Before(v.now):
		return false
	case o.code == "back-to-level" && v.steered != nil && v.steered.advice.Do == steer.Leave && math.Abs(moved) < soonerMinutes:
		return false // nothing is to be done
	case o.code == "back-to-level":
		return true // always a choice, with what it does
	case why == "fire-died", o.code == "indoors" && v.grate.sinks():
		return moved < 1 // whatever makes it later is no way out of it
	case why == schedule.Early:
		return !r.ServeAt.After(p.ServeAt) && moved >= laterMinutes // too slow, and dinner would wait for it
	case o.dishOnly:
		return true
	}
	return moved <= -soonerMinutes || p.ServeAt.Sub(r.ServeAt).Minutes() >= soonerMinutes || r.Chance >= p.Chance.All+surerChance
}

// troubled is the piece on the grate that most needs something done, and the
// finding that says why: the fire, the least chance of being ready, or the
// longest wait.
func (v *Revision) troubled(l remainder) (worst int, why string) {
	worst = -1
	least, longest := v.day.Req.Confidence-lateWorth, earlyWorth
	o, dead := v.grate.dead()
	dead = dead && !o.asked && !v.airFirst() && slices.ContainsFunc(v.batches, v.needsFire)
	off := v.offLevel()
	for i, a := range l.bound {
		if a.where != cooking || a.believed == nil || a.condemned || a.suspect {
			continue
		}
		cool := off < 0 && waitOf(l.all[i]) <= earlyWorth // what waits for long is none the worse for it
		if chance := l.all[i].Readiness().Chance(); chance < least || worst < 0 && (dead || cool || v.attempt.later > 0 || v.attempt.halfway) {
			worst, least = i, math.Min(chance, least)
		}
	}
	switch {
	case worst >= 0 && dead:
		return worst, "fire-died"
	case worst >= 0 && off < 0:
		return worst, "grate-off-level"
	case worst >= 0 && v.attempt.later > 0:
		if a := v.latest(l); a != nil {
			worst = slices.Index(l.bound, a)
		}
		return worst, "served-later"
	case worst >= 0 && v.attempt.halfway && !v.anyLate(l):
		return worst, "less-sure"
	case worst >= 0:
		if code := v.lateness(l.bound[worst], l.all[worst]); code != "" {
			return worst, code
		}
		return worst, schedule.MayBeLate // of what is not on yet
	}
	for i, a := range l.bound {
		if a.where != cooking || a.believed == nil || a.condemned || a.suspect {
			continue
		}
		wait := waitOf(l.all[i])
		if _, stands := v.stands(a); stands && !a.wrap.set && wait <= earlyWorth {
			return i, stalled
		}
		if wait > longest {
			worst, longest, why = i, wait, schedule.Early
		}
	}
	if worst < 0 && off != 0 {
		worst = slices.IndexFunc(l.bound, func(a *liveBatch) bool { return a.where == cooking && a.believed != nil && !a.condemned })
		why = "grate-off-level"
	}
	return worst, why
}

// waitOf is how long the batch is expected to wait beyond its ideal rest, minutes.
func waitOf(p *arrange.Placed) float64 {
	return p.On - p.Way.Total().Expected - float64(p.It.Serve) - p.It.Cut.Rest.IdealMinutes
}

// earlyWorth is how long beyond its ideal rest a piece may wait, in minutes,
// before something is worth doing (assumption).
const earlyWorth = 60.0

// offLevel is by how much the grate is off its level if that is too much, K.
func (v *Revision) offLevel() float64 {
	if _, ok := v.grate.lastRead(v.now, holdsReading); !ok || v.grate.gaugeOnly() || !slices.ContainsFunc(v.batches, v.needsFire) {
		return 0
	}
	off := v.grate.ahead(v.now, v.plannedLevel) - v.grate.levelAt(v.now, v.plannedLevel)
	if math.Abs(off) <= offLevelK {
		return 0
	}
	return off
}

// priced follows the day with an option taken, and says by how many minutes it moves the
// take-off.
func (v *Revision) priced(ctx context.Context, p *schedule.Plan, l remainder, i int, o option, why string) (schedule.Remedy, float64, *Revision, error) {
	r := schedule.Remedy{Code: o.code, For: why, Text: o.text, Edits: []schedule.Edit{}, LightAt: p.LightAt, ServeAt: p.ServeAt, Chance: p.Chance.All}
	o.entry.At = v.now
	r.Edits = append(r.Edits, schedule.NewEdit("log", o.entry))
	after, ok := v.with(ctx, o.entry)
	if !ok {
		return r, 0, nil, nil
	}
	if kept, err := after.keepsHour(ctx, after.remainder); err != nil {
		return r, 0, nil, err
	} else if kept != nil { // as the day is planned once it is done
		after = kept
	}
	is, was := after.remainder.take(l.bound[i]), v.remainder.take(l.bound[i])
	if o.against.Kind != "" {
		if was, ok = v.takeWith(ctx, o.against, l.bound[i]); !ok {
			return r, 0, nil, nil
		}
	}
	r.Price, r.Chance, r.ServeAt = v.effect(l.bound[i], was, is, o), after.remainder.chance(), after.day.End
	if !r.ServeAt.Equal(p.ServeAt) && !o.dishOnly {
		r.Price += fmt.Sprintf("; dinner is at %s, not at %s", v.clock(r.ServeAt), v.clock(p.ServeAt))
	}
	return r, is - was, after, ctx.Err()
}

// sameTime is what an option does that moves no take-off.
const sameTime = ": done at the same time"

// chance is that of all dishes together.
func (l remainder) chance() float64 {
	var rs []spread.Readiness
	for i, p := range l.all {
		if l.counts(l.bound[i]) {
			rs = append(rs, p.Readiness())
		}
	}
	return plans.Round3(spread.ChanceOfAll(rs) * l.fit())
}

// effect says what an option does to the take-off.
func (v *Revision) effect(a *liveBatch, was, is float64, o option) string {
	name, moved := a.batch.It.Dish.Name, math.Round(is-was)
	switch {
	case o.dishOnly:
		return "The cook stays as it is"
	case math.Abs(moved) < 1:
		return name + sameTime
	case a.never(was) && !a.never(is):
		return fmt.Sprintf("%s: done after all, at about %s", name, v.clock(a.on.at.Add(instant.Minutes(is))))
	case o.against.Kind != "":
		return fmt.Sprintf("%s: done %s than left bare", name, v.moves(moved))
	}
	return fmt.Sprintf("%s: done %s", name, v.moves(moved))
}
