package schedule

import (
	"math"
	"sort"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/unit"
)

// longestCookS bounds one simulated cook; nothing that takes longer than the
// horizon can be planned.
const longestCookS = 48 * 3600

// indirectWays simulates the ways of cooking a lot beside the coals at one
// level: bare, wrapped at the habit's or the asked temperature, and, where
// there are quiet hours, wrapped later than that because nobody is up. It
// returns no way if the core never arrives there.
func (d *day) indirectWays(it *item, l lot, band string, levelC float64) []way {
	k := kitchen{d: d, it: it, body: it.body(l.massKg), in: heat.Grate(believed(levelC, it.targetC), d.outdoors)}
	k.base = way{kind: StageBare, levelC: levelC, band: band, pullC: it.targetC}
	if it.final {
		k.start()
		k.base.pullC, _ = k.sim.PullForPeak(it.targetC, heat.Counter(roomC), longestCookS)
	}
	k.setTenderClock()
	k.base.spread = k.spread(l.count)
	wraps, bare := it.wraps()
	var ways []way
	if bare {
		ways = k.bare(ways)
	}
	for _, w := range wraps {
		ways = k.wrapped(ways, w)
		ways = k.waiting(ways, w)
	}
	return ways
}

// doubtfulC is the grate temperature below which a fire that brings meat to
// doubtfulTargetC is more likely misread than real: cooks' logs at 200-208 F end
// hours before the model lets them. believedC is what such a grate has instead.
var (
	doubtfulC       = celsius(215)
	doubtfulTargetC = celsius(195)
	believedC       = celsius(220)
)

// doubtful says whether a level is hardly what the grate has.
func doubtful(levelC, targetC float64) bool { return levelC < doubtfulC && targetC >= doubtfulTargetC }

// believed is the level that the model is given for a level as stated.
func believed(levelC, targetC float64) float64 {
	if doubtful(levelC, targetC) {
		return believedC
	}
	return levelC
}

// kitchen simulates one body in one set of surroundings.
type kitchen struct {
	d    *day
	it   *item
	body heat.Body
	in   heat.Surroundings
	base way
	sim  heat.Sim

	tenderS float64 // seconds above the tender temperature; 0 where the core decides
}

func (k *kitchen) start() { k.sim.Start(k.body, k.in) }

func (k *kitchen) minutes() float64 { return k.sim.ElapsedS() / 60 }

// spread is the uncertainty of this cook: the grate's share from two runs at a
// standard deviation either way, the dish's as measured.
func (k *kitchen) spread(count int) spread {
	s := spreadOf(k.it.cut, false, k.base.levelC)
	if k.tenderS > 0 {
		s.Median = 0 // the clock is set on told times, not on the model's
	}
	cold, hot := k.at(-grateErrorK), k.at(grateErrorK)
	switch {
	case cold > 0 && hot > 0:
		s.Grate = math.Log(cold/hot) / 2
	case hot > 0: // a little cooler and it would never get there
		s.Grate = math.Log(k.at(0) / hot)
	}
	s.Grate = math.Max(math.Min(s.Grate, 0.95*s.S), 0)
	return s.slowestOf(count)
}

// finish runs a cook to its end: to the target of the core, or, for thin tough
// cuts, until they have been hot for as long as tenderness takes.
func (k *kitchen) finish(s *heat.Sim) bool {
	if k.tenderS == 0 {
		return s.RunTo(k.base.pullC, longestCookS) == heat.Reached
	}
	if s.RunTo(k.it.cut.TenderAboveC, longestCookS) != heat.Reached {
		return false
	}
	s.RunFor(k.tenderS)
	return true
}

// tenderLevelC is the middle of the band for which times to tenderness are told.
var tenderLevelC = celsius(237.5)

// setTenderClock finds how long a thin tough cut of usual weight must stay above its tender
// temperature so that a bare cook takes the time that practice tells. A typed
// target is obeyed instead.
func (k *kitchen) setTenderClock() {
	c := k.it.cut
	if c.TenderMinutes[1] == 0 || k.it.dish.Target != nil || k.it.dish.Finish != "" {
		return
	}
	usual := *k.it
	usual.dish.Thickness, usual.dish.Start = 0, nil
	var s heat.Sim
	s.StartWith(usual.body(c.Typical), heat.Grate(tenderLevelC, heat.CalmDay()), heat.Coarse)
	if s.RunTo(c.TenderAboveC, longestCookS) != heat.Reached {
		return
	}
	k.tenderS = math.Max((c.TenderMinutes[0]+c.TenderMinutes[1])/2*60-s.ElapsedS(), 60)
}

// unsure widens the spread of a cook whose core creeps up to what the air, not
// the boiling point, lets it come to: a few degrees more or less on the grate
// are then hours.
func (k *kitchen) unsure(s spread) spread {
	ends := k.sim.AsymptoteC()
	aim := k.base.pullC
	if k.tenderS > 0 {
		aim = k.it.cut.TenderAboveC
	}
	if ends < heat.BoilingC(k.d.outdoors.AltitudeM)-airLimitedK && ends-aim < slowMarginK {
		s.S += slowSpreadUp
	}
	return s
}

