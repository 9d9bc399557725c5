package heat_test

import (
	"fmt"

	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/unit"
)

// The bodies below are invented, of a size and make that such pieces have. What is
// printed are orders and yes or no, which no small change of the model moves.

// brisket is one of about 12 lb.
func brisket() heat.Body {
	return heat.Body{
		ThicknessM: 0.085, WidthM: 0.28, LengthM: 0.42, RadiusScale: 1,
		Water: 0.58, Protein: 0.165, Fat: 0.245, Ash: 0.01,
		WetFactor: 0.8, SupplyFactor: 1, StartC: heat.RefrigeratorC,
	}
}

// ribRoast is a boneless one of about 5 lb.
func ribRoast() heat.Body {
	return heat.Body{
		ThicknessM: 0.12, WidthM: 0.14, LengthM: 0.17, RadiusScale: 1,
		Water: 0.6, Protein: 0.17, Fat: 0.22, Ash: 0.01,
		WetFactor: 0.8, SupplyFactor: 1, StartC: heat.RefrigeratorC,
	}
}

// A cool grate leaves the surface wet, and the core on a plateau for hours; on a hot one
// the surface dries before there is a plateau. Foil keeps the heat that the water would
// take away.
func ExampleSim_Cook() {
	bare := func(grateF float64) []heat.Stage {
		return []heat.Stage{{In: heat.Grate(unit.FToC(grateF), heat.CalmDay())}}
	}
	cook := func(stages []heat.Stage) heat.Result {
		var s heat.Sim
		s.Start(brisket(), stages[0].In)
		return s.Cook(heat.Recipe{Stages: stages, TargetC: unit.FToC(203)}, nil)
	}
	cool, hot := cook(bare(225)), cook(bare(350))
	fmt.Printf("225 F, bare: %v, stalled %v\n", cool.Status, cool.Stalled)
	fmt.Printf("350 F, bare: %v, stalled %v\n", hot.Status, hot.Stalled)

	first := bare(225)[0]
	first.UntilCoreC = unit.FToC(150)
	foil := cook([]heat.Stage{first, {In: first.In.InFoil()}})
	fmt.Printf("225 F, in foil from 150 F: %v, hours sooner than bare %v\n", foil.Status, foil.TargetS < cool.TargetS-2*3600)
	// Output:
	// 225 F, bare: reached, stalled true
	// 350 F, bare: reached, stalled false
	// 225 F, in foil from 150 F: reached, hours sooner than bare true
}

// The hotter the oven, the further the core climbs once the roast is out of it.
func ExampleSim_CarryOver() {
	var before float64
	for _, ovenF := range []float64{225, 325, 450} {
		var s heat.Sim
		s.Start(ribRoast(), heat.Oven(unit.FToC(ovenF)))
		s.RunTo(unit.FToC(125), heat.MaxRunS)
		rise := s.CarryOver(heat.Counter(21)).CoreC - s.CoreC()
		fmt.Printf("oven at %.0f F: rises, and further than from a cooler one: %v\n", ovenF, rise > before)
		before = rise
	}
	// Output:
	// oven at 225 F: rises, and further than from a cooler one: true
	// oven at 325 F: rises, and further than from a cooler one: true
	// oven at 450 F: rises, and further than from a cooler one: true
}

// Pulled at the temperature that it names, the roast peaks at the one asked for.
func ExampleSim_PullForPeak() {
	var s heat.Sim
	s.Start(ribRoast(), heat.Oven(unit.FToC(325)))
	pull, ok := s.PullForPeak(57, heat.Counter(21), heat.MaxRunS)
	s.RunTo(pull, heat.MaxRunS)
	fmt.Println(ok, "pulled below 57 degC:", pull < 57)
	fmt.Printf("peaks at %.0f degC\n", s.CarryOver(heat.Counter(21)).CoreC)
	// Output:
	// true pulled below 57 degC: true
	// peaks at 57 degC
}

// The better the box, the longer the outside of a brisket stays above 140 F.
func ExampleBoxed() {
	var cooked heat.Sim
	cooked.Start(brisket(), heat.Grate(unit.FToC(250), heat.CalmDay()))
	cooked.RunTo(unit.FToC(203), heat.MaxRunS)
	before := 0.0
	for _, box := range []struct {
		name string
		wm2k float64
	}{{"poor", heat.BoxPoorWM2K}, {"usual", heat.BoxWM2K}, {"good", heat.BoxGoodWM2K}, {"very good", heat.BoxVeryGoodWM2K}} {
		s := cooked
		s.Change(heat.Boxed(21, box.wm2k))
		status := s.RunUntilOuterBelow(unit.FToC(140), heat.MaxRunS)
		held := s.ElapsedS() - cooked.ElapsedS()
		fmt.Printf("%s: %v, longer than in a worse one: %v\n", box.name, status, held > before)
		before = held
	}
	// Output:
	// poor: reached, longer than in a worse one: true
	// usual: reached, longer than in a worse one: true
	// good: reached, longer than in a worse one: true
	// very good: reached, longer than in a worse one: true
}

// Water boils at about 100 degC by the sea (ASHRAE table: 99.97) and, by the standard
// atmosphere and a steam table together, at 93.3 at 2000 m.
func ExampleBoilingC() {
	for _, altitudeM := range []float64{0, 2000} {
		fmt.Printf("at %.0f m: %.0f degC\n", altitudeM, heat.BoilingC(altitudeM))
	}
	// Output:
	// at 0 m: 100 degC
	// at 2000 m: 93 degC
}
