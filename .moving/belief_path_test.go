package schedule

import (
	"context"
	"math"
	"testing"

	"example.com/cookday/schedule/cut"
)

// A cook whose end lies behind it ends at the same minute as the same cook seen
// from its beginning, at any pace: what is past and what is to come are one model.
// The two are sampled at other instants, hence the 1 %.
func TestThePastEndsWhereTheFutureDid(t *testing.T) {
	d, batches := truthWays(t, "0.9")
	for _, b := range batches {
		if b.ways[0].with != "" {
			continue // the past of a wrapped piece is not what was ahead of it
		}
		for _, lnf := range []float64{-0.4, -0.1, 0, 0.3} {
			ahead := journeyFor(d, b).run(lnf).done
			back := journeyFor(d, b)
			back.now = 3 * ahead
			if done := back.run(lnf).done; math.Abs(math.Log(done/ahead)) > 0.01 {
				t.Errorf("%s at pace %.1f: over after %.0f min; seen from the beginning it takes %.0f", b.it.cut.Name, lnf, done, ahead)
			}
		}
	}
}

// What a slow piece says of their common grate, the other pieces take for theirs: a
// slow one means a cold grate, on which all are slow. What a fast one says is the
// opposite of it.
func TestPiecesShareTheirGrate(t *testing.T) {
	d, batches := truthWays(t, "0.9")
	for _, asIf := range []float64{-1.5, 1.5} {
		var all []*belief
		for _, b := range batches[:2] {
			x, err := newBelief(context.Background(), journeyFor(d, b), b.ways[0].spread, b.it.cut.Style == cut.Tough)
			if err != nil {
				t.Fatal(err)
			}
			x.like = make([]float64, len(x.xs))
			for i := range x.like {
				x.like[i] = 1
			}
			all = append(all, x)
		}
		seen := all[0].spread.Median + asIf*all[0].spread.S
		for i, x := range all[0].xs {
			all[0].like[i] = math.Exp(-math.Pow((x-seen)/0.03, 2) / 2)
		}
		grate, _ := shareGrate(all, 1)
		other := all[1].quantile(0.5) - all[1].spread.Median
		t.Logf("one %+.1f standard deviations off: the grate %+.2f, the other one %+.3f", asIf, grate, other)
		if grate*asIf <= 0 || other*asIf <= 0 {
			t.Errorf("a piece %+.1f standard deviations off makes the grate %+.2f and the other piece %+.3f", asIf, grate, other)
		}
	}
}
