package surprise

import (
	"context"
	"math"
	"sort"

	"example.com/cookday/schedule/planner/internal/belief"
)

// Reading is one reading of a core. Pushed is that of a probe pushed through the whole
// piece: the coldest place there is.
type Reading struct {
	Minute, CoreC float64
	Pushed        bool
}

// Verdict is what a surprising reading may be.
type Verdict struct {
	Index     int // of the reading
	Minute    float64
	CoreC     float64
	ForetoldC float64
	EdgeC     float64     // the coldest that would have been taken for the core
	Causes    []Explained // the likeliest first
	Taken     Cause       // empty as long as two are alive
	Worst     Cause       // the most dangerous that is alive
	Since     Since       // of a fire that may have died
	Settled   bool        // toward harmless, by what was measured after it
	Cold      bool        // it is colder than foretold
	Leap      bool        // it alone would finish the piece, far sooner than nearly any: the next reading tells
}

// Open says whether two explanations are still to be told apart.
func (v Verdict) Open() bool { return v.Taken == "" && !v.Settled }

// Chance is that of a cause.
func (v Verdict) Chance(c Cause) float64 {
	for _, e := range v.Causes {
		if e.Cause == c {
			return e.Chance
		}
	}
	return 0
}

// When an explanation is taken, and what keeps it from that (judgment).
const (
	takenFrom  = 0.90
	AliveFrom  = 0.005
	AskFrom    = 0.05 // a wrong unit, meat that went on warm, another dish
	settles    = 30.0 // minutes after a surprise in which another reading settles it
	agreeAgain = 3    // readings too hot in a row that agree are the piece after all
)

// judge goes through the readings of one piece.
type judge struct {
	scene        *Scene
	outlook      *belief.Outlook
	readings     []Reading
	warmest      []float64 // of the readings up to each
	provenByCore float64
	verdicts     []Verdict
	taken        []bool
	doubts       []string
}

// Judge says of each reading whether it is the core. doubts has the cause for which one
// is not taken, and is empty where it is.
func Judge(ctx context.Context, s *Scene, stand belief.Stand, readings []Reading) (doubts []string, verdicts []Verdict, err error) {
	j := &judge{scene: s, readings: readings, warmest: make([]float64, len(readings)), taken: make([]bool, len(readings)), doubts: make([]string, len(readings))}
	if len(readings) == 0 {
		return nil, nil, nil
	}
	most := math.Inf(-1)
	for k, r := range readings {
		most = max(most, r.CoreC)
		j.warmest[k] = most
	}
	if j.outlook, err = belief.NewOutlook(ctx, s.Journey, stand, readings[len(readings)-1].Minute); err != nil {
		return nil, nil, err
	}
	node := belief.Reading{CoreC: s.Journey.Body.StartC}
	from, made := j.outlook.From(node), 0.0
	var spare *belief.Foretold
	var prior last // what was foretold before the newest reading that was taken
	stretch := math.Max(20, readings[len(readings)-1].Minute/23)
	for k, r := range readings {
		if err := ctx.Err(); err != nil {
			return nil, nil, err
		}
		core, sd := from.At(r.Minute, r.CoreC)
		f := foretold{coreC: core, sdK: sd, from: node}
		if spare != nil { // as if the cold reading before had been of another place
			core, sd := spare.At(r.Minute, r.CoreC)
			if s := (foretold{coreC: core, sdK: sd, from: node}); !j.ordinary(k, r, f) && j.ordinary(k, r, s) {
				j.setAside(k)
				f, from, spare = s, spare, nil
			}
		}
		was := from
		if s.Accepted[k] {
			j.taken[k] = true
		} else if j.leapAgain(k) {
			j.bothTaken(k, from, f)
		} else if j.afterDead(r, f) || j.ordinary(k, r, f) && !j.slow(r, from, f) && !j.finishes(r, f) && !j.leaps(r, f) && !j.frozen(r) {
			j.take(k, from, f)
		} else {
			j.weigh(k, f)
			if prior.from != nil && !j.taken[k] && f.coreC > r.CoreC && prior.warm && !j.doubted(prior.k) {
				core, sd := prior.from.At(r.Minute, r.CoreC)
				if s := (foretold{coreC: core, sdK: sd, from: prior.node}); math.Abs(r.CoreC-core) <= ordinarySd*sd && !j.fallsBut(k, r, prior.k) {
					j.insteadOf(prior, k, s)
					from = prior.from
				}
			}
			if prior.from != nil && j.colderPlace(prior.k, k) {
				j.insteadOf(prior, k, f)
			}
			if n := len(j.verdicts); n > 0 && j.verdicts[n-1].Index == k && j.taken[k] && j.verdicts[n-1].Open() {
				spare = was
			}
		}
		if j.taken[k] {
			prior = last{k: k, node: node, from: was, warm: r.CoreC > f.coreC, foretoldC: f.coreC}
		}
		if j.taken[k] && (r.Minute-made >= stretch || made == 0 || len(readings) <= 24 || j.doubted(k-1)) && r.Minute > 0 {
			node, made = belief.Reading{Minute: r.Minute, CoreC: r.CoreC}, r.Minute
			from = j.outlook.From(node)
		}
	}
	return j.doubts, j.verdicts, nil
}

