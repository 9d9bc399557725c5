package sequence

import (
	"cmp"
	"context"
	"flag"
	"slices"
	"testing"
)

var (
	twinCount = flag.Int("twin", 1000, "small random problems to solve exhaustively as well")
	twinSeed  = flag.Uint64("twinseed", 1, "first seed of the small random problems")
)

// The twin solves small problems by trying every sequence of fires, every
// begin of each phase and every start of each task on the minute grid, with
// what is taken kept minute by minute. It shares no code with the search.
type twin struct {
	p       *Problem
	fires   []int
	begin   []int
	owner   [][]int // phases (one, or the two beside a change) of each minute
	room    map[[2]int]int
	taken   map[[3]int]int // phase, zone, minute
	busy    map[int]int
	lists   [][]placement
	chosen  []*placement
	best    value
	found   bool
	horizon int
}

// placement is one way to place a whole chain, and what it takes.
type placement struct {
	value
	room []use
	busy []int
	on   [][2]int // phase, and the start of a task that is in it
}

type use struct {
	at   [3]int
	area int
}

func exhaustive(p *Problem) (value, bool) {
	t := &twin{p: p, room: map[[2]int]int{}, horizon: p.Earliest}
	t.sequence()
	return t.best, t.found
}

func (t *twin) sequence() {
	t.boundaries(nil)
	if len(t.fires) == t.p.MaxPhases {
		return
	}
	for f := range t.p.Fires {
		if n := len(t.fires); n > 0 && (t.fires[n-1] == f || t.p.Change[t.fires[n-1]][f] < 0) {
			continue
		}
		t.fires = append(t.fires, f)
		t.sequence()
		t.fires = t.fires[:len(t.fires)-1]
	}
}

// boundaries tries every begin of each phase.
func (t *twin) boundaries(begin []int) {
	if k := len(begin); k < len(t.fires) {
		for u := range t.horizon + 1 {
			if k > 0 && u+t.p.Change[t.fires[k-1]][t.fires[k]] > begin[k-1] {
				break
			}
			t.boundaries(append(begin[:k:k], u))
		}
		return
	}
	t.begin = begin
	t.taken, t.busy = map[[3]int]int{}, map[int]int{}
	if !t.fire() {
		return
	}
	t.owner = make([][]int, t.horizon+1)
	for m := range t.owner {
		for k := range begin {
			from, to := 0, t.horizon+1 // phase and the changes beside it
			if k+1 < len(begin) {
				from = begin[k+1]
			}
			if k > 0 {
				to = t.end(k - 1)
			}
			if from <= m && m < to {
				t.owner[m] = append(t.owner[m], k)
			}
		}
	}
	t.lists = nil
	for c := range t.p.Chains {
		l := t.chain(&t.p.Chains[c], 0, t.horizon, 0, placement{})
		if len(l) == 0 {
			return
		}
		slices.SortStableFunc(l, func(a, b placement) int { return cmp.Compare(a.cost, b.cost) })
		t.lists = append(t.lists, l)
	}
	var v value
	if n := len(begin); n > 0 {
		for k := 1; k < n; k++ {
			if t.p.ChangeCosts == nil {
				v.cost += t.p.ChangeCost
			} else {
				v.cost += t.p.ChangeCosts[t.fires[k-1]][t.fires[k]]
			}
		}
		v.cost += t.p.FurtherCost*max(0, n-1-t.p.FewChanges) + t.p.BurnCost*t.light()
	}
	t.combine(0, v)
}

func (t *twin) light() int { return t.begin[0] + t.p.Fires[t.fires[0]].Setup }

// end is when phase k ends.
func (t *twin) end(k int) int {
	if k+1 == len(t.begin) {
		return 0
	}
	return t.begin[k+1] + t.p.Change[t.fires[k]][t.fires[k+1]]
}

// fire checks light and changes, and notes the hands they take.
func (t *twin) fire() bool {
	if len(t.begin) == 0 {
		return true
	}
	if t.light() > t.horizon || t.p.LightHands >= 0 && t.quiet(t.light()) || inside(t.p.Fires[t.fires[0]].LightClosed, t.light()) {
		return false
	}
	for i := range t.p.LightHands {
		t.busy[t.light()-1-i]++
	}
	for k := range len(t.begin) - 1 {
		if t.p.ChangeHands >= 0 && t.quiet(t.end(k)) || inside(t.p.Fires[t.fires[k+1]].ChangeClosed, t.end(k)) {
			return false
		}
		for i := range t.p.ChangeHands {
			t.busy[t.end(k)-1-i]++
		}
	}
	for _, n := range t.busy {
		if n > 1 {
			return false
		}
	}
	return true
}

// combine tries every combination of placements.
func (t *twin) combine(c int, v value) {
	if t.found && v.cost > t.best.cost {
		return
	}
	if c == len(t.lists) {
		if t.idle() {
			return
		}
		if !t.found || v.less(t.best) {
			t.best, t.found = v, true
		}
		return
	}
	for i := range t.lists[c] {
		p := &t.lists[c][i]
		if t.found && v.cost+p.cost > t.best.cost {
			return
		}
		t.chosen = append(t.chosen[:c], p)
		if t.take(p, 1) {
			t.combine(c+1, value{v.cost + p.cost, v.starts + p.starts})
		}
		t.take(p, -1)
	}
}

// idle says whether a fire burns for nothing for too long.
func (t *twin) idle() bool {
	for k, begin := range t.begin {
		soon := t.p.IdleMost == 0
		for _, p := range t.chosen {
			for _, on := range p.on {
				soon = soon || on[0] == k && on[1] >= begin-t.p.IdleMost
			}
		}
		if !soon {
			return true
		}
	}
	return false
}

// take adds (or with -1 takes away) what a placement uses.
func (t *twin) take(p *placement, sign int) bool {
	ok := true
	for _, u := range p.room {
		t.taken[u.at] += sign * u.area
		ok = ok && t.taken[u.at] <= t.capacity(u.at)
	}
	for _, m := range p.busy {
		t.busy[m] += sign
		ok = ok && t.busy[m] <= 1
	}
	return ok
}

// TestTwin compares the search with the twin in feasibility, cost and tie.
func TestTwin(t *testing.T) {
	infeasible := make([]int, len(featureSets))
	for i := range *twinCount {
		seed := *twinSeed + uint64(i)
		set := i % len(featureSets)
		r := newDice(seed)
		p := smallProblem(r, featureSets[set].features, 3, r.from(9, 13))
		want, feasible := exhaustive(p)
		got, err := Solve(context.Background(), p)
		if err != nil {
			t.Fatalf("seed %d (%s): %v", seed, featureSets[set].name, err)
		}
		if err := Verify(p, &got); err != nil {
			t.Errorf("seed %d (%s): %v", seed, featureSets[set].name, err)
		}
		starts := 0
		for _, c := range got.Chains {
			starts += c[0].Start
		}
		switch {
		case !feasible:
			infeasible[set]++
			if got.Status != Infeasible {
				t.Errorf("seed %d (%s): %s, the twin finds no plan", seed, featureSets[set].name, got.Status)
			}
		case got.Status != Optimal || got.Cost != want.cost || starts != want.starts:
			t.Errorf("seed %d (%s): %s at %d, starts %d; the twin has %d, %d", seed, featureSets[set].name, got.Status, got.Cost, starts, want.cost, want.starts)
		}
	}
	for i, f := range featureSets {
		t.Logf("%s: %d infeasible", f.name, infeasible[i])
	}
	t.Logf("seeds %d to %d", *twinSeed, *twinSeed+uint64(*twinCount)-1)
}
