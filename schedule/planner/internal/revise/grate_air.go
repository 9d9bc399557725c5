package revise

import (
	"math"
	"time"

	"example.com/cookday/schedule/internal/fire"
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

// airAt is the air beside the meat at an instant of the past: as measured where
// it was, else the level, falling while the fire is out.
func (h *grateHistory) airAt(at time.Time, planned func(time.Time) float64) float64 {
	level := h.levelAt(at, planned)
	before, after := -1, -1
	for i, r := range h.readings {
		if !r.at.After(at) {
			before = i
		} else {
			after = i
			break
		}
	}
	if before >= 0 && after >= 0 && h.readings[after].at.Sub(h.readings[before].at) <= bridgesGap {
		a, b := h.readings[before], h.readings[after]
		share := at.Sub(a.at).Minutes() / b.at.Sub(a.at).Minutes()
		return a.c + share*(b.c-a.c)
	}
	for _, o := range h.outages {
		if at.Before(o.from) {
			continue
		}
		from := h.levelAt(o.from, planned)
		if before >= 0 && h.readings[before].at.After(o.from.Add(-recent)) {
			from = h.readings[before].c
			o.from = h.readings[before].at
		}
		if at.Before(o.to) || o.open {
			return fire.WarmUp(at.Sub(o.from).Minutes(), from, h.d.Night.AirC)
		}
		if since := at.Sub(o.to).Minutes(); since < 3*relightTau && (before < 0 || h.readings[before].at.Before(o.to)) {
			cold := fire.WarmUp(o.to.Sub(o.from).Minutes(), from, h.d.Night.AirC)
			return level + (cold-level)*math.Exp(-since/relightTau)
		}
	}
	if before >= 0 && at.Sub(h.readings[before].at) <= holdsReading && !h.setSince(h.readings[before].at, at) {
		return h.readings[before].c
	}
	return level
}

// setSince says whether the cook set another level between two instants.
func (h *grateHistory) setSince(from, to time.Time) bool {
	for _, l := range h.levels {
		if l.at.After(from) && !l.at.After(to) {
			return true
		}
	}
	return false
}

// ahead is the air that the piece will have: what the last hour had if the fire
// burns as it will, else the level.
func (h *grateHistory) ahead(now time.Time, planned func(time.Time) float64) float64 {
	level := h.levelAt(now, planned)
	if _, dead := h.dead(); dead {
		return level
	}
	since := now.Add(-recent)
	for _, o := range h.outages {
		if o.to.After(since) {
			since = o.to.Add(lidSettles)
		}
	}
	for _, l := range h.levels {
		if at := l.at.Add(lidSettles); at.After(since) {
			since = at // what was read before then is of the old level
		}
	}
	sum, n := 0.0, 0
	for _, r := range h.readings {
		if !r.at.Before(since) {
			sum, n = sum+r.c, n+1
		}
	}
	if n == 0 {
		return level
	}
	return sum / float64(n)
}
