package fire

import "math"

// A fuse of coals round the edge of the coal grate, a gap of about 8 in between head and tail, 5-7 lit at one end (common
// practice, no source). Its coals lean on one another like books, each row some 1.4 in after the last: more than a
// briquette is thick, less than it is long (assumption; five logged fuses lasted 0.4 to 1.9 times as long as that
// gives, rows laid flat, 2 in apart, 0.6 to 2.5 times).
const (
	stepM        = 0.035
	pieceM       = 0.05 // a piece across the fuse
	gapM         = 0.20
	ringLeastLit = 5
)

// Section is a fuse's cross-section: pieces side by side in each layer, from below.
type Section []int

// The cross-sections that cooks lay, thinnest first.
var sections = []Section{{1, 1}, {2, 1}, {2, 2}, {2, 2, 1}}

// String is the cook's way to write it: 2-2-1.
func (s Section) String() string {
	text := ""
	for i, n := range s {
		if i > 0 {
			text += "-"
		}
		text += string(rune('0' + n))
	}
	return text
}

func (s Section) perStep() int {
	n := 0
	for _, k := range s {
		n += k
	}
	return n
}

func (s Section) widthM() float64 { return float64(s[0]) * pieceM }

// RingLaid is a fuse as laid.
type RingLaid struct {
	Section Section
	Steps   int     // row steps
	ArcM    float64 // length along the middle of the fuse
	MostM   float64 // the length that the coal grate allows, gap taken off
	WidthM  float64
}

// A front creeps along a fuse at much the same speed whatever its thickness, so the thickness sets the heat. The speed
// is fixed by 2-2-1 holding 250 F on 22.5 in: 10.6 an hour of 5 a step, 8 cm an hour (assumption).
const stepsPerHour = referencePerHour / 5

// sectionFor is the cross-section whose heat is nearest to what the hungriest hour needs; not enough where even the
// thickest falls short by more than 15 %, the 25 F at 250 F that vents make up.
func (g Grill) sectionFor(kgPerHour float64) (s Section, enough bool) {
	want := kgPerHour / g.pieceKg() / stepsPerHour
	best := sections[len(sections)-1]
	for _, s := range sections {
		if math.Abs(float64(s.perStep())-want) < math.Abs(float64(best.perStep())-want) {
			best = s
		}
	}
	return best, want <= float64(best.perStep())*1.15 || best.perStep() < sections[len(sections)-1].perStep()
}

// ringMostM is the longest fuse: round the edge of the coal grate, half a fuse's width inside, less the gap.
func (g Grill) ringMostM(s Section) float64 {
	round := 0.0
	if g.Kind == Box {
		round = 2 * (coalGrateShare*(g.WidthM+g.DepthM) - 2*s.widthM())
	} else {
		round = math.Pi * (coalGrateShare*g.DiameterM - s.widthM())
	}
	return max(round-gapM, stepM)
}

// ringKg is what the longest fuse holds. Lump fills the same room with less mass.
func (g Grill) ringKg(s Section) float64 {
	kg := g.ringMostM(s) / stepM * float64(s.perStep()) * briquetteKg
	return kg * g.chimneyKg() / chimneyBriquette
}

// laid is the fuse that takes so much unlit fuel.
func (g Grill) laid(s Section, unlitKg float64) RingLaid {
	most := g.ringMostM(s)
	arc := max(unlitKg, 0) / g.ringKg(s) * most
	return RingLaid{Section: s, Steps: ceilInt(arc / stepM), ArcM: arc, MostM: most, WidthM: s.widthM()}
}
