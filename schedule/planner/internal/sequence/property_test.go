package sequence

import (
	"context"
	"errors"
	"reflect"
	"testing"
	"time"
)

// smallProven calls f with small random problems of a set that have a proven
// answer.
func smallProven(t *testing.T, n int, f func(seed uint64, r dice, p *Problem, s *Solution)) {
	t.Helper()
	for seed := uint64(1); n > 0; seed++ {
		r := newDice(seed)
		p := smallProblem(r, featureSets[int(seed)%len(featureSets)].features, 4, r.from(10, 20))
		p.NoClash = true
		s, err := Solve(context.Background(), p)
		if err != nil {
			t.Fatal(err)
		}
		if s.Status == Optimal {
			f(seed, r, p, &s)
			n--
		}
	}
}

// TestWhyIsTight checks each reason against the plan: what it names is exactly
// what the task touches.
func TestWhyIsTight(t *testing.T) {
	seen := map[Kind]int{}
	smallProven(t, 1500, func(seed uint64, _ dice, p *Problem, s *Solution) {
		for c, why := range s.Why {
			for j, r := range why {
				seen[r.Kind]++
				if !tight(p, s, c, j, r) {
					t.Errorf("seed %d: chain %d task %d: %+v in %+v %+v", seed, c, j, r, s.Phases, s.Chains)
				}
			}
		}
	})
	for k := ServeRest; k < LastServing; k++ {
		// Where the order of batches holds one, another order would be better: it
		// can be the reason in a stopped plan only.
		if seen[k] == 0 && k != BatchOrder {
			t.Errorf("%s never seen", k)
		}
	}
	t.Log(seen)
}

func tight(p *Problem, s *Solution, c, j int, r Reason) bool {
	at, t := s.Chains[c][j], &p.Chains[c].Tasks[j]
	m := &t.Modes[at.Mode]
	quiet := t.StartHands >= 0 && inside(p.Quiet, at.Start-1) || t.EndHands >= 0 && inside(p.Quiet, at.End-1)
	var other Placed
	if r.Chain >= 0 {
		other = s.Chains[r.Chain][r.Task]
	}
	switch r.Kind {
	case ServeRest:
		return at.End == p.Chains[c].Serve+m.Gap.Min
	case NextTask:
		return r.Chain == c && r.Task == j+1 && at.End == other.Start+t.LagMin
	case TaskBefore:
		return r.Chain == c && r.Task == j-1 && at.Start == other.End-p.Chains[c].Tasks[j-1].LagMax
	case ZoneFull:
		return at.End == other.Start
	case FireIdle:
		return at.Start == s.Phases[r.Phase].Begin-p.IdleMost
	case BatchOrder:
		return at.End == other.End && p.Chains[c].Group == p.Chains[r.Chain].Group
	case FireNotReady: // off by the end of its phase, or begun before the change
		end := s.Phases[r.Phase-1].End
		return at.End == end && at.LastPhase == r.Phase-1 || at.Start == end+1 && at.FirstPhase == r.Phase-1
	case HandsBusy:
		return handsTouch(p, s, at, t, r)
	case QuietHours:
		return quiet
	case ClosedHours:
		return inside(m.Closed, at.Start-1)
	}
	return false
}

// handsTouch says that a stretch of hands of the task ends where one of the
// other party begins.
func handsTouch(p *Problem, s *Solution, at Placed, t *Task, r Reason) bool {
	var others []int
	switch {
	case r.Chain >= 0:
		o := s.Chains[r.Chain][r.Task]
		others = []int{o.Start, o.End}
	case r.Phase >= 0:
		others = []int{s.Phases[r.Phase].End}
	default:
		others = []int{s.Light}
	}
	for _, u := range others {
		if at.Start-t.StartHands == u || at.End-t.EndHands == u {
			return true
		}
	}
	return false
}

