package sequence

import (
	"errors"
	"testing"
)

// twoFires is a day on which every rule has something to say: two fires, a
// rider, an oven, two stages, a night.
func twoFires() *Problem {
	ride := at(4, 5, 60, Gap{10, 20, 60}, Place{0, 0}, Place{1, 0})
	night := at(4, 5, 100, Gap{0, 30, 90}, Place{0, 0})
	night.Closed = []Span{{300, 310}}
	return &Problem{
		Fires: []Fire{{Setup: 20, Zones: []int{6}}, {Setup: 15, Zones: []int{6, 3}}}, Change: [][]int{{0, 10}, {20, 0}}, Ovens: []int{5},
		MaxPhases: 2, ChangeCost: 7, BurnCost: 1, Earliest: 600, Quiet: []Span{{400, 500}}, LightHands: 5, ChangeHands: 5,
		Chains: []Chain{
			{HoldCost: 3, Tasks: []Task{{StartHands: 4, Modes: []Mode{ride}}}},
			{HoldCost: 2, Tasks: []Task{
				{LagMin: 2, LagMax: 20, StartHands: 4, Modes: []Mode{at(2, 0, 50, Gap{}, Place{0, 0})}},
				{Modes: []Mode{at(3, 0, 10, Gap{5, 10, 40}, Place{1, 1})}},
			}},
			{HoldCost: 2, Tasks: []Task{{Modes: []Mode{at(5, 0, 30, Gap{5, 10, 40}, Place{OvenFire, 0})}}}},
			{HoldCost: 2, Tasks: []Task{{StartHands: 4, Modes: []Mode{at(3, 0, 20, Gap{0, 10, 40}, Place{1, 1})}}}},
			{HoldCost: 1, Serve: 90, Tasks: []Task{{Modes: []Mode{night}}}},
		},
	}
}

