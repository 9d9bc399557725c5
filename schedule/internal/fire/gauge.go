package fire

// The lid gauge stands off from the grate by a share of (grate - air). The owner types the offset as seen at 250 F on
// the grate in 70 F air (a difference of 100 K); a colder grate has a smaller one.
const gaugeTypedK = (250 - 70) / 1.8

// GaugeC is what the lid gauge shows when the grate is at its level, degC. Where the lid is off it shows nothing.
func GaugeC(g Grill, levelC, airC float64) float64 {
	return levelC + g.GaugeOffsetK*(levelC-airC)/gaugeTypedK
}

// GrateC is the grate temperature behind a reading of the lid gauge, degC: the inverse of GaugeC.
func GrateC(g Grill, gaugeC, airC float64) float64 {
	share := g.GaugeOffsetK / gaugeTypedK
	if share <= -1 { // the gauge would not move at all
		return gaugeC
	}
	return (gaugeC + share*airC) / (1 + share)
}
