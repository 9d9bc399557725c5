package arrange

import (
	"math"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/spread"
)

// A plan counts with a slow day, so that a batch is done in time with the asked chance. The
// more it counts with, the earlier a fast day is done, and where nothing keeps the batch
// until it is eaten that is lost too. Between the two it goes on when the chance of both
// together is best. Where an oven keeps it, it goes on as asked.

// reserveStep is the grid of quantiles that are tried, in standard deviations, from that of
// the asked chance down to the median: nobody plans to be late more often than not.
// reserveWorth is what a later put-on must add to the chance (assumptions).
// looseZ is that of four days in five, the least that a start before dawn is worth.
const (
	reserveStep  = 0.05
	reserveWorth = 0.01
	looseZ       = 0.8416
)

// reserve says how sure each of a batch's ways is, and adds those of them that count with a
// better quantile.
func (d *Arranger) reserve(b *Batch) {
	if b.It.Cut.Style == cut.Timed || d.Chill {
		return
	}
	ways := slices.Clone(b.Ways) // other batches of the lot have them too
	for i := range b.Ways {
		var best day.Way
		if ways[i], best = d.reserved(b, ways[i]); best.Z < ways[i].Z {
			ways = append(ways, best)
		}
	}
	b.Ways = ways
}

// reserved is a way as asked, and at the best quantile.
func (d *Arranger) reserved(b *Batch, w day.Way) (asked, best day.Way) {
	if w.Sure = d.Req.Confidence; w.Sear {
		w = d.searedSoon(b, w)
		return w, w
	}
	if !(w.Total().Expected > 0) {
		return w, w
	}
	keeps, oven := d.longest(b, w)
	at := func(z float64) float64 {
		return spread.NormalCDF(z) - keeps.lost(w, w.Total().At(z)+b.It.RestMinutes()+b.It.TravelMinutes())
	}
	w.Sure = at(w.Z)
	if d.Loose && w.Z > looseZ {
		best = w.CountedAt(looseZ)
		best.Sure = at(looseZ)
		return w, best
	}
	if oven || d.AsAsked || w.Sure >= d.Req.Confidence-reserveWorth {
		return w, w
	}
	most := w.Sure
	for z := w.Z - reserveStep; z >= 0; z -= reserveStep {
		most = math.Max(most, at(z))
	}
	if w.Sure >= most-reserveWorth {
		return w, w
	}
	z := w.Z
	for at(z) < most-reserveWorth/10 { // no later than that takes
		z -= reserveStep
	}
	best = w.CountedAt(z)
	best.Sure = at(z)
	return w, best
}

// searedSoon is a way with a sear whose reserve for a slow day comes after the sear, where the
// piece rests, and not before it, where it would stand below its minimum on every other day. What
// it does not keep for after the sear is not counted with.
func (d *Arranger) searedSoon(b *Batch, w day.Way) day.Way {
	soon := w.First.Expected + day.SearStandMinutes - day.SearLagMinutes
	if w.First.Planned <= soon {
		return w
	}
	g := d.gap(b, w)
	least, whole := math.Min(w.First.Planned, soon), w.First.Planned
	w.First.Planned, w.Slack = least, math.Min(whole-least, float64(g.Max-g.Min))
	if counted := least + w.Slack; counted < whole-0.1 {
		w.Z = w.First.QuantileOf(counted)
		w.Sure = spread.NormalCDF(w.Z)
	}
	return w
}

// longest is the longest that a batch may wait, and whether that is in an oven.
func (d *Arranger) longest(b *Batch, w day.Way) (k Keeps, oven bool) {
	if b.It.Cut.Style == cut.Small {
		k = d.Stands(b.It)
	}
	for _, o := range d.HoldOptions(b.It, w, b.lot()) {
		if o.Minutes > k.Most {
			k, oven = Keeps{o.Minutes, o.Minutes}, o.Method == schedule.HoldOven
		}
	}
	if k.Most == 0 {
		k = d.Stands(b.It)
	}
	return k, oven
}

// Keeps is how long what is done may wait, minutes: it is good for so long, and goes off
// evenly until the most, when nothing of it is left; what the rules of safety end is good to
// its end.
type Keeps struct{ Good, Most float64 }

// fades is how much longer than it is good for a piece that is only past its best is worth
// serving (common practice, no source).
const fades = 2

// Stands is how long a batch without a hold keeps.
func (d *Arranger) Stands(it *day.Item) Keeps {
	good := d.StandsFor(it)
	return Keeps{good, math.Max(good, math.Min(fades*good, d.OutFor()))}
}

// lost is the part of the chance that goes because a batch, put on so many minutes before it
// is eaten, is done too early, beyond the tenth of fast days that a plan leaves aside.
func (k Keeps) lost(w day.Way, before float64) float64 {
	parts := 8 // of the slope, each at its middle
	if k.Most <= k.Good {
		parts = 1
	}
	sum := 0.0
	for i := range parts {
		waits := math.Min(k.Good+(float64(i)+0.5)/float64(parts)*(fades-1)*k.Good, k.Most)
		if least := before - waits; least > 0 {
			sum += spread.NormalCDF(w.QuantileOf(least))
		}
	}
	return math.Max(sum/float64(parts)-fastDays, 0)
}

const fastDays = 0.1
