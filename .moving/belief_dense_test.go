package schedule

import (
	"context"
	"math"
	"testing"

	"example.com/cookday/schedule/cut"
)

// A probe that sends a reading every five minutes tells little more than one that is
// read by the hour: the model's error and the probe's place stay what they are. The
// window after 60 % of a cook of several hours may be a seventh narrower for the eleven
// readings between (an assumption: some of the noise is the probe's own), not more.
func TestADenseLogTellsLittleMoreThanAnHourlyOne(t *testing.T) {
	d, batches := truthWays(t, "0.9")
	seen := 0
	for _, x := range batches {
		w := x.ways[0]
		if w.modelDone < 5*60 {
			continue
		}
		seen++
		b, _ := newBelief(context.Background(), journeyFor(d, x), w.spread, x.it.cut.Style == cut.Tough)
		b.whole = w.modelDone
		width := func(everyMin float64) float64 {
			var log []reading
			for at := everyMin; at <= 0.6*b.done(w.spread.Median); at += everyMin {
				core := b.between(w.spread.Median, func(p *path) float64 { return coresOf(*p, x, []reading{{minute: at}})[0] })
				log = append(log, reading{minute: at, coreC: core})
			}
			for p := range b.paths {
				b.paths[p].cores = coresOf(b.paths[p], x, log)
			}
			_ = b.weigh(context.Background(), log)
			shareGrate([]*belief{b}, 1)
			return math.Log(b.done(b.quantile(0.9)) / b.done(b.quantile(0.1)))
		}
		hourly, dense := width(60), width(5)
		t.Logf("%s: windows of %.1f %% by the hour, %.1f %% by five minutes", x.it.cut.Name, 100*hourly, 100*dense)
		if dense < 0.85*hourly {
			t.Errorf("%s: five-minute readings narrow the window from %.1f to %.1f %%", x.it.cut.Name, 100*hourly, 100*dense)
		}
	}
	if seen < 3 {
		t.Errorf("only %d cooks are long enough", seen)
	}
}