// setAside leaves out what was taken for the core only because it was likelier: a reading
// after it says that it was not. Its danger stays until it is settled.
func (j *judge) setAside(k int) {
	for _, v := range j.verdicts {
		if v.Open() && v.Index < k && j.taken[v.Index] {
			j.taken[v.Index], j.doubts[v.Index] = false, string(Place)
		}
	}
}

// last is a reading that was taken, and what was foretold before it.
type last struct {
	k         int
	node      belief.Reading
	from      *belief.Foretold
	foretoldC float64
	warm      bool // it is warmer than that
}

// insteadOf takes a reading for the core instead of a warmer one before it, after which it
// would be too cold: of two places the colder one counts. A fire that may have died between
// the two stays alive.
func (j *judge) insteadOf(warm last, k int, f foretold) {
	r := j.readings[warm.k]
	j.taken[warm.k], j.doubts[warm.k] = false, string(Place)
	j.taken[k], j.doubts[k] = true, ""
	if n := len(j.verdicts); n > 0 && j.verdicts[n-1].Index == k && j.verdicts[n-1].Chance(Fire) < AliveFrom {
		j.verdicts = j.verdicts[:n-1]
	}
	j.verdicts = append(j.verdicts, Verdict{
		Index: warm.k, Minute: r.Minute, CoreC: r.CoreC, ForetoldC: warm.foretoldC, EdgeC: r.CoreC,
		Causes: []Explained{{Cause: Place, Chance: 1}}, Taken: Place, Worst: Place,
	})
	j.settle(k)
}

func (j *judge) doubted(k int) bool { return k >= 0 && !j.taken[k] }

// fellK is how far a probe that stays where it is may fall back before it is asked about:
// three standard deviations of its own error, twice.
const fellK = 3 * 1.4142 * belief.ProbeErrorK

// fellMinutes is how close readings are of a probe that stays where it is.
const fellMinutes = 45

// ordinary says whether a reading is as foretold. A probe that stays in its place and falls
// is not, however slowly.
func (j *judge) ordinary(k int, r Reading, f foretold) bool {
	if math.Abs(r.CoreC-f.coreC) > ordinarySd*f.sdK {
		return false
	}
	if unit := j.typed(belief.Reading{Minute: r.Minute, CoreC: r.CoreC}, f); unit > 0 && math.Abs(r.CoreC-f.coreC) > nearSd*f.sdK {
		return false
	}
	return !j.falls(k, r)
}

// afterDead says whether a reading is colder than foretold of a piece whose fire is known to
// have been out: it did not cook on as a forecast has it, and that is believed. Only a probe
// colder than the air outside is not in it.
func (j *judge) afterDead(r Reading, f foretold) bool {
	if r.CoreC >= f.coreC || r.CoreC < j.scene.OutsideC(r.Minute)-nearOutsideK || j.typed(belief.Reading{Minute: r.Minute, CoreC: r.CoreC}, f) > 0 {
		return false
	}
	for _, o := range j.scene.Dead {
		if o.From < r.Minute && r.Minute < o.To+deadTells {
			return true
		}
	}
	return false
}

