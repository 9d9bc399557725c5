package schedule

import (
	"example.com/cookday/schedule/internal/instant"
)

// leastDirectC is the coolest level of a fire with a place over its coals, degC.
var LeastDirectC = instant.Celsius(300)

// Words of a request for where a dish cooks.
const (
	ZoneDirect   = "direct"   // over the coals
	ZoneIndirect = "indirect" // beside them
)

// Bands of heat, in the trade's words.
const (
	BandLow  = "low"
	BandHot  = "hot"
	BandSear = "sear"
)
