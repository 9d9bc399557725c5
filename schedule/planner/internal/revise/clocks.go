package revise

import (
	"context"
	"math"

	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/belief"
)

// clocked runs the clocks of safety over a piece as it is simulated, from the earliest
// that its fire may have died: the minutes without heat of its coldest place, its core
// for the slow clock, and stretches of too little heat on a fire that burned. Nil where
// the model does not follow the piece: readings tell then.
func (v *Revision) clocked(a *liveBatch, b *belief.Belief, w world) (*safety.HeatlessClock, []safety.Sample, []safety.Episode) {
	early, moved := w.grate.fromEarliest()
	if b == nil && (!a.told() || len(early.outages) == 0) {
		return nil, nil, nil
	}
	if b == nil || moved || w.chance > 0 {
		x := *v
		x.grate = early
		var err error
		if b, err = belief.New(context.Background(), x.journeyOf(a), v.standOf(a), w.readings); err != nil {
			v.fail(err)
			return nil, nil, nil
		}
	}
	clock, low := &safety.HeatlessClock{}, &safety.HeatlessClock{}
	var slow []safety.Sample
	if _, out := v.rawOut(a); out > 0 { // it was in the zone of danger before it went on
		slow = append(slow, safety.Sample{Minute: -out, C: rawWarmC}, safety.Sample{C: math.Max(rawWarmC, b.Journey.Body.StartC)})
	} else {
		slow = append(slow, safety.Sample{C: b.Journey.Body.StartC})
	}
	last := math.Inf(-1)
	raw := v.rawOutages(a, b, w, early)
	b.Walk(func(from, to belief.Instant) {
		core := math.Min(from.CoreC, to.CoreC)
		if o, ok := within(raw, a.on.at.Add(instant.Minutes((from.Minute+to.Minute)/2))); ok {
			spendRaw(clock, from.Minute, to.Minute, func(m float64) float64 { return v.deadBeside(a, early, o, m) })
		} else {
			clock.Spend(from.Minute, to.Minute, from.ColdestC, to.ColdestC, core, to.AirC)
		}
		if !v.standsBetween(a, w, from.Minute, to.Minute) {
			low.Spend(from.Minute, to.Minute, from.ColdestC, to.ColdestC, core, to.AirC)
		} else if n := len(low.Spent); n > 0 {
			low.Spent = append(low.Spent, safety.Spent{Minute: to.Minute, Minutes: low.Minutes()})
		}
		if to.Minute-last >= 10 {
			slow, last = append(slow, safety.Sample{Minute: to.Minute, C: to.CoreC}), to.Minute
		}
	})
	return clock, slow, stretches(low.Spent)
}

// standsBetween says whether a stretch lies in an outage or off the heat, which have
// episodes of their own.
func (v *Revision) standsBetween(a *liveBatch, w world, from, to float64) bool {
	for _, o := range w.grate.outages {
		if o.since().Sub(a.on.at).Minutes() < to && from < o.to.Sub(a.on.at).Minutes() {
			return true
		}
	}
	for _, s := range a.stands {
		if s.from.Sub(a.on.at).Minutes() < to && from < s.to.Sub(a.on.at).Minutes() {
			return true
		}
	}
	return false
}

// stretches are the stretches in which a clock ran.
func stretches(spent []safety.Spent) []safety.Episode {
	var out []safety.Episode
	for i := 1; i < len(spent); i++ {
		a, b := spent[i-1], spent[i]
		if b.Minutes <= a.Minutes {
			continue
		}
		if n := len(out); n > 0 && out[n-1].ToMinute == a.Minute {
			out[n-1].ToMinute, out[n-1].Spent = b.Minute, append(out[n-1].Spent, b)
			continue
		}
		out = append(out, safety.Episode{Kind: safety.LowHeat, FromMinute: a.Minute, ToMinute: b.Minute, Spent: []safety.Spent{a, b}})
	}
	return out
}

// withLowHeat puts stretches of too little heat between other episodes, which they do not touch.
func withLowHeat(all, low []safety.Episode) []safety.Episode {
	var out []safety.Episode
	for _, e := range all {
		for len(low) > 0 && low[0].FromMinute < e.FromMinute {
			if low[0].ToMinute <= e.FromMinute {
				out = append(out, low[0])
			}
			low = low[1:]
		}
		out = append(out, e)
	}
	for _, l := range low {
		if n := len(out); n == 0 || l.FromMinute >= out[n-1].ToMinute {
			out = append(out, l)
		}
	}
	return out
}

// spentBetween is a clock between two minutes.
func spentBetween(all []safety.Spent, from, to float64) []safety.Spent {
	at := func(minute float64) float64 {
		for i := 1; i < len(all); i++ {
			if a, b := all[i-1], all[i]; minute <= b.Minute {
				share := (math.Max(minute, a.Minute) - a.Minute) / math.Max(b.Minute-a.Minute, 1e-9)
				return a.Minutes + share*(b.Minutes-a.Minutes)
			}
		}
		return all[len(all)-1].Minutes
	}
	if len(all) == 0 {
		return nil
	}
	out := []safety.Spent{{Minute: from, Minutes: at(from)}}
	for _, p := range all {
		if p.Minute > from && p.Minute < to {
			out = append(out, p)
		}
	}
	return append(out, safety.Spent{Minute: to, Minutes: at(to)})
}

// fromEarliest is the history with each outage from the earliest that it may have begun.
func (h *grateHistory) fromEarliest() (grateHistory, bool) {
	out, moved := *h, false
	out.outages = append([]outage(nil), h.outages...)
	for i := range out.outages {
		o := &out.outages[i]
		moved = moved || o.since().Before(o.from)
		o.from = o.since()
	}
	return out, moved
}

// lowHeatFor is for how long the air beside a raw piece has been too cool to let it be,
// minutes up to now, and how cool it is; nothing where it burns as it was meant to.
func (v *Revision) lowHeatFor(a *liveBatch) (minutes, airC float64) {
	const slackK = 5 / 1.8
	b := a.asRead()
	if b == nil || v.isIndoors(a) || a.way().AirC < safety.LowHeatC+slackK {
		return 0, 0
	}
	since := math.NaN()
	b.Walk(func(from, to belief.Instant) {
		if to.AirC < safety.LowHeatC && to.CoreC < safety.DangerHighC {
			if math.IsNaN(since) {
				since = from.Minute
			}
			airC = to.AirC
			return
		}
		since = math.NaN()
	})
	if math.IsNaN(since) {
		return 0, 0
	}
	return b.Journey.Now - since, airC
}
