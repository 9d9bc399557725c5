package export

import (
	"fmt"
	"math"

	"example.com/cookday/schedule"
)

// vent is where the lid's vent goes, if the layout has a place for it.
func (m *grateMap) vent(g schedule.Grill) (x, y float64, ok bool) {
	switch m.phase.Layout {
	case "banked", "two-zone":
		return m.halfWidth(g) / 2, 0, true
	case "ring":
		return 0, -m.halfDepth(g) / 2, true
	}
	return 0, 0, false // anywhere: the heat is in the middle
}

// ventRing is the radius of its mark.
const ventRing = 15.0

// topVent draws the lid's vent where it goes: opposite the coals, so that the smoke
// crosses the meat; at the front where the lit end of a ring starts at the back.
func (m *grateMap) topVent(g schedule.Grill) {
	x, y, ok := m.vent(g)
	if !ok {
		return
	}
	tx, ty := m.halfWidth(g)*0.86-x, -m.halfDepth(g)*0.92-y
	far := math.Hypot(tx, ty)
	m.shape("circle", "class", "ventring", "cx", m.x(x), "cy", m.up(y), "r", ventRing)
	m.callout(g, m.x(x)+ventRing*tx/far, m.up(y)-ventRing*ty/far, 1, "top vent")
}

// dials draws how far both vents are open, as sectors cut out of a dark disc, one after the other
// in the given direction.
func (m *grateMap) dials(x, y, dx, dy float64) {
	for i, vent := range []string{"Top vent", "Bottom vent"} {
		share := []float64{m.phase.TopOpen, m.phase.LowOpen}[i]
		text := openWords(share)
		if vent == "Top vent" && m.phase.LidOff {
			text = "lid off"
		} else {
			m.dial(x+14, y+16, share)
		}
		m.label(x+34, y+14, "soft", vent)
		m.label(x+34, y+31, "", text)
		x, y = x+dx, y+dy
	}
}

// openings are the shares of a vent that have a name.
var openings = []struct {
	share float64
	word  string
}{{0, "shut"}, {1.0 / 16, "half an eighth"}, {1.0 / 8, "an eighth"}, {1.0 / 6, "a sixth"}, {1.0 / 4, "a quarter"}, {1.0 / 3, "a third"}, {3.0 / 8, "three eighths"},
	{1.0 / 2, "half"}, {5.0 / 8, "five eighths"}, {2.0 / 3, "two thirds"}, {3.0 / 4, "three quarters"}, {7.0 / 8, "seven eighths"}, {1, "open"}}

// openWords says how far a vent is open, by the nearest share that has a name.
func openWords(share float64) string {
	best := openings[0]
	for _, o := range openings {
		if math.Abs(o.share-share) < math.Abs(best.share-share) {
			best = o
		}
	}
	return best.word
}

func (m *grateMap) dial(x, y, share float64) {
	m.shape("circle", "class", "vent", "cx", x, "cy", y, "r", 15.0)
	if share >= 1 {
		m.shape("circle", "class", "gap", "cx", x, "cy", y, "r", 12.0)
		return
	}
	sin, cos := math.Sincos(2 * math.Pi * share)
	large := "0"
	if share > 0.5 {
		large = "1"
	}
	m.shape("path", "class", "gap", "d", fmt.Sprintf("M%s %sv-12A12 12 0 %s 1 %s %sz", short(x), short(y), large, short(x+12*sin), short(y-12*cos)))
}
