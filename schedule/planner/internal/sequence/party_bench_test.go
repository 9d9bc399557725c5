package sequence

import (
	"context"
	"testing"
)

// partyDay is a day of three dishes as a family has it: a wrapped piece with
// many ways over night, a bird, patties, on six fires of one grate. Its figures
// are common practice, no source.
func partyDay() *Problem {
	night := []Span{{750, 1140}, {2190, 2580}}
	p := &Problem{
		Fires: []Fire{
			{Setup: 30, Zones: []int{1100}}, {Setup: 45, Zones: []int{1000}}, {Setup: 35, Zones: []int{920, 740}},
			{Setup: 35, Zones: []int{1560}}, {Setup: 30, Zones: []int{1100}}, {Setup: 45, Zones: []int{1000}},
		},
		Change: [][]int{
			{0, -1, 20, 20, 15, -1}, {20, 0, 20, 20, 20, 15}, {50, -1, 0, 20, 45, -1},
			{50, -1, 20, 0, 45, -1}, {15, -1, 20, 20, 0, -1}, {20, 15, 20, 20, 20, 0},
		},
		Ovens: []int{1500}, ChangeCost: 150, BurnCost: 1, LightHands: 15, ChangeHands: 10, Quiet: night, Earliest: 2880,
	}
	bird := at(880, 0, 80, Gap{10, 15, 45}, Place{2, 0})
	bird.Closed = []Span{{750, 1220}, {2190, 2660}}
	patties := at(1550, 0, 14, Gap{0, 2, 15}, Place{3, 0})
	patties.Closed = []Span{{750, 1160}, {2190, 2600}}
	p.Chains = []Chain{
		nightPiece(),
		{HoldCost: 30, Tasks: []Task{{StartHands: 5, EndHands: Unattended, Modes: []Mode{bird}}}},
		{HoldCost: 100, Tasks: []Task{{StartHands: 3, EndHands: Unattended, Modes: []Mode{patties}}}},
	}
	return p
}

// nightPiece may be wrapped when it is due, or wait bare until the night is over:
// the longer bare, the shorter wrapped. It may ride through changes and finish in
// the oven.
func nightPiece() Chain {
	gap := Gap{30, 60, 360}
	var first, second Task
	first.StartHands, first.EndHands = 5, Unattended
	second.StartHands, second.EndHands = 5, Unattended
	add := func(cost, bare, wrapped int, places ...Place) {
		m := at(920, cost, bare, Gap{}, places...)
		m.Closed = []Span{{bare + 600, bare + 1420}, {bare + 2040, bare + 2500}}
		first.Modes = append(first.Modes, m)
		rides := []Place{{0, 0}, {2, 0}, {4, 0}, {5, 0}}
		if places[0].Fire == 1 {
			rides[0].Fire = 1
		}
		second.Modes = append(second.Modes, at(915, 0, wrapped, gap, rides...), at(920, 300, wrapped-20, gap, Place{OvenFire, 0}))
	}
	add(0, 380, 280, Place{0, 0})
	add(0, 380, 280, Place{1, 0})
	for wait := range 8 {
		add(2+10*wait, 380+40*wait, 280-15*wait, Place{0, 0})
	}
	add(30, 270, 220, Place{4, 0}, Place{5, 0})
	for m := range second.Modes {
		d := second.Modes[m].Minutes[0]
		second.Modes[m].Minutes = make([]int, len(first.Modes))
		second.Modes[m].Minutes[m/2] = d
	}
	return Chain{HoldCost: 2, Tasks: []Task{first, second}}
}

// BenchmarkParty is what a plan of a small day costs, most of it in listing what
// could be done.
func BenchmarkParty(b *testing.B) {
	b.ReportAllocs()
	p := partyDay()
	for b.Loop() {
		s, err := Solve(context.Background(), p)
		if err != nil || s.Status != Optimal {
			b.Fatal(s.Status, err)
		}
		b.ReportMetric(float64(s.Nodes), "nodes")
	}
}
