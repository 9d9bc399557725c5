package sequence

import "testing"

// One piece cooks for 100 minutes on a fire that is poured 20 minutes after its
// light and ready 10 minutes after that. Its latest light would be at 130; the
// night from 115 to 100 would have the pouring, at 110, in it.
func TestLightKeepsThePouringOutOfTheNight(t *testing.T) {
	night := Span{100, 115}
	p := &Problem{
		Fires:    []Fire{{Setup: 30, Zones: []int{1}, LightClosed: []Span{{night.From + 20, night.To + 20}}}},
		Change:   [][]int{{0}},
		Earliest: 500, BurnCost: 1, Quiet: []Span{night},
		Chains: []Chain{{HoldCost: 1, Tasks: []Task{{StartHands: Unattended, Modes: []Mode{at(1, 0, 100, Gap{0, 0, 50}, Place{0, 0})}}}}},
	}
	s := solveProven(t, p)
	if s.Light != 135 || s.WhyLight.Kind != ClosedHours {
		t.Errorf("light at %d, why %s; want 135, closed hours", s.Light, s.WhyLight.Kind)
	}
	p.Fires[0].LightClosed = nil
	if s = solveProven(t, p); s.Light != 130 {
		t.Errorf("light at %d, want 130", s.Light)
	}
}

// The piece needs fire 1, whose chimney for a change is lit 20 minutes before
// the change: changes at 90 to 119 are closed, and it may not be lit first.
func TestChangeKeepsItsChimneyOutOfTheNight(t *testing.T) {
	p := &Problem{
		Fires:  []Fire{{Zones: []int{1}}, {Zones: []int{1}, LightClosed: []Span{{0, 500}}, ChangeClosed: []Span{{90, 120}}}},
		Change: [][]int{{0, 10}, {10, 0}}, Earliest: 500, BurnCost: 1,
		Chains: []Chain{{HoldCost: 1, Tasks: []Task{{Modes: []Mode{at(1, 0, 80, Gap{0, 0, 50}, Place{1, 0})}}}}},
	}
	// Ready at 80 at the latest, so changed to at 90, which is closed: at 120.
	if s := solveProven(t, p); len(s.Phases) != 2 || s.Phases[0].End != 120 || s.Phases[1].Begin != 110 {
		t.Errorf("phases %+v", s.Phases)
	}
}
