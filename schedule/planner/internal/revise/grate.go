package revise

import (
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/day"
)

// grateReading is one reading of the grate's air.
type grateReading struct {
	at    time.Time
	c     float64
	gauge bool // worked out from the gauge in the lid
}

// outage is a stretch without a fire; open if it lasts until now.
type outage struct {
	from, to time.Time
	open     bool
	seen     bool      // worked out from readings, not told
	asked    bool      // it may not have been: something else explains the reading too
	lid      bool      // its lid was off, as told
	choked   bool      // both vents were shut: it cools fast at first, and never slower
	unread   bool      // no core tells of it
	earliest time.Time // since when it may have been out, for the clock; from where it was told
	told     time.Time // when it was told to be out; zero for from, or where nobody told it
}

// toldAt is when somebody told of an outage; zero for nobody.
func (o outage) toldAt() time.Time {
	if o.told.IsZero() && !o.seen {
		return o.from
	}
	return o.told
}

// since is the instant from which an outage counts against the food.
func (o outage) since() time.Time {
	if o.earliest.IsZero() || o.earliest.After(o.from) {
		return o.from
	}
	return o.earliest
}

// grateHistory is what the log says of the fire.
type grateHistory struct {
	d        *day.Day
	readings []grateReading
	outages  []outage
	levels   []grateReading // levels that the cook set
	relit    []time.Time    // lit, and nobody had told that it was out
	fed      []time.Time    // lit or fuelled: what was read before is of another fire
	coldTold []time.Time    // told to be out, and the thermometers had shown so before
	begins   []time.Time    // another fire of the plan burns from then on
	cold     []time.Time    // food went on that cools the grate for a while
	shut     bool           // both vents are, as told last: it can only fall
	shutAt   time.Time      // since when; zero where they are not
	dying    outage         // what the thermometers show, until physics says since when
	sinking  grateReading   // the first of a slow fall that lasts; zero for none
	offsetK  float64        // of the gauge over the grate, as measured; NaN if it was not
	ratio    float64        // of the gauge's rise over the air to the grate's, likewise; 0 if it was not
}

// Figures of a fire (assumptions but where said otherwise).
const (
	lidSettles   = 15 * time.Minute // until the grate is back after the lid was open (common practice, no source)
	lidLong      = 20 * time.Minute // off for longer, there was no heat beside the meat (assumption)
	holdsReading = 90 * time.Minute // a reading stands for so long
	bridgesGap   = 4 * time.Hour    // readings closer than this are joined by a line
	recent       = 60 * time.Minute
	together     = 20 * time.Minute // readings this close are one look at the fire (assumption)
	// A gauge that nothing was compared with is off by 30 F as easily as the grate by 25: it
	// moves the grate by that share. What is farther off tells of the fire all the same.
	gaugeWorth    = 25.0 * 25 / (25*25 + 30*30)
	gaugeTellsK   = 60 / 1.8
	watched       = 2 * time.Hour // readings closer than this show how a fire sinks
	offLevelK     = 25 / 1.8      // 25 F either way is good enough (common practice, no source)
	dyingK        = 25            // below its level by so much and falling, a fire is dying
	dyingFallK    = 15            // and by so much an hour; slower, it sinks
	deadK         = 60            // below its level by so much, it is dead
	offsetPairs   = 20 * time.Minute
	offsetWorthK  = 8
	measuredShare = 0.5 // what a thermometer beside the meat leaves of the grate's error
	relightTau    = 15.0
	airStepK      = 3.0 // the history of the air is kept in such steps
)

