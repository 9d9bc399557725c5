package fire

import "math"

// A hot fire is a bed of lit coals. Two guides on kettles, all vents open, coals at both sides: 40 briquettes on
// 18.5 in and 80 on 26.75 in for the first hour, then 14 and 18 an hour more. Both beds are about 58 at 22.5 in, in
// proportion to the grate's area; levels and weather scale it as they scale the rate (assumption).
const (
	bedBriquettes   = 58
	bedHour         = 60 // minutes until the first top-up, and between two (the same guides)
	bedLastsMinutes = 90 // assumption: between that hour and the 2.5-3.5 h of a full chimney in a consumer test
	bedLevelC       = (350.0 - 32) / 1.8
	bedAirC         = (70.0 - 32) / 1.8
)

// Above 450 F or with the lid off a chimney fill lasts 45-60 min (common practice, no source).
const (
	fillLeastMinutes = 45
	fillMostMinutes  = 60
	fillMinutes      = (fillLeastMinutes + fillMostMinutes) / 2.0
)

// areaRatio is the grate's area against a 22.5 in one.
func (g Grill) areaRatio() float64 {
	return g.nominalM2() / (math.Pi / 4 * referenceM * referenceM)
}

// bedKg is the bed that holds the level in the hungriest hour.
func (g Grill) bedKg(m meter) float64 {
	dry := g
	dry.WaterPan = false
	calm := dry.RateKgPerHour(bedLevelC, Weather{AirC: bedAirC})
	return bedBriquettes * g.pieceKg() * g.areaRatio() * m.mostHour / calm
}

// bedNeedKg is the bed and what keeps it up after the first hour.
func (g Grill) bedNeedKg(m meter) float64 {
	return g.bedKg(m) + max(m.used(m.minutes)-m.used(bedHour), 0)
}

// planBed is a hot fire under the lid: all coals lit, topped up with lit ones every hour.
func (g Grill) planBed(b *Burn, m meter, spans []Span) {
	bed := g.bedKg(m)
	var tops []TopUp
	for at := float64(bedHour); at < m.minutes; at += bedHour {
		kg := m.used(min(at+bedHour, m.minutes)) - m.used(at)
		tops = append(tops, g.litTopUp(at, layFactor*kg))
	}
	b.Holder = InLayer
	b.LastsMinutes, b.SureMinutes, b.EarliestOutMinutes = bedLastsMinutes, bedHour, bedLastsMinutes/rangeFactor
	b.TopUps, b.Shortfalls = feedLit(tops, spans, bedLastsMinutes, m.minutes)
	g.settle(b, g.bedNeedKg(m), layFactor*bed, layFactor*bed)
}

// planFills is a searing fire: whole chimney fills, in proportion to the grate's area.
func (g Grill) planFills(b *Burn, m meter, spans []Span) {
	fills := max(ceilInt(m.minutes/fillMinutes), 1)
	expected := max(float64(fills)*g.chimneyKg()*g.areaRatio(), g.bedNeedKg(m))
	each := expected / float64(fills)
	var tops []TopUp
	for i := 1; i < fills; i++ {
		tops = append(tops, g.litTopUp(float64(i)*fillLeastMinutes, each))
	}
	b.Holder = InLayer
	b.Notes = append(b.Notes, FillsNotLaw)
	b.LastsMinutes, b.SureMinutes, b.EarliestOutMinutes = fillMinutes, fillLeastMinutes, fillLeastMinutes/rangeFactor
	b.TopUps, b.Shortfalls = feedLit(tops, spans, fillMostMinutes, m.minutes)
	g.settle(b, expected, each, each)
}

func (g Grill) litTopUp(at, kg float64) TopUp {
	return TopUp{AtMinute: at, Add: g.amount(kg), Lit: true, LeadMinutes: chimneyMinutes}
}

// feedLit moves top-ups that nobody could make to the last tended minute before, and reports where the bed burns down
// until somebody comes.
func feedLit(tops []TopUp, spans []Span, lasts, minutes float64) ([]TopUp, []Shortfall) {
	var short []Shortfall
	for _, s := range spans {
		fed := 0.0
		for i := range tops {
			if _, inside := within([]Span{s}, tops[i].AtMinute); inside {
				tops[i].AtMinute = max(s.FromMinute, 0)
			}
			if tops[i].AtMinute <= s.FromMinute {
				fed = max(fed, tops[i].AtMinute)
			}
		}
		if end := min(s.ToMinute, minutes); end > s.FromMinute && fed+lasts < end && end > 0 {
			short = append(short, Shortfall{CannotLast, fed, fed + lasts, end - fed - lasts})
		}
	}
	return tops, short
}
