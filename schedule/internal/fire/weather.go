package fire

// Weather is the air about the grill. WindMS is the forecast's figure, in the open.
type Weather struct {
	AirC, WindMS, AltitudeM float64
	Rain, Sheltered         bool
}

// Slice is a stretch of one weather.
type Slice struct {
	Minutes float64
	Weather Weather
}

// Film coefficients of the shell, W/(m2 K). Outside: about 5 of natural convection and 7 of radiation in calm air, and
// 3.8 for each m/s of wind (the old flat-plate rule, from memory); inside about 10 (assumption). In series they give
// how much more heat the shell loses in wind: 1.2 times at 8 mph in the open, 1.4 at 20 mph.
const (
	insideWM2K      = 10
	outsideWM2K     = 12
	windWM2KPerMS   = 3.8
	reachOpen       = 0.5  // share of the forecast's wind that comes down to a grill in a garden (assumption)
	reachSheltered  = 0.15 // behind a wall or fence (assumption)
	rainOpen        = 1.15 // rain that boils off the lid: 1 mm an hour on it is a seventh of the fire (assumption)
	rainSheltered   = 1.05
	waterPanFactor  = 1.15 // about 0.3 kg of water evaporates an hour, a seventh of the fire (assumption)
	thinAirM        = 1500
	metresPerSecMax = 40
)

// factor is how many times more heat this weather takes than calm dry air of the same temperature. Cold is not in it:
// the law's temperature difference carries that. Humidity does nothing to the fire; thin air only to the vents.
func (w Weather) factor() float64 {
	rain := rainOpen
	if w.Sheltered {
		rain = rainSheltered
	}
	if !w.Rain {
		rain = 1
	}
	return rain * shellWM2K(w.atGrillMS()) / shellWM2K(0)
}

// atGrillMS is the forecast's wind where the grill stands.
func (w Weather) atGrillMS() float64 {
	reach := reachOpen
	if w.Sheltered {
		reach = reachSheltered
	}
	return min(max(w.WindMS, 0), metresPerSecMax) * reach
}

func shellWM2K(windMS float64) float64 {
	return 1 / (1.0/insideWM2K + 1/(outsideWM2K+windWM2KPerMS*windMS))
}
