package surprise

import (
	"math"

	"example.com/cookday/schedule/planner/internal/belief"
	"example.com/cookday/schedule/unit"
)

// Cause is what a surprising reading may be.
type Cause string

// Causes, the most dangerous first.
const (
	Fire   Cause = "fire"       // the fire died or sank, and the core is true
	Unit   Cause = "unit"       // Celsius typed as Fahrenheit, or back
	Warm   Cause = "warm-start" // it went on warm: it was out of the refrigerator for hours
	Frozen Cause = "frozen"     // it is still frozen in the middle
	Pace   Cause = "pace"       // the cook is just so slow, or so fast
	Place  Cause = "place"      // another place in the piece, beside bone, fat or a cold lump
	Out    Cause = "out"        // the probe is in the air outside, or in a hand
	Air    Cause = "air"        // it is in the air of the grill, or on the grate
	Dish   Cause = "other-dish" // it is in another piece
)

// danger is the order in which causes are feared.
var danger = map[Cause]int{Fire: 0, Unit: 1, Warm: 2, Frozen: 3, Pace: 4, Place: 5, Out: 5, Air: 5, Dish: 5}

// Priors of the causes: judgment. Place has a second, wide part for a probe that is
// nowhere it should be; a fire that was rebuilt without a word a small one.
const (
	paceShare, fireShare, rebuiltShare = 0.62, 0.10, 0.02
	placeShare, anywhereShare          = 0.10, 0.03
	outShare, airShare, unitShare      = 0.05, 0.05, 0.05
	dishShare, frozenShare, warmShare  = 0.03, 0.02, 0.03
	ordinarySd, paceSd, nearSd         = 3.0, 4.5, 2.0
	placeReachK, outReachK, airReachK  = 25 / 1.8, 14 / 1.8, 40 / 1.8
	nearOutsideK                       = 8.0
	frozenMinutes, warmMinutes         = 300.0, 60.0
	// rebuiltMinutes is how long before a proof of heat a rebuilt fire must have been lit.
	rebuiltMinutes = 30.0
)

var frozenFromC, frozenToC, warmToC = unit.FToC(27), unit.FToC(32), unit.FToC(90)

// Explained is a cause with its chance.
type Explained struct {
	Cause  Cause
	Chance float64
	Name   string // of the other dish
}

// foretold is what a reading ought to be.
type foretold struct {
	coreC, sdK float64
	from       belief.Reading
}

// explain weighs every cause of a reading that is possible.
func (j *judge) explain(r belief.Reading, f foretold) (all []Explained, since Since) {
	s := j.scene
	add := func(c Cause, weight float64, name string) {
		if weight > 0 {
			all = append(all, Explained{Cause: c, Chance: weight, Name: name})
		}
	}
	z := (r.CoreC - f.coreC) / f.sdK
	if math.Abs(z) <= paceSd {
		add(Pace, paceShare*normal(r.CoreC, f.coreC, f.sdK), "")
	}
	if weight, when := j.dead(r, f); weight > 0 {
		add(Fire, weight, "")
		since = when
	}
	place := 0.0
	if math.Abs(r.CoreC-f.coreC) <= placeReachK {
		place = placeShare / (2 * placeReachK)
	}
	low, high := s.OutsideC(r.Minute), math.Max(s.AirC(r.Minute), f.coreC+placeReachK)
	if r.CoreC < f.coreC {
		high = f.coreC
	} else {
		low = f.coreC
	}
	if r.CoreC > low && r.CoreC < high {
		place += anywhereShare / math.Max(high-low, placeReachK)
	}
	add(Place, place, "")
	if math.Abs(r.CoreC-s.OutsideC(r.Minute)) <= nearOutsideK {
		add(Out, outShare/(2*outReachK), "")
	}
	if air := s.AirC(r.Minute); r.CoreC > air-airReachK && z > 0 {
		add(Air, airShare/(2*airReachK), "")
	}
	add(Unit, j.typed(r, f), "")
	for _, o := range s.Others {
		if core, sd, ok := o.CoreAt(r.Minute, r.CoreC); ok && math.Abs(r.CoreC-core) <= nearSd*sd {
			add(Dish, dishShare*normal(r.CoreC, core, sd), o.Name)
		}
	}
	if r.CoreC >= frozenFromC && r.CoreC <= frozenToC && r.Minute <= frozenMinutes && z < 0 {
		add(Frozen, frozenShare/(frozenToC-frozenFromC), "")
	}
	if body := s.Journey.Body.StartC; r.Minute <= warmMinutes && z > 0 && r.CoreC <= math.Min(warmToC, s.AirC(r.Minute)) && r.CoreC > body {
		add(Warm, warmShare/math.Max(warmToC-body, 1), "")
	}
	return shared(all), since
}

