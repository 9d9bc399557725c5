package belief_test

import (
	"fmt"
	"math"
	"os"
	"testing"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/planner/internal/belief"
	"example.com/cookday/schedule/planner/internal/spread"
	"example.com/cookday/schedule/unit"
)

// whole says whether all of it is asked for, which takes a quarter of an hour (.ci/full.d/follow.sh).
var whole = os.Getenv("COOKDAY_FULL") != ""

// catalogueCooks are the ways beside the coals of every cut that has some, 1,081 of them; but for
// a whole run one way of every sixth cut, each time another one of its ways.
func catalogueCooks(t *testing.T) []cook {
	t.Helper()
	var out []cook
	for i, c := range cut.All() {
		if c.Style == cut.Timed || !whole && i%6 != 0 {
			continue
		}
		all := cooksOf(t, fmt.Sprintf("{cut: %s, weight: %.2f kg}", c.Name, c.Typical))
		if n := len(all); !whole && n > 1 {
			all = all[i/6%n : i/6%n+1]
		}
		out = append(out, all...)
	}
	return out
}

// P1: of readings that are the core, a colder one makes no quantile of what is left
// earlier and no chance higher: every degree Fahrenheit from 60 F to the target, on every
// way of the catalogue, at three instants of the cook, after another reading and without.
// The specification wants no breach. A hundredth of a minute is left for rounding. But for a
// whole run it goes by five degrees, from another one at each way.
func TestAColderReadingNeverHelps(t *testing.T) {
	steps, breaches, worst, stride := 0, 0, 0.0, 1
	if !whole {
		stride = 5
	}
	for i, c := range catalogueCooks(t) {
		for _, share := range []float64{0.3, 0.6, 0.85} {
			now := share * c.way.Total().Expected
			for _, earlier := range []bool{false, true} {
				if !whole && earlier != (share == 0.6) {
					continue
				}
				var before []belief.Reading
				if earlier {
					before = append(before, belief.Reading{Minute: now / 2, CoreC: asForetold(t, c, now/2)})
				}
				var hotter *belief.Belief
				target := c.at(now).TargetC
				for coreC := target + 1 - float64(i%stride)/1.8; coreC > unit.FToC(60); coreC -= float64(stride) / 1.8 {
					b := believed(t, c, now, append(before[:len(before):len(before)], belief.Reading{Minute: now, CoreC: coreC})...)
					if hotter != nil {
						for _, p := range []float64{0.1, 0.5, 0.9} {
							steps++
							if off := hotter.Quantile(p) - b.Quantile(p); off > 0.01 {
								breaches++
								worst = math.Max(worst, off/math.Max(b.Quantile(p)-now, 1))
								if breaches < 10 {
									t.Errorf("%s at %.0f min, %.0f F: %.1f min left with %.0f %%, %.1f min where it is hotter", c.name, now, f(coreC), b.Quantile(p)-now, 100*p, hotter.Quantile(p)-now)
								}
							}
						}
						for _, by := range []float64{now + 30, now + 120, now + 400} {
							if spread.NormalCDF(b.Z(by)) > spread.NormalCDF(hotter.Z(by))+1e-5 { // the grid of 600 points
								t.Errorf("%s at %.0f min, %.0f F: a higher chance than where it is hotter", c.name, now, f(coreC))
							}
						}
					}
					hotter = b
				}
			}
		}
	}
	t.Logf("%d steps, %d breaches, worst %.1f %%", steps, breaches, 100*worst)
	if steps < 1000 {
		t.Errorf("only %d steps", steps)
	}
}
