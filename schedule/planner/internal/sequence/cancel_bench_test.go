package sequence

import (
	"context"
	"testing"
	"time"
)

// BenchmarkCancel measures how long Solve goes on after its context has ended.
func BenchmarkCancel(b *testing.B) {
	worst := time.Duration(0)
	for i := 0; b.Loop(); i++ {
		ctx, cancel := context.WithCancel(context.Background())
		ended := make(chan time.Time, 1)
		p := realisticDay(uint64(i%20)+1, 20)
		p.Budget = limit
		time.AfterFunc(time.Duration(5+i*7%150)*time.Millisecond, func() { ended <- time.Now(); cancel() })
		_, _ = Solve(ctx, p)
		worst = max(worst, time.Since(<-ended))
	}
	b.ReportMetric(float64(worst.Microseconds())/1000, "ms-worst")
}
