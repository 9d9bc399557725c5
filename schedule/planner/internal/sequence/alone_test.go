package sequence

import (
	"context"
	"slices"
	"testing"
)

// A way that is measured lies where it lies when every link is followed, whatever the
// phases and the holes.
func TestMeasuredWaysLieWhereTheLinksPutThem(t *testing.T) {
	compared := 0
	for seed := range uint64(40) {
		d := prepare(realisticDay(seed+1, 5), new(store))
		for _, c := range candidates(&solver{ctx: context.Background(), budget: 1, best: value{never, never}}, d, 0) {
			s := c.search
			m := s.mark()
			if s.start() && s.settle() {
				for k := range s.fires { // phases somewhere else than at their root
					s.raise(k, s.low[k]+int(seed)*7)
				}
				s.settle()
				for class := range s.ways {
					for i := range s.ways[class] {
						compared += aloneTwice(t, s, &s.Chains[s.sample[class]], &s.ways[class][i])
					}
				}
			}
			s.undo(m)
			s.hands = s.hands[:0]
		}
	}
	if compared < 1000 {
		t.Errorf("only %d ways compared", compared)
	}
}

func aloneTwice(t *testing.T, s *search, ch *Chain, w *way) int {
	w.asked, w.reach = 0, nil
	a, aOK := s.alone(ch, w, nil)
	w.asked = askedOften
	b, bOK := s.alone(ch, w, nil)
	if aOK != bOK || aOK && !slices.Equal(a, b) {
		t.Fatalf("by its links %v %v, measured %v %v", a, aOK, b, bOK)
	}
	return 1
}
