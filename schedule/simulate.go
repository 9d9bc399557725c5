package schedule

import (
	"math"

	"example.com/cookday/schedule/internal/heat"
)

// longestCookS bounds one simulated cook; nothing that takes longer than the
// horizon can be planned.
const longestCookS = 48 * 3600

// indirectWays simulates the ways of cooking a lot beside the coals at one
// level: bare, wrapped at the habit's or the asked temperature, and, where
// there are quiet hours, wrapped later than that because nobody is up. It
// returns no way if the core never arrives there.
func (d *day) indirectWays(it *item, l lot, band string, levelC float64) []way {
	k := kitchen{d: d, it: it, body: it.body(l.massKg)}
	k.base = way{kind: StageBare, levelC: levelC, band: band, pullC: it.targetC}
	k.setAir("")
	if it.final {
		k.start()
		k.base.pullC, _ = k.sim.PullForPeak(it.targetC, heat.Counter(roomC), longestCookS)
	}
	k.setTenderClock()
	wraps, bare := it.wraps()
	if len(wraps) > 0 {
		k.setAir(wraps[0].With)
	}
	k.base.spread = k.spread(l.count)
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

// unhabitual is the cost of cooking bare what is usually wrapped, or hotter or
// cooler than usual: enough to decide between near-equals (assumption).
const unhabitual = 60

func (k *kitchen) bare(ways []way) []way {
	k.setAir("")
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
	k.setAir(wrap.With)
	k.start()
	if !k.toWrap(&k.sim, wrap) {
		return ways
	}
	if k.over(&k.sim) { // done before it would have been wrapped
		return k.bare(ways)
	}
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
	end := k.sim
	w.state = &end
	return w
}
