package fire

import "math"

// An upright cooker has one way to lay coals: a ring of its own at the bottom, filled with unlit ones, the few lit ones in
// a hollow on top (common practice, no source). Its draught comes in beside the doors too (control.go), so it is started with no
// more lit coals than a kettle for the same heat, but it loses more and burns more.
var uprightFire = Description{
	Layout: Other, MinC: uprightLeastC, MaxC: uprightMostC, Zones: []ZoneKind{{Name: uprightZone, Share: 1}},
	Use:   "low and slow on grates one above another",
	Build: "Fill the coal ring at the bottom with the unlit coals and leave a hollow in the middle for the lit ones; fill the pan, if it has one, before the cooker is put together over them.", Pour: "Pour the lit coals into the hollow.",
	OpenTop: 1, OpenBottom: 0.5, LayMinutes: 10, LightMinutes: 15, WarmMinutes: 30,
}

// uprightHeightM is how high the ring of an upright cooker is filled: with the coal grate's share of its width a ring of
// 18.5 in takes some 15 lb of briquettes (makers' figures, from memory).
const uprightHeightM = 0.15

// Settled reports of deep cookers without water and without trouble, by how far their bottom vents stood open: what the
// grate rose, of what the lumped fire gives (testdata/fire_control.csv: a third open 0.79, 0.77 and 0.93; half 0.92 and 1.02;
// three quarters 1.08; fully open 1.30, 1.39 and 1.26). The law was fitted to complaints among them too, of leaks and of
// fires that would not come up: its vents do less than those of a cooker with neither.
func dryReports() [][2]float64 {
	return [][2]float64{{1. / 3, 0.83}, {1. / 2, 0.97}, {3. / 4, 1.08}, {1, 1.32}}
}

// ReportedRise is how many times the lumped fire's rise such a cooker is reported to keep, with its bottom vents so far
// open; 1 for any other, and with water in the pan, of which reports lie on both sides of the law.
func (g Grill) ReportedRise(bottom float64) float64 {
	if !g.deep() || g.WaterPan {
		return 1
	}
	rows := dryReports()
	for i := 1; i < len(rows); i++ {
		if a, b := rows[i-1], rows[i]; bottom < b[0] {
			return a[1] + (b[1]-a[1])*max(bottom-a[0], 0)/(b[0]-a[0])
		}
	}
	return rows[len(rows)-1][1]
}

// A deep cooker that is to be hot wants a chimney of coals lit at once, for in its ring few of them get air: so many from
// hotFullC on, none more than the law says up to hotFromC, and half of them unlit besides (common practice, no source; of
// reports 100 lit on 100 went to 400 F, 42 on a full ring to 275 F).
var hotFromC, hotFullC = fahrenheit(275), fahrenheit(325)

const (
	hotLit  = 100.0 // of a 22.5 in one
	hotLaid = 1.4
)

// hotKg are the coals that are lit for that.
func (g Grill) hotKg(levelC float64) float64 {
	if !g.deep() {
		return 0
	}
	share := min(max((levelC-hotFromC)/(hotFullC-hotFromC), 0), 1)
	return share * hotLit * math.Pow(g.equivalentM()/referenceM, sizeExponent) * g.pieceKg()
}

// Lays says whether its coals may be laid in more ways than one.
func (g Grill) Lays() bool { return g.Kind == Kettle || g.Kind == Box }

// SteersBottom says whether the bottom vents are its fine control: those of an upright cooker, whose top one stays open.
func (g Grill) SteersBottom() bool { return g.Kind == Upright }

// Describe is the description of a layout on this grill, false where it is none of its own.
func (g Grill) Describe(l Layout) (Description, bool) {
	d := g.describe(l)
	if d == nil {
		return Description{}, false
	}
	return d.copied(), true
}

func (g Grill) describe(l Layout) *Description {
	switch {
	case g.Lays():
		return describe(l)
	case g.Kind == Upright && l == Other:
		return &uprightFire
	}
	return nil
}
