package belief_test

import (
	"context"
	"math"
	"testing"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/planner/internal/belief"
)

// A probe that sends a reading every five minutes tells little more than one that is
// read by the hour: the model's error and the probe's place stay what they are. The
// window after 60 % of a cook of several hours may be a seventh narrower for the eleven
// readings between (an assumption: some of the noise is the probe's own), not more.
func TestADenseLogTellsLittleMoreThanAnHourlyOne(t *testing.T) {
	d, batches := truthWays(t, "0.9")
	seen := 0
	for _, x := range batches {
		w := x.Ways[0]
		if w.ModelDone < 5*60 {
			continue
		}
		seen++
		b, _ := belief.NewBelief(context.Background(), journeyFor(d, x), w.Spread, x.It.Cut.Style == cut.Tough)
		b.Whole = w.ModelDone
		width := func(everyMin float64) float64 {
			var log []belief.Reading
			for at := everyMin; at <= 0.6*b.Done(w.Spread.Median); at += everyMin {
				core := b.Between(w.Spread.Median, func(p *belief.Path) float64 { return coresOf(*p, x, []belief.Reading{{Minute: at}})[0] })
				log = append(log, belief.Reading{Minute: at, CoreC: core})
			}
			for p := range b.Paths {
				b.Paths[p].SetCores(coresOf(b.Paths[p], x, log))
			}
			_ = b.Weigh(context.Background(), log)
			belief.ShareGrate([]*belief.Belief{b}, 1)
			return math.Log(b.Done(b.Quantile(0.9)) / b.Done(b.Quantile(0.1)))
		}
		hourly, dense := width(60), width(5)
		t.Logf("%s: windows of %.1f %% by the hour, %.1f %% by five minutes", x.It.Cut.Name, 100*hourly, 100*dense)
		if dense < 0.85*hourly {
			t.Errorf("%s: five-minute readings narrow the window from %.1f to %.1f %%", x.It.Cut.Name, 100*hourly, 100*dense)
		}
	}
	if seen < 3 {
		t.Errorf("only %d cooks are long enough", seen)
	}
}
