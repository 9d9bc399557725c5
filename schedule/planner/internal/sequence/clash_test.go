package sequence

import (
	"context"
	"slices"
	"testing"
)

// TestClashMinimal checks on small infeasible problems that the clash is
// infeasible and that it becomes feasible without any one member. Where the
// horizon stays small the twin decides, otherwise the search.
func TestClashMinimal(t *testing.T) {
	clashes, byTwin := 0, 0
	for seed := uint64(1); clashes < 120; seed++ {
		r := newDice(seed)
		set := featureSets[int(seed)%len(featureSets)]
		p := smallProblem(r, set.features, 3, r.from(9, 12))
		got, err := Solve(context.Background(), p)
		if err != nil {
			t.Fatal(err)
		}
		if got.Status != Infeasible {
			continue
		}
		clashes++
		if got.Clash == nil || !got.Clash.Minimal {
			t.Fatalf("seed %d (%s): clash %+v", seed, set.name, got.Clash)
		}
		feasible := func(chains []int, rules []Rule) bool {
			q := relax(p, chains, rules)
			if slices.Contains(rules, RuleEarliest) {
				byTwin++
				_, ok := exhaustive(q)
				return ok
			}
			q.NoClash = true
			s, err := Solve(context.Background(), q)
			if err != nil {
				t.Fatal(err)
			}
			return s.Status == Optimal
		}
		c := *got.Clash
		if feasible(c.Chains, c.Rules) {
			t.Errorf("seed %d (%s): %+v is feasible", seed, set.name, c)
		}
		for i := range c.Chains {
			if !feasible(slices.Delete(slices.Clone(c.Chains), i, i+1), c.Rules) {
				t.Errorf("seed %d (%s): %+v is infeasible without chain %d", seed, set.name, c, c.Chains[i])
			}
		}
		for i := range c.Rules {
			if !feasible(c.Chains, slices.Delete(slices.Clone(c.Rules), i, i+1)) {
				t.Errorf("seed %d (%s): %+v is infeasible without %s", seed, set.name, c, c.Rules[i])
			}
		}
	}
	t.Logf("%d clashes, %d questions put to the twin", clashes, byTwin)
}