// at is the bare cook's minutes at a grate that is off by dK; 0 if it never
// arrives. The bare cook to the wrap stands for the wrapped one: what comes
// after the wrap feels the grate alike.
func (k *kitchen) at(dK float64) float64 {
	in := heat.Grate(believed(k.base.levelC, k.it.targetC)+dK, k.d.outdoors)
	var s heat.Sim
	s.StartWith(k.body, in, heat.Coarse)
	wraps, _ := k.it.wraps()
	if len(wraps) > 0 {
		runToWrap(&s, wraps[0], k.base.pullC)
		s.Change(covered(in, wraps[0].With))
	}
	if !k.finish(&s) {
		return 0
	}
	return s.ElapsedS() / 60
}

// covered is the surroundings under a wrapping.
func covered(in heat.Surroundings, with string) heat.Surroundings {
	if with == WrapPaper {
		return in.InPaper()
	}
	return in.InFoil()
}

// runToWrap advances a bare piece to its wrap, or to the target if that comes first.
func runToWrap(s *heat.Sim, w Wrap, targetC float64) {
	if w.After != nil {
		s.RunTo(targetC, unitMinutes(*w.After)*60)
		return
	}
	s.RunTo(math.Min(float64(*w.From), targetC), longestCookS)
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

// unhabitual is the cost of cooking bare what is usually wrapped, or hotter or
// cooler than usual: enough to decide between near-equals (assumption).
const unhabitual = 60

func (k *kitchen) bare(ways []way) []way {
	k.start()
	if !k.finish(&k.sim) {
		return ways
	}
	w := k.base
	w.pullC = k.sim.CoreC()
	w.spread, w.modelDone = k.unsure(w.spread), k.minutes()
	w.first = paces(k.d.z, func(z float64) float64 { return w.modelDone * w.spread.factor(z) })
	if wraps, _ := k.it.wraps(); len(wraps) > 0 {
		w.cost += unhabitual
	}
	return append(ways, k.keep(w))
}

func (k *kitchen) wrapped(ways []way, wrap Wrap) []way {
	k.start()
	runToWrap(&k.sim, wrap, k.base.pullC)
	w := k.base
	w.with, w.wrapC, w.modelWrap = wrap.With, k.sim.CoreC(), k.minutes()
	w.inOven = k.ovenFinish(w)
	k.sim.Change(covered(k.in, wrap.With))
	if !k.finish(&k.sim) {
		return ways
	}
	w.pullC = k.sim.CoreC()
	w.spread, w.modelDone = k.unsure(w.spread), k.minutes()
	w.fixed = wrap.After != nil
	w.first = paces(k.d.z, func(z float64) float64 {
		if w.fixed {
			return w.modelWrap
		}
		return w.modelWrap * w.spread.factor(z)
	})
	w.second = paces(k.d.z, func(z float64) float64 {
		return math.Max((w.modelDone-w.modelWrap)*w.spread.factor(z), 1)
	})
	return append(ways, k.keep(w))
}

// ovenFinish is the second stage in the kitchen oven at the grate's level, where
// there is one: it frees the grate. The air of an oven is steadier than a fire's,
// but the spread stays that of the cut.
func (k *kitchen) ovenFinish(w way) pace {
	if k.d.req.Oven == nil {
		return pace{}
	}
	s := k.sim
	s.Change(heat.WarmOven(k.base.levelC).AtAltitude(k.d.outdoors.AltitudeM))
	if !k.finish(&s) {
		return pace{}
	}
	rest := s.ElapsedS()/60 - w.modelWrap
	return paces(k.d.z, func(z float64) float64 { return math.Max(rest*w.spread.factor(z), 1) })
}

func (k *kitchen) keep(w way) way {
	w.state, w.held = k.sim, true
	return w
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
	for b := math.Ceil(prompt.first.planned/waitStep+0.5) * waitStep; b <= last; b += waitStep {
		if b >= prompt.modelDone*4 {
			break
		}
		w, ok := k.wrappedAfter(prompt, b, wrap)
		if !ok || w.second.expected <= 1 {
			break
		}
		w.cost += int(b-prompt.first.planned) / waitPerCost
		ways = append(ways, w)
	}
	return ways
}

// wrappedAfter is the way that is wrapped b minutes after it went on, however
// far it is by then. At a pace f the piece has come as far as the model has
// after b/f minutes, and what is left takes f times the model's rest.
func (k *kitchen) wrappedAfter(prompt way, b float64, wrap Wrap) (way, bool) {
	zs := []float64{-zTenth, 0, zTenth, k.d.z}
	order := []int{0, 1, 2, 3}
	sort.SliceStable(order, func(i, j int) bool { return zs[order[i]] > zs[order[j]] }) // slowest is least far
	w := prompt
	w.fixed, w.inOven = true, pace{}
	totals := make([]float64, len(zs))
	k.start()
	for _, i := range order {
		f := w.spread.factor(zs[i])
		k.sim.RunTo(w.pullC, math.Max(b/f*60-k.sim.ElapsedS(), 0))
		branch := k.sim
		branch.Change(covered(k.in, wrap.With))
		if !k.finish(&branch) {
			return way{}, false
		}
		totals[i] = branch.ElapsedS() / 60 * f
		if zs[i] == 0 {
			w.wrapC, w.modelWrap, w.modelDone, w.state = k.sim.CoreC(), b/f, branch.ElapsedS()/60, branch
		}
	}
	bare := func(i int) float64 { return math.Min(b, totals[i]) }
	w.first = pace{bare(0), bare(1), bare(2), bare(3)}
	rest := func(i int) float64 { return math.Max(totals[i]-b, 1) }
	w.second = pace{rest(0), rest(1), rest(2), rest(3)}
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
