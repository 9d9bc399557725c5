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
		s.label(10, s.y+16, "head", shorten(isolated(v.title()), pictureWidth-30, true))
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
		s.paragraph(10, pictureWidth-20, "strong", "This plan has no fire to draw.")
		s.y += 8
		words = []string{"This plan has no fire to draw."}
	}
	return s.finish(w, "The grate from above: "+isolated(v.title()), strings.Join(words, " "))
}

// oneSitting draws a single picture for a page that says the rest itself.
func (v *view) oneSitting(w io.Writer, f schedule.Phase, g sitting, id string) error {
	m := &grateMap{view: v, svg: &svg{id: id}, phase: f, sitting: g}
	m.draw(v.Request.Grill)
	return m.finish(w, fmt.Sprintf("The grate from above, fire %d", f.Number), m.words())
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
	m.label(12, m.svg.y+letterSize, "strong", m.heading())
	m.svg.y += lineHeight
	m.paragraph(12, pictureWidth-24, "soft", m.span(m.sitting.from, m.sitting.to)+", from above; you stand below.")
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
		m.paragraph(12, pictureWidth-24, "", "This grill is described by its zones only, so there is no picture of its coals.")
	}
	m.svg.y += 12
}

// beside writes how the vents stand and who is who, at the side of a round grate if
// it fits there, else below.
func (m *grateMap) beside(grill schedule.Grill) {
	x, y, room := besideGrate, m.svg.y, pictureWidth-besideGrate-8
	if !grill.Round() {
		x, room = 12, pictureWidth/2-8
		y = m.bottom + 4
		m.dials(x, y, room, 0)
		y += 40
	} else {
		m.dials(x, y, 0, 38)
		y += 84
	}
	below := m.bottom + 4
	height := 0.0
	for _, g := range m.guests {
		height += float64(len(lines(g.letter+": "+m.guestWords(g), room)))*lineHeight + 3
	}
	if !grill.Round() || y+height > below {
		x, room, y = 12, pictureWidth-24, max(below, y)
		if grill.Round() {
			y = below
		}
	}
	m.svg.y = y
	m.key(x, room)
	m.svg.y = max(m.svg.y, below)
	if m.alone { // else the sheet around the picture says it
		for _, text := range []string{m.phase.Build, m.phase.Vents} {
			m.paragraph(12, pictureWidth-24, "soft", m.apart.Replace(sentence(text)))
		}
	}
}

// heading names fire and band before the number.
func (m *grateMap) heading() string {
	text := fmt.Sprintf("Fire %d: %s, %s band, %s", m.phase.Number, clean(m.phase.Layout), clean(m.phase.Band), m.view.grate(m.phase.LevelC))
	return shorten(text, pictureWidth-24, true)
}

// key says who is who, when they lie there and what is to be turned.
func (m *grateMap) key(x, room float64) {
	if len(m.guests) == 0 {
		m.paragraph(x, room, "soft", "Nothing lies on the grate.")
	}
	for _, g := range m.guests {
		m.paragraph(x, room, "", g.letter+": "+m.guestWords(g))
		m.svg.y += 3
	}
}

func (m *grateMap) guestWords(g guest) string {
	text := m.batchTitle(g.dish, g.batch) + ": "
	if g.zone != "" {
		text += m.apart.Replace(phrase(g.zone)) + ", "
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
		if len(spots(p, m.phase.Number)) > 0 {
			placed++
		}
	}
	if n := len(g.batch.Pieces); placed < n {
		text += fmt.Sprintf(" %d of %d found no place by shape: bend or move them closer.", n-placed, n)
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
