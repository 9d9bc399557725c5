package fire

import "math"

// Between two levels that the trade names, the nearer one decides which layouts serve
// (common practice, no source, for the levels; half-way is an assumption).
var (
	ringMostC   = fahrenheit(287) // half-way from 275 F, the ring's hottest, to 300 F
	twoLeastC   = fahrenheit(300) // the coolest two-zone fire
	bankedMostC = fahrenheit(337) // half-way from 325 F, the hottest banked fire, to 350 F
	heapLeastC  = fahrenheit(550)
)

// LeastDirectC is the coolest level of a fire with a place over its coals, degC.
func LeastDirectC() float64 { return twoLeastC }

// AllLit says whether all the coals of a layout burn: they need only be raked to become
// another one of the kind.
func AllLit(l Layout) bool {
	d := describe(l)
	return d != nil && d.LitTopUps
}

// Serving lists the fires that give a place its heat, the usual one first: over the
// coals or beside them, in a band, at a level in degC. A ring is offered where the fire
// must last through hours that nobody tends it.
func Serving(direct bool, band string, levelC float64, untended bool) []Fire {
	switch {
	case direct && band == "sear":
		return []Fire{{Layout: Heap, LevelC: math.Max(levelC, heapLeastC)}}
	case direct:
		return []Fire{{Layout: Spread, LevelC: levelC}, {Layout: TwoZone, LevelC: levelC}}
	}
	var out []Fire
	if levelC < bankedMostC {
		out = append(out, Fire{Layout: Banked, LevelC: levelC})
	}
	if levelC <= ringMostC && untended {
		out = append(out, Fire{Layout: Ring, LevelC: levelC})
	}
	if levelC >= twoLeastC {
		out = append(out, Fire{Layout: TwoZone, LevelC: levelC})
	}
	return out
}
