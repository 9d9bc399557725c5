package heat

// EvaporatedKgPerKg is the water evaporated since Start per raw mass.
func (s *Sim) EvaporatedKgPerKg() float64 { return s.state.vapour / s.massKgM2 }

// SurfaceWaterKgM2 is the free water on the surface in kg/m2.
func (s *Sim) SurfaceWaterKgM2() float64 { return s.state.water }

// RunUntilCoreBelow advances until the core has fallen to a temperature in degC,
// or for at most maxSeconds, as when a piece is chilled.
func (s *Sim) RunUntilCoreBelow(limitC, maxSeconds float64) Status {
	return s.runUntilBelow(0, limitC, maxSeconds)
}

// BelowC and AboveC are the temperatures of the two faces in degC.
func (s *Slab) BelowC() float64 { return s.sides[0].surfaceC }

// AboveC is the temperature of the upper face in degC.
func (s *Slab) AboveC() float64 { return s.sides[1].surfaceC }

// Check says what is wrong with s: the field, its value and its range.
func (s Surroundings) Check() error {
	if s.PressurePa == 0 {
		s.PressurePa = seaLevelPa
	}
	return check([]field{
		{name: "air temperature", value: s.AirC, least: -40, most: 600, unit: " degC"},
		{name: "wall temperature", value: s.WallC, least: -40, most: 600, unit: " degC"},
		{name: "convection coefficient", value: s.ConvectionWM2K, least: 0, most: 400, unit: " W/(m2 K)"},
		{name: "emissivity", value: s.Emissivity, least: 0, most: 1},
		{name: "vapour pressure", value: s.VapourPa, least: 0, most: 50000, unit: " Pa"},
		{name: "cover", value: s.Cover, least: 0, most: 1},
		{name: "cover resistance", value: s.CoverM2KW, least: 0, most: 1, unit: " m2 K/W"},
		{name: "air pressure", value: s.PressurePa, least: 45000, most: 108000, unit: " Pa"},
	})
}
