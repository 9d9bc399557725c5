package heat_test

import (
	"fmt"

	"example.com/cookday/schedule/internal/heat"
)

// One brisket, cooked bare to 66 degC once, then as two branches: left bare, and
// wrapped in foil.
func ExampleSim() {
	brisket := heat.Body{
		ThicknessM: 0.085, WidthM: 0.28, LengthM: 0.42, RadiusScale: 1,
		Water: 0.58, Protein: 0.165, Fat: 0.245, Ash: 0.01,
		WetFactor: 0.8, SupplyFactor: 1, StartC: heat.RefrigeratorC,
	}
	grate := heat.Grate(121, heat.CalmDay())

	var trunk heat.Sim
	trunk.Start(brisket, grate)
	trunk.RunTo(66, heat.MaxRunS)

	bare, foil := trunk, trunk
	foil.Change(grate.InFoil())
	for _, s := range []*heat.Sim{&bare, &foil} {
		status := s.RunTo(95, heat.MaxRunS)
		fmt.Printf("%v after %.0f h\n", status, s.ElapsedS()/3600)
	}
	// Output:
	// reached after 13 h
	// reached after 11 h
}
