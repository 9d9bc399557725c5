package export

import (
	"time"
	_ "time/tzdata"

	"example.com/cookday/schedule"
)

// invented is a day made up by hand: a brisket from before midnight, chickens in
// the afternoon, patties at the end. Its numbers are plausible, not computed.
func invented() schedule.Plan {
	loc, err := time.LoadLocation("America/Chicago")
	if err != nil {
		panic(err)
	}
	on := func(day, hour, minute int) time.Time { return time.Date(2027, 7, day, hour, minute, 0, 0, loc) }
	fixed := func(t time.Time) schedule.Window { return schedule.Window{Early: t, Expected: t, Late: t} }
	spread := func(early, expected, late time.Time) schedule.Window {
		return schedule.Window{Early: early, Expected: expected, Late: late}
	}
	light := on(2, 21, 30)
	p := schedule.Plan{
		Format: 1, ID: "6f0c2a1e-5f0b-5d2c-9a50-1f2d3c4b5a69", Name: "Saturday on the terrace", Feasible: true,
		ServeAt: on(3, 18, 0), LightAt: &light, TZ: "America/Chicago", Units: "us",
		Chance: schedule.Chance{Asked: 0.9, All: 0.84},
		Quiet:  []schedule.Interval{{From: on(2, 23, 0), To: on(3, 5, 30)}},
		Fuel: &schedule.Fuel{Kind: "briquettes", MassKg: 4.2, LowKg: 2.1, HighKg: 8.4, Count: 168, BuyKg: 6.3, BuyCount: 252, Chunks: 4,
			Text: "Buy 14 lb of briquettes (about 250) and 4 chunks of wood; about 170 will burn, half or double that is possible."},
	}
	p.Request.Grill = schedule.Grill{Kind: schedule.GrillKettle, Diameter: 0.5715, Fuel: schedule.FuelBriquettes}
	p.Dishes = inventedDishes(on, fixed, spread)
	p.Phases = []schedule.Phase{
		{Number: 1, Layout: "ring", Band: "low", LevelC: 121, GaugeC: 143, SetupFrom: light, From: on(2, 22, 0), To: on(3, 16, 20),
			Zones: []schedule.Zone{{Name: "centre", LevelC: 121, AreaM2: 0.141, UsableM2: 0.106, DiscsM2: 0.078}},
			Burn:  &schedule.Burn{MassKg: 3.2, LowKg: 1.6, HighKg: 6.4, Lay: 130, Light: 6, LayKg: 3.3, Chimneys: 0.1, LastsMinutes: 1000, Rows: "2-2-1", ArcM: 1.3, Chunks: 4},
			Build: "Lay two rows of briquettes round the edge, two on top, one on those, over three quarters of the way; light 6 at one end", Vents: "Bottom vent a quarter open, top vent a quarter open over the meat"},
		{Number: 2, Layout: "heap", Band: "sear", LevelC: 288, GaugeC: 300, SetupFrom: on(3, 16, 50), From: on(3, 17, 20), To: on(3, 18, 0),
			Zones: []schedule.Zone{{Name: "centre", Direct: true, LevelC: 288, AreaM2: 0.09, UsableM2: 0.067, DiscsM2: 0.05}},
			Burn:  &schedule.Burn{MassKg: 1, LowKg: 0.5, HighKg: 2, Lay: 80, Light: 80, Chimneys: 1, LastsMinutes: 45},
			Build: "Heap a full chimney of lit coals in the middle", Vents: "All vents open, lid off"},
	}
	add := func(id string, w schedule.Window, kind schedule.StepKind, dish string, attended bool, text string) {
		p.Steps = append(p.Steps, schedule.Step{ID: "00000000-0000-5000-8000-0000000000" + id, At: w.Expected, Window: w, Kind: kind, Dish: dish,
			Attended: attended, Minutes: 5, Text: text, Why: "so that the meal is at 18:00"})
	}
	add("01", fixed(on(2, 21, 10)), schedule.StepLayFire, "", true, "lay the ring: two rows of briquettes, two on top, one on those")
	add("02", fixed(light), schedule.StepLight, "", true, "light 6 briquettes at one end of the ring")
	add("03", fixed(on(2, 22, 0)), schedule.StepPutOn, "brisket", true, "put the brisket on, fat side toward the heat")
	add("04", spread(on(3, 1, 10), on(3, 2, 0), on(3, 3, 10)), schedule.StepStallBegins, "brisket", false, "the brisket stops climbing for hours; that is normal")
	add("05", fixed(on(3, 5, 30)), schedule.StepWrap, "brisket", true, "wrap the brisket in foil")
	add("06", spread(on(3, 11, 0), on(3, 12, 30), on(3, 14, 30)), schedule.StepTakeOff, "brisket", true, "take it off at 203 F in the thickest part of the flat")
	add("07", fixed(on(3, 14, 0)), schedule.StepPutOn, "chickens", true, "put both on, skin up")
	add("08", spread(on(3, 15, 0), on(3, 15, 20), on(3, 15, 50)), schedule.StepTakeOff, "chickens", true, "take them off at 165 F in the breast")
	add("09", fixed(on(3, 17, 20)), schedule.StepPutOn, "burgers", true, "put 12 burgers on")
	add("10", fixed(on(3, 18, 0)), schedule.StepServe, "", true, "serve")
	p.Findings = []schedule.Finding{{Code: "tight", Severity: schedule.Warning, Dishes: []string{"burgers"}, Text: "twelve patties fill the fire to the edge"}}
	earlier := light.Add(-time.Hour)
	p.Remedies = []schedule.Remedy{{Code: "earlier", For: "tight", Text: "Light an hour earlier", Price: "an hour more of fuel", LightAt: &earlier, ServeAt: p.ServeAt, Chance: 0.9}}
	p.Cautions = []schedule.Caution{
		{Code: "colour", Severity: schedule.Info, Text: "colour is no sign of being done"},
		{Code: "carbon-monoxide", Severity: schedule.Danger, Text: "Burning charcoal gives off carbon monoxide: never indoors, in a garage or a tent"},
		{Code: "night", Severity: schedule.Warning, Text: "Nobody watches this fire at night: keep it away from walls and from anything that burns"},
	}
	return p
}

