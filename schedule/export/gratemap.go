package export

import (
	"fmt"
	"io"
	"strings"
	"time"

	"example.com/cookday/schedule"
)

// GrateMap draws the grate from above as an SVG picture, one for the phase of that
// number or, with 0, all of them below each other: where the coals lie, where the
// top vent goes, how far the vents are open, and who lies where in true size. Pieces
// that lie in the same place one after the other get a picture each. The error names
// a phase that does not exist, an unknown time zone, or is that of the writer.
func GrateMap(w io.Writer, p schedule.Plan, phase int) error {
	v, err := look(p, time.Time{})
	if err != nil {
		return err
	}
	if phase < 0 || phase > len(p.Phases) {
		return fmt.Errorf("phase: %d is not one of the plan's %d phases (0 draws all)", phase, len(p.Phases))
	}
	return v.grateMap(w, phase, "g-", true)
}

func (v *view) grateMap(w io.Writer, phase int, id string, alone bool) error {
	s := &svg{id: id, alone: alone}
	if alone {
		s.y = 8
		s.label(pictureEdge, s.y+16, "head", shorten(isolated(v.title()), pictureWidth-30, true))
		s.y += 28
	}
	var words []string
	for _, f := range v.Phases {
		if phase != 0 && f.Number != phase {
			continue
		}
		for _, g := range v.sittings(f) {
			m := &grateMap{view: v, svg: s, phase: f, sitting: g}
			m.draw(v.Request.Grill)
			words = append(words, m.words())
		}
	}
	if len(words) == 0 {
		s.paragraph(pictureEdge, laneRoom, "strong", "This plan has no fire to draw.")
		s.y += 8
		words = []string{"This plan has no fire to draw."}
	}
	return s.finish(w, "The grate from above: "+isolated(v.title()), strings.Join(words, " "))
}

// grateMap is the picture of one sitting on one fire.
type grateMap struct {
	*view
	*svg
	sitting
	phase  schedule.Phase
	scale  float64 // units of the picture a metre
	cx, cy float64
	bottom float64 // below the grate and the words beside it
}

func (m *grateMap) draw(grill schedule.Grill) {
	if m.alone { // else the sheet around the picture says it
		m.label(pictureEdge, m.svg.y+letterSize, "strong", shorten(m.heading(), laneRoom, true))
		m.svg.y += lineHeight
		m.paragraph(pictureEdge, laneRoom, "soft", m.span(m.sitting.from, m.sitting.to)+", from above; you stand below.")
	}
	m.svg.y += 8
	switch grill.Kind {
	case schedule.GrillKettle, schedule.GrillBox:
		m.place(grill)
		m.grate(grill)
		m.coals(grill)
		m.zones(grill)
		m.pieces(1)
		m.topVent(grill)
		m.beside(grill)
		m.raised(grill)
	case schedule.GrillUpright:
		m.tower(grill)
	default:
		m.paragraph(pictureEdge, laneRoom, "", "This grill is described by its zones only, so there is no picture of its coals.")
	}
	m.svg.y += 12
}

// beside writes how the vents stand, at the side of a round grate, else below, and in a
// picture of its own who is who, and how it is done.
func (m *grateMap) beside(grill schedule.Grill) {
	below := m.bottom + 4
	if grill.Round() {
		m.dials(besideGrate, m.svg.y, 0, 42)
	} else {
		m.dials(pictureEdge, below, pictureWidth/2, 0)
		below += 40
	}
	m.svg.y = below
	if !m.alone {
		return
	}
	m.key(pictureEdge, laneRoom)
	for _, text := range []string{m.phase.Build, m.phase.Vents} {
		m.paragraph(pictureEdge, laneRoom, "soft", m.apart.Replace(sentence(text)))
	}
}

// heading names fire and band before the number.
func (m *grateMap) heading() string {
	return fmt.Sprintf("Fire %d: %s, %s, %s", m.phase.Number, clean(m.phase.Layout), clean(m.phase.Band), m.view.grate(m.phase.LevelC))
}

// key says who is who, when they lie there and what is to be turned.
func (m *grateMap) key(x, room float64) {
	for _, text := range m.who() {
		m.paragraph(x, room, "", text)
		m.svg.y += 3
	}
}

// who says of each letter what lies there, or that nothing does.
func (m *grateMap) who() []string {
	if len(m.guests) == 0 {
		return []string{"Nothing lies on the grate."}
	}
	var out []string
	for _, g := range m.guests {
		out = append(out, g.letter+": "+m.guestWords(g))
	}
	return out
}

func (m *grateMap) guestWords(g guest) string {
	text := m.batchTitle(g.dish, g.batch) + ": "
	if g.zone != "" {
		text += m.apart.Replace(phrase(g.zone)) + ", "
	}
	if g.sear {
		text += "to sear, "
	}
	text += m.span(g.from, g.to)
	switch {
	case g.flips == 1:
		text += ", turn once"
	case g.flips > 1:
		text += fmt.Sprintf(", turn %d times", g.flips)
	}
	text += m.layWords(g) + "."
	placed := 0
	for _, p := range g.batch.Pieces {
		if len(m.spots(g, p, m.phase)) > 0 {
			placed++
		}
	}
	switch n := len(g.batch.Pieces); {
	case placed < n && n == 1:
		text += " It doesn't fit in the drawing: bend it."
	case placed < n:
		verb := "don't"
		if n-placed == 1 {
			verb = "doesn't"
		}
		text += fmt.Sprintf(" %d of the %d %s fit in the drawing; crowd them.", n-placed, n, verb)
	}
	return text
}

// words says the picture for those who do not see it.
func (m *grateMap) words() string {
	text := m.heading() + ". " + m.apart.Replace(sentence(m.phase.Build)+" "+sentence(m.phase.Vents))
	for _, g := range m.guests {
		text += " " + m.guestWords(g)
	}
	return text
}
