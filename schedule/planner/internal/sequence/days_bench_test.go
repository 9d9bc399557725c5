package sequence

import (
	"context"
	"flag"
	"fmt"
	"runtime"
	"slices"
	"syscall"
	"testing"
	"time"
)

var (
	dayCount  = flag.Int("days", 40, "realistic days of each size in the benchmark")
	dayFirst  = flag.Int("dayfirst", 1, "number of the first of them")
	dayBudget = flag.Int("daybudget", 0, "nodes for each realistic day (0: the default)")
	farFactor = flag.Int("far", 0, "compare the benchmark's days with a budget so many times larger")
)

// BenchmarkDays solves realistic days and prints nodes, milliseconds, the share
// of proven days and the gaps to the bound.
func BenchmarkDays(b *testing.B) {
	for _, n := range []int{3, 6, 8, 12, 20} {
		b.Run(fmt.Sprintf("batches=%d", n), func(b *testing.B) {
			for b.Loop() {
				measureDays(b, n)
			}
		})
	}
}

// threadTime is the time this thread has had a core: other work on a shared
// machine does not count.
func threadTime() time.Duration {
	var u syscall.Rusage
	const rusageThread = 1
	if err := syscall.Getrusage(rusageThread, &u); err != nil {
		panic(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// tally is what was measured on days of one size.
type tally struct {
	nodes, gaps        []int
	ms                 []float64
	proven, infeasible int
	none               int // stopped days without a plan
	near, stopped      int // stopped days within 3 % of the larger budget; all
}

func measureDays(b *testing.B, n int) {
	runtime.LockOSThread() // for threadTime
	defer runtime.UnlockOSThread()
	var t tally
	for i := range *dayCount {
		p := realisticDay(uint64(*dayFirst+i), n)
		p.Budget, p.NoClash = *dayBudget, true
		begin := threadTime()
		s, err := Solve(context.Background(), p)
		ms := float64((threadTime() - begin).Microseconds()) / 1000
		if err != nil {
			b.Fatal(err)
		}
		if err := Verify(p, &s); err != nil {
			b.Fatal(err)
		}
		if testing.Verbose() {
			fmt.Printf("  day %d: %s, cost %d, bound %d, %d nodes, %.1f ms\n", *dayFirst+i, s.Status, s.Cost, s.Bound, s.Nodes, ms)
		}
		t.add(&s, ms)
		if *farFactor > 0 && s.Stopped != "" && within(b, p, &s) {
			t.near++
		}
	}
	t.report(b, n)
}

func (t *tally) add(s *Solution, ms float64) {
	t.nodes, t.ms = append(t.nodes, s.Nodes), append(t.ms, ms)
	if s.Stopped != "" {
		t.stopped++
	}
	switch s.Status {
	case Optimal:
		t.proven++
	case Infeasible:
		t.proven++
		t.infeasible++
	case Feasible:
		t.gaps = append(t.gaps, 100*(s.Cost-s.Bound)/max(1, s.Cost))
	default:
		t.none++
	}
}

func (t *tally) report(b *testing.B, n int) {
	slices.Sort(t.nodes)
	slices.Sort(t.ms)
	slices.Sort(t.gaps)
	days := len(t.ms)
	at := func(share int) int { return min(days-1, days*share/100) }
	b.Logf("%d batches: proven %d/%d (infeasible %d), no plan %d, nodes %d / %d, ms %.1f / %.1f / %.1f, gaps %v",
		n, t.proven, days, t.infeasible, t.none, t.nodes[at(50)], t.nodes[at(90)], t.ms[at(50)], t.ms[at(90)], t.ms[days-1], t.gaps)
	if *farFactor > 0 {
		b.Logf("%d batches: %d of %d stopped days within 3 %% of a budget %d times larger", n, t.near, t.stopped, *farFactor)
	}
	b.ReportMetric(float64(t.nodes[at(50)]), "nodes")
	b.ReportMetric(t.ms[at(50)], "ms")
	b.ReportMetric(t.ms[at(90)], "ms-p90")
	b.ReportMetric(100*float64(t.proven)/float64(days), "%proven")
}

// within says that a stopped answer is within 3 % of that of a budget farFactor
// times larger, which is also without a plan where it is.
func within(b *testing.B, p *Problem, s *Solution) bool {
	q := *p
	q.Budget = *farFactor * max(p.Budget, DefaultBudget)
	t, err := Solve(context.Background(), &q)
	if err != nil {
		b.Fatal(err)
	}
	fmt.Printf("  cost %d (%s), bound %d; with the larger budget %d (%s), bound %d\n", s.Cost, s.Status, s.Bound, t.Cost, t.Status, t.Bound)
	if s.Status == Unknown {
		return t.Status != Feasible && t.Status != Optimal
	}
	return 100*(s.Cost-t.Cost) <= 3*t.Cost
}