// TestVerifyCatches corrupts a good plan in one way at a time.
func TestVerifyCatches(t *testing.T) {
	// shift moves one task as a whole.
	shift := func(c, j, by int) func(*Problem, *Solution) {
		return func(_ *Problem, s *Solution) { s.Chains[c][j].Start += by; s.Chains[c][j].End += by }
	}
	for _, test := range []struct {
		name, rule string
		corrupt    func(*Problem, *Solution)
	}{
		{"a chain is missing", BrokenShape, func(_ *Problem, s *Solution) { s.Chains = s.Chains[1:] }},
		{"a task is missing", BrokenShape, func(_ *Problem, s *Solution) { s.Chains[1] = s.Chains[1][1:] }},
		{"no such mode", BrokenShape, func(_ *Problem, s *Solution) { s.Chains[0][0].Mode = 1 }},
		{"a plan although infeasible", BrokenShape, func(_ *Problem, s *Solution) { s.Status = Infeasible }},
		{"too short", BrokenMinutes, func(_ *Problem, s *Solution) { s.Chains[0][0].Start-- }},
		{"mode not allowed", BrokenMinutes, func(p *Problem, _ *Solution) { p.Chains[1].Tasks[1].Modes[0].Minutes[0] = 0 }},
		{"too many phases", BrokenPhases, func(p *Problem, _ *Solution) { p.MaxPhases = 1 }},
		{"change impossible", BrokenPhases, func(p *Problem, _ *Solution) { p.Change[0][1] = -1 }},
		{"change too short", BrokenPhases, func(_ *Problem, s *Solution) { s.Phases[0].End-- }},
		{"light too late", BrokenPhases, func(_ *Problem, s *Solution) { s.Light-- }},
		{"the fire goes out early", BrokenPhases, func(_ *Problem, s *Solution) { s.Phases[1].End = 1 }},
		{"the same fire twice", BrokenPhases, func(_ *Problem, s *Solution) { s.Phases[1].Fire = 0 }},
		{"no place under the second fire", BrokenPlace, func(p *Problem, _ *Solution) {
			m := &p.Chains[0].Tasks[0].Modes[0]
			m.Places = m.Places[:1]
		}},
		{"before its fire", BrokenPlace, shift(4, 0, 5)},
		{"in the change", BrokenPlace, func(_ *Problem, s *Solution) { s.Chains[0][0].LastPhase = 0 }},
		{"in no phase", BrokenPlace, func(_ *Problem, s *Solution) { s.Chains[0][0].FirstPhase, s.Chains[0][0].LastPhase = -1, -1 }},
		{"stages too far apart", BrokenLag, func(p *Problem, _ *Solution) { p.Chains[1].Tasks[0].LagMax = 1; p.Chains[1].Tasks[0].LagMin = 0 }},
		{"stages too close", BrokenLag, func(p *Problem, _ *Solution) {
			p.Chains[1].Tasks[0].LagMin = 200
			p.Chains[1].Tasks[0].LagMax = NoLimit
		}},
		{"rest too short", BrokenGap, shift(2, 0, -5)},
		{"held too long", BrokenGap, func(p *Problem, s *Solution) { shift(2, 0, 41)(p, s) }},
		{"light before the earliest", BrokenEarliest, func(p *Problem, s *Solution) { p.Earliest = s.Light - 1 }},
		{"start in the night", BrokenQuiet, func(p *Problem, s *Solution) { p.Quiet[0] = Span{s.Chains[2][0].Start, s.Chains[2][0].Start + 1} }},
		{"end in the night", BrokenQuiet, func(p *Problem, s *Solution) { p.Quiet[0] = Span{s.Chains[2][0].End, s.Chains[2][0].End + 1} }},
		{"light in the night", BrokenQuiet, func(p *Problem, s *Solution) { p.Quiet[0] = Span{s.Light, s.Light + 1} }},
		{"change in the night", BrokenQuiet, func(p *Problem, s *Solution) { p.Quiet[0] = Span{s.Phases[0].End, s.Phases[0].End + 1} }},
		{"start in closed hours", BrokenClosed, func(p *Problem, s *Solution) {
			p.Chains[4].Tasks[0].Modes[0].Closed[0] = Span{s.Chains[4][0].Start, s.Chains[4][0].Start + 1}
		}},
		{"light in closed hours", BrokenClosed, func(p *Problem, s *Solution) {
			p.Fires[s.Phases[0].Fire].LightClosed = []Span{{s.Light, s.Light + 1}}
		}},
		{"change in closed hours", BrokenClosed, func(p *Problem, s *Solution) {
			p.Fires[s.Phases[1].Fire].ChangeClosed = []Span{{s.Phases[0].End, s.Phases[0].End + 1}}
		}},
		{"hands twice", BrokenHands, func(p *Problem, _ *Solution) { p.Chains[4].Tasks[0].StartHands = 300 }},
		{"hands at the change", BrokenHands, func(p *Problem, _ *Solution) { p.ChangeHands = 100 }},
		{"oven too full", BrokenRoom, func(p *Problem, _ *Solution) { p.Ovens[0] = 4 }},
		{"rider leaves no room", BrokenRoom, func(p *Problem, _ *Solution) { p.Fires[1].Zones[0] = 3 }},
		{"zone too full", BrokenRoom, func(p *Problem, _ *Solution) { p.Fires[0].Zones[0] = 3 }},
		{"parts do not fit", BrokenCost, func(_ *Problem, s *Solution) { s.Parts.Hold++; s.Parts.Mode-- }},
		{"cost is not their sum", BrokenCost, func(_ *Problem, s *Solution) { s.Cost++; s.Bound++ }},
		{"bound above the cost", BrokenCost, func(_ *Problem, s *Solution) { s.Status = Feasible; s.Bound++ }},
		{"proven below the cost", BrokenCost, func(_ *Problem, s *Solution) { s.Bound-- }},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := twoFires()
			s := solveProven(t, p)
			test.corrupt(p, &s)
			var b *BrokenError
			if err := Verify(p, &s); !errors.As(err, &b) || b.Rule != test.rule {
				t.Errorf("got %v, want the rule %q", err, test.rule)
			}
		})
	}
}