// TestMoreIsNeverCheaper: a chain more or a longer quiet time never lowers the
// cost, and never makes an impossible day possible.
func TestMoreIsNeverCheaper(t *testing.T) {
	for seed := uint64(1); seed <= 600; seed++ {
		r := newDice(seed)
		f := featureSets[int(seed)%len(featureSets)].features
		p := smallProblem(r, f, 4, r.from(10, 20))
		p.NoClash = true
		more := *p
		if seed%2 == 0 {
			more.Chains = append(append([]Chain(nil), p.Chains...), smallChain(r, f, p))
		} else {
			a := r.from(0, p.Earliest)
			more.Quiet = append(append([]Span(nil), p.Quiet...), Span{a, a + r.from(1, 3)})
		}
		before, err := Solve(context.Background(), p)
		if err != nil {
			t.Fatal(err)
		}
		after, err := Solve(context.Background(), &more)
		if err != nil {
			t.Fatal(err)
		}
		cheaper := after.Status == Optimal && (before.Status == Infeasible || before.Status == Optimal && after.Cost < before.Cost)
		if cheaper {
			t.Errorf("seed %d: %s %d before, %s %d with more", seed, before.Status, before.Cost, after.Status, after.Cost)
		}
	}
}

// TestLongerNeverStartsLater: one chain with one way, no quiet or closed hours.
func TestLongerNeverStartsLater(t *testing.T) {
	for seed := uint64(1); seed <= 300; seed++ {
		r := newDice(seed)
		p := smallProblem(r, features{serve: true}, 2, 200)
		p.Chains = p.Chains[:1]
		c := &p.Chains[0]
		for j := range c.Tasks {
			c.Tasks[j].Modes = c.Tasks[j].Modes[:1]
			m := &c.Tasks[j].Modes[0]
			m.Area, m.Minutes, m.Closed = 1, []int{r.from(5, 40)}, nil
		}
		before := solveProven(t, p)
		c.Tasks[r.from(0, len(c.Tasks)-1)].Modes[0].Minutes[0] += r.from(1, 20)
		if after := solveProven(t, p); after.Chains[0][0].Start < before.Chains[0][0].Start {
			t.Errorf("seed %d: start %d, longer %d", seed, before.Chains[0][0].Start, after.Chains[0][0].Start)
		}
	}
}

// TestSameAnswerTwice: equal problems have equal answers, stopped or not.
func TestSameAnswerTwice(t *testing.T) {
	for seed := uint64(1); seed <= 12; seed++ {
		p := realisticDay(seed, 10)
		p.Budget = 3000
		a, err := Solve(context.Background(), p)
		if err != nil {
			t.Fatal(err)
		}
		if err := Verify(p, &a); err != nil {
			t.Errorf("day %d: %v", seed, err)
		}
		b, _ := Solve(context.Background(), realisticDayOf(p))
		if !reflect.DeepEqual(a, b) {
			t.Errorf("day %d: %+v and %+v", seed, a, b)
		}
	}
}

// realisticDayOf copies a problem one level deep.
func realisticDayOf(p *Problem) *Problem {
	q := *p
	q.Chains = append([]Chain(nil), p.Chains...)
	return &q
}

// TestCancelled: a cancelled context ends the search with its error.
func TestCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	p := realisticDay(3, 20)
	p.Budget = limit
	go func() { time.Sleep(20 * time.Millisecond); cancel() }()
	if s, err := Solve(ctx, p); !errors.Is(err, context.Canceled) || s.Status != Unknown || s.Chains != nil {
		t.Errorf("got %s, %v", s.Status, err)
	}
	done, stop := context.WithCancel(context.Background())
	stop()
	if _, err := Solve(done, twoFires()); !errors.Is(err, context.Canceled) {
		t.Errorf("cancelled before: %v", err)
	}
}

// TestNothingToDo: no chains, or no fire needed.
func TestNothingToDo(t *testing.T) {
	if s := solveProven(t, &Problem{}); s.Light != -1 || len(s.Phases) > 0 || s.Cost != 0 {
		t.Errorf("%+v", s)
	}
	p := twoFires()
	p.Chains = p.Chains[2:3]
	if s := solveProven(t, p); s.Light != -1 || len(s.Phases) > 0 || s.WhyLight.Kind != LastServing {
		t.Errorf("%+v", s)
	}
}
