package sequence

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

var (
	miniZinc     = flag.Int("minizinc", 0, "synthetic problems to put to minizinc as well")
	miniZincDays = flag.Int("minizincdays", 0, "realistic days to put to minizinc as well")
	miniZincTime = flag.Duration("minizinctime", 10*time.Second, "time limit for each")
)

// TestMiniZincSynthetic puts small problems of 4 to 8 chains to a general solver
// with its own statement of the problem.
func TestMiniZincSynthetic(t *testing.T) {
	compareAll(t, "small random problems of 4 to 8 chains", *miniZinc, func(seed uint64) *Problem {
		r := newDice(seed)
		n := r.from(4, 8)
		f := featureSets[int(seed)%len(featureSets)].features
		f.idle = false // not in the model: no fire for nothing
		p := smallProblem(r, f, 4, 6*n+r.from(0, 9))
		for len(p.Chains) < n {
			p.Chains = append(p.Chains, smallChain(r, f, p))
		}
		for f := range p.Change { // a phase and changes of no length have no minute to look at
			for g := range p.Change[f] {
				if p.Change[f][g] == 0 {
					p.Change[f][g] = 1
				}
			}
		}
		return p
	})
}

// TestMiniZincDays: on realistic days a stopped run must not be better.
func TestMiniZincDays(t *testing.T) {
	compareAll(t, "realistic days of 4 to 8 batches", *miniZincDays, func(seed uint64) *Problem { return realisticDay(seed, 4+int(seed)%5) })
}

// compareAll solves n problems both ways.
func compareAll(t *testing.T, what string, n int, problem func(uint64) *Problem) {
	if n == 0 {
		t.Skip("not asked for by a flag")
	}
	if _, err := exec.LookPath("minizinc"); err != nil {
		t.Skip("minizinc is not installed")
	}
	equal, infeasible, stopped := 0, 0, 0
	var race race
	startUp := startOfMiniZinc(t)
	for seed := uint64(1); seed <= uint64(n); seed++ {
		p := problem(seed)
		p.Budget, p.NoClash = 5_000_000, true
		ours, own := timedSolve(t, p)
		cost, status, took := runMiniZinc(t, p)
		race.add(own, took-startUp, status == "stopped")
		switch {
		case status == "error":
			t.Errorf("seed %d: minizinc fails", seed)
		case ours.Status != Optimal && ours.Status != Infeasible:
			t.Errorf("seed %d: ours is %s", seed, ours.Status)
		case status == "proven" && ours.Status == Optimal && cost == ours.Cost:
			equal++
		case status == "infeasible" && ours.Status == Infeasible:
			infeasible++
		case status == "stopped" && (cost < 0 || ours.Status == Optimal && cost >= ours.Cost):
			stopped++
		default:
			t.Errorf("seed %d: ours %s at %d, minizinc %s at %d", seed, ours.Status, ours.Cost, status, cost)
		}
	}
	t.Logf("%d problems: %d equal, %d infeasible for both, %d stopped at the limit and not better", n, equal, infeasible, stopped)
	race.report(what, startUp)
}

// runMiniZinc returns the last cost printed, -1 for none, how it ended, and the
// processor time of it and of its solver.
func runMiniZinc(t *testing.T, p *Problem) (cost int, status string, took time.Duration) {
	data := filepath.Join(t.TempDir(), "day.dzn")
	if err := os.WriteFile(data, []byte(zinc(p)), 0o600); err != nil {
		t.Fatal(err)
	}
	var faults bytes.Buffer
	cmd := exec.Command("minizinc", "--solver", "gecode", "-G", "std", "--time-limit",
		fmt.Sprint(miniZincTime.Milliseconds()), "-a", "testdata/day.mzn", data)
	cmd.Stderr = &faults
	out, err := cmd.Output()
	text, took := string(out), processTime(cmd)
	cost = -1
	for line := range strings.Lines(text) {
		fmt.Sscanf(line, "cost %d", &cost)
	}
	switch {
	case err != nil || strings.Contains(text, "ERROR"):
		t.Logf("%v: %s %s", err, faults.String(), text)
		return cost, "error", took
	case strings.Contains(text, "=====UNSATISFIABLE"):
		return cost, "infeasible", took
	case strings.Contains(text, "=========="):
		return cost, "proven", took
	}
	return cost, "stopped", took
}
