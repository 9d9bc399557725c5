package sequence

import "testing"

// lift and sink, against a search minute by minute: From is in the hole, To is not.
func TestLiftAndSinkGoAroundHoles(t *testing.T) {
	holes := []Span{{3, 5}, {8, 9}, {12, 20}}
	closed := func(y int) bool {
		for _, h := range holes {
			if h.From <= y && y < h.To {
				return true
			}
		}
		return false
	}
	for y := range 25 {
		up, down := y, y
		for closed(up) {
			up++
		}
		for closed(down) {
			down--
		}
		if got := lift(holes, y); got != up {
			t.Errorf("lift of %d is %d, want %d", y, got, up)
		}
		if got := sink(holes, y); got != down {
			t.Errorf("sink of %d is %d, want %d", y, got, down)
		}
	}
}
