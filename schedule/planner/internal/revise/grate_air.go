package revise

import (
	"math"
	"slices"
	"sort"
	"time"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/safety"
)

// levelAt is what the grate was meant to have: as the cook set it last, else as planned.
func (h *grateHistory) levelAt(at time.Time, planned func(time.Time) float64) float64 {
	c := planned(at)
	for _, l := range h.levels {
		if !l.at.After(at) {
			c = l.c
		}
	}
	return c
}

// dead is the outage that lasts until now.
func (h *grateHistory) dead() (outage, bool) {
	if n := len(h.outages); n > 0 && h.outages[n-1].open {
		return h.outages[n-1], true
	}
	return outage{}, false
}

// outWithin says whether the fire was out, or its lid off, at some time between two instants.
func (h *grateHistory) outWithin(from, to time.Time) bool {
	return slices.ContainsFunc(h.outages, func(o outage) bool { return o.from.Before(to) && (o.open || o.to.After(from)) })
}

// airAt is the air beside the meat at an instant of the past: falling while the fire is
// out, as measured where it was, else the level.
func (h *grateHistory) airAt(at time.Time, planned func(time.Time) float64) float64 {
	level := h.levelAt(at, planned)
	after := sort.Search(len(h.readings), func(i int) bool { return h.readings[i].at.After(at) })
	before := after - 1
	// Between the two readings lies an outage, or another fire was made.
	gap := before >= 0 && after < len(h.readings) && h.begunBetween(h.readings[before].at, h.readings[after].at)
	for _, o := range h.outages {
		if at.Before(o.from) {
			gap = gap || before >= 0 && after < len(h.readings) && o.from.Before(h.readings[after].at)
			continue
		}
		if at.Before(o.to) || o.open {
			return h.deadAir(o, at, planned)
		}
		if before >= 0 && h.readings[before].at.After(o.to) {
			continue
		}
		gap = true
		if since := at.Sub(o.to).Minutes(); since < 3*relightTau {
			cold := h.deadAir(o, o.to, planned)
			return level + (cold-level)*math.Exp(-since/relightTau)
		}
	}
	switch {
	case before >= 0 && after == len(h.readings):
		return h.ahead(at, planned)
	case gap || before < 0 || after == len(h.readings):
		return level
	case h.readings[after].at.Sub(h.readings[before].at) <= bridgesGap:
		a, b := h.readings[before], h.readings[after]
		share := at.Sub(a.at).Minutes() / b.at.Sub(a.at).Minutes()
		return a.c + share*(b.c-a.c)
	case at.Sub(h.readings[before].at) <= holdsReading && !h.setSince(h.readings[before].at, at):
		return h.readings[before].c
	}
	return level
}

// deadAir is the air while the fire is out: as it cools from what was read last to what was
// read next, of a fire that was seen to fall. A weak one that nobody told to be out had burned on
// weakly until it was read: it was no colder before. One that was told to be out cools no slower
// for what was read of it later.
func (h *grateHistory) deadAir(o outage, at time.Time, planned func(time.Time) float64) float64 {
	from, fromC, outC := o.from, h.levelAt(o.from, planned), h.d.Night.AirC
	falls := false // between two readings of a fire that nobody told to be out
	for _, r := range h.readings {
		switch {
		case r.at.After(at):
			took, left := r.at.Sub(from).Minutes(), fire.WarmUp(r.at.Sub(from).Minutes(), fromC, outC)
			out := !o.open && r.at.After(o.to)
			if out || !falls && r.c >= left || fromC <= outC || took <= 0 {
				air := fire.WarmUp(at.Sub(from).Minutes(), fromC, outC)
				if told := o.toldAt(); !out && r.c < safety.HalfHeatC && (told.IsZero() || r.at.Before(told)) {
					air = math.Max(air, math.Min(r.c, fromC))
				}
				return air
			}
			share := math.Max((r.c-outC)/(fromC-outC), coldestShare)
			return outC + (fromC-outC)*math.Pow(share, at.Sub(from).Minutes()/took)
		case r.at.After(o.from), r.at.Equal(o.from) && o.earliest.IsZero():
			from, fromC, falls = r.at, r.c, o.seen && !o.choked
		case r.at.After(o.from.Add(-recent)):
			fromC = r.c
		}
	}
	return fire.WarmUp(at.Sub(from).Minutes(), fromC, outC)
}

