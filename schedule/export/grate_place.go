package export

import (
	"fmt"
	"math"

	"example.com/cookday/schedule"
)

// A round grate leaves room for words at its right; a box takes the whole width.
const (
	kettleRadius = 82.0
	boxHalfWidth = 158.0
	besideGrate  = 188.0 // left edge of the words beside a round grate
)

// place fits the grate to the picture.
func (m *grateMap) place(g schedule.Grill) {
	margin := 4.0
	m.scale, m.cx = kettleRadius/m.halfWidth(g), pictureEdge+2+kettleRadius
	if !g.Round() {
		margin = 22 // for the words that a round grate has corners for
		m.scale, m.cx = min(boxHalfWidth/m.halfWidth(g), kettleRadius/m.halfDepth(g)), pictureWidth/2
	}
	m.svg.y += margin
	m.cy = m.svg.y + m.halfDepth(g)*m.scale
	m.bottom = m.cy + m.halfDepth(g)*m.scale + margin
}

func (m *grateMap) halfWidth(g schedule.Grill) float64 {
	if !g.Round() {
		return float64(g.Width) / 2
	}
	return float64(g.Across()) / 2
}

func (m *grateMap) halfDepth(g schedule.Grill) float64 {
	if !g.Round() {
		return float64(g.Depth) / 2
	}
	return float64(g.Across()) / 2
}

// x and y are places in the picture of metres from the grate's centre, y away from the cook.
func (m *grateMap) x(xM float64) float64  { return m.cx + xM*m.scale }
func (m *grateMap) up(yM float64) float64 { return m.cy - yM*m.scale }

// disc and box draw the two outlines of grills and zones, scaled about the centre.
func (m *grateMap) outline(g schedule.Grill, share float64, pairs ...any) {
	if !g.Round() {
		w, d := m.halfWidth(g)*share, m.halfDepth(g)*share
		m.shape("rect", append([]any{"x", m.x(-w), "y", m.up(d), "width", 2 * w * m.scale, "height", 2 * d * m.scale, "rx", 6.0}, pairs...)...)
		return
	}
	m.shape("circle", append([]any{"cx", m.cx, "cy", m.cy, "r", m.halfWidth(g) * share * m.scale}, pairs...)...)
}

func (m *grateMap) grate(g schedule.Grill) {
	m.outline(g, 1, "class", "grate")
	d := ""
	for x := -m.halfWidth(g) + 0.02; x < m.halfWidth(g); x += 0.02 {
		half := m.halfDepth(g)
		if g.Round() {
			half = math.Sqrt(math.Max(0, m.halfWidth(g)*m.halfWidth(g)-x*x))
		}
		d += fmt.Sprintf("M%s %sV%s", short(m.x(x)), short(m.up(half)), short(m.up(-half)))
	}
	m.shape("path", "class", "bars", "d", d)
}

// side draws the part of the grate left or right of a cut that holds a share of its area.
func (m *grateMap) side(g schedule.Grill, share float64, left bool, pairs ...any) {
	m.sideFrom(g, 1, cutOf(g, share, left), left, pairs...)
}

// cutOf is where a cut lies that leaves a share of the grate's area at its left or right,
// metres to the right of the middle.
func cutOf(g schedule.Grill, share float64, left bool) float64 {
	cut := float64(g.Width) / 2 * (1 - 2*share)
	if g.Round() {
		cut = chordCut(share) * float64(g.Across()) / 2
	}
	if left {
		return -cut
	}
	return cut
}

// sideFrom draws what lies left or right of a cut of the grate's figure, scaled by within.
func (m *grateMap) sideFrom(g schedule.Grill, within, cut float64, left bool, pairs ...any) {
	w, sign := m.halfWidth(g)*within, 1.0
	if left {
		sign = -1
	}
	if !g.Round() {
		d := m.halfDepth(g) * within
		x := min(m.x(sign*w), m.x(cut))
		m.shape("rect", append([]any{"x", x, "y", m.up(d), "width", math.Abs(sign*w-cut) * m.scale, "height", 2 * d * m.scale, "rx", 4.0}, pairs...)...)
		return
	}
	half := math.Sqrt(math.Max(w*w-cut*cut, 0))
	large, sweep := "0", "1"
	if sign*cut < 0 {
		large = "1"
	}
	if left {
		sweep = "0"
	}
	x := short(m.x(cut))
	path := fmt.Sprintf("M%s %sA%s %s 0 %s %s %s %sz", x, short(m.up(half)), short(w*m.scale), short(w*m.scale), large, sweep, x, short(m.up(-half)))
	m.shape("path", append([]any{"d", path}, pairs...)...)
}

