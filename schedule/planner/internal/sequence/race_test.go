package sequence

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"testing"
	"time"
)

// race compares times of this optimiser with those of a general one. All are
// processor time, since other work may share the machine.
type race struct {
	own, other, ratio []float64 // of problems that both ended, in ms
	atLeast           []float64 // ratios where the other was stopped at its limit
}

func (r *race) add(own, other time.Duration, stopped bool) {
	o, x := float64(own.Microseconds())/1000, max(float64(other.Microseconds())/1000, 0)
	if stopped {
		r.atLeast = append(r.atLeast, x/o)
		return
	}
	r.own, r.other, r.ratio = append(r.own, o), append(r.other, x), append(r.ratio, x/o)
}

// report prints a row of the table of peers; .ci/full.d/peers.sh collects them.
func (r *race) report(what string, startUp time.Duration) {
	for _, v := range [][]float64{r.own, r.other, r.ratio, r.atLeast} {
		slices.Sort(v)
	}
	at := func(v []float64, percent int) float64 {
		if len(v) == 0 {
			return 0
		}
		return v[min(len(v)*percent/100, len(v)-1)]
	}
	fmt.Printf("| %s, %d ended by both | optimiser | MiniZinc with Gecode, without the %d ms of its start | %.2f ms | %.0f ms | %.3g (p10 %.3g, p90 %.3g) |\n",
		what, len(r.ratio), startUp.Milliseconds(), at(r.own, 50), at(r.other, 50), at(r.ratio, 50), at(r.ratio, 10), at(r.ratio, 90))
	if len(r.atLeast) > 0 {
		fmt.Printf("| %s, %d more that it does not end in %s | optimiser | the same | | | at least %.3g |\n", what, len(r.atLeast), *miniZincTime, at(r.atLeast, 50))
	}
}

// timedSolve repeats a short solve, because the clock of a thread has steps.
func timedSolve(t *testing.T, p *Problem) (s Solution, took time.Duration) {
	t.Helper()
	runtime.LockOSThread() // for threadTime
	defer runtime.UnlockOSThread()
	begin := threadTime()
	for n := time.Duration(1); ; n++ {
		var err error
		if s, err = Solve(context.Background(), p); err != nil {
			t.Fatal(err)
		}
		if spent := threadTime() - begin; spent > 20*time.Millisecond {
			return s, max(spent/n, time.Microsecond)
		}
	}
}

// processTime is what a finished command and its own children have used.
func processTime(cmd *exec.Cmd) time.Duration {
	return cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()
}

// startOfMiniZinc is what it takes to say nothing, median of five.
func startOfMiniZinc(t *testing.T) time.Duration {
	t.Helper()
	model := filepath.Join(t.TempDir(), "nothing.mzn")
	if err := os.WriteFile(model, []byte("solve satisfy;\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	var all []time.Duration
	for range 5 {
		cmd := exec.Command("minizinc", "--solver", "gecode", "-G", "std", model)
		if out, err := cmd.CombinedOutput(); err != nil {
			t.Fatalf("%v: %s", err, out)
		}
		all = append(all, processTime(cmd))
	}
	slices.Sort(all)
	return all[2]
}
