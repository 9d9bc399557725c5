package day

import (
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/planner/internal/spread"
	"example.com/cookday/schedule/unit"
)

// kitchen simulates one body in one set of surroundings.
type kitchen struct {
	d     *Day
	it    *Item
	body  heat.Body
	count int // like pieces
	in    heat.Surroundings
	base  Way
	sim   heat.Sim

	tenderS float64 // seconds above the tender temperature; 0 where the core decides
	hotS    float64 // when the cook under way came to that temperature; 0: not yet
}

func (k *kitchen) start() {
	k.hotS = 0
	k.sim.Start(k.body, k.in)
}

func (k *kitchen) minutes() float64 { return k.sim.ElapsedS() / 60 }

// aim sets the air and the spread of the way at hand, bare or with a wrap, for so many
// pieces: coarse runs at the grate as it is said to be, and NodeSD standard deviations of
// its error either way. False where the core never gets there.
//
// Where it hardly does, the air is raised, within that error, until the cook takes
// LongestShare of what it takes at the hot end: minutes then go on without a jump as the
// target rises or the grate cools, up to where even the hot end never gets there. The
// ends go along with the raised air by endsFollowK and no further: beyond, a higher
// target would be reached sooner on a fast day.
func (k *kitchen) aim(wrap *schedule.Wrap, count int) bool {
	const swing, endsFollowK = spread.NodeSD * spread.GrateErrorK, 1.0
	airC := actualC(k.base.LevelC, k.it.Cut.Style)
	hot := k.at(airC+swing, wrap)
	if math.IsInf(hot, 1) {
		return false
	}
	said, t, stretch := airC, k.at(airC, wrap), 1.0
	if longest := spread.LongestShare * hot; t > longest {
		airC, t = k.airFor(longest, airC, airC+swing, wrap), longest
		stretch = longest / k.at(airC, wrap) // the coolest air that arrives may do so sooner
		said = math.Min(airC, said+endsFollowK)
		hot = k.at(said+swing, wrap)
	}
	slow := k.at(said-swing, wrap)
	k.base.AirC, k.in = airC, heat.Grate(airC, k.d.Outdoors)
	k.base.Creeps = slow/t > creepsFrom
	k.base.Spread = k.own().mixed(slow/t, hot/t).SlowestOf(count)
	k.base.Spread.Median += math.Log(stretch)
	return true
}

// creepsFrom is how much longer a cook may take on a cool grate before that is said.
const creepsFrom = 1.8

// own is the scatter of the piece at a known grate.
func (k *kitchen) own() own {
	if k.tenderS > 0 {
		return k.d.paced(clockScatter)
	}
	return k.d.paced(scatterOf(k.it.Cut, k.base.LevelC))
}

// airFor is the air between two at which the cook takes so many minutes.
func (k *kitchen) airFor(minutes, lowC, highC float64, wrap *schedule.Wrap) float64 {
	const closeK = 0.02
	for highC-lowC > closeK {
		if mid := (lowC + highC) / 2; k.at(mid, wrap) > minutes {
			lowC = mid
		} else {
			highC = mid
		}
	}
	return highC
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

// at is how many minutes the cook takes in air of a temperature, bare or with a wrap,
// coarsely; infinite if it never gets there.
func (k *kitchen) at(airC float64, wrap *schedule.Wrap) float64 {
	k.hotS = 0
	in := heat.Grate(airC, k.d.Outdoors)
	var s heat.Sim
	s.StartWith(k.body, in, heat.Coarse)
	if wrap != nil {
		if !k.toWrap(&s, *wrap) {
			return math.Inf(1)
		}
		s.Change(Covered(in, wrap.With))
	}
	if !k.finish(&s) {
		return math.Inf(1)
	}
	return s.ElapsedS() / 60
}