func inventedDishes(on func(d, h, m int) time.Time, fixed func(time.Time) schedule.Window, spread func(a, b, c time.Time) schedule.Window) []schedule.DishPlan {
	stage := func(kind schedule.StageKind, from, to time.Time) schedule.Stage {
		m := to.Sub(from).Minutes()
		return schedule.Stage{Kind: kind, From: from, To: to, Minutes: schedule.Minutes{Early: 0.9 * m, Expected: m, Late: 1.1 * m}}
	}
	onGrate := func(s schedule.Stage, phase int, zone string, level float64) schedule.Stage {
		s.Phase, s.PhaseTo, s.Zone, s.Place, s.LevelC = phase, phase, zone, "grate", level
		return s
	}
	wrapped := onGrate(stage(schedule.StageWrapped, on(3, 5, 30), on(3, 13, 30)), 1, "centre", 121)
	wrapped.With, wrapped.CoreC = schedule.WrapFoil, 95
	held := stage(schedule.StageHold, on(3, 14, 30), on(3, 18, 0))
	held.Place = schedule.HoldBox
	brisket := schedule.Batch{Number: 1, Chance: 0.93,
		Pieces: []schedule.Piece{{MassKg: 5.443, ThicknessM: 0.08, WidthM: 0.25, LengthM: 0.36, AreaM2: 0.0707, Spots: []schedule.Spot{{Phase: 1, XM: 0.02, YM: -0.06, AngleDeg: 10}}}},
		Stages: []schedule.Stage{onGrate(stage(schedule.StageBare, on(2, 22, 0), on(3, 5, 30)), 1, "centre", 121), wrapped,
			stage(schedule.StageRest, on(3, 13, 30), on(3, 14, 30)), held},
		Milestones: []schedule.Milestone{
			{Kind: schedule.MilestoneOn, CoreC: 4, Window: fixed(on(2, 22, 0))},
			{Kind: schedule.MilestoneStallBegins, CoreC: 65, Window: spread(on(3, 1, 10), on(3, 2, 0), on(3, 3, 10))},
			{Kind: schedule.MilestoneWrap, CoreC: 71, Window: fixed(on(3, 5, 30))},
			{Kind: schedule.MilestoneTakeOff, CoreC: 95, Window: spread(on(3, 11, 0), on(3, 12, 30), on(3, 14, 30))},
			{Kind: schedule.MilestoneServe, CoreC: 70, Window: fixed(on(3, 18, 0))}},
	}
	for i, c := range []float64{4, 30, 52, 63, 66, 68, 71, 80, 88, 93, 95} {
		brisket.Curve = append(brisket.Curve, schedule.Point{At: on(2, 22, 0).Add(time.Duration(i) * 87 * time.Minute), CoreC: c, LowC: c - 3, HighC: c + 3})
	}
	chickens := schedule.Batch{Number: 1, Chance: 0.95,
		Stages: []schedule.Stage{onGrate(stage(schedule.StageBare, on(3, 14, 0), on(3, 15, 40)), 1, "centre", 121), stage(schedule.StageRest, on(3, 15, 40), on(3, 18, 0))},
		Milestones: []schedule.Milestone{{Kind: schedule.MilestoneOn, CoreC: 4, Window: fixed(on(3, 14, 0))},
			{Kind: schedule.MilestoneTakeOff, CoreC: 74, Window: spread(on(3, 15, 0), on(3, 15, 20), on(3, 15, 50))}}}
	for i := range 2 {
		chickens.Pieces = append(chickens.Pieces, schedule.Piece{MassKg: 2.04, WidthM: 0.2, LengthM: 0.26, AreaM2: 0.041,
			Spots: []schedule.Spot{{Phase: 1, XM: -0.1 + 0.2*float64(i), YM: 0.13}}})
	}
	burgers := schedule.Batch{Number: 1, Chance: 0.97, Stages: []schedule.Stage{onGrate(stage(schedule.StageBare, on(3, 17, 20), on(3, 17, 32)), 2, "centre", 288)},
		Milestones: []schedule.Milestone{{Kind: schedule.MilestoneOn, Window: fixed(on(3, 17, 20))}, {Kind: schedule.MilestoneTakeOff, CoreC: 71, Window: spread(on(3, 17, 29), on(3, 17, 31), on(3, 17, 33))}}}
	burgers.Stages[0].Direct, burgers.Stages[0].Flips = true, 1
	for i := range 12 {
		burgers.Pieces = append(burgers.Pieces, schedule.Piece{MassKg: 0.17, WidthM: 0.11, LengthM: 0.11, AreaM2: 0.0095, Disc: true,
			Spots: []schedule.Spot{{Phase: 2, XM: -0.18 + 0.12*float64(i%4), YM: -0.12 + 0.12*float64(i/4)}}})
	}
	return []schedule.DishPlan{
		{ID: "brisket", Name: "Brisket", Cut: "brisket", Count: 1, MassKg: 5.443, ServeAt: on(3, 18, 0), TargetC: 95, Doneness: "tender", MinimumC: 62.8,
			Way: "low on the ring, foil", Chance: 0.93, Batches: []schedule.Batch{brisket},
			Holds: []schedule.HoldAdvice{{Method: schedule.HoldBox, Chosen: true, LimitMinutes: 300, Until: on(3, 19, 30), Text: "wrapped, in dry towels, lid shut"}}},
		{ID: "chickens", Name: "Chickens", Cut: "chicken-spatchcock", Count: 2, MassKg: 4.08, ServeAt: on(3, 18, 0), TargetC: 74, MinimumC: 73.9, Chance: 0.95, Batches: []schedule.Batch{chickens}},
		{ID: "burgers", Name: "Burgers", Cut: "burger", Count: 12, MassKg: 2.04, ServeAt: on(3, 18, 0), TargetC: 71.1, MinimumC: 71.1, Chance: 0.97, Batches: []schedule.Batch{burgers}},
	}
}