// deadTells is for how long after an outage a piece may be colder for it, minutes (judgment).
const deadTells = 60.0

// falls says whether the last readings, close together, have come down by more than their error.
func (j *judge) falls(k int, r Reading) bool { return j.fallsBut(k, r, -1) }

// fallsBut says the same of the readings but one, which may have been of a warmer place.
func (j *judge) fallsBut(k int, r Reading, but int) bool {
	if k == 0 || j.warmest[k-1]-r.CoreC <= fellK {
		return false // none was warmer
	}
	most, n := r.CoreC, 0
	from := sort.Search(k, func(i int) bool { return j.readings[i].Minute >= r.Minute-fellMinutes })
	step := (k-from)/fellMinutes + 1 // of a probe that reports all the time about one a minute
	for i := k - 1; i >= 0 && j.readings[i+1].Minute-j.readings[i].Minute <= fellMinutes; i -= step {
		if j.taken[i] && i != but {
			most = math.Max(most, j.readings[i].CoreC)
			n++
		}
	}
	if n < 2 || most-r.CoreC <= fellK {
		return false
	}
	for _, o := range j.scene.Known {
		if o.From < r.Minute && r.Minute < o.To+120 { // it falls, and it is known why
			return false
		}
	}
	return true
}

// take takes a reading for the core.
func (j *judge) take(k int, from *belief.Foretold, f foretold) {
	r := j.readings[k]
	rises := k == 0 || r.CoreC > f.from.CoreC
	j.taken[k] = true
	if rises && f.coreC > f.from.CoreC && r.CoreC > f.coreC-2*f.sdK {
		proven := math.Max(j.provenByCore, j.scene.provenUntil(r.Minute))
		j.provenByCore = math.Max(j.provenByCore, j.scene.provenBy(j.outlook, from, f.from, belief.Reading{Minute: r.Minute, CoreC: r.CoreC}, proven))
	}
	j.settle(k)
}

// weigh explains a reading that surprises.
func (j *judge) weigh(k int, f foretold) {
	r := j.readings[k]
	v := Verdict{Index: k, Minute: r.Minute, CoreC: r.CoreC, ForetoldC: f.coreC, EdgeC: f.coreC - paceSd*f.sdK, Cold: r.CoreC < f.coreC}
	if j.falls(k, r) && v.Cold {
		f.sdK = math.Min(f.sdK, math.Max((f.coreC-r.CoreC)/paceSd, 1.4142*belief.ProbeErrorK))
	}
	v.Causes, v.Since = j.explain(belief.Reading{Minute: r.Minute, CoreC: r.CoreC}, f)
	sortCauses(v.Causes)
	v.Worst, v.Taken = j.decide(v.Causes)
	if r.Pushed && v.Cold && v.Taken != Unit { // nowhere in it is colder: this is the core, whatever made it so
		v.Causes = without(v.Causes, Place, Dish)
		if len(v.Causes) == 0 {
			v.Causes = []Explained{{Cause: Pace, Chance: 1}}
		}
		v.Worst, v.Taken = j.decide(v.Causes)
	}
	if j.stalls(r, f, v) { // a plain stall, however early it came: what every such cook sees
		j.taken[k] = true
		j.settle(k)
		return
	}
	if v.Taken == "" && j.agrees(k, v) {
		v.Taken = Fire
	}
	if j.finishes(r, f) && v.Main() == Pace { // it may be so fast: the next reading tells
		v.Causes = without(v.Causes, Pace)
		v.Worst, v.Taken = j.decide(v.Causes)
	}
	if j.frozen(r) { // nothing makes any place of it colder than it went on: it is ice
		v.Causes = without(v.Causes, Pace, Place, Fire)
		v.Worst, v.Taken = j.decide(v.Causes)
	}
	if v.Leap = j.leaps(r, f) && v.Main() == Pace; v.Leap {
		v.Taken = ""
		j.verdicts, j.doubts[k] = append(j.verdicts, v), string(Place)
		return
	}
	j.verdicts = append(j.verdicts, v)
	switch main := v.Main(); {
	case main == Pace, main == Fire, main == Frozen, main == Warm, main == Unit && v.Chance(Frozen) >= AskFrom:
		j.taken[k] = true
	case j.again(k, f):
		j.taken[k] = true
		j.verdicts = j.verdicts[:len(j.verdicts)-1]
	default:
		j.doubts[k] = string(main)
	}
}