func newGrateHistory(d *day.Day, log []schedule.Entry, now time.Time, level func(time.Time) float64, found []outage) grateHistory {
	h := grateHistory{d: d, offsetK: math.NaN()}
	burned := false
	var lids, out []time.Time
	var gauges []grateReading
	var open []outage
	if n := manyOf(log, schedule.LogGrate); n > 0 {
		h.readings = make([]grateReading, 0, n)
	}
	for _, e := range log {
		switch e.Kind {
		case schedule.LogLidOpened:
			lids = append(lids, e.At)
		case schedule.LogLidClosed:
			if n := len(lids); n > 0 && e.At.Sub(lids[n-1]) > lidLong && (len(open) == 0 || !open[len(open)-1].to.After(lids[n-1])) {
				open = append(open, outage{from: lids[n-1], to: e.At, lid: true})
			}
			lids = append(lids, e.At)
		case schedule.LogLevel:
			h.levels = append(h.levels, grateReading{at: e.At, c: e.C})
		case schedule.LogFireOut:
			if n := len(h.outages); n == 0 || !h.outages[n-1].open {
				h.outages = append(h.outages, outage{from: e.At, to: now, open: true})
				out = append(out, e.At)
			}
		case schedule.LogLit, schedule.LogRefuelled:
			h.fed = append(h.fed, e.At)
			if n := len(h.outages); n > 0 && h.outages[n-1].open {
				h.outages[n-1].to, h.outages[n-1].open = e.At, false
			} else if e.Kind == schedule.LogLit && burned {
				h.relit = append(h.relit, e.At)
			}
			burned = true
		case schedule.LogOn:
			burned = true
		case schedule.LogGrate:
			h.readings = append(h.readings, grateReading{at: e.At, c: e.C})
		case schedule.LogGauge:
			gauges = append(gauges, grateReading{at: e.At, c: e.C, gauge: true})
		}
	}
	h.relit = onlyRelit(h.relit, h.readings)
	h.shutAt, h.shut = bothShut(log, now)
	h.measureOffset(gauges)
	for _, g := range gauges {
		g.c = h.behindGauge(g.c)
		if off := g.c - h.levelAt(g.at, level); math.IsNaN(h.offsetK) && math.Abs(off) < gaugeTellsK {
			g.c -= off * (1 - gaugeWorth)
		}
		if !h.near(g.at, offsetPairs) { // a thermometer on the grate is the better one
			h.readings = insertReading(h.readings, g)
		}
	}
	h.readings = withoutLids(h.readings, lids)
	h.seeDying(log, now, level)
	for _, told := range out {
		h.seeBefore(told, log, level)
	}
	for _, o := range append(open, found...) {
		h.add(o)
	}
	return h
}

// manyOf is how many entries of a log are of a kind.
func manyOf(log []schedule.Entry, kind schedule.EntryKind) (n int) {
	for i := range log {
		if log[i].Kind == kind {
			n++
		}
	}
	return n
}

// sinks says whether the fire gives less heat than it was meant to, and ever less.
func (h *grateHistory) sinks() bool { return !h.sinking.at.IsZero() }

// add joins an outage that was worked out with those that are known: what overlaps is one.
func (h *grateHistory) add(o outage) {
	for _, e := range h.relit {
		if e.After(o.from) && (o.open || e.Before(o.to)) { // it was lit since
			o.to, o.open = e, false
		}
	}
	out := h.outages[:0:0]
	for _, k := range h.outages {
		if k.from.After(o.to) || o.from.After(k.to) {
			out = append(out, k)
			continue
		}
		told, other := o.toldAt(), k.toldAt()
		if o.told = told; told.IsZero() || !other.IsZero() && other.Before(told) {
			o.told = other
		}
		o.earliest = earlier(o.since(), k.since())
		o.from, o.seen, o.asked = earlier(o.from, k.from), o.seen && k.seen, o.asked && k.asked
		o.unread, o.lid, o.choked = o.unread && k.unread, o.lid && k.lid, o.choked || k.choked
		if k.to.After(o.to) || k.open {
			o.to, o.open = k.to, k.open
		}
	}
	out = append(out, o)
	slices.SortFunc(out, func(a, b outage) int { return a.from.Compare(b.from) })
	h.outages = out
}

func earlier(a, b time.Time) time.Time {
	if b.Before(a) {
		return b
	}
	return a
}

func insertReading(all []grateReading, g grateReading) []grateReading {
	i := len(all)
	for i > 0 && all[i-1].at.After(g.at) {
		i--
	}
	all = append(all, grateReading{})
	copy(all[i+1:], all[i:])
	all[i] = g
	return all
}

func withoutLids(all []grateReading, lids []time.Time) []grateReading {
	if len(lids) == 0 {
		return all
	}
	var out []grateReading
	for _, r := range all {
		open := false
		for _, l := range lids {
			open = open || !r.at.Before(l) && r.at.Before(l.Add(lidSettles))
		}
		if !open {
			out = append(out, r)
		}
	}
	return out
}

// near says whether the grate itself was read about then.
func (h *grateHistory) near(at time.Time, within time.Duration) bool {
	for _, r := range h.readings {
		if !r.gauge && r.at.Sub(at).Abs() <= within {
			return true
		}
	}
	return false
}

