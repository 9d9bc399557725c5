package fire

import "math"

// Geometry below the cooking grate. The coal grate's share is from memory (17 in under a 22.5 in grate); the others
// are assumptions. They give a loose pile of 87 briquettes on 22.5 in, beside the "about 75 unlit and 10 lit" that
// cooks lay there, and a basket of half as many again.
const (
	coalGrateShare = 0.76 // its diameter, of the cooking grate's
	coalSideShare  = 0.40 // its area that a banked fire may cover
	pileHeightM    = 0.12
	pileFullness   = 0.70 // a heap slopes, a basket does not
)

// About 10 lit ones start a low fire of 10.6 briquettes an hour (practice); in proportion for others (assumption).
const litPerHourly = 10 / referencePerHour

func (g Grill) coalGrateM2() float64 {
	return g.GrateAreaM2() * coalGrateShare * coalGrateShare
}

func (g Grill) basketKg() float64 {
	return g.coalGrateM2() * coalSideShare * pileHeightM * g.bulkKgM3()
}

// planSlow is a fire of unlit coals that catch one from another: a pile, a basket or a ring.
func (g Grill) planSlow(b *Burn, f Fire, m meter, spans []Span) {
	expected := m.used(m.minutes)
	total := max(layFactor*expected, leastLaid*g.pieceKg())
	hold, light := g.basketKg(), m.mostHour*litPerHourly
	if f.Layout == Ring {
		hold, light = g.planRing(b, m, total)
	} else if b.Holder = InPile; total > hold*pileFullness {
		b.Holder = InBasket
		b.Notes = append(b.Notes, NeedsBasket)
	}
	lay := min(total, hold)
	b.LastsMinutes = m.when(lay)
	b.SureMinutes = m.when(lay / layFactor)
	b.EarliestOutMinutes = m.when(lay / rangeFactor)
	b.TopUps, b.Shortfalls = g.feed(m, lay, hold, spans)
	g.settle(b, expected, lay, light)
}

// planRing chooses the fuse and says what it holds and how much of it is lit first.
func (g Grill) planRing(b *Burn, m meter, totalKg float64) (holdKg, lightKg float64) {
	section, enough := g.sectionFor(m.mostHour)
	if !enough {
		b.Notes = append(b.Notes, RingRunsCool)
	}
	if g.Fuel == Lump {
		b.Notes = append(b.Notes, LumpUneven)
	}
	lightKg = float64(max(section.perStep()+1, ringLeastLit)) * g.pieceKg()
	holdKg = g.ringKg(section) + lightKg
	b.Holder, b.Ring = InRing, g.laid(section, min(totalKg, holdKg)-lightKg)
	return holdKg, lightKg
}

// pieceKg is a briquette, or the lump that gives the same heat.
func (g Grill) pieceKg() float64 { return briquetteKg * briquetteJPerKg / g.jPerKg() }

// feed keeps a slow fire going with unlit coals: each time half an hour before the margin would be gone, earlier where
// nobody tends the fire then, never more than fits. A last twentieth of the need is not worth opening the lid for:
// the margin is that much thinner.
func (g Grill) feed(m meter, layKg, holdKg float64, spans []Span) (tops []TopUp, short []Shortfall) {
	total, have, last := m.used(m.minutes), layKg/layFactor, 0.0
	for have < total*leastFeed {
		empty := m.when(have)
		top := TopUp{AtMinute: max(empty-catchMinutes, last)}
		if s, ok := within(spans, top.AtMinute); ok {
			top.AtMinute = s.FromMinute
			if s.FromMinute <= last || m.room(s.FromMinute, have, holdKg) < m.mostHour*catchMinutes/60 {
				end := min(s.ToMinute, m.minutes)
				if end > empty {
					short = append(short, Shortfall{CannotLast, last, empty, end - empty})
				}
				top.Relight = end > empty
				top.AtMinute = end
				have = max(have, m.used(end))
			}
		}
		if top.AtMinute >= m.minutes {
			break
		}
		// A holder that takes less than half an hour's burning is heaped up all the same.
		add := min(max(m.room(top.AtMinute, have, holdKg), m.mostHour*catchMinutes/60), total-have)
		if add <= 0 {
			break
		}
		top.Add = g.amount(add * layFactor)
		tops = append(tops, top)
		have, last = have+add, top.AtMinute
	}
	return tops, short
}

// room is what the holder still takes at a minute, in expected kilograms: the margin lies in it too.
func (m meter) room(minute, haveKg, holdKg float64) float64 {
	return holdKg/layFactor - max(haveKg-m.used(minute), 0)
}

const leastFeed = 0.95

// catchMinutes is how long before the end unlit coals must lie on lit ones (assumption).
const catchMinutes = 30

func ceilInt(x float64) int { return int(math.Ceil(x - 1e-9)) }

// LongestMinutes is how long a layout burns untended in one weather from the instant it is ready, filled to its limit
// and with the margin kept: what a remedy compares. It is 0 for a grill of another kind.
func (g Grill) LongestMinutes(f Fire, w Weather) float64 {
	const week = 7 * 24 * 60
	n := Need{Slices: []Slice{{Minutes: week, Weather: w}}, First: true}
	return g.Plan(f, n).SureMinutes
}
