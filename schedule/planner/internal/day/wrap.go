package day

import (
	"cmp"
	"math"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/planner/internal/spread"
	"example.com/cookday/schedule/unit"
)

// Covered is the surroundings under a wrapping.
func Covered(in heat.Surroundings, with string) heat.Surroundings {
	if with == schedule.WrapPaper {
		return in.InPaper()
	}
	return in.InFoil()
}

// toWrap advances a bare piece to its wrap, or to its end if that comes first; false
// if it comes to neither.
func (k *kitchen) toWrap(s *heat.Sim, w schedule.Wrap) bool {
	switch {
	case w.After == nil:
		return s.RunTo(math.Min(float64(*w.From), k.base.PullC), LongestCookS) == heat.Reached
	case k.tenderS == 0:
		s.RunWithin(k.base.PullC, instant.UnitMinutes(*w.After)*60)
	default:
		after := instant.UnitMinutes(*w.After) * 60
		if s.RunWithin(k.it.Cut.TenderAboveC, after) == heat.Reached {
			k.hotS = s.ElapsedS()
			s.RunFor(math.Min(after, k.hotS+k.tenderS) - k.hotS)
		}
	}
	return true
}

// Wraps are the wrappings to try, and whether bare to the end is one of the ways.
func (it *Item) Wraps() (wraps []schedule.Wrap, bare bool) {
	switch asked := it.Dish.Wrap; {
	case asked != nil && asked.With == schedule.WrapNone:
		return nil, true
	case asked != nil:
		w := *asked
		if w.From == nil && w.After == nil {
			w.From = habitFrom(it.Cut)
		}
		return []schedule.Wrap{w}, false
	case it.Cut.Style != cut.Tough || !it.Cut.WrapAllowed || it.Cut.Wrap.With == "" || it.Cut.Wrap.With == schedule.WrapNone:
		return nil, true
	}
	return []schedule.Wrap{{With: it.Cut.Wrap.With, From: habitFrom(it.Cut)}}, true
}

// waitStep is the grid of wraps that wait, in minutes; waitPerCost minutes of
// waiting cost one unit, so that nobody waits for nothing (assumption).
const (
	waitStep    = 60
	waitPerCost = 6
)

// waiting adds ways whose wrap comes later than its temperature, as it must
// when that falls in the night: the piece cooks on bare until somebody is up.
func (k *kitchen) waiting(ways []Way, wrap schedule.Wrap) []Way {
	night := k.d.LongestQuiet()
	if night == 0 || wrap.After != nil || len(ways) == 0 {
		return ways
	}
	prompt := ways[len(ways)-1]
	if prompt.With == "" {
		return ways
	}
	last := prompt.First.Planned + float64(night)
	bare := k.bareUntil(prompt)
	for b := math.Ceil(prompt.First.Early/waitStep) * waitStep; b <= last; b += waitStep {
		if b >= prompt.ModelDone*4 {
			break
		}
		w, ok := k.wrappedAfter(bare, prompt, b, wrap)
		if !ok || w.Second.Expected <= 1 {
			break
		}
		w.Cost += int(b-prompt.First.Early) / waitPerCost
		ways = append(ways, w)
	}
	return ways
}

// clocked adds the way that is wrapped by the clock: a slow piece is colder then than a
// fast one, and both go on from there.
func (k *kitchen) clocked(ways []Way, wrap schedule.Wrap) []Way {
	if !k.aim(&wrap, k.count) {
		return ways
	}
	prompt := k.base
	prompt.With = wrap.With
	w, ok := k.wrappedAfter(k.bareUntil(prompt), prompt, instant.UnitMinutes(*wrap.After), wrap)
	switch {
	case !ok:
		return ways
	case w.Second.Expected <= 1: // done before it would have been wrapped
		return k.bare(ways)
	}
	return append(ways, w)
}

// bareUntil is the bare piece from the put-on to its end.
func (k *kitchen) bareUntil(prompt Way) *heat.Stem {
	k.start()
	var bare heat.Stem
	bare.Start(&k.sim, prompt.PullC)
	return &bare
}

// wrappedAfter is the way that is wrapped b minutes after it went on, or when it
// comes to its temperature if that is later. At a pace f the piece has come as far
// as the model has after b/f minutes, and what is left takes f times the model's rest. The bare
// piece is asked for no fewer minutes than the last time.
func (k *kitchen) wrappedAfter(bareUntil *heat.Stem, prompt Way, b float64, wrap schedule.Wrap) (Way, bool) {
	zs := [4]float64{-spread.ZTenth, 0, spread.ZTenth, k.d.Z}
	order := [4]int{0, 1, 2, 3}
	slices.SortStableFunc(order[:], func(i, j int) int { return cmp.Compare(zs[j], zs[i]) }) // slowest is least far
	w := prompt
	w.Fixed, w.InOven = true, spread.Pace{}
	var wraps, totals [4]float64
	var done heat.Sim
	for n, i := range order {
		f := w.Spread.Factor(zs[i])
		wraps[i] = math.Max(b, prompt.ModelWrap*f)
		before := k.sim.ElapsedS()
		if n == 0 {
			k.sim = bareUntil.Within(wraps[i] / f * 60)
		} else {
			k.sim.RunWithin(w.PullC, math.Max(wraps[i]/f*60-before, 0))
		}
		if n == 0 || k.sim.ElapsedS() != before { // else it was wrapped just here
			done = k.sim
			done.Change(Covered(k.in, wrap.With))
			if !k.finish(&done) {
				return Way{}, false
			}
		}
		totals[i] = done.ElapsedS() / 60 * f
		if zs[i] == 0 {
			end := done
			w.WrapC, w.ModelWrap, w.ModelDone, w.State = k.sim.CoreC(), wraps[i]/f, done.ElapsedS()/60, &end
			if prompt.ModelWrap == 0 {
				w.InOven = k.ovenFinish(w)
			}
		}
	}
	bare := func(i int) float64 { return math.Min(wraps[i], totals[i]) }
	w.First = spread.Pace{Early: bare(0), Expected: bare(1), Late: bare(2), Planned: bare(3)}
	rest := func(i int) float64 { return math.Max(totals[i]-wraps[i], 1) }
	w.Second = spread.Pace{Early: rest(0), Expected: rest(1), Late: rest(2), Planned: rest(3)}
	if t := w.Total(); t.At(k.d.Z) > t.Planned { // the curve through three points does not see where the wait ends
		w.Second.Planned += t.At(k.d.Z) - t.Planned
	}
	return w, true
}

// LongestQuiet is the longest quiet stretch in minutes.
func (d *Day) LongestQuiet() int {
	longest := 0
	for _, q := range d.Quiet {
		longest = max(longest, q.To-q.From)
	}
	return longest
}

// habitFrom is the core temperature from which a cut is usually wrapped; where
// the cut has no habit, 150 F (common practice, no source).
func habitFrom(c cut.Cut) *unit.Temperature {
	t := unit.FromFahrenheit(150)
	if c.Wrap.FromC > 0 {
		t = unit.Temperature(c.Wrap.FromC)
	}
	return &t
}