// shared makes chances of weights.
func shared(all []Explained) []Explained {
	sum := 0.0
	for _, e := range all {
		sum += e.Chance
	}
	for i := range all {
		all[i].Chance /= sum
	}
	return all
}

// typed is the weight of a reading in the other unit.
func (j *judge) typed(r belief.Reading, f foretold) float64 {
	best := 0.0
	asF := r.CoreC*1.8 + 32
	writtenF, writtenC := isRound(asF), isRound(r.CoreC)
	for _, meant := range []struct {
		c, slope float64
		no       bool
	}{{asF, 1.8, writtenC && !writtenF}, {unit.FToC(r.CoreC), 1 / 1.8, writtenF && !writtenC}} {
		if !meant.no && math.Abs(meant.c-f.coreC) <= nearSd*f.sdK {
			best = math.Max(best, unitShare*normal(meant.c, f.coreC, f.sdK)*meant.slope)
		}
	}
	return best
}

// isRound says whether a figure is as a cook writes it: that tells its unit.
func isRound(x float64) bool { return math.Abs(x-math.Round(x)) < 0.01 }

// dead is the weight of a fire that died, or died and was rebuilt, and since when.
func (j *judge) dead(r belief.Reading, f foretold) (float64, Since) {
	s := j.scene
	if !s.Fire || r.CoreC >= f.coreC || r.CoreC < math.Min(s.Journey.Body.StartC, s.OutsideC(r.Minute))-nearSd*belief.ProbeErrorK {
		return 0, Since{}
	}
	proven := math.Max(s.provenUntil(r.Minute), j.provenByCore)
	weight, when := 0.0, Since{}
	if proven < r.Minute-1 && j.coldest(r, f, proven, r.Minute) {
		when = s.since(j.outlook, f.from, proven, s.Now, r)
		weight = fireShare * when.Density
	}
	if again, ok := j.litSince(r, f, proven); ok {
		weight += rebuiltShare * again.Density
		if again.Density*rebuiltShare > fireShare*when.Density {
			when = again
		}
	}
	// The thermometers may only show that it burns again.
	if before := math.Max(s.provenUntil(proven-1), j.provenByCore); proven > j.provenByCore && before < proven-rebuiltMinutes {
		to := proven - rebuiltMinutes
		if j.coldest(r, f, before, to) {
			again := s.since(j.outlook, f.from, before, to, r)
			if w := rebuiltShare * again.Density; w > weight {
				when = again
				weight += w
			} else {
				weight += w
			}
		}
	}
	return weight, when
}

// litSince is a fire that died before a reading and burned again after it: a thermometer
// that shows heat later clears nothing of what was before it.
func (j *judge) litSince(r belief.Reading, f foretold, proven float64) (Since, bool) {
	s := j.scene
	later := s.provenAfter(r.Minute)
	if math.IsInf(later, 1) || !(proven < r.Minute-1) || !j.coldest(r, f, proven, r.Minute) {
		return Since{}, false
	}
	to := math.Max(r.Minute, later-rebuiltMinutes)
	when := s.since(j.outlook, f.from, proven, r.Minute, r)
	when.To = to
	return when, true
}

// coldest says whether a dead fire can have brought the core as low as that.
func (j *judge) coldest(r belief.Reading, f foretold, from, to float64) bool {
	core := j.outlook.In(j.scene.Without(from, to), f.from, r.Minute)
	return r.CoreC >= core-ordinarySd*math.Hypot(belief.ProbeErrorK, belief.PlaceErrorK)
}
