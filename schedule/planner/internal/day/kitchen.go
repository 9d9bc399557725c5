package day

import (
	"math"

	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/planner/internal/spread"
	"example.com/cookday/schedule/unit"
)

// kitchen simulates one body in one set of surroundings.
type kitchen struct {
	d    *Day
	it   *Item
	body heat.Body
	in   heat.Surroundings
	base Way
	sim  heat.Sim

	tenderS float64 // seconds above the tender temperature; 0 where the core decides
	hotS    float64 // when the cook under way came to that temperature; 0: not yet
}

func (k *kitchen) start() {
	k.hotS = 0
	k.sim.Start(k.body, k.in)
}

func (k *kitchen) minutes() float64 { return k.sim.ElapsedS() / 60 }

// spread is the uncertainty of this cook: the grate's share from two runs at a
// standard deviation either way, the dish's as measured.
func (k *kitchen) spread(count int) spread.Spread {
	s := spreadOf(k.it.Cut, false, k.base.LevelC)
	if k.tenderS > 0 {
		s.Median = 0 // the clock is set on told times, not on the model's
	}
	cold, hot := k.at(-spread.GrateErrorK), k.at(spread.GrateErrorK)
	switch {
	case cold > 0 && hot > 0:
		s.Grate = math.Log(cold/hot) / 2
	case hot > 0: // a little cooler and it would never get there
		s.Grate = math.Log(k.at(0) / hot)
	}
	s.Grate = math.Max(math.Min(s.Grate, 0.95*s.S), 0)
	return s.SlowestOf(count)
}

// finish runs a cook to its end: to the target of the core, or, for thin tough
// cuts, until they have been hot for as long as tenderness takes.
func (k *kitchen) finish(s *heat.Sim) bool {
	if k.tenderS == 0 {
		return s.RunTo(k.base.PullC, LongestCookS) == heat.Reached
	}
	hot := k.hotS
	if hot == 0 {
		if s.RunTo(k.it.Cut.TenderAboveC, LongestCookS) != heat.Reached {
			return false
		}
		hot = s.ElapsedS()
	}
	s.RunFor(hot + k.tenderS - s.ElapsedS())
	return true
}

// over says whether a cook on its way to a wrap has come to its end.
func (k *kitchen) over(s *heat.Sim) bool {
	const nearK, nearS = 0.01, 1
	if k.tenderS == 0 {
		return s.CoreC() >= k.base.PullC-nearK
	}
	return k.hotS > 0 && s.ElapsedS() >= k.hotS+k.tenderS-nearS
}

// tenderLevelC is the middle of the band for which times to tenderness are told.
var tenderLevelC = unit.FToC(237.5)

// setTenderClock finds how long a thin tough cut of usual weight must stay above its tender
// temperature so that a bare cook takes the time that practice tells. A typed
// target is obeyed instead.
func (k *kitchen) setTenderClock() {
	c := k.it.Cut
	if c.TenderMinutes[1] == 0 || k.it.Dish.Target != nil || k.it.Dish.Finish != "" {
		return
	}
	usual := *k.it
	usual.Dish.Thickness, usual.Dish.Start = 0, nil
	var s heat.Sim
	s.StartWith(usual.Body(c.Typical), heat.Grate(tenderLevelC, heat.CalmDay()), heat.Coarse)
	if s.RunTo(c.TenderAboveC, LongestCookS) != heat.Reached {
		return
	}
	k.tenderS = math.Max((c.TenderMinutes[0]+c.TenderMinutes[1])/2*60-s.ElapsedS(), 60)
	k.base.tenderS = k.tenderS
}

// unsure widens the spread of a cook whose core creeps up to what the air, not
// the boiling point, lets it come to: a few degrees more or less on the grate
// are then hours.
func (k *kitchen) unsure(s spread.Spread) spread.Spread {
	ends := k.sim.AsymptoteC()
	if ends < heat.BoilingC(k.d.Outdoors.AltitudeM)-airLimitedK && ends-k.aimC() < slowMarginK {
		s.S += slowSpreadUp
	}
	return s
}

// at is the bare cook's minutes at a grate that is off by dK; 0 if it never
// arrives. The bare cook to the wrap stands for the wrapped one: what comes
// after the wrap feels the grate alike.
func (k *kitchen) at(dK float64) float64 {
	k.hotS = 0
	in := heat.Grate(k.base.AirC+dK, k.d.Outdoors)
	var s heat.Sim
	s.StartWith(k.body, in, heat.Coarse)
	wraps, _ := k.it.Wraps()
	if len(wraps) > 0 {
		if !k.toWrap(&s, wraps[0]) {
			return 0
		}
		s.Change(Covered(in, wraps[0].With))
	}
	if !k.finish(&s) {
		return 0
	}
	return s.ElapsedS() / 60
}
