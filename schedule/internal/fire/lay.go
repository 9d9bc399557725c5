package fire

import "math"

// Lie is how a piece is put on the grate.
type Lie string

// The ways. Standing and rolling take a rack to stand in, or a skewer; cutting in half and bending take nothing.
const (
	LieFlat     Lie = "flat"
	LieHalved   Lie = "halved"
	LieStanding Lie = "standing"
	LieRolled   Lie = "rolled"
	LieBent     Lie = "bent"
)

// A straight piece lies easily up to reachEasy of what the grate is across. A longer one is squeezed in, or bent over a
// support, up to reachMost (cooks bend briskets of 13 to 17.5 lb onto grates of 17.5 in); none is longer.
const (
	reachEasy = 0.93
	reachMost = 1 / 0.85
)

// Raw is a piece before it is laid.
type Raw struct {
	Footprint
	ThicknessM float64
	Bends      bool // boneless enough to be bent over a support: a brisket, a rack of ribs
}

// Laid is a piece as it lies: in so many equal parts.
type Laid struct {
	Part     Footprint
	Parts    int
	Lie      Lie
	HighM    float64
	Squeezed bool // longer than what lies there easily
	TooLong  bool
}

// Lay puts a piece on a grate of a reach, as it was asked for. Where nothing was, a rack that is too long is cut in half
// and what bends is bent, for neither takes more than the cook has. Nothing is too long for a grate of unknown reach, 0.
func Lay(r Raw, asked Lie, reachM float64) Laid {
	l := Laid{Part: r.Footprint, Parts: 1, Lie: LieFlat, HighM: r.ThicknessM}
	if asked != "" {
		l.Lie = asked
	}
	switch l.Lie {
	case LieRolled:
		across := r.LengthM/math.Pi + r.ThicknessM
		l.Part, l.HighM = Footprint{LengthM: across, WidthM: across, Disc: true}, r.WidthM
		return l
	case LieStanding:
		l.Part.Standing, l.HighM = true, r.WidthM
	case LieHalved:
		l.halve()
	}
	longest := reachMost
	if !r.Bends {
		longest = 1
	}
	if reachM <= 0 {
		return l
	}
	long := max(l.Part.LengthM, l.Part.WidthM) / reachM
	if long > longest && r.Rack && r.Bends && l.Parts == 1 && asked != LieFlat {
		l.halve()
		if !l.Part.Standing {
			l.Lie = LieHalved
		}
		l.Squeezed = true // the cook is told to cut
		long = max(l.Part.LengthM, l.Part.WidthM) / reachM
	}
	l.Squeezed, l.TooLong = l.Squeezed || long > reachEasy, long > longest
	if l.Squeezed && !l.TooLong && r.Bends && !r.Rack {
		l.Lie = LieBent
	}
	return l
}

func (l *Laid) halve() { l.Part.LengthM, l.Parts = l.Part.LengthM/2, 2 }

// Needs is what so many such pieces need.
func (l Laid) Needs(n int) Needs { return NeedsOf(l.Part, n*l.Parts) }

// NeedsAlone is what one piece needs that has the zone for itself.
func (l Laid) NeedsAlone() Needs {
	if l.Parts > 1 {
		return l.Needs(1)
	}
	return NeedsAlone(l.Part)
}

// CoverM2 is what a piece covers, m2.
func (l Laid) CoverM2() float64 { return CoverM2(l.Part) * float64(l.Parts) }

// Drawn is how large a part is drawn: one that is bent over a support, or pushed in at the ends, no longer than the grate.
func (l Laid) Drawn(reachM float64) Footprint {
	f := l.Part
	if l.Squeezed && reachM > 0 {
		f.LengthM = min(f.LengthM, reachEasy*reachM)
	}
	if f.Standing {
		f.WidthM *= standingShare
	}
	return f
}
