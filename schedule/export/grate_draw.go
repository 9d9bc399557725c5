package export

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.com/cookday/schedule"
)

// The coal grate below is smaller than the cooking grate. The coals of a banked or two-zone
// fire lie at the left, up to the side where the food has none below it, and the lit end
// of a ring lies at the back, so that the same side of every picture is the hot one. An
// even layer and a heap are drawn as far as the plan counts what lies there as over the
// coals. (Share of the coal grate: common practice, no source; a row of a ring is about 5 cm
// wide.)
const (
	coalGrateShare = 0.76
	coalGapM       = 0.02 // between coals and the line of the zone, to tell them apart
	overCoals      = 0.94 // of the zone's breadth, for the same reason
	ringRowM       = 0.05
)

func (m *grateMap) coals(g schedule.Grill) {
	paint := []any{"fill", m.fill("coals"), "class", "edge"}
	switch m.phase.Layout {
	case "banked", "two-zone":
		if cut, ok := coalSideCut(g, m.phase); ok {
			within := coalGrateShare
			if m.phase.Layout == "two-zone" { // food lies over them
				within = overCoals
			}
			m.sideFrom(g, within, cut-coalGapM, true, paint...)
		}
	case "ring":
		m.ring(g)
	case "spread", "heap":
		for _, z := range m.phase.Zones {
			m.outline(g, overCoals*math.Sqrt(min(z.AreaM2/grillArea(g), 1)), paint...)
		}
	}
}

// ring lays coals clockwise from the back as far as they reach, the lit ones first.
func (m *grateMap) ring(g schedule.Grill) {
	rows, arc := 2.0, 0.0
	if b := m.phase.Burn; b != nil {
		if n, err := strconv.Atoi(strings.SplitN(b.Rows, "-", 2)[0]); err == nil && n > 0 {
			rows = float64(n)
		}
		arc = b.ArcM
	}
	const coalM = 0.8 * ringRowM
	side := coalM * m.scale
	for at := 0.0; at <= arc; at += ringRowM {
		for row := range int(rows) {
			inset := (float64(row) + 0.5) * ringRowM
			x, y := m.alongEdge(g, at, rows*ringRowM/2, inset)
			class := "coal"
			if at < ringRowM { // the first step is lit
				class = "lit"
			}
			turn := 0.0
			if g.Round() {
				turn = math.Atan2(x, y) * 180 / math.Pi
			}
			m.shape("rect", "class", class, "x", m.x(x)-side/2, "y", m.up(y)-side/2, "width", side, "height", side, "rx", 3.0,
				"transform", fmt.Sprintf("rotate(%s %s %s)", short(turn), short(m.x(x)), short(m.up(y))))
		}
	}
	x, y := m.alongEdge(g, 0, rows*ringRowM/2, ringRowM/2)
	m.callout(g, m.x(x), m.up(y), -1, "lit end")
}

// callout names a point from outside the grate: from the upper left or lower right
// corner, where a round grate leaves room and a box has a margin.
func (m *grateMap) callout(g schedule.Grill, x, y, corner float64, text string) {
	tx, ty := m.cx+corner*m.halfWidth(g)*m.scale*0.86, m.cy+corner*m.halfDepth(g)*m.scale*0.92
	if !g.Round() {
		ty = m.cy + corner*(m.halfDepth(g)*m.scale+8)
	}
	half := size(text, true)/2 + 1
	tx = min(max(tx, half), pictureWidth-half)
	m.shape("path", "class", "lead", "d", fmt.Sprintf("M%s %sL%s %s", short(x), short(y), short(tx), short(ty)))
	m.label(tx, ty+4+6*corner, "middle strong", text)
}

// alongEdge walks clockwise from the back along the edge of the coal grate: the length
// is measured `middle` inside the edge, the point lies `inset` inside it.
func (m *grateMap) alongEdge(g schedule.Grill, at, middle, inset float64) (x, y float64) {
	w, d := m.halfWidth(g)*coalGrateShare, m.halfDepth(g)*coalGrateShare
	if g.Round() {
		sin, cos := math.Sincos(at / (w - middle))
		return (w - inset) * sin, (w - inset) * cos
	}
	sides := [][4]float64{{0, 1, w - middle, 0}, {1, 0, 2 * (d - middle), 1}, {0, -1, 2 * (w - middle), 2}, {-1, 0, 2 * (d - middle), 3}, {0, 1, w - middle, 4}}
	for i, side := range sides {
		if at > side[2] && i < len(sides)-1 {
			at -= side[2]
			continue
		}
		switch i {
		case 0:
			return at, d - inset
		case 1:
			return w - inset, d - middle - at
		case 2:
			return w - middle - at, -(d - inset)
		case 3:
			return -(w - inset), -(d - middle) + at
		}
		return -(w - middle) + at, d - inset
	}
	return 0, 0
}