// Main is the cause that the times are worked out with: the one that is taken, else the
// likeliest.
func (v Verdict) Main() Cause {
	if v.Taken != "" || len(v.Causes) == 0 {
		return v.Taken
	}
	return v.Causes[0].Cause
}

// decide takes a cause that has nine in ten, if no more dangerous one is alive.
func (j *judge) decide(all []Explained) (worst, taken Cause) {
	if len(all) == 0 {
		return Place, Place // nothing explains it: a broken probe
	}
	worst = all[0].Cause
	for _, e := range all {
		if e.Chance >= AliveFrom && danger[e.Cause] < danger[worst] {
			worst = e.Cause
		}
	}
	if all[0].Chance >= takenFrom && danger[all[0].Cause] <= danger[worst] && all[0].Cause != Unit {
		taken = all[0].Cause
	}
	return worst, taken
}

// agrees says whether a second cold reading, soon after one that may be a dead fire, says
// the same: that settles it toward the danger.
func (j *judge) agrees(k int, v Verdict) bool {
	if v.Worst != Fire || v.Since.To < j.scene.Now && !v.Since.Fits {
		return false
	}
	for i := len(j.verdicts) - 1; i >= 0; i-- {
		w := j.verdicts[i]
		if v.Minute-w.Minute > settles {
			return false
		}
		if w.Worst == Fire && !w.Settled && v.Minute > w.Minute && math.Abs(w.CoreC-v.CoreC) <= ordinarySd*math.Hypot(belief.ProbeErrorK, belief.PlaceErrorK) {
			j.verdicts[i].Taken = Fire
			return true
		}
	}
	return false
}

// settle lets a reading that is as foretold settle a surprise before it toward harmless:
// a probe pushed through does, or the second of two at other places, within half an hour
// and with nothing told of a fire that was lit again.
func (j *judge) settle(k int) {
	r := j.readings[k]
	for i := range j.verdicts {
		v := &j.verdicts[i]
		if !v.Cold || v.Taken == Fire || v.Settled || r.Minute-v.Minute > settles || j.scene.relitWithin(0, r.Minute) {
			continue
		}
		others := 0
		for l := v.Index + 1; l <= k; l++ {
			if j.taken[l] && j.readings[l].Minute > v.Minute {
				others++
			}
		}
		if r.Pushed || others >= 2 {
			v.Settled = true
			j.doubts[v.Index], j.taken[v.Index] = string(Place), false
		}
	}
}

// again says whether a reading that is too hot is the third in a row that agree: then the
// probe was not where it is now before.
func (j *judge) again(k int, f foretold) bool {
	r := j.readings[k]
	if r.CoreC < f.coreC || k < agreeAgain-1 || j.doubts[k] == string(Air) || j.finishes(r, f) {
		return false
	}
	for i := k - agreeAgain + 1; i < k; i++ {
		rise := j.readings[i+1].CoreC - j.readings[i].CoreC
		if j.doubts[i] != string(Place) || rise < -2*belief.ProbeErrorK || rise > 4*belief.PlaceErrorK {
			return false
		}
	}
	return r.CoreC < j.scene.AirC(r.Minute)-airReachK
}

func sortCauses(all []Explained) {
	for i := 1; i < len(all); i++ {
		for k := i; k > 0 && all[k].Chance > all[k-1].Chance; k-- {
			all[k], all[k-1] = all[k-1], all[k]
		}
	}
}

// without leaves causes out and shares their chances.
func without(all []Explained, causes ...Cause) []Explained {
	var out []Explained
	for _, e := range all {
		keep := true
		for _, c := range causes {
			keep = keep && e.Cause != c
		}
		if keep {
			out = append(out, e)
		}
	}
	return shared(out)
}
