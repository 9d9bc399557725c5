package schedule

import (
	"cmp"
	"math"
	"slices"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/unit"
)

// covered is the surroundings under a wrapping.
func covered(in heat.Surroundings, with string) heat.Surroundings {
	if with == WrapPaper {
		return in.InPaper()
	}
	return in.InFoil()
}

// toWrap advances a bare piece to its wrap, or to its end if that comes first; false
// if it comes to neither.
func (k *kitchen) toWrap(s *heat.Sim, w Wrap) bool {
	switch {
	case w.After == nil:
		return s.RunTo(math.Min(float64(*w.From), k.base.pullC), longestCookS) == heat.Reached
	case k.tenderS == 0:
		s.RunWithin(k.base.pullC, unitMinutes(*w.After)*60)
	default:
		after := unitMinutes(*w.After) * 60
		if s.RunWithin(k.it.cut.TenderAboveC, after) == heat.Reached {
			k.hotS = s.ElapsedS()
			s.RunFor(math.Min(after, k.hotS+k.tenderS) - k.hotS)
		}
	}
	return true
}

// wraps are the wrappings to try, and whether bare to the end is one of the ways.
func (it *item) wraps() (wraps []Wrap, bare bool) {
	switch asked := it.dish.Wrap; {
	case asked != nil && asked.With == WrapNone:
		return nil, true
	case asked != nil:
		w := *asked
		if w.From == nil && w.After == nil {
			w.From = habitFrom(it.cut)
		}
		return []Wrap{w}, false
	case it.cut.Style != cut.Tough || !it.cut.WrapAllowed || it.cut.Wrap.With == "" || it.cut.Wrap.With == WrapNone:
		return nil, true
	}
	return []Wrap{{With: it.cut.Wrap.With, From: habitFrom(it.cut)}}, true
}

// waitStep is the grid of wraps that wait, in minutes; waitPerCost minutes of
// waiting cost one unit, so that nobody waits for nothing (assumption).
const (
	waitStep    = 60
	waitPerCost = 6
)

// waiting adds ways whose wrap comes later than its temperature, as it must
// when that falls in the night: the piece cooks on bare until somebody is up.
func (k *kitchen) waiting(ways []way, wrap Wrap) []way {
	night := k.d.longestQuiet()
	if night == 0 || wrap.After != nil || len(ways) == 0 {
		return ways
	}
	prompt := ways[len(ways)-1]
	if prompt.with == "" {
		return ways
	}
	last := prompt.first.planned + float64(night)
	for b := math.Ceil(prompt.first.early/waitStep) * waitStep; b <= last; b += waitStep {
		if b >= prompt.modelDone*4 {
			break
		}
		w, ok := k.wrappedAfter(prompt, b, wrap)
		if !ok || w.second.expected <= 1 {
			break
		}
		w.cost += int(b-prompt.first.early) / waitPerCost
		ways = append(ways, w)
	}
	return ways
}

// wrappedAfter is the way that is wrapped b minutes after it went on, or when it
// comes to its temperature if that is later. At a pace f the piece has come as far
// as the model has after b/f minutes, and what is left takes f times the model's rest.
func (k *kitchen) wrappedAfter(prompt way, b float64, wrap Wrap) (way, bool) {
	zs := [4]float64{-zTenth, 0, zTenth, k.d.z}
	order := [4]int{0, 1, 2, 3}
	slices.SortStableFunc(order[:], func(i, j int) int { return cmp.Compare(zs[j], zs[i]) }) // slowest is least far
	w := prompt
	w.fixed, w.inOven = true, pace{}
	var wraps, totals [4]float64
	var done heat.Sim
	k.start()
	for n, i := range order {
		f := w.spread.factor(zs[i])
		wraps[i] = math.Max(b, prompt.modelWrap*f)
		before := k.sim.ElapsedS()
		k.sim.RunWithin(w.pullC, math.Max(wraps[i]/f*60-before, 0))
		if n == 0 || k.sim.ElapsedS() != before { // else it was wrapped just here
			done = k.sim
			done.Change(covered(k.in, wrap.With))
			if !k.finish(&done) {
				return way{}, false
			}
		}
		totals[i] = done.ElapsedS() / 60 * f
		if zs[i] == 0 {
			end := done
			w.wrapC, w.modelWrap, w.modelDone, w.state = k.sim.CoreC(), wraps[i]/f, done.ElapsedS()/60, &end
		}
	}
	bare := func(i int) float64 { return math.Min(wraps[i], totals[i]) }
	w.first = pace{bare(0), bare(1), bare(2), bare(3)}
	rest := func(i int) float64 { return math.Max(totals[i]-wraps[i], 1) }
	w.second = pace{rest(0), rest(1), rest(2), rest(3)}
	if t := w.total(); t.at(k.d.z) > t.planned { // the curve through three points does not see where the wait ends
		w.second.planned += t.at(k.d.z) - t.planned
	}
	return w, true
}

// longestQuiet is the longest quiet stretch in minutes.
func (d *day) longestQuiet() int {
	longest := 0
	for _, q := range d.quiet {
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

// noteWraps says it where a dish is done before its asked wrap, and where its grate
// is hardly as cool as asked.
func (d *day) noteWraps(all []*placed) {
	for _, p := range all {
		if p.staysBare() {
			name := p.it.dish.Name
			if slices.ContainsFunc(all, func(o *placed) bool { return o.it == p.it && !o.staysBare() }) {
				name = p.labelAmong(all, d.req.Units)
			}
			d.find(finding("done-before-wrap", p.it.path("wrap"), p.it, name+" is done before it would be wrapped, so it stays bare."))
		}
		d.noteAir(p.it.path("level"), p.it, p.way)
	}
}

// staysBare says whether a batch is done before the wrap that was asked for.
func (p *placed) staysBare() bool {
	w := p.it.dish.Wrap
	return w != nil && w.With != WrapNone && p.stages() == 1
}
