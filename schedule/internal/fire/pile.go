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
	return g.nominalM2() * coalGrateShare * coalGrateShare
}

func (g Grill) basketKg() float64 {
	return g.coalGrateM2() * coalSideShare * pileHeightM * g.bulkKgM3()
}

// holdKg is what lies together: in a basket at one side, or in the ring of an upright cooker.
func (g Grill) holdKg() float64 {
	if g.Kind == Upright {
		return g.coalGrateM2() * uprightHeightM * g.bulkKgM3()
	}
	return g.basketKg()
}

// planSlow is a fire of unlit coals that catch one from another: a pile, a basket or a ring.
func (g Grill) planSlow(b *Burn, f Fire, m meter, slices []Slice, spans []Span) {
	expected := m.used(m.minutes)
	hot := g.hotKg(f.LevelC)
	total := max(layFactor*expected, leastLaid*g.pieceKg(), hotLaid*hot)
	hold, light := g.holdKg(), max(m.mostHour*litPerHourly, g.litForKg(f.LevelC, slices), hot)
	if f.Layout == Ring {
		hold, light = g.planRing(b, m, total)
	} else if b.Holder = InPile; g.Kind == Upright {
		b.Holder = InBasket // its own
	} else if total > hold*pileFullness {
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

// A fire that grows comes to its level within some 20 min of the pour, all vents open: it has so much of its rise by then,
// and so many of the coals that it needs then have to be lit at first, the others catch. By the lumped fire; the share is
// the one that gives a 22.5 in kettle at 250 F its 10, simulated fires want 0.76 to 0.84.
const (
	risenShare  = 0.95
	caughtShare = 0.75
	mostOfAir   = 0.95 // a fire that wants more is out of reach of its vents
)

// litForKg are the coals to light for a level in the hungriest weather.
func (g Grill) litForKg(levelC float64, slices []Slice) float64 {
	most, t, h := 0.0, g.Usual(), g.Hearth(Banked, nil)
	for _, sl := range slices {
		s := g.Setting(sl.Weather, 1, 1, 0)
		rise := max(levelC-sl.Weather.AirC, leastRiseK)
		qa := airK(&t, h.openings(&t, 0, &s), rise, &s)
		q := rise * (1 + rise/curveK) * h.form * s.Loss / risenShare
		most = max(most, caughtShare*h.size*qa*-math.Log1p(-min(q/qa, mostOfAir))/t.LitK)
	}
	return most * g.pieceKg()
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

// Pieces is an amount in briquettes, or in lumps that give the same heat.
func (g Grill) Pieces(a Amount) float64 { return a.MassKg / g.pieceKg() }
