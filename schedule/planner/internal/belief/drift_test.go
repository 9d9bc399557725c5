package belief_test

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner/internal/belief"
	"example.com/cookday/schedule/planner/internal/day"
)

// cookOfTruth is a cook whose pace changes on the way: the instants, minutes, at
// which it is through equal shares of the model's cook.
type cookOfTruth []float64

// changingCook draws one by what the belief takes for its own: a pace that stays,
// and in each share one that comes anew, together of the dish's own spread.
func changingCook(rnd *rand.Rand, w day.Way, g float64) cookOfTruth {
	const shares = 20
	own := w.Spread.Own()
	stays := w.Spread.Median + w.Spread.Grate*g + own*math.Sqrt(1-belief.PaceDrift*belief.PaceDrift)*rnd.NormFloat64()
	s := belief.PaceDrift * own * math.Sqrt(shares)
	out := cookOfTruth{0}
	for i := range shares {
		out = append(out, out[i]+w.ModelDone/shares*math.Exp(stays+s*rnd.NormFloat64()-s*s/2))
	}
	return out
}

// pace is the logarithm of the mean pace up to a minute.
func (c cookOfTruth) pace(w day.Way, minute float64) float64 {
	for i := 1; i < len(c); i++ {
		if minute <= c[i] {
			through := float64(i-1) + (minute-c[i-1])/(c[i]-c[i-1])
			return math.Log(minute / (through / float64(len(c)-1) * w.ModelDone))
		}
	}
	return math.Log(c[len(c)-1] / w.ModelDone)
}

// Of cooks whose pace changes on the way, the windows after a reading at 30, then
// 50, then 70 % hold 80 %; a little more, for the belief also allows for readings
// that are wrong. The error of the expected finish cannot fall as far as that of a
// cook of one pace: after an exact reading at a share u the rest of the drift
// still has 1 - u of its variance. Fixed seed.
func TestWindowsHoldCooksThatChangeTheirPace(t *testing.T) {
	d, batches := truthWays(t, "0.9")
	rnd := rand.New(rand.NewPCG(5, 6))
	var first []float64
	after, held, all := make([][]float64, 3), 0.0, 0.0
	for i, x := range batches {
		w := x.Ways[0]
		b, _ := belief.NewBelief(context.Background(), journeyFor(d, x), w.Spread, x.It.Cut.Style == cut.Tough)
		b.Whole = w.ModelDone
		for range 40 {
			cook := changingCook(rnd, w, rnd.NormFloat64())
			truth := cook[len(cook)-1]
			off := func(readings []belief.Reading) float64 {
				for p := range b.Paths {
					b.Paths[p].SetCores(coresOf(b.Paths[p], x, readings))
				}
				_ = b.Weigh(context.Background(), readings)
				belief.ShareGrate([]*belief.Belief{b}, 1)
				return math.Abs(b.Done(b.Quantile(0.5))/truth - 1)
			}
			first = append(first, off(nil))
			var rs []belief.Reading
			for k, share := range []float64{0.3, 0.5, 0.7} {
				rs = append(rs, readAt(rnd, b, batches[i], cook.pace(w, share*truth), share*truth))
				after[k] = append(after[k], off(rs))
				if all++; truth >= b.Done(b.Quantile(0.1)) && truth <= b.Done(b.Quantile(0.9)) {
					held++
				}
			}
		}
	}
	for k := range after {
		t.Logf("after a reading at %d %%: median error %.1f %%, %.0f %% of the first (%.1f %%)", 30+20*k, 100*plantest.Median(after[k]), 100*plantest.Median(after[k])/plantest.Median(first), 100*plantest.Median(first))
	}
	share := held / all
	se := math.Sqrt(0.8 * 0.2 / (all / 3)) // three windows of one cook count as one
	t.Logf("windows of 80 %% after readings hold %.3f of %.0f, standard error %.3f", share, all, se)
	if share < 0.8-3*se || share > 0.9 {
		t.Errorf("windows of 80 %% hold %.3f, standard error %.3f", share, se)
	}
}