// chordCut is the distance from the centre of a unit disc at which a chord leaves a
// share of the area on its far side: negative for more than half.
func chordCut(share float64) float64 {
	lo, hi := -1.0, 1.0
	for range 40 {
		mid := (lo + hi) / 2
		if math.Acos(mid)-mid*math.Sqrt(1-mid*mid) > share*math.Pi {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

func grillArea(g schedule.Grill) float64 {
	if !g.Round() {
		return float64(g.Width) * float64(g.Depth)
	}
	return math.Pi / 4 * float64(g.Across()) * float64(g.Across())
}

// sized is how long and wide a piece lies in a spot; plans of an earlier edition say it of
// the piece alone.
func sized(p schedule.Piece, s schedule.Spot) (lengthM, widthM float64) {
	if s.LengthM > 0 {
		return s.LengthM, s.WidthM
	}
	return p.LengthM, p.WidthM
}

// outlineOf gives points on a piece: the corners of a rack, else sixteen on an ellipse.
func outlineOf(p schedule.Piece, s schedule.Spot) [][2]float64 {
	l, w := sized(p, s)
	l, w = l/2, w/2
	about := [][2]float64{{l, w}, {-l, w}, {-l, -w}, {l, -w}}
	if !rack(p, s) {
		about = nil
		for i := range 16 {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / 16)
			about = append(about, [2]float64{l * cos, w * sin})
		}
	}
	sin, cos := math.Sincos(s.AngleDeg * math.Pi / 180)
	for i, q := range about {
		about[i] = [2]float64{s.XM + q[0]*cos - q[1]*sin, s.YM + q[0]*sin + q[1]*cos}
	}
	return about
}

// rack tells a rectangle from an ellipse; in plans of an earlier edition by its area.
func rack(p schedule.Piece, s schedule.Spot) bool {
	return p.Rack || s.LengthM == 0 && p.AreaM2 > 0.9*p.LengthM*p.WidthM
}

// overlap tells whether two pieces share a part of one grate, by their outlines drawn
// in a little, so that touching neighbours do not count.
func overlap(a schedule.Piece, sa schedule.Spot, b schedule.Piece, sb schedule.Spot) bool {
	al, aw := sized(a, sa)
	bl, bw := sized(b, sb)
	if a.Grate != b.Grate || math.Hypot(sa.XM-sb.XM, sa.YM-sb.YM) > math.Hypot(al+bl, aw+bw)/2 {
		return false
	}
	return touches(a, sa, b, sb) || touches(b, sb, a, sa)
}

func touches(a schedule.Piece, sa schedule.Spot, b schedule.Piece, sb schedule.Spot) bool {
	l, w := sized(b, sb)
	sin, cos := math.Sincos(-sb.AngleDeg * math.Pi / 180)
	for _, q := range append(outlineOf(a, sa), [2]float64{sa.XM, sa.YM}) {
		dx, dy := q[0]-sb.XM, q[1]-sb.YM
		u, v := (dx*cos-dy*sin)/(0.46*l), (dx*sin+dy*cos)/(0.46*w)
		if rack(b, sb) && math.Abs(u) < 1 && math.Abs(v) < 1 || !rack(b, sb) && u*u+v*v < 1 {
			return true
		}
	}
	return false
}

// spots are where a piece of a batch lies in a phase while it is on that side of the grate,
// each half of it if it is cut; none where it has found no place.
func (v *view) spots(g guest, p schedule.Piece, f schedule.Phase) []schedule.Spot {
	var runs [][]schedule.Spot // one for each side
	for _, s := range p.Spots {
		if s.Phase != f.Number {
			continue
		}
		n := len(runs)
		if n == 0 || s.Part <= runs[n-1][len(runs[n-1])-1].Part {
			runs, n = append(runs, nil), n+1
		}
		runs[n-1] = append(runs[n-1], s)
	}
	cut, sides := twoSides(v.Request.Grill, f)
	for _, run := range runs {
		if !sides || (run[0].XM < cut) == g.direct {
			return run
		}
	}
	return nil
}

// twoSides says where the grate is parted in one side over the coals, at the left, and one
// beside them, where the phase cooks on both.
func twoSides(g schedule.Grill, f schedule.Phase) (cut float64, ok bool) {
	if g.Kind != schedule.GrillKettle && g.Kind != schedule.GrillBox || len(f.Zones) < 2 {
		return 0, false
	}
	return coalSideCut(g, f)
}

// coalSideCut is where the coals of a banked or two-zone fire end, metres to the right of
// the middle.
func coalSideCut(g schedule.Grill, f schedule.Phase) (cut float64, ok bool) {
	if f.Layout != "banked" && f.Layout != "two-zone" || len(f.Zones) == 0 {
		return 0, false
	}
	z := f.Zones[0]
	return cutOf(g, min(z.AreaM2/grillArea(g), 1), z.Direct), true
}
