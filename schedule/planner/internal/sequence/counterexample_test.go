package sequence

import (
	"context"
	"testing"
)

// These four days show why simpler methods fail: placing tasks one after
// another, each as late as it fits, or counting the fire to the last task. Their
// optima are worked out by hand in the comments.

func solveProven(t *testing.T, p *Problem) Solution {
	t.Helper()
	s, err := Solve(context.Background(), p)
	if err != nil {
		t.Fatal(err)
	}
	if err := Verify(p, &s); err != nil {
		t.Fatal(err)
	}
	if s.Status != Optimal {
		t.Fatalf("status %s, want optimal", s.Status)
	}
	return s
}

// one is a chain of one task in the oven's zone 0.
func one(minutes, startHands, endHands, area int, gap Gap) Chain {
	return Chain{HoldCost: 1, Tasks: []Task{{StartHands: startHands, EndHands: endHands,
		Modes: []Mode{at(area, 0, minutes, gap, Place{OvenFire, 0})}}}}
}

// The second stage must end 40 minutes early although its zone is free all day:
// its first stage, joined to it, must be out of the way of the other chain,
// which takes zone 0 from 60 to 30 and may not move by more than 10.
func TestJoinedStagesWaitTogether(t *testing.T) {
	p := &Problem{Ovens: []int{1, 1}, Earliest: 500, Chains: []Chain{
		{HoldCost: 1, Tasks: []Task{
			{LagMax: 0, Modes: []Mode{at(1, 0, 40, Gap{}, Place{OvenFire, 0})}},
			{Modes: []Mode{at(1, 0, 20, Gap{0, 0, 200}, Place{OvenFire, 1})}},
		}},
		one(30, 0, 0, 1, Gap{30, 30, 40}),
	}}
	s := solveProven(t, p)
	if s.Cost != 40 || s.Chains[0][1].End != 40 {
		t.Errorf("cost %d, second stage ends at %d; want 40, 40", s.Cost, s.Chains[0][1].End)
	}
	if w := s.Why[0][0]; w != (Reason{ZoneFull, 1, 0, -1, 0}) {
		t.Errorf("why %+v", w)
	}
	if w := s.Why[0][1]; w != (Reason{TaskBefore, 0, 0, -1, -1}) {
		t.Errorf("why %+v", w)
	}
}

// 480 minutes, at once 240, rest 60: the latest start, 780, is in the quiet
// night from 1140 to 750, so all of it moves to 1140: 300 beyond the ideal 120.
func TestBrisketBeforeTheNight(t *testing.T) {
	p := &Problem{Ovens: []int{1}, Earliest: 2000, Quiet: []Span{{750, 1140}}, Chains: []Chain{{HoldCost: 1, Tasks: []Task{
		{LagMax: 0, EndHands: Unattended, Modes: []Mode{at(1, 0, 480, Gap{}, Place{OvenFire, 0})}},
		{Modes: []Mode{at(1, 0, 240, Gap{60, 120, 480}, Place{OvenFire, 0})}},
	}}}}
	s := solveProven(t, p)
	if s.Cost != 300 || s.Chains[0][0].Start != 1140 {
		t.Errorf("cost %d, start %d; want 300, 1140", s.Cost, s.Chains[0][0].Start)
	}
	if w := s.Why[0][0]; w.Kind != QuietHours {
		t.Errorf("why %+v", w)
	}
}

// Hands only: with ends at 1, 2, 0 the stretches are [2,4), [4,5) and [1,2),
// [0,1): nothing overlaps, and no order of placing each as late as it fits finds
// less than 5.
func TestHandsInterleave(t *testing.T) {
	p := &Problem{Ovens: []int{9}, Earliest: 30, Chains: []Chain{
		one(3, 2, 0, 1, Gap{0, 0, 1}), one(3, 1, 1, 1, Gap{0, 0, 2}), one(1, 1, 0, 1, Gap{0, 0, NoLimit}),
	}}
	s := solveProven(t, p)
	ends := [3]int{s.Chains[0][0].End, s.Chains[1][0].End, s.Chains[2][0].End}
	if s.Cost != 3 || ends != [3]int{1, 2, 0} {
		t.Errorf("cost %d, ends %v; want 3, [1 2 0]", s.Cost, ends)
	}
}

// The fire burns to the last serving instant: from 15 on, whenever the second
// chain ends. Were it counted to the last task, ending that 8 minutes early
// would cost 7, and later would not always be better.
func TestFireBurnsToTheLastServing(t *testing.T) {
	gap := Gap{0, 8, NoLimit}
	p := &Problem{Fires: []Fire{{Zones: []int{1}}}, Change: [][]int{{0}}, Earliest: 60, BurnCost: 1, Chains: []Chain{
		{Serve: 10, HoldCost: 1, Tasks: []Task{{Modes: []Mode{at(1, 0, 5, Gap{}, Place{0, 0})}}}},
		{HoldCost: 1, Tasks: []Task{{Modes: []Mode{at(1, 0, 2, gap, Place{0, 0})}}}},
	}}
	s := solveProven(t, p)
	if s.Cost != 15 || s.Chains[1][0].End != 0 {
		t.Errorf("cost %d, second ends at %d; want 15, 0", s.Cost, s.Chains[1][0].End)
	}
	if s.WhyLight.Kind != FireNotReady || s.WhyLight.Chain != 0 {
		t.Errorf("why light %+v", s.WhyLight)
	}
}
