package planner_test

import (
	"context"
	"flag"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

var benchParties = flag.Int("bench-parties", 40, "how many random parties BenchmarkParties plans")

// BenchmarkParties plans random days with their remedies: how long that takes on
// days that can be done and on days that cannot, and how many of these get a remedy.
func BenchmarkParties(b *testing.B) {
	for range b.N {
		var fine, hard []time.Duration
		remedied := 0
		for seed := range *benchParties {
			r, err := schedule.Read([]byte(rapid.Custom(drawParty).Example(seed)))
			if err != nil {
				continue
			}
			from := time.Now()
			p, err := planner.Make(context.Background(), r)
			took := time.Since(from)
			switch {
			case err != nil:
			case p.Feasible:
				fine = append(fine, took)
			default:
				hard = append(hard, took)
				if len(p.Remedies) > 0 {
					remedied++
				}
			}
		}
		b.ReportMetric(float64(len(fine)), "fine")
		b.ReportMetric(float64(len(hard)), "infeasible")
		b.ReportMetric(float64(remedied), "remedied")
		reportTimes(b, "fine", fine)
		reportTimes(b, "infeasible", hard)
	}
}

func reportTimes(b *testing.B, of string, all []time.Duration) {
	if len(all) == 0 {
		return
	}
	slices.Sort(all)
	ms := func(share float64) float64 {
		return float64(all[int(share*float64(len(all)-1))].Microseconds()) / 1000
	}
	b.ReportMetric(ms(0.5), of+"-p50-ms")
	b.ReportMetric(ms(0.9), of+"-p90-ms")
	b.ReportMetric(ms(1), of+"-max-ms")
}
