package export

import (
	"fmt"
	"math"

	"example.com/cookday/schedule"
)

// tower draws the grates of an upright cooker from the top down, each as it lies.
func (m *grateMap) tower(g schedule.Grill) {
	names := []string{"The grate"}
	for _, z := range m.phase.Zones {
		if len(z.Grates) > 0 {
			names = nil
			for _, grate := range z.Grates {
				names = append(names, capital(clean(grate.Name)))
			}
		}
	}
	for level := len(names); level >= 1; level-- {
		m.level(g, level, names[level-1], func() { m.grate(g) })
	}
	if m.alone {
		m.key(pictureEdge, laneRoom)
	}
}

// raised draws the second grate over the side away from the coals, where it is used.
func (m *grateMap) raised(g schedule.Grill) {
	for _, z := range m.phase.Zones {
		if len(z.Grates) < 2 || !m.used(2) {
			continue
		}
		share := min(z.Grates[1].AreaM2/grillArea(g), 1)
		m.svg.y += 8
		m.level(g, 2, capital(clean(z.Grates[1].Name)), func() {
			m.outline(g, 1, "class", "zone")
			if m.phase.Layout == "banked" || m.phase.Layout == "two-zone" {
				m.side(g, share, false, "class", "grate")
				return
			}
			m.outline(g, math.Sqrt(share), "class", "grate")
		})
	}
}

// level draws one grate with what lies on it.
func (m *grateMap) level(g schedule.Grill, level int, name string, grate func()) {
	m.label(pictureEdge, m.svg.y+letterSize, "strong", name)
	m.svg.y += lineHeight
	m.place(g)
	grate()
	m.pieces(level)
	if !m.used(level) {
		m.label(m.cx, m.cy, "middle soft", "empty")
	}
	m.svg.y = m.bottom + 8
}

// used says whether something lies on a grate.
func (m *grateMap) used(level int) bool {
	for _, g := range m.guests {
		for _, p := range g.batch.Pieces {
			if max(p.Grate, 1) == level {
				return true
			}
		}
	}
	return false
}

// layWords says how the pieces of a batch lie, and on which of several grates.
func (m *grateMap) layWords(g guest) string {
	text := ""
	if len(g.batch.Pieces) == 0 {
		return text
	}
	switch g.batch.Pieces[0].Lies {
	case "standing":
		text += ", standing in an upright rack"
	case "halved":
		text += ", each cut in half"
	case "rolled":
		text += ", rolled up"
	case "bent":
		text += ", bent over a support"
	}
	for _, z := range m.phase.Zones {
		for k, grate := range z.Grates {
			n := 0
			for _, p := range g.batch.Pieces {
				if p.Grate == k+1 {
					n++
				}
			}
			switch {
			case n == len(g.batch.Pieces):
				text += ", on the " + clean(grate.Name)
			case n > 0:
				text += fmt.Sprintf(", %d on the %s", n, clean(grate.Name))
			}
		}
	}
	return text
}