// zones draws the parts of the grate as the plan sizes them, with their heat.
func (m *grateMap) zones(g schedule.Grill) {
	for _, z := range m.phase.Zones {
		share := min(z.AreaM2/grillArea(g), 1)
		switch {
		case m.phase.Layout == "banked" || m.phase.Layout == "two-zone":
			m.side(g, share, z.Direct, "class", "zone")
		default:
			m.outline(g, math.Sqrt(share), "class", "zone")
		}
	}
}

// pieces draws those on one of several grates, 1 for the lowest, or all of one, and then
// their letters.
func (m *grateMap) pieces(level int) {
	var taken []box
	for n, g := range m.guests {
		for _, p := range g.batch.Pieces {
			if max(p.Grate, 1) != level {
				continue
			}
			for _, s := range m.spots(g, p, m.phase) {
				m.piece(p, s, n)
			}
		}
	}
	if vx, vy, ok := m.vent(m.Request.Grill); ok { // its mark is drawn over them
		taken = append(taken, box{m.x(vx), m.up(vy), 2 * ventRing, 2 * ventRing})
	}
	for _, g := range m.guests {
		taken = m.letters(g, level, taken)
	}
}

func (m *grateMap) piece(p schedule.Piece, s schedule.Spot, n int) {
	class := "piece"
	if n%2 == 1 { // neighbours are told apart by more than their letters
		class = "piece other"
	}
	l, w := sized(p, s)
	x, y, l, w := m.x(s.XM), m.up(s.YM), l*m.scale, w*m.scale
	turn := fmt.Sprintf("rotate(%s %s %s)", short(-s.AngleDeg), short(x), short(y)) // the picture's y points down
	if rack(p, s) {
		m.shape("rect", "class", class, "x", x-l/2, "y", y-w/2, "width", l, "height", w, "rx", min(5, w/3), "transform", turn)
	} else {
		m.shape("ellipse", "class", class, "cx", x, "cy", y, "rx", l/2, "ry", w/2, "transform", turn)
	}
	m.how(p, x, y, l, w, turn)
}

// box is a middle, a width and a height.
type box struct{ x, y, w, h float64 }

func (b box) touches(o box) bool {
	return math.Abs(b.x-o.x) < (b.w+o.w)/2 && math.Abs(b.y-o.y) < (b.h+o.h)/2
}

// letterBox is the room that a letter takes.
const letterBox = 14.0

// letters writes the letter of a batch on those of its pieces that have room for it and do
// not touch another; where none has, on a disc over one of them.
func (m *grateMap) letters(g guest, level int, taken []box) []box {
	narrow := []box(nil)
	n := len(taken)
	for _, p := range g.batch.Pieces {
		if max(p.Grate, 1) != level {
			continue
		}
		for _, s := range m.spots(g, p, m.phase) {
			l, w := sized(p, s)
			at := box{m.x(s.XM), m.up(s.YM), letterBox, letterBox}
			at = alongClear(at, taken, s.AngleDeg, l*m.scale, w*m.scale)
			switch {
			case slices.ContainsFunc(taken, at.touches):
			case min(l, w)*m.scale < letterBox:
				narrow = append(narrow, at)
			default:
				taken = append(taken, at)
				m.label(at.x, at.y+5.5, "letter", g.letter)
			}
		}
	}
	if len(taken) == n && len(narrow) > 0 {
		at := narrow[len(narrow)/2]
		m.shape("circle", "class", "badge", "cx", at.x, "cy", at.y, "r", letterBox/2+2)
		m.label(at.x, at.y+5.5, "letter", g.letter)
		taken = append(taken, at)
	}
	return taken
}

// how marks a piece that does not just lie there: the slots of an upright rack at both ends
// of one that stands, the support across one that is bent, the turn of one that is rolled.
func (m *grateMap) how(p schedule.Piece, x, y, l, w float64, turn string) {
	line := func(d string) { m.shape("path", "class", "lead", "d", d, "transform", turn) }
	switch p.Lies {
	case "standing":
		for _, at := range []float64{-0.36, 0.36} {
			line(fmt.Sprintf("M%s %sV%s", short(x+at*l), short(y-w/2-3), short(y+w/2+3)))
		}
	case "bent":
		line(fmt.Sprintf("M%s %sV%s", short(x), short(y-w/2-3), short(y-letterSize)))
		line(fmt.Sprintf("M%s %sV%s", short(x), short(y+letterSize), short(y+w/2+3)))
	case "rolled":
		r := 0.38 * w
		line(fmt.Sprintf("M%s %sA%s %s 0 1 1 %s %s", short(x+r), short(y), short(r), short(r), short(x), short(y-r)))
	}
}