// coldestShare is what is left at the least of the heat of a grate that was read cold.
const coldestShare = 0.01

// setSince says whether the cook set another level between two instants.
func (h *grateHistory) setSince(from, to time.Time) bool {
	for _, l := range h.levels {
		if l.at.After(from) && !l.at.After(to) {
			return true
		}
	}
	return false
}

// ahead is the air that the piece has had since the newest reading, and will have: what
// was read shortly before it and then, if the fire burns as it will; else the level. It does
// not move with the clock alone, but for what cold food took and gives back.
func (h *grateHistory) ahead(now time.Time, planned func(time.Time) float64) float64 {
	if c, ok := h.lately(now); ok {
		return h.recovered(c, h.levelAt(now, planned), now)
	}
	return h.levelAt(now, planned)
}

// lately is the mean of the newest readings if they stand for the fire that burns: nothing was done to it since.
func (h *grateHistory) lately(now time.Time) (c float64, ok bool) {
	n := len(h.readings)
	if _, dead := h.dead(); dead || n == 0 {
		return 0, false
	}
	since := h.readings[n-1].at.Add(-together)
	for _, o := range h.outages {
		if o.to.After(since) {
			since = o.to.Add(lidSettles)
		}
	}
	for _, l := range h.levels {
		if at := l.at.Add(lidSettles); at.After(since) && !l.at.After(now) {
			since = at // what was read before then is of the old level
		}
	}
	for _, t := range h.begins {
		if t.After(since) && !t.After(now) {
			since = t
		}
	}
	for _, t := range h.fed {
		if at := t.Add(lidSettles); at.After(since) && !t.After(now) {
			since = at
		}
	}
	sum, count := 0.0, 0
	for i := n - 1; i >= 0 && !h.readings[i].at.Before(since); i-- {
		sum, count = sum+h.readings[i].c, count+1
	}
	if count == 0 {
		return 0, false
	}
	if h.shut {
		return math.Min(sum/float64(count), h.readings[n-1].c), true
	}
	return sum / float64(count), true
}

// lastRead is the newest reading of the grate, if it is not older than so long.
func (h *grateHistory) lastRead(now time.Time, within time.Duration) (grateReading, bool) {
	n := len(h.readings)
	if n == 0 || now.Sub(h.readings[n-1].at) > within {
		return grateReading{}, false
	}
	return h.readings[n-1], true
}

// readSince says whether the grate was read after an instant.
func (h *grateHistory) readSince(at time.Time) bool {
	return len(h.readings) > 0 && h.readings[len(h.readings)-1].at.After(at)
}

// gaugeOnly says whether the gauge in the lid is all that was read.
func (h *grateHistory) gaugeOnly() bool {
	for _, r := range h.readings {
		if !r.gauge {
			return false
		}
	}
	return len(h.readings) > 0
}

// Figures of a grate that creeps (judgment): so much in three looks is no chance, and so far ahead it is taken to go on.
const (
	creepsK      = 20 / 1.8
	creepLooks   = 3
	creepFrom    = 150 * time.Minute
	creepAhead   = time.Hour
	creepFreshly = 45 * time.Minute
)

// creeps is a grate whose last three readings went one way, and which will be out of its band within the hour if it goes on:
// the first and the last of them.
func (h *grateHistory) creeps(now time.Time, levelC float64) (first, last grateReading, ok bool) {
	n := len(h.readings)
	if n < creepLooks {
		return first, last, false
	}
	some := h.readings[n-creepLooks:]
	first, last = some[0], some[creepLooks-1]
	up := last.c > first.c
	for i := 1; i < len(some); i++ {
		if some[i].gauge != some[0].gauge || some[i].c == some[i-1].c || some[i].c > some[i-1].c != up {
			return first, last, false
		}
	}
	took := last.at.Sub(first.at)
	if now.Sub(last.at) > creepFreshly || now.Sub(first.at) > creepFrom || took <= 0 || math.Abs(last.c-first.c) < creepsK {
		return first, last, false
	}
	ahead := last.c + (last.c-first.c)*creepAhead.Minutes()/took.Minutes()
	return first, last, math.Abs(ahead-levelC) > offLevelK && (ahead > levelC) == up
}
