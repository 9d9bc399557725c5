package sequence

import (
	"context"
	"errors"
	"testing"
)

// TestMalformed spoils one field at a time.
func TestMalformed(t *testing.T) {
	for _, test := range []struct {
		field string
		spoil func(*Problem)
	}{
		{"fires[1].setup", func(p *Problem) { p.Fires[1].Setup = -1 }},
		{"fires[1].zones[0]", func(p *Problem) { p.Fires[1].Zones[0] = -1 }},
		{"fires[1].light closed[0].to", func(p *Problem) { p.Fires[1].LightClosed = []Span{{3, 2}} }},
		{"fires[0].change closed[1].to", func(p *Problem) { p.Fires[0].ChangeClosed = []Span{{1, 2}, {3, 2}} }},
		{"change", func(p *Problem) { p.Change = p.Change[:1] }},
		{"change[0]", func(p *Problem) { p.Change[0] = nil }},
		{"change[0][1]", func(p *Problem) { p.Change[0][1] = limit + 1 }},
		{"ovens[0]", func(p *Problem) { p.Ovens[0] = -1 }},
		{"max phases", func(p *Problem) { p.MaxPhases = -1 }},
		{"max phases", func(p *Problem) { p.MaxPhases = phaseLimit + 1 }},
		{"change cost", func(p *Problem) { p.ChangeCost = -1 }},
		{"burn cost", func(p *Problem) { p.BurnCost = -1 }},
		{"earliest", func(p *Problem) { p.Earliest = limit + 1 }},
		{"budget", func(p *Problem) { p.Budget = -1 }},
		{"light hands", func(p *Problem) { p.LightHands = -2 }},
		{"change hands", func(p *Problem) { p.ChangeHands = -2 }},
		{"quiet[0].to", func(p *Problem) { p.Quiet[0] = Span{10, 9} }},
		{"chains[0].serve", func(p *Problem) { p.Chains[0].Serve = -1 }},
		{"chains[0].hold cost", func(p *Problem) { p.Chains[0].HoldCost = -1 }},
		{"chains[0].group", func(p *Problem) { p.Chains[0].Group = -1 }},
		{"chains[2].group", func(p *Problem) { p.Chains[0].Group, p.Chains[2].Group = 1, 1 }},
		{"chains[0].tasks", func(p *Problem) { p.Chains[0].Tasks = nil }},
		{"chains[1].tasks[0].lag min", func(p *Problem) { p.Chains[1].Tasks[0].LagMin = -1 }},
		{"chains[1].tasks[0].lag max", func(p *Problem) { p.Chains[1].Tasks[0].LagMax = 1 }},
		{"chains[1].tasks[0].start hands", func(p *Problem) { p.Chains[1].Tasks[0].StartHands = -2 }},
		{"chains[1].tasks[0].end hands", func(p *Problem) { p.Chains[1].Tasks[0].EndHands = -2 }},
		{"chains[1].tasks[1].modes", func(p *Problem) { p.Chains[1].Tasks[1].Modes = nil }},
		{"chains[0].tasks[0].modes[0].area", func(p *Problem) { p.Chains[0].Tasks[0].Modes[0].Area = -1 }},
		{"chains[0].tasks[0].modes[0].cost", func(p *Problem) { p.Chains[0].Tasks[0].Modes[0].Cost = -1 }},
		{"chains[0].tasks[0].modes[0].minutes", func(p *Problem) { p.Chains[0].Tasks[0].Modes[0].Minutes = nil }},
		{"chains[0].tasks[0].modes[0].minutes[0]", func(p *Problem) { p.Chains[0].Tasks[0].Modes[0].Minutes[0] = -1 }},
		{"chains[4].tasks[0].modes[0].closed[0].to", func(p *Problem) { p.Chains[4].Tasks[0].Modes[0].Closed[0] = Span{3, 2} }},
		{"chains[0].tasks[0].modes[0].gap.min", func(p *Problem) { p.Chains[0].Tasks[0].Modes[0].Gap.Min = -1 }},
		{"chains[0].tasks[0].modes[0].gap.max", func(p *Problem) { p.Chains[0].Tasks[0].Modes[0].Gap.Max = 9 }},
		{"chains[0].tasks[0].modes[0].places", func(p *Problem) { p.Chains[0].Tasks[0].Modes[0].Places = nil }},
		{"chains[0].tasks[0].modes[0].places[1].fire", func(p *Problem) { p.Chains[0].Tasks[0].Modes[0].Places[1].Fire = 0 }},
		{"chains[0].tasks[0].modes[0].places[1].fire", func(p *Problem) { p.Chains[0].Tasks[0].Modes[0].Places[1].Fire = 2 }},
		{"chains[0].tasks[0].modes[0].places[1].zone", func(p *Problem) { p.Chains[0].Tasks[0].Modes[0].Places[1].Zone = 2 }},
		{"chains[0].tasks[0].modes[0].places", func(p *Problem) { p.Chains[0].Tasks[0].Modes[0].Places[1] = Place{OvenFire, 0} }},
	} {
		p := twoFires()
		test.spoil(p)
		var e *ProblemError
		if _, err := Solve(context.Background(), p); !errors.As(err, &e) || e.Field != test.field {
			t.Errorf("%s: got %v", test.field, err)
		}
	}
}
