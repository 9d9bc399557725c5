package belief_test

import (
	"context"
	"math"
	"slices"
	"testing"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/planner/internal/belief"
)

// A cook whose end lies behind it ends at the same minute as the same cook seen
// from its beginning, at any pace: what is past and what is to come are one model.
// The two are sampled at other instants, hence the 1 %.
func TestThePastEndsWhereTheFutureDid(t *testing.T) {
	d, batches := truthWays(t, "0.9")
	for _, b := range batches {
		if b.Ways[0].With != "" {
			continue // the past of a wrapped piece is not what was ahead of it
		}
		for _, lnf := range []float64{-0.4, -0.1, 0, 0.3} {
			ahead := journeyFor(d, b).Run(lnf).Done
			back := journeyFor(d, b)
			back.Now = 3 * ahead
			if done := back.Run(lnf).Done; math.Abs(math.Log(done/ahead)) > 0.01 {
				t.Errorf("%s at pace %.1f: over after %.0f min; seen from the beginning it takes %.0f", b.It.Cut.Name, lnf, done, ahead)
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
		var all []*belief.Belief
		for _, b := range batches[:2] {
			x, err := belief.NewBelief(context.Background(), journeyFor(d, b), b.Ways[0].Spread, b.It.Cut.Style == cut.Tough)
			if err != nil {
				t.Fatal(err)
			}
			x.SetLike(slices.Repeat([]float64{1}, len(x.Paces())))
			all = append(all, x)
		}
		seen := all[0].Before().Median + asIf*all[0].Before().S
		like := make([]float64, len(all[0].Paces()))
		for i, x := range all[0].Paces() {
			like[i] = math.Exp(-math.Pow((x-seen)/0.03, 2) / 2)
		}
		all[0].SetLike(like)
		grate, _ := belief.ShareGrate(all, 1)
		other := all[1].Quantile(0.5) - all[1].Before().Median
		t.Logf("one %+.1f standard deviations off: the grate %+.2f, the other one %+.3f", asIf, grate, other)
		if grate*asIf <= 0 || other*asIf <= 0 {
			t.Errorf("a piece %+.1f standard deviations off makes the grate %+.2f and the other piece %+.3f", asIf, grate, other)
		}
	}
}