// measureOffset compares the gauge with the grate where both were read.
func (h *grateHistory) measureOffset(gauges []grateReading) {
	sum, rises, n, air := 0.0, 0.0, 0.0, h.d.Air.AirC
	for _, g := range gauges {
		for _, r := range h.readings {
			if r.at.Sub(g.at).Abs() <= offsetPairs {
				sum, rises, n = sum+g.c-r.c, rises+math.Max(g.c-air, 1)/math.Max(r.c-air, 1), n+1
				break
			}
		}
	}
	if n > 0 {
		h.offsetK, h.ratio = sum/n, rises/n
	}
}

// behindGauge is the grate behind what the gauge in the lid shows: by how the two stood to each other where both were
// read, else by the offset that its owner typed.
func (h *grateHistory) behindGauge(c float64) float64 {
	if air := h.d.Air.AirC; h.ratio > 0 {
		return air + (c-air)/h.ratio
	}
	return fire.GrateC(h.d.Grill, c, h.d.Air.AirC)
}

// A fire that lit coals were poured on so lately, or since, is not out while the grate was read at safety.HalfHeatC or
// above (judgment).
const youngFire = 45 * time.Minute

// seeBefore finds what the thermometers had shown of a fire before it was told to be out: the
// word for it makes no outage shorter.
func (h *grateHistory) seeBefore(told time.Time, log []schedule.Entry, level func(time.Time) float64) {
	b := grateHistory{d: h.d}
	for _, r := range h.readings {
		if !r.at.After(told) {
			b.readings = append(b.readings, r)
		}
	}
	for _, o := range h.outages {
		if o.to.Before(told) {
			b.outages = append(b.outages, o)
		}
	}
	b.levels = h.levels
	var before []schedule.Entry
	for _, e := range log {
		if !e.At.After(told) && e.Kind != schedule.LogFireOut {
			before = append(before, e)
		}
	}
	b.seeDying(before, told, level)
	switch {
	case b.dying.from.IsZero():
	case b.dying.earliest.IsZero():
		h.add(outage{from: b.dying.from, to: told, seen: true})
	default:
		h.coldTold = append(h.coldTold, told)
	}
}

// seeDying finds a fire that died without a word: the last readings fall, or one
// is far below the level.
func (h *grateHistory) seeDying(log []schedule.Entry, now time.Time, level func(time.Time) float64) {
	n := len(h.readings)
	if n == 0 || len(h.outages) > 0 && h.outages[len(h.outages)-1].open {
		return
	}
	last := h.readings[n-1]
	for _, e := range log {
		if e.Kind == schedule.LogLitCoals && e.At.After(last.at.Add(-youngFire)) && !e.At.After(now) && last.c >= safety.HalfHeatC {
			return // weak it may be, out it is not
		}
		if (e.Kind == schedule.LogLit || e.Kind == schedule.LogRefuelled || e.Kind == schedule.LogLevel) && e.At.After(last.at.Add(-lidSettles)) {
			return
		}
	}
	below := h.levelAt(last.at, level) - last.c
	top := n - 1
	for top > 0 && h.readings[top-1].c > h.readings[top].c {
		top--
	}
	fell := h.readings[top].c - last.c
	steps := n - 1 - top
	falling := n > 1 && h.readings[n-2].c-last.c >= dyingFallK*last.at.Sub(h.readings[n-2].at).Hours()
	if below > dyingK && below <= deadK && last.c >= safety.NoHeatC && fell > dyingFallK && (!falling && steps >= 2 || last.at.Sub(h.readings[top].at) > watched) {
		h.sinking = h.readings[top] // it gives less heat, and some; who did not watch it sees no more
	}
	noHeat := last.c < safety.NoHeatC && below > dyingK
	if !falling && last.c >= safety.HalfHeatC && n > 1 && h.levelAt(h.readings[n-2].at, level)-h.readings[n-2].c > deadK && last.at.Sub(h.readings[n-2].at) <= bridgesGap {
		return // it burns as it did, and far too weakly
	}
	if below > deadK || noHeat || falling && below > dyingK && fell > dyingFallK && steps >= 2 {
		for top < n-2 && h.levelAt(h.readings[top+1].at, level)-h.readings[top+1].c < offLevelK { // it burned then
			top, steps = top+1, steps-1
		}
		from := h.readings[top].at
		if steps == 0 {
			from = last.at
		}
		if h.shut && h.shutAt.After(from) && h.shutAt.Before(last.at) { // it burned until its air was cut off
			from = h.shutAt
		}
		h.dying = outage{from: from, to: now, open: true, seen: true}
		h.outages = append(h.outages, h.dying)
		if steps == 0 || steps == 1 && last.at.Sub(from) > watched {
			h.dying.earliest = from // nobody watched it: physics says since when
			h.outages = h.outages[:len(h.outages)-1]
		}
	}
}
