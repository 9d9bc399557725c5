package export

import (
	"math"
	"slices"
)

// alongClear moves a letter aside from what is there: a little all round, or else along the piece, to a quarter of its length.
func alongClear(at box, taken []box, angleDeg, l, w float64) box {
	near := clearOf(at, taken, min(l, w)/2-letterBox/2)
	if !slices.ContainsFunc(taken, near.touches) || max(l, w) < 4*letterBox {
		return near
	}
	if w > l {
		angleDeg += 90
	}
	sin, cos := math.Sincos(angleDeg * math.Pi / 180)
	for _, by := range []float64{-0.3, 0.3} {
		moved := at
		moved.x, moved.y = at.x+by*max(l, w)*cos, at.y-by*max(l, w)*sin
		if !slices.ContainsFunc(taken, moved.touches) {
			return moved
		}
	}
	return near
}

// clearOf moves a letter aside from what is there, as far as its piece reaches all round.
func clearOf(at box, taken []box, reach float64) box {
	for _, by := range [][2]float64{{0, 0}, {0, 1}, {0, -1}, {-1, 0}, {1, 0}} {
		moved := at
		moved.x, moved.y = at.x+by[0]*max(reach, 0), at.y+by[1]*max(reach, 0)
		if !slices.ContainsFunc(taken, moved.touches) {
			return moved
		}
	}
	return at
}
