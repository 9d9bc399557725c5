// Package peers measures the program beside what one would take instead: SciPy for the
// heat model, a general solver for the optimiser, a bare handler for the HTTP door. It
// has tests only and they are skipped without -peers; .ci/full.d/peers.sh runs them and
// prints one table.
package peers

import (
	"flag"
	"fmt"
	"runtime"
	"slices"
	"syscall"
	"testing"
	"time"
)

var measure = flag.Bool("peers", false, "measure beside the peers; takes minutes")

func asked(t *testing.T) {
	t.Helper()
	if !*measure {
		t.Skip("not asked for by a flag")
	}
}

// row prints a line of the table of peers.
func row(what, ours, peer string, own, other time.Duration) {
	fmt.Printf("| %s | %s | %s | %s | %s | %.3g |\n", what, ours, peer, brief(own), brief(other), float64(other)/float64(own))
}

// brief is a duration to three digits.
func brief(d time.Duration) string {
	digits := time.Nanosecond
	for d/digits >= 1000 {
		digits *= 10
	}
	return d.Round(digits).String()
}

// threadTime is the time this thread has had a core: other work on a shared machine
// does not count. The caller locks the goroutine to its thread.
func threadTime() time.Duration {
	var u syscall.Rusage
	const rusageThread = 1
	if err := syscall.Getrusage(rusageThread, &u); err != nil {
		panic(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// cost is the processor time of a call in this goroutine: the median of rounds of as
// many calls as take 20 ms, since the clock of a thread has steps.
func cost(work func()) time.Duration {
	const rounds, least = 15, 20 * time.Millisecond
	runtime.LockOSThread()
	defer runtime.UnlockOSThread()
	n := 1
	for {
		began := threadTime()
		for range n {
			work()
		}
		if threadTime()-began > least {
			break
		}
		n *= 2
	}
	return medianOf(rounds, func() time.Duration {
		began := threadTime()
		for range n {
			work()
		}
		return (threadTime() - began) / time.Duration(n)
	})
}

func medianOf(n int, measured func() time.Duration) time.Duration {
	var all []time.Duration
	for range n {
		all = append(all, measured())
	}
	slices.Sort(all)
	return all[n/2]
}
